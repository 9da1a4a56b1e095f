"""The board with its parts and cuts, and the curve of what looks cost: drawn as they are laid."""

import random
import re
from contextlib import nullcontext
from functools import cache
from itertools import combinations, pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

from tests.pictures.test_layout_of_labels import _faults
from tests.stock.racks import lay_out
from toolkit.files import read_boards, read_box
from toolkit.measures import Rule
from toolkit.pictures import (
    Drawn,
    Outline,
    Picture,
    board_picture,
    curve_picture,
    for_paper,
)
from toolkit.pictures.board.rows import Box, breaks, overlap, scale_of, without
from toolkit.pictures.kit.picture import PX_PER_PT
from toolkit.pictures.kit.sheet import MOST_LABELS, TEXT
from toolkit.plan import plan
from toolkit.stock import (
    Blank,
    Board,
    BoxLayouts,
    Corners,
    Defect,
    Laid,
    Point,
    blanks_of,
    saw_cuts,
)

ROOT = Path(__file__).parents[2]
MM, INCH = Rule.millimetres(), Rule.inches()
KINDS = (
    "knot", "loose knot", "end check", "split", "shake", "wane", "pith", "bark pocket",
    "gum pocket", "decay", "worm holes", "stain", "cross grain", "tear-out", "other",
)  # fmt: skip


@cache
def _rack() -> tuple[Board, ...]:
    return tuple(read_boards(ROOT / "lessons" / "boards.toml"))


@cache
def _blanks() -> tuple[Blank, ...]:
    return blanks_of(plan(read_box(ROOT / "lessons" / "box.toml")).parts)


@cache
def _layouts(corners: Corners = "free") -> BoxLayouts:
    return BoxLayouts(_blanks(), _rack()[:1], cell=2.0, corners=corners)


def _lots(count: int, *, seed: int) -> dict[str, Laid]:
    """Layouts on boards drawn by lot, with defects of every kind."""
    lot, found = random.Random(seed), dict[str, Laid]()
    while len(found) < count:
        length, width = lot.uniform(700, 3200), lot.uniform(130, 320)
        defects = []
        for _ in range(lot.randint(0, 8)):
            x, y = lot.uniform(0, length - 70), lot.uniform(0, width - 50)
            across = lot.choice([0.0, 6.0, 45.0])
            defects.append(Defect(lot.choice(KINDS), x, y, x + lot.uniform(10, 70), y + across))
        heart = ((0.0, width * lot.uniform(0.5, 1)), (length, width * lot.uniform(0.5, 1)))
        board = Board(
            f"board {len(found) + 1}", "black cherry", length, width, 25.0, tuple(defects),
            heart if lot.random() < 0.7 else (),
        )  # fmt: skip
        some, gap = _blanks()[: lot.randint(1, 6)], lot.choice([3.0, 5.0, 8.0])
        made = BoxLayouts(some, [board], cell=4.0, gap=gap)
        if not made.laid().missing:
            found[f"lot {len(found)}"] = made.laid(lot.random()).boards[0]
    return found


@cache
def _laid() -> dict[str, Laid]:
    """Layouts that a class meets, and some drawn by lot."""
    box = BoxLayouts(_blanks(), _rack(), cell=2.0).laid()
    return {
        "sparing": _layouts().laid(0.0).boards[0],
        "handsome": _layouts().laid(1.0).boards[0],
        "one run": _layouts("one run").laid(0.0).boards[0],
        "run over the break": _layouts("one run").laid(1.0).boards[0],
        "short": box.boards[1],
        "thin": box.boards[2],
        "one part": lay_out(_rack()[2], _blanks()[5:]),
        "not used": Laid(_rack()[0], 5.0, 0.0),
        **_lots(24, seed=11),
    }


NAMES = ["sparing", "handsome", "one run", "run over the break", "short", "thin", "one part",
         "not used", *(f"lot {i}" for i in range(24))]  # fmt: skip


@cache
def _drawn(name: str) -> Picture:
    laid = _laid()[name]
    return board_picture(laid.board, laid, rule=MM)


def _box(outline: Outline) -> Box:
    return outline.bounds


