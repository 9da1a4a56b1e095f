"""A class's wood: nothing is lost on the way, and volumes are those of the definition."""

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

from tests.boxes import inch_postcard, postcard
from tests.classroom.classes import DEMO, HEAD, THREE, write
from toolkit.classroom.folder import boxes
from toolkit.classroom.wood import ClassWood, class_wood
from toolkit.classroom.wood_contents import boards, kits, shopping
from toolkit.classroom.wood_tables import (
    TO_BUY,
    board_table,
    kit,
    stick_table,
    sticks,
    volume_table,
)
from toolkit.files import read_box, read_class
from toolkit.measures import Rule
from toolkit.plan import plan
from toolkit.stock import Blank, Board, blanks_of

MM, INCH = Rule.millimetres(), 25.4
EACH = {"side 1", "side 2", "back", "front", "bottom", "lid"}


@pytest.fixture(scope="module")
def demo() -> ClassWood:
    taught = read_class(DEMO)
    plans, faults = boxes(taught)
    assert not faults
    return class_wood(
        plans, boards=taught.boards, spare=plan(taught.box), sets=3, practice=300.0, seconds=2.0
    )


def test_every_part_of_everybody_is_on_a_board_or_bought_once(demo: ClassWood) -> None:
    laid = [piece.part for one in demo.boards for piece in one.pieces]
    bought = [
        part.name for stick in sticks(demo.missing, longest=2400, rule=MM) for part in stick.parts
    ]
    needed = [f"student {n}: {part}" for n in range(1, 13) for part in (*EACH, "practice blank")]
    needed += [f"spare {n}: {part}" for n in (1, 2, 3) for part in EACH]
    assert Counter(laid + bought) == Counter(needed)


def test_a_part_lies_on_a_board_that_can_give_it(demo: ClassWood) -> None:
    named = {blank.name: blank for blank in demo.needed}
    for one in demo.boards:
        for piece in one.pieces:
            blank = named[piece.part]
            assert piece.length >= blank.length - 1e-6 and piece.width >= blank.width - 1e-6
            assert one.board.thickness >= blank.thickness - 1e-6


def test_spares_lie_beyond_the_students_parts(demo: ClassWood) -> None:
    """What is laid on a board's rest must find that much left, and none of its knots."""
    assert demo.laid and demo.extra
    whole = {one.board.name: one for one in demo.laid.boards}
    rests = [one for one in demo.extra.boards if one.sections]
    assert rests
    for one in rests:
        first = whole[one.board.name.removeprefix("rest of ")]
        assert one.used <= first.left + 1e-6
        start = first.board.length - one.board.length
        assert start >= first.used
        for defect in first.board.defects:
            for piece in one.pieces:
                clear = (
                    start + piece.x >= defect.to_along
                    or start + piece.x + piece.length <= defect.from_along
                    or piece.y >= defect.to_across
                    or piece.y + piece.width <= defect.from_across
                )
                assert clear, (defect, piece)


def test_students_come_before_spares() -> None:
    made = plan(postcard())
    wood = class_wood(
        {1: made, 2: made},
        boards=[Board("one", "black cherry", 900, 155, 18)],
        spare=made,
        sets=1,
        practice=0.0,
    )
    names = {blank.name for blank in wood.missing}
    assert not any(name.startswith("student") and "side" in name for name in names)
    assert any(name.startswith("spare") for name in names)


def test_a_machine_too_busy_for_a_search_still_gives_a_layout(demo: ClassWood) -> None:
    taught = read_class(DEMO)
    plans, _ = boxes(taught)
    hasty = class_wood(
        plans, boards=taught.boards, spare=plan(taught.box), sets=3, practice=300.0, seconds=0.0
    )
    assert hasty.laid and hasty.extra and not hasty.laid.proved
    laid = [piece.part for one in hasty.boards for piece in one.pieces]
    bought = [blank.name for blank in hasty.missing]
    assert Counter(laid + bought) == Counter(blank.name for blank in demo.needed)


def test_without_boards_everything_is_bought() -> None:
    made = plan(postcard())
    wood = class_wood({7: made}, boards=[], spare=made, sets=2, practice=250.0)
    assert wood.laid is None and wood.extra is None and wood.boards == ()
    assert len(wood.missing) == 6 + 1 + 12 and wood.missing == wood.needed


def test_a_board_foot_is_144_cubic_inches() -> None:
    stick = Blank("a: b", 12 * INCH, 12 * INCH, 1 * INCH, "American beech")
    half = Blank("a: c", 12 * INCH, 12 * INCH, INCH / 2, "American beech")
    table = volume_table([stick, stick], title="t", waste=0.0, rule=MM)
    # By the trade's definition 1 board foot = 1 ft × 1 ft × 1 in = 144 in³; a yard counts the same.
    assert table.rows[0][2:] == ("2", "0.0047 m³", "0.0047 m³", "2.0", "2.0")
    table = volume_table([half], title="t", waste=0.0, rule=MM)
    # NHLA rules: under 1 in counts as 1 in.
    assert table.rows[0][5:] == ("0.5", "1.0")
    table = volume_table([stick], title="t", waste=0.5, rule=MM)
    assert table.rows[0][3:] == ("0.0024 m³", "0.0047 m³", "2.0", "2.0")


