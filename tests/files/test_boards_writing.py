"""Changing a file of boards: remarks and units stay, the rest is untouched, all can be undone."""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from tests.files.calm import calm
from tests.files.keeping import keep_board, remove_board
from tests.files.written import typed_board
from toolkit.files import (
    BOARDS,
    BoardsFileError,
    TypedBoard,
    TypedDefect,
    board_from_typed,
    boards_from_text,
    read_boards,
    with_board,
    without_board,
)
from toolkit.files.writing import backups
from toolkit.measures import Rule
from toolkit.stock import Board, Defect

ROOT = Path(__file__).parents[2]
LESSON = ROOT / "lessons" / "boards.toml"
TEXT = LESSON.read_text(encoding="utf-8")
LONG, SHORT, PANEL = boards_from_text(TEXT)
NEW = TypedBoard(
    "oak offcut",
    "white oak",
    '35"',
    "6 1/2 in",
    "22 mm",
    (TypedDefect("knot", "10 in", "2 in", "11 in", "80 mm"),),
    (("0 in", "5 in"), ("35 in", "5 1/4 in")),
)


@pytest.fixture
def rack(tmp_path):
    path = tmp_path / "my_boards.toml"
    path.write_bytes(LESSON.read_bytes())
    return path


def changed(typed, board, text=TEXT):
    """The lines taken out of a text and the lines put in, when a board is kept."""
    return rows_changed(text, with_board(text, typed, name="b.toml", instead_of=board.name))


def rows_changed(old, new):
    """Lines gone and lines come; blank ones count for nothing."""
    before, after = ([row for row in text.split("\n") if row] for text in (old, new))
    gone, come = list(before), []
    for row in after:
        if row in gone:
            gone.remove(row)
        else:
            come.append(row)
    return gone, come


def refusal(call, *arguments, **options):
    with pytest.raises(BoardsFileError) as caught:
        call(*arguments, **options)
    return str(caught.value)


# --- what a change does to the text


@pytest.mark.parametrize("rule", [Rule.millimetres(), Rule.inches()], ids=["mm", "in"])
@pytest.mark.parametrize("board", [LONG, SHORT, PANEL], ids=lambda board: board.name)
def test_keeping_a_board_as_it_is_in_either_unit_changes_no_letter(board, rule):
    typed = typed_board(board, rule=rule)
    assert with_board(TEXT, typed, name="b.toml", instead_of=board.name) == TEXT


def test_a_change_touches_its_own_line_only_and_keeps_its_remark():
    typed = replace(typed_board(SHORT), thickness="5/8 in")
    assert changed(typed, SHORT) == (['thickness = "16 mm"'], ['thickness = "5/8 in"'])
    gone, come = changed(replace(typed_board(PANEL), name="lid wood"), PANEL)
    assert len(gone) == len(come) == 1
    assert come[0] == gone[0].replace('"panel cherry"', '"lid wood"')
    assert come[0].endswith("# thin, quiet wood for a lid and a bottom")


def test_a_defect_that_moves_keeps_its_remark_and_the_others_stay():
    typed = typed_board(LONG)
    defects = list(typed.defects)
    defects[4] = replace(defects[4], to_along="1160 mm")
    assert changed(replace(typed, defects=tuple(defects)), LONG) == (
        ['to = ["1158 mm", "54 mm"]'],
        ['to = ["1160 mm", "54 mm"]'],
    )


def test_a_defect_that_goes_takes_its_own_lines_and_remark():
    typed = typed_board(LONG)
    defects = typed.defects[:2] + typed.defects[3:]
    gone, come = changed(replace(typed, defects=defects), LONG)
    assert sorted(gone) == [
        "[[board.defect]]              # sound, as wide as a thumb; the grain swirls round it",
        'from = ["455 mm", "118 mm"]',
        'kind = "knot"',
        'to = ["505 mm", "158 mm"]',
    ]
    assert come == []


def test_a_defect_is_put_where_it_stands_in_the_list():
    typed = typed_board(LONG)
    new = TypedDefect("worm holes", "2 in", "3 in", "4 in", "5 in")
    defects = (*typed.defects[:3], new, *typed.defects[3:])
    text = with_board(TEXT, replace(typed, defects=defects), name="b", instead_of="long cherry")
    assert [each.kind for each in boards_from_text(text)[0].defects] == [
        each.kind for each in defects
    ]
    assert (
        'to = ["505 mm", "158 mm"]\n\n[[board.defect]]\nkind = "worm holes"\n'
        'from = ["2 in", "3 in"]\nto = ["4 in", "5 in"]\n\n[[board.defect]]\nkind = "gum pocket"'
    ) in text