def _area(box: Box) -> float:
    return (box[1] - box[0]) * (box[3] - box[2])


def _edges(drawn: Drawn) -> list[tuple[float, float, float]]:
    """The lower edge of the board in each row, from the top: left, right, height. [px]"""
    level = [
        (a[0], b[0], a[1])
        for line in drawn.lines
        if line.pen == "visible"
        for a, b in [line.points[:2]]
        if a[1] == b[1]
    ]
    return sorted(level, key=lambda row: -row[2])[1::2]


def _page(drawn: Drawn, x: float, y: float) -> tuple[float, float]:
    """Where a point of the board lies on the page, by the edges that are drawn. [px]"""
    start = 0.0
    for left, right, low in _edges(drawn):
        end = start + (right - left) / drawn.scale
        if x <= end + 1e-6:
            return left + (x - start) * drawn.scale, low + y * drawn.scale
        start = end
    raise AssertionError(f"{x} mm is off the board")


@pytest.mark.parametrize("name", NAMES)
def test_every_part_is_drawn_where_it_is_laid_and_in_its_size(name: str) -> None:
    laid, drawn = _laid()[name], _drawn(name).drawn
    parts = {outline.name: outline for outline in drawn.named("part ")}
    assert set(parts) == {f"part {piece.part}" for piece in laid.pieces}
    for piece in laid.pieces:
        wanted = (piece.x, piece.x + piece.length, piece.y, piece.y + piece.width)
        assert _box(parts[f"part {piece.part}"]) == pytest.approx(wanted)
        (label,) = [label for label in drawn.labels if label.text == piece.part]
        # Its name stands in it, in one row or the other.
        middle = (label.x0 + label.x1) / 2, (label.y0 + label.y1) / 2
        x = [_page(drawn, at, 0.0) for at in (piece.x + 0.5, piece.x + piece.length - 0.5)]
        low, high = piece.y * drawn.scale, (piece.y + piece.width) * drawn.scale
        assert any(
            x0 - piece.length * drawn.scale < middle[0] < x0 + piece.length * drawn.scale
            and y0 + low < middle[1] < y0 + high
            for x0, y0 in x
        )


@pytest.mark.parametrize("name", NAMES)
def test_the_outlines_of_parts_on_the_page_are_true_to_scale(name: str) -> None:
    laid, drawn = _laid()[name], _drawn(name).drawn
    lines = [line.points for line in drawn.lines if line.pen == "part"]
    for piece in laid.pieces:
        for x in (piece.x, piece.x + piece.length):
            at, low = _page(drawn, x, piece.y)
            high = low + piece.width * drawn.scale
            seen = sum(
                abs(a[1] - b[1])
                for a, b in lines
                if abs(a[0] - b[0]) < 1e-6
                and abs(a[0] - at) < 0.01
                and min(a[1], b[1]) > low - 0.01
                and max(a[1], b[1]) < high + 0.01
            )
            # Numbers of cuts stand on some edges; what is left of them is most.
            assert 0.3 * (high - low) < seen < high - low + 0.01


@pytest.mark.parametrize("name", NAMES)
def test_the_board_is_true_to_scale_over_its_rows(name: str) -> None:
    board, drawn = _laid()[name].board, _drawn(name).drawn
    edges = _edges(drawn)
    total = sum(right - left for left, right, _ in edges)
    assert total == pytest.approx(board.length * drawn.scale)
    assert len({round(left, 6) for left, _, _ in edges}) == 1
    assert max(right for _, right, _ in edges) < drawn.width - 4
    assert _box(drawn.outline("board")) == (0.0, board.length, 0.0, board.width)
    tops = sorted({
        round(line.points[0][1], 3) for line in drawn.lines
        if line.pen == "visible" and line.points[0][1] == line.points[1][1]
    })  # fmt: skip
    for low, high in zip(tops[::2], tops[1::2], strict=True):
        assert high - low == pytest.approx(board.width * drawn.scale, abs=0.01)