def test_volumes_add_up(demo: ClassWood) -> None:
    table = volume_table(demo.needed, title="t", waste=0.3, rule=MM)
    *rows, last = table.rows
    assert int(last[2]) == sum(int(row[2]) for row in rows) == len(demo.needed)
    net = sum(b.length * b.width * b.thickness for b in demo.needed) / 1e9
    assert float(last[3].removesuffix(" m³")) == pytest.approx(net, abs=5e-5)
    assert float(last[4].removesuffix(" m³")) == pytest.approx(net / 0.7, abs=5e-5)
    # 1 m³ is 10⁹ / 25.4³ in³, and a board foot 144 of them.
    assert float(last[5]) == pytest.approx(net / 0.7 * 1e9 / INCH**3 / 144, abs=0.05)
    with pytest.raises(ValueError, match="waste"):
        volume_table(demo.needed, title="t", waste=1.0, rule=MM)


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.tuples(st.floats(40, 700), st.floats(30, 140), st.floats(8, 30)), max_size=40),
    st.floats(600, 3000),
)
def test_sticks_hold_their_parts(sizes: list[tuple[float, float, float]], longest: float) -> None:
    blanks = [
        Blank(f"s: {i}", *size, "American beech", size[2] - 4) for i, size in enumerate(sizes)
    ]
    found = sticks(blanks, longest=longest, rule=MM)
    assert Counter(b.name for one in found for b in one.parts) == Counter(b.name for b in blanks)
    for one in found:
        assert one.length >= sum(blank.length for blank in one.parts)
        # A length within a millionth of a mark lies on it.
        for b in one.parts:
            assert one.width >= b.width - 1e-4 and one.thickness >= b.thickness - 1e-4
        assert one.length <= longest + 1e-6 or len(one.parts) == 1


def test_the_list_of_sticks(demo: ClassWood) -> None:
    bought = sticks(demo.missing, longest=2400, rule=MM)
    table = stick_table(bought, owners=demo.owners, rule=MM)
    assert [row[0] for row in table.rows] == [str(n) for n in range(1, len(bought) + 1)]
    for row, stick in zip(table.rows, bought, strict=True):
        length, width, thickness = (float(w.removesuffix(" mm")) for w in row[2].split(" × "))
        assert length >= stick.length and width >= stick.width and thickness >= stick.thickness
        for part in stick.parts:
            owner, _, name = part.name.partition(": ")
            assert owner in row[3] and name in row[3]


def test_boards_on_hand(demo: ClassWood) -> None:
    taught = read_class(DEMO)
    table = board_table(taught.boards, laid=demo.boards, rule=MM)
    assert [row[0] for row in table.rows] == [board.name for board in taught.boards]
    assert sum(int(row[3]) for row in table.rows) == sum(len(one.pieces) for one in demo.boards)
    # 2400 × 160 × 18 mm by the definition; 160/25.4 in × 7 ft / 12 = 3.67 ft² counts as 4 × 1 in.
    assert table.rows[0][5:] == ("0.0069 m³", f"{2400 * 160 * 18 / INCH**3 / 144:.2f}", "4")


@pytest.mark.parametrize("choices", [postcard(), inch_postcard()])
def test_a_kit_is_whole_and_in_the_students_own_units(choices) -> None:  # type: ignore[no-untyped-def]
    made = plan(choices)
    board = Board("board x", choices.wood.lid, 400, 140, 25)
    wood = class_wood({3: made}, boards=[board], spare=made, sets=0, practice=300.0)
    table = kit(made, wood=wood, whose="student 3")
    assert {row[3] for row in table.rows} == {"board x", TO_BUY}
    assert {row[0] for row in table.rows} == EACH | {"practice blank"}
    rough = {blank.name: blank for blank in blanks_of(made.parts)}
    for name, size, _, place, tick in table.rows:
        assert size.endswith(f" {choices.rule.units}") and tick == ""
        assert place == wood.places.get(f"student 3: {name}", TO_BUY)
        if name in rough:
            shown = size.removesuffix(f" {choices.rule.units}").split(" × ")
            scale = INCH if choices.rule.units == "in" else 1.0
            for text, least in zip(shown, (rough[name].length, rough[name].width), strict=False):
                value = scale * sum(
                    float(top) / float(bottom or 1)
                    for top, _, bottom in (word.partition("/") for word in text.split())
                )
                assert value >= least - 1e-6
    assert made.fingerprint in table.note


def test_pages_of_the_wood(demo: ClassWood, tmp_path: Path) -> None:
    taught = read_class(DEMO)
    plans, _ = boxes(taught)
    said, sections = shopping(taught, demo)
    assert "Order by 2027-05-15" in said
    assert [row.id for row in sections] == ["buy", "hand", "all", "moisture"]
    # The date is a first guess, which nothing is reckoned from.
    assert "wood at 9.3 %" in sections[-1].words and "June" in sections[-1].words
    assert taught.box.rooms == read_box(taught.files[1]).rooms
    said, sections = kits(taught, plans, demo, spare=plan(taught.box))
    assert said.startswith("12 kits of 84 pieces")
    assert len(sections[0].blocks) == 12 and len(sections[1].blocks) == 3
    said, sections = boards(taught, demo)
    html = "".join(block.html() for section in sections for block in section.blocks)
    assert "proved" in said or "No layout" in said
    assert html.count("<svg") == len(demo.boards) and "Figure " not in html
    bare = read_class(write(tmp_path, HEAD + THREE))
    assert shopping(bare, demo)[1][1].words == "No boards are told of."