def test_a_board_s_first_defect_and_first_heart_line():
    plain = TEXT.replace(TEXT[TEXT.index("\n[[board.defect]]", TEXT.index('"13 mm"')) :], "")
    board = boards_from_text(plain)[-1]
    assert board.name == "panel cherry" and not board.defects
    typed = replace(typed_board(board), defects=NEW.defects, heart_line=(("0 mm", "9 mm"),))
    assert "heart line" in refusal(with_board, plain, typed, name="b", instead_of=board.name)
    typed = replace(typed, heart_line=(("0 mm", "90 mm"), ("900 mm", "95 mm")))
    text = with_board(plain, typed, name="b", instead_of=board.name)
    assert text.startswith(plain.rstrip("\n"))
    assert boards_from_text(text)[-1] == board_from_typed(typed)


def test_a_heart_line_is_changed_and_taken_out():
    typed = typed_board(LONG)
    moved = (*typed.heart_line[:-1], ("2200 mm", "8 in"))
    gone, come = changed(replace(typed, heart_line=moved), LONG)
    assert len(gone) == len(come) == 1
    assert come[0].endswith('["2200 mm", "8 in"]]')
    gone, come = changed(replace(typed, heart_line=()), LONG)
    assert len(gone) == 1 and gone[0].startswith("heart_line = ")
    assert come == []


def test_a_new_board_stands_at_the_end_as_it_was_typed():
    text = with_board(TEXT, NEW, name="b")
    assert text.startswith(TEXT)
    assert text[len(TEXT) :] == (
        '\n[[board]]\nname = "oak offcut"\nspecies = "white oak"\nlength = "35\\""\n'
        'width = "6 1/2 in"\nthickness = "22 mm"\n'
        'heart_line = [["0 in", "5 in"], ["35 in", "5 1/4 in"]]\n'
        '\n[[board.defect]]\nkind = "knot"\nfrom = ["10 in", "2 in"]\nto = ["11 in", "80 mm"]\n'
    )
    assert boards_from_text(text)[-1] == board_from_typed(NEW)


def test_a_board_that_somebody_else_removed_is_put_at_the_end_again():
    text = without_board(TEXT, "short cherry", name="b")
    typed = replace(typed_board(SHORT), width="170 mm")
    again = with_board(text, typed, name="b", instead_of="short cherry")
    assert [board.name for board in boards_from_text(again)][-1] == "short cherry"


@pytest.mark.parametrize("at", [0, 1, 2])
def test_a_board_that_goes_takes_its_lines_and_no_others(at):
    boards = [LONG, SHORT, PANEL]
    text = without_board(TEXT, boards[at].name.upper(), name="b")
    assert boards_from_text(text) == tuple(boards[:at] + boards[at + 1 :])
    _, come = rows_changed(TEXT, text)
    assert come == []
    assert text.startswith("# Three boards on the rack")
    assert "\n\n\n" not in text and text.endswith("]\n")
    kept = {row for row in TEXT.split("\n") if "#" in row}
    lost = {row for row in kept if row not in text}
    assert len(lost) == (7, 1, 1)[at]


REMARKS = """# my rack

# the good one
[[board]]
name = "a"  # from the loft
species = "black cherry"
length = "1 m"
width = "90 mm"
thickness = "1 in"
# right below the keys

# --- from the yard ---

# dear
[[board]]
name = "b"
species = "black cherry"
length = "1 m"
width = "90 mm"
thickness = "1 in"
[[board.defect]]
kind = "knot"
from = ["10 mm", "10 mm"]
to = ["30 mm", "30 mm"]
# about the second one
[[board.defect]]
kind = "split"
from = ["50 mm", "10 mm"]
to = ["60 mm", "30 mm"]

# that is all
"""


def test_remarks_go_with_what_they_are_about_and_others_stay():
    text = without_board(REMARKS, "a", name="b")
    for gone in ("from the loft", "right below the keys"):
        assert gone not in text
    for stays in ("# my rack", "# --- from the yard ---\n\n# dear\n[[board]]", "# that is all"):
        assert stays in text
    text = without_board(REMARKS, "b", name="b")
    assert "dear" not in text and "about the second one" not in text
    assert text.endswith("# right below the keys\n\n# --- from the yard ---\n\n# that is all\n")


def test_defects_in_a_crowded_file_come_and_go():
    typed = typed_board(boards_from_text(REMARKS)[1])
    second = with_board(
        REMARKS, replace(typed, defects=typed.defects[1:]), name="b", instead_of="b"
    )
    assert 'thickness = "1 in"\n# about the second one\n[[board.defect]]' in second
    first = with_board(REMARKS, replace(typed, defects=typed.defects[:1]), name="b", instead_of="b")
    assert "about the second one" not in first and first.endswith("\n\n# that is all\n")
    more = with_board(
        REMARKS, replace(typed, defects=(*typed.defects, *NEW.defects)), name="b", instead_of="b"
    )
    assert more.endswith('to = ["11 in", "80 mm"]\n\n# that is all\n')