@pytest.mark.parametrize("name", NAMES)
def test_parts_waste_and_gaps_fill_the_used_board_once(name: str) -> None:
    laid, drawn = _laid()[name], _drawn(name).drawn
    boxes = [_box(row) for start in ("part ", "waste ", "gap") for row in drawn.named(start)]
    assert sum(map(_area, boxes)) == pytest.approx(laid.used * laid.board.width)
    for one, other in combinations(boxes, 2):
        wide = min(one[1], other[1]) - max(one[0], other[0])
        high = min(one[3], other[3]) - max(one[2], other[2])
        assert min(wide, high) < 1e-6
    for row in drawn.named("gap"):
        assert min(row.width, row.height) <= laid.gap + 1e-6


@pytest.mark.parametrize("name", NAMES)
def test_no_part_lies_on_a_defect_that_is_drawn(name: str) -> None:
    laid, drawn = _laid()[name], _drawn(name).drawn
    flaws = drawn.named("defect ")
    assert [row.name.split(": ")[1] for row in flaws] == [d.kind for d in laid.board.defects]
    for flaw, defect in zip(flaws, laid.board.defects, strict=True):
        wanted = (defect.from_along, defect.to_along, defect.from_across, defect.to_across)
        assert _box(flaw) == wanted
        assert not any(overlap(_box(part), _box(flaw)) for part in drawn.named("part "))


@pytest.mark.parametrize("name", NAMES)
def test_only_waste_is_hatched_and_all_of_it(name: str) -> None:
    drawn = _drawn(name).drawn
    waste = []
    for row in drawn.named("waste "):
        left, right, low, high = _box(row)
        # A piece that goes on in the next row begins and ends on different ones.
        for start, end in pairwise([left, *_stops(drawn, left, right), right]):
            x0, y0 = _page(drawn, start + 1e-5, low)
            x1, y1 = _page(drawn, end - 1e-5, high)
            waste.append((x0, x1, y0, y1))
    hatched = set()
    for line in drawn.lines:
        if line.pen == "hatch":
            (ax, ay), (bx, by) = line.points
            x, y = (ax + bx) / 2, (ay + by) / 2
            inside = {
                i
                for i, box in enumerate(waste)
                if box[0] - 0.1 < x < box[1] + 0.1 and box[2] - 0.1 < y < box[3] + 0.1
            }
            assert inside, (x, y)
            hatched |= inside
    for i, (x0, x1, y0, y1) in enumerate(waste):
        # What is too small for a line, or covered by a number or a word, is let go.
        if min(x1 - x0, y1 - y0) > 30:
            assert i in hatched


def _stops(drawn: Drawn, left: float, right: float) -> list[float]:
    """Breaks of the board between two places. [mm]"""
    stops, at = [], 0.0
    for start, end, _ in _edges(drawn)[:-1]:
        at += (end - start) / drawn.scale
        if left < at < right:
            stops.append(at)
    return stops


@pytest.mark.parametrize("name", NAMES)
def test_every_cut_has_its_number_on_its_line_in_the_order_of_sawing(name: str) -> None:
    laid, drawn = _laid()[name], _drawn(name).drawn
    cuts = saw_cuts(laid)
    named = drawn.named("cut ")
    assert [row.name for row in named] == [f"cut {cut.number}" for cut in cuts]
    for cut, outline in zip(cuts, named, strict=True):
        assert outline.points == (cut.start, cut.end)
        (label,) = [label for label in drawn.labels if label.text == str(cut.number)]
        x, y = (label.x0 + label.x1) / 2, (label.y0 + label.y1) / 2
        # Next to an edge it stands a little inwards, but its circle still touches the line.
        off = 0.8 * TEXT * PX_PER_PT
        if cut.kind == "crosscut":
            inner = cut.of != "the board"
            at = _page(drawn, cut.start[0], 0.0)[0]
            assert x == pytest.approx(at, abs=off if inner else 1.0)
        else:
            rows = {_page(drawn, at, cut.start[1])[1] for at in (cut.start[0], cut.end[0])}
            away = min(abs(y - row) for row in rows)
            low, high = cut.start[1], laid.board.width - cut.start[1]
            near = min(low, high) * drawn.scale < off + 5
            assert away < (off if near else 1.0)


@pytest.mark.parametrize("rule", [MM, INCH], ids=["mm", "inch"])
@pytest.mark.parametrize("name", NAMES)
def test_crosscuts_bear_their_distance_from_the_left_end(name: str, rule: Rule) -> None:
    laid = _laid()[name]
    drawn = board_picture(laid.board, laid, rule=rule).drawn
    for cut in saw_cuts(laid):
        if cut.of == "the board":
            text = rule.show(cut.at, fineness="sizes", unit=False)
            x, low = _page(drawn, cut.start[0], 0.0)
            assert any(
                label.text == text and abs((label.x0 + label.x1) / 2 - x) < 14 and label.y1 < low
                for label in drawn.labels
            ), cut


@pytest.mark.parametrize("name", ["sparing", "handsome", "one run", "short", "thin", "one part"])
def test_rips_bear_their_distance_from_the_lower_edge(name: str) -> None:
    laid, drawn = _laid()[name], _drawn(name).drawn
    rips = [cut for cut in saw_cuts(laid) if cut.kind == "rip"]
    wanted = sorted(MM.show(cut.at, fineness="sizes", unit=False) for cut in rips)
    figures = sorted(label.text for label in drawn.labels if label.text in wanted)
    assert figures == wanted
    for cut in rips:
        text = MM.show(cut.at, fineness="sizes", unit=False)
        for label in drawn.labels:
            if label.text == text:
                levels = {_page(drawn, c.start[0], c.at)[1] for c in rips if c.at == cut.at}
                middle = (label.y0 + label.y1) / 2
                led = [
                    line.points[0][1]
                    for line in drawn.lines
                    if line.pen == "dimension"
                    and label.x0 - 5 < line.points[-1][0] < label.x1 + 5
                    and label.y0 < line.points[-1][1] < label.y1
                ]
                assert min(abs(at - level) for level in levels for at in (middle, *led)) < 16


@pytest.mark.parametrize("name", NAMES)
def test_words_on_a_board_keep_apart_and_off_lines(name: str) -> None:
    laid = _laid()[name]
    ghost = _laid()["handsome"] if laid.board is _rack()[0] else None
    for rule, paper in ((MM, False), (INCH, True)):
        with for_paper() if paper else nullcontext():
            drawn = board_picture(laid.board, laid, rule=rule, ghost=ghost).drawn
            bare = board_picture(laid.board, rule=rule).drawn
        assert _faults(drawn) == []
        assert _faults(bare) == []
        # Defects may lie so thick that there is no room for all of their names.
        assert set(drawn.dropped) <= {*KINDS, "sapwood"}
        assert len(bare.labels) <= MOST_LABELS


@pytest.mark.parametrize("board", [0, 1, 2])
def test_every_kind_of_defect_is_named_on_the_boards_of_the_rack(board: int) -> None:
    for laid in (None, *(row for row in _laid().values() if row.board is _rack()[board])):
        drawn = board_picture(_rack()[board], laid, rule=MM).drawn
        said = {label.text for label in drawn.labels}
        assert {defect.kind for defect in _rack()[board].defects} <= said


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_defect_is_drawn_inside_what_it_spoils(kind: str) -> None:
    box = (300.0, 380.0, 40.0, 90.0)
    flaw = Defect(kind, box[0], box[2], box[1], box[3])  # type: ignore[arg-type]
    clean = Board("b", "black cherry", 900.0, 140.0, 20.0)
    spoilt = Board("b", "black cherry", 900.0, 140.0, 20.0, (flaw,))
    before = {(line.pen, line.points) for line in board_picture(clean, rule=MM).drawn.lines}
    drawn = board_picture(spoilt, rule=MM).drawn
    pens = {"knot", "knot line", "knot middle", "bark", "chalk", "void"}
    new = [
        line for line in drawn.lines if line.pen in pens and (line.pen, line.points) not in before
    ]
    assert new
    (x0, y0), (x1, y1) = _page(drawn, box[0], box[2]), _page(drawn, box[1], box[3])
    for line in new:
        for x, y in line.points:
            assert x0 - 2 < x < x1 + 2
            assert y0 - 4 < y < y1 + 4