INLINE = """[[board]]
name = "a"
species = "black cherry"
length = "1 m"
width = "90 mm"
thickness = "1 in"
defect = [
  { kind = "knot", from = ["10 mm", "10 mm"], to = ["30 mm", "30 mm"] },
]
"""


def test_defects_between_brackets_stay_so_until_one_changes():
    typed = typed_board(boards_from_text(INLINE)[0])
    assert with_board(INLINE, typed, name="b", instead_of="a") == INLINE
    wider = with_board(INLINE, replace(typed, width="95 mm"), name="b", instead_of="a")
    assert wider == INLINE.replace("90 mm", "95 mm")
    wanted = replace(typed, defects=(*typed.defects, *NEW.defects))
    text = with_board(INLINE, wanted, name="b", instead_of="a")
    assert text.count("[[board.defect]]") == 2
    assert boards_from_text(text)[0] == board_from_typed(wanted)


def test_boards_between_brackets_are_left_to_their_author():
    text = "board = [{name='a', species='teak', length='1 m', width='9 cm', thickness='1 in'}]"
    assert refusal(with_board, text, NEW, name="b.toml") == (
        "b.toml, board 1 (line 1): this board has no heading of its own; "
        "put each board under a line [[board]]"
    )


def test_a_name_that_another_board_has_is_refused():
    said = 'my.toml, board 4.name (line 84): read "Long  cherry": board 1 has this name already'
    new = replace(NEW, name="Long  cherry")
    assert refusal(with_board, TEXT, new, name="my.toml").startswith(said)
    taken = replace(typed_board(SHORT), name="panel cherry")
    assert "board 2 has this name already" in refusal(
        with_board, TEXT, taken, name="my.toml", instead_of="short cherry"
    )


def test_no_board_of_that_name_and_the_last_one():
    assert refusal(without_board, TEXT, "elm", name="my.toml") == (
        'my.toml: there is no board "elm" on the rack; '
        'type one of "long cherry", "short cherry", "panel cherry"'
    )
    assert refusal(without_board, INLINE, "a", name="my.toml") == (
        'my.toml: "a" is the only board on the rack; put another on it first'
    )


# --- random racks, changed at random


lengths = st.sampled_from(["10 mm", "20 mm", "1 in", "1 1/2 in", "50 mm", "0.0625 m", "3 in"])
defects = st.builds(
    lambda kind, a, b: TypedDefect(kind, a, b, "800 mm", "85 mm"),
    st.sampled_from(["knot", "split", "wane"]),
    lengths,
    lengths,
)
boards = st.builds(
    TypedBoard,
    st.sampled_from(["a", "b", "c", "d", 'the 6" one', "é # no remark"]),
    st.sampled_from(["black cherry", "white oak"]),
    st.sampled_from(["900 mm", "36 in", "1 m"]),
    st.sampled_from(["90 mm", "4 in"]),
    lengths,
    st.lists(defects, max_size=4).map(tuple),
    st.sampled_from([(), (("0 mm", "3 in"), ("800 mm", "2 in"))]),
)
steps = st.lists(st.tuples(boards, st.sampled_from(["a", "b", "c", "d", None]), st.booleans()))
STARTS = st.sampled_from([TEXT, REMARKS, INLINE, INLINE.rstrip("\n"), REMARKS + "\n\n"])


@calm(60)
@given(STARTS, steps)
def test_a_rack_says_what_was_put_on_it_and_keeps_every_other_board(text, changes):
    # A remark that stands by itself is nobody's, so that nothing takes it away.
    alone = [row for row in ("# --- from the yard ---", "# that is all") if row in text]
    for typed, other, remove in changes:
        before = {board.name: board for board in boards_from_text(text)}
        if remove and other:
            if other not in before or len(before) == 1:
                assert "board" in refusal(without_board, text, other, name="b")
                continue
            text = without_board(text, other, name="b")
            del before[other]
        else:
            if typed.name in before.keys() - {other}:
                said = refusal(with_board, text, typed, name="b", instead_of=other)
                assert "has this name already" in said
                continue
            text = with_board(text, typed, name="b", instead_of=other)
            before.pop(other, None)
            before[typed.name] = board_from_typed(typed)
        now = {board.name: board for board in boards_from_text(text)}
        assert now.keys() == before.keys()
        assert all(near(now[name], before[name]) for name in now)
        assert "\n\n\n" not in text.rstrip("\n")
        assert all(row in text for row in alone)