def test_the_grain_goes_round_a_knot() -> None:
    flaw = Defect("knot", 430.0, 60.0, 480.0, 100.0)
    drawn = board_picture(Board("b", "oak", 900.0, 160.0, 20.0, (flaw,)), rule=MM).drawn
    (x0, y0), (x1, y1) = _page(drawn, 430.0, 60.0), _page(drawn, 480.0, 100.0)
    grain = [line.points for line in drawn.lines if line.pen == "face grain"]
    inside = [
        (x, y)
        for points in grain
        for x, y in points
        if ((2 * x - x0 - x1) / (x1 - x0)) ** 2 + ((2 * y - y0 - y1) / (y1 - y0)) ** 2 < 0.9
    ]
    assert grain
    assert not inside


def test_the_sapwood_is_what_lies_above_the_heart_line() -> None:
    board = _rack()[0]
    drawn = board_picture(board, rule=MM).drawn
    points = drawn.outline("sapwood").points
    twice = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*points, points[0]]))
    each = [board.width - (board.heart_at(i + 0.5) or 0.0) for i in range(int(board.length))]
    assert abs(twice) / 2 == pytest.approx(sum(each), rel=1e-4)
    assert any(line.pen == "far" for line in drawn.lines)
    plain = board_picture(_rack()[1], rule=MM).drawn
    assert not plain.named("sapwood")


def test_a_break_goes_just_past_a_section_where_one_ends_near() -> None:
    board = Board("b", "oak", 2200.0, 225.0, 25.0)
    sides = [Blank(f"side {i}", 150.0, 200.0) for i in range(10)]
    laid = lay_out(board, sides, cell=2.0)
    _, rows = scale_of(board)
    (stop,) = breaks(board, laid, rows=rows)[1:-1]
    near = min(laid.sections, key=lambda section: abs(section.end - stop))
    assert 0 < stop - near.end < 20
    assert breaks(board, Laid(board, 0.0, 0.0), rows=rows) == [0.0, 1100.0, 2200.0]


def test_the_board_holds_still_while_the_layout_changes() -> None:
    sizes = {
        (_drawn(name).drawn.scale, _drawn(name).drawn.height)
        for name in ("sparing", "handsome", "one run", "run over the break")
    }
    assert len(sizes) == 1


def test_a_ghost_shows_the_parts_of_the_kept_layout() -> None:
    laid, kept = _laid()["sparing"], _laid()["handsome"]
    drawn = board_picture(laid.board, laid, rule=MM, ghost=kept).drawn
    assert len(drawn.named("ghost ")) == len(kept.pieces)
    assert any(line.pen == "ghost" for line in drawn.lines)


_SIDE = st.integers(0, 20)


@settings(max_examples=80, deadline=None)
@given(holes=st.lists(st.tuples(_SIDE, _SIDE, _SIDE, _SIDE), max_size=5))
def test_a_rectangle_less_others_is_every_place_that_none_of_them_covers(
    holes: list[tuple[int, int, int, int]],
) -> None:
    boxes: list[Box] = [
        (min(a, b), max(a, b), min(c, d), max(c, d)) for a, b, c, d in holes if a != b and c != d
    ]
    rest = without((0.0, 20.0, 0.0, 20.0), boxes)
    for x in range(20):
        for y in range(20):
            at = (x + 0.4, x + 0.6, y + 0.4, y + 0.6)
            covered = any(overlap(at, box) for box in boxes)
            assert sum(overlap(at, box) for box in rest) == (0 if covered else 1)


# The curve


def _curves() -> dict[str, tuple[Point, ...]]:
    lot = [laid for name, laid in _laid().items() if name.startswith("lot")][:1]
    assert lot
    box = BoxLayouts(_blanks(), [_rack()[0], _rack()[2]], cell=2.0).laid()
    return {
        "board": _layouts().laid().curve,
        "run": _layouts("one run").laid().curve,
        "one": _layouts().laid().curve[:1],
        "box": box.curve,
        "two sections": (
            Point(700.0, 0.8, 2.1e6),
            Point(650.0, 0.85, 2.4e6),
            Point(900.0, 0.97, 3.3e6),
        ),
        "steep": tuple(Point(600.0 + 2 * i, 0.5 + 0.02 * i, 1e6 + 3000 * i) for i in range(25)),
    }