def near(one, other):
    """Whether two boards are one: an inch and 25.4 mm may differ in their last digit."""
    if one == other:
        return True
    here, there = (
        [typed_board(board, rule=rule) for rule in (Rule.millimetres(), Rule.inches())]
        for board in (one, other)
    )
    return here == there


# --- a board as typed


def test_a_board_as_typed_and_back():
    board = board_from_typed(NEW)
    assert board == Board(
        "oak offcut",
        "white oak",
        35 * 25.4,
        6.5 * 25.4,
        22.0,
        (Defect("knot", 254.0, 50.8, 279.4, 80.0),),
        ((0.0, 127.0), (889.0, pytest.approx(133.35))),
    )
    for rule in (Rule.millimetres(), Rule.inches()):
        assert near(board_from_typed(typed_board(board, rule=rule)), board)


KNOT = NEW.defects[0]
WRONG = [
    (replace(NEW, length="890"), 'length: read "890": it has no unit; type "890 mm" or "890 in"'),
    (replace(NEW, name=""), 'name: read "": the name is 1 to 80 printable characters; retype it'),
    (replace(NEW, species="chery"),
     "species: read \"chery\": it is not a wood in the workbook's table: "
     "did you mean 'black cherry', 'European cherry' or 'red maple'?"),
    (replace(NEW, defects=(KNOT, replace(KNOT, from_across="2"))),
     'defect 2, from across: read "2": it has no unit; type "2 mm" or "2 in"'),
    (replace(NEW, heart_line=(("0 mm", "50 mm"), ("x", "60 mm"))),
     'heart line, point 2, along: read "x": it has no number; type for example "12 mm"'),
    (replace(NEW, heart_line=(("300 mm", "50 mm"), ("200 mm", "60 mm"))),
     "heart line: point 2 of the heart line, at 200 mm along, does not lie beyond point 1, "
     "at 300 mm; list the points from left to right"),
    (replace(NEW, defects=(replace(KNOT, to_along="40 in"),)),
     "defect 1: the knot reaches 1016 mm along a board of 889 mm; "
     'measure from the lower left corner, at most "889 mm"'),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "line"), WRONG)
def test_what_cannot_be_is_told_by_its_field(typed, line):
    assert refusal(board_from_typed, typed) == f"This board, {line}"
    # And so when it would go into a file.
    assert refusal(with_board, TEXT, typed, name="b") == f"This board, {line}"


def test_it_is_told_in_the_student_s_units():
    far = replace(NEW, defects=(replace(KNOT, to_across="7 in"),))
    assert refusal(board_from_typed, far, rule=Rule.inches()) == (
        "This board, defect 1: the knot reaches 7 in across a board of 6 1/2 in; "
        'type along first, then across, at most "6 1/2 in"'
    )
    point = replace(NEW, heart_line=(("0 in", "5 in"), ("35 in", "7 in")))
    assert refusal(board_from_typed, point, rule=Rule.inches()) == (
        "This board, heart line: point 2 of the heart line, 35 in along and 7 in across, lies off "
        "the board of 35 × 6 1/2 in; type along first, then across"
    )


def test_everything_wrong_is_told_at_once():
    with pytest.raises(BoardsFileError) as caught:
        board_from_typed(replace(NEW, length="1", width="2", thickness="3"))
    assert [problem.key for problem in caught.value.problems] == ["length", "width", "thickness"]


# --- the file


def test_keep_remove_and_undo(rack):
    before = rack.read_bytes()
    assert keep_board(rack, NEW)[-1] == board_from_typed(NEW)
    boards = remove_board(rack, "short cherry")
    assert [board.name for board in boards] == ["long cherry", "panel cherry", "oak offcut"]
    assert read_boards(rack) == boards
    assert [board.name for board in BOARDS.undo(rack)][1] == "short cherry"
    BOARDS.undo(rack)
    assert rack.read_bytes() == before
    assert "nothing to take back" in refusal(BOARDS.undo, rack)


def test_nothing_is_written_when_nothing_changes_or_it_would_not_be_right(rack):
    before, at = rack.read_bytes(), rack.stat().st_mtime_ns
    keep_board(rack, typed_board(LONG, rule=Rule.inches()), instead_of="long cherry")
    refusal(keep_board, rack, replace(NEW, length="890"))
    refusal(keep_board, rack, replace(NEW, name="long cherry"))
    refusal(remove_board, rack, "elm")
    assert (rack.read_bytes(), rack.stat().st_mtime_ns) == (before, at)
    assert not backups(rack)