CURVES = ["board", "run", "one", "box", "two sections", "steep"]


@pytest.mark.parametrize("name", CURVES)
def test_the_stair_has_a_step_for_every_layout_and_the_chosen_one_is_on_it(name: str) -> None:
    curve = _curves()[name]
    for chosen in {curve[0], curve[len(curve) // 2], curve[-1]}:
        picture = curve_picture(curve, chosen=chosen, rule=MM)
        steps = picture.drawn.outline("stair").points
        assert [looks for _, looks in steps] == [point.looks for point in curve]
        assert picture.drawn.outline("chosen").points[0] in steps
        stair = next(
            line.points
            for line in picture.drawn.lines
            if line.pen == "visible" and len(line.points) == 2 * len(curve) + 1
        )
        along = [x for x, _ in stair]
        assert along == sorted(along)
        # A dot stands on the step's corner, and the saw's line plumb under it.
        plumb = next(line.points for line in picture.drawn.lines if line.pen == "gauge")
        assert plumb[0][0] == plumb[1][0]
        corner = stair[1 + 2 * curve.index(chosen)]
        assert plumb[0] == pytest.approx(corner)


def test_the_stair_stands_true_over_the_marks_of_the_board() -> None:
    curve = _layouts().laid().curve
    drawn = curve_picture(curve, chosen=curve[0], rule=MM).drawn
    low = min(label.y0 for label in drawn.labels if re.fullmatch(r"\d+", label.text))
    marks = [
        (float(label.text), (label.x0 + label.x1) / 2)
        for label in drawn.labels
        if re.fullmatch(r"\d+", label.text) and label.y0 < low + 2
    ]
    (a, x0), (b, x1) = min(marks), max(marks)
    stair = next(
        line.points for line in drawn.lines
        if line.pen == "visible" and len(line.points) == 2 * len(curve) + 1
    )  # fmt: skip
    for point, (x, _) in zip(curve, stair[1::2], strict=True):
        assert x == pytest.approx(x0 + (point.used - a) * (x1 - x0) / (b - a), abs=1.0)


def test_boards_of_several_sections_are_counted_by_volume() -> None:
    curve = _curves()["two sections"]
    metric = curve_picture(curve, chosen=curve[1], rule=MM)
    assert "2.4 litres of wood" in metric.sentence
    assert any(label.text == "wood in litres" for label in metric.drawn.labels)
    # 2.4 litres are 0.0024 m³; a board foot is 144 cubic inches.
    feet = 2.4e6 / 25.4**3 / 144
    assert f"{feet:.2f} board feet" in curve_picture(curve, chosen=curve[1], rule=INCH).sentence
    assert "litres" not in curve_picture(_layouts().laid().curve, chosen=curve[0], rule=MM).sentence


@pytest.mark.parametrize("name", CURVES)
def test_words_on_a_curve_keep_apart_and_off_lines(name: str) -> None:
    curve = _curves()[name]
    for chosen in {curve[0], curve[len(curve) // 2], curve[-1]}:
        for rule, paper in ((MM, False), (INCH, True)):
            with for_paper() if paper else nullcontext():
                picture = curve_picture(curve, chosen=chosen, rule=rule, ghost=curve[0])
            drawn = picture.drawn
            assert _faults(drawn) == []
            texts = [label.text for label in drawn.labels]
            assert any(text.startswith("chosen: ") for text in texts)
            assert {"most economical", "best figure"} <= set(texts) or len(curve) == 1
            assert len([text for text in texts if re.search("[a-z]", text)]) <= MOST_LABELS


def test_a_curve_without_a_point_is_refused() -> None:
    with pytest.raises(ValueError, match="the parts fit on no board"):
        curve_picture((), chosen=Point(1.0, 1.0, 1.0), rule=MM)
