"""Boards on the rack, read from their file."""

from pathlib import Path

import pytest

from toolkit.files import BoardsFileError, FileError, boards_from_text, read_boards
from toolkit.stock import Board, Defect

LESSON = Path(__file__).parents[2] / "lessons" / "boards.toml"

BOARD = """
[[board]]
name = "one"
species = "black cherry"
length = "1200 mm"
width = "180 mm"
thickness = "16 mm"
"""
DEFECT = """
[[board.defect]]
kind = "knot"
from = ["300 mm", "40 mm"]
to = ["335 mm", "70 mm"]
"""


def test_the_lessons_boards():
    boards = {board.name: board for board in read_boards(LESSON)}
    assert list(boards) == ["long cherry", "short cherry", "panel cherry"]
    long = boards["long cherry"]
    assert (long.length, long.width, long.thickness) == (2200, 225, 25)
    assert len(long.defects) == 8
    assert {"knot", "end check", "wane"} <= {defect.kind for defect in long.defects}
    assert long.heart_at(0) == 196
    short, panel = boards["short cherry"], boards["panel cherry"]
    assert (short.length, short.width, short.thickness) == (1200, 180, 16)
    assert (panel.length, panel.width, panel.thickness) == (900, 140, 13)
    for board in boards.values():
        for defect in board.defects:
            assert 0 <= defect.from_along <= defect.to_along <= board.length
            assert 0 <= defect.from_across <= defect.to_across <= board.width


def test_a_board_is_read_in_millimetres():
    text = BOARD.replace("180 mm", "7 in") + DEFECT
    assert boards_from_text(text) == (
        Board("one", "black cherry", 1200, 177.8, 16, (Defect("knot", 300, 40, 335, 70),)),
    )


@pytest.mark.parametrize(
    ("start", "end"),
    [
        (("300 mm", "40 mm"), ("335 mm", "70 mm")),
        (("335 mm", "70 mm"), ("300 mm", "40 mm")),
        (("335 mm", "40 mm"), ("300 mm", "70 mm")),
        (("300 mm", "70 mm"), ("335 mm", "40 mm")),
    ],
)
def test_a_defect_may_be_given_by_any_two_opposite_corners(start, end):
    from_ = f'from = ["{start[0]}", "{start[1]}"]'
    to = f'to = ["{end[0]}", "{end[1]}"]'
    text = f'{BOARD}[[board.defect]]\nkind = "knot"\n{from_}\n{to}\n'
    assert boards_from_text(text)[0].defects == (Defect("knot", 300, 40, 335, 70),)


def test_a_check_may_be_as_fine_as_a_line():
    text = BOARD + DEFECT.replace('"335 mm", "70 mm"', '"400 mm", "40 mm"')
    assert boards_from_text(text)[0].defects == (Defect("knot", 300, 40, 400, 40),)


def test_the_heartwood_reaches_up_to_its_line():
    board = Board(
        "b", "black cherry", 1000, 200, 20, heart_line=((100, 100), (500, 140), (900, 120))
    )
    places = [0, 100, 300, 500, 700, 900, 1000]
    assert [board.heart_at(place) for place in places] == [100, 100, 120, 140, 130, 120, 120]
    assert Board("b", "black cherry", 1000, 200, 20).heart_at(500) is None


LINES = [
    ("", "board: the section is missing; "
         "type [[board]] with name, species, length, width, thickness below it"),
    ("board = []", "board (line 1): read an empty list: this is a list; type [[board]] above each"),
    ("[board]\nname = 'a'",
     "board (line 1): read a table: this is a list; type [[board]] above each"),
    (BOARD.replace('name = "one"\n', ""),
     'board 1.name: it is missing; type name = "long cherry"'),
    (BOARD.replace("1200 mm", "1200"),
     'board 1.length (line 5): read "1200": it has no unit; type "1200 mm" or "1200 in"'),
    (BOARD.replace("1200 mm", "13 m"),
     'board 1.length (line 5): read "13 m": lengths go up to 12 m; type one such as "12 mm"'),
    (BOARD.replace("black cherry", "maple"),
     'board 1.species (line 4): read "maple": it may be any of several woods: '
     "type 'red maple', 'silver maple', 'sugar maple' or 'sycamore maple'"),
    (BOARD + BOARD,
     'board 2.name (line 10): read "one": board 1 has this name already, and cuts are told by '
     'the name; type another, such as "one 2"'),
    (BOARD + DEFECT + DEFECT.replace("335", "1335"),
     "board 1.defect 2 (line 14): the knot reaches 1335 mm along a board of 1200 mm; measure from "
     'the lower left corner, at most "1200 mm"'),
    (BOARD + DEFECT.replace("70", "270"),
     "board 1.defect 1 (line 9): the knot reaches 270 mm across a board of 180 mm; "
     'type along first, then across, at most "180 mm"'),
    (BOARD + DEFECT.replace("335", "300").replace("70", "40"),
     "board 1.defect 1 (line 9): the knot begins and ends in one point; type two opposite corners, "
     'such as from = ["300 mm", "40 mm"] and to = ["335 mm", "70 mm"]'),
    (BOARD + DEFECT.replace("knot", "knott"),
     'board 1.defect 1.kind (line 10): read "knott": no such choice; type "knot"'),
    (BOARD + DEFECT.replace('to = ["335 mm", "70 mm"]', ""),
     'board 1.defect 1.to: it is missing; type to = ["250 mm", "40 mm"]'),
    (BOARD + DEFECT.replace('from = ["300 mm", "40 mm"]', ""),
     'board 1.defect 1.from: it is missing; type from = ["250 mm", "40 mm"]'),
    (BOARD + DEFECT.replace("from", "form"),
     "board 1.defect 1.form (line 11): form is no key here; type from"),
    (BOARD + DEFECT.replace('"40 mm"', "40"),
     "board 1.defect 1.from (line 11): read a list of 2: in the place, 40 will not do: "
     'a length is text with its unit; type "40 mm" or "40 in"'),
    (BOARD + DEFECT.replace('["300 mm", "40 mm"]', '"300 mm"'),
     'board 1.defect 1.from (line 11): read "300 mm": a place is two lengths, along and across; '
     'type ["250 mm", "40 mm"]'),
    (BOARD + 'heart_line = [["0 mm", "90 mm"], ["800 mm", "95 mm"], ["700 mm", "95 mm"]]',
     "board 1.heart_line (line 8): point 3 of the heart line, at 700 mm along, does not lie "
     "beyond point 2, at 800 mm; list the points from left to right"),
    (BOARD + 'heart_line = [["0 mm", "90 mm"], ["800 mm", "195 mm"]]',
     "board 1.heart_line (line 8): point 2 of the heart line, 800 mm along and 195 mm across, "
     "lies off the board of 1200 × 180 mm; type along first, then across"),
    (BOARD + 'heart_line = [["0 mm", "90 mm"]]',
     "board 1.heart_line (line 8): read a list of 1: a heart line has 2 to 100 places, each along "
     'and across; type [["0 mm", "180 mm"], ["2200 mm", "195 mm"]]'),
    (BOARD + "[size]\n", "size (line 8): [size] is no section; known here: format, board"),
    ("name = 'a'\n" + BOARD, "name (line 1): name is no key here; put it under [[board]]"),
    ("format = 2\n" + BOARD,
     "format (line 1): read 2: a newer workbook wrote this file and this one reads format 1; "
     "open it with the newer workbook"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "line"), LINES)
def test_what_no_board_can_be_is_answered_by_one_line(text, line):
    with pytest.raises(BoardsFileError) as caught:
        boards_from_text(text)
    assert str(caught.value) == f"boards.toml, {line}"


def test_everything_wrong_with_the_boards_is_told():
    with pytest.raises(FileError) as caught:
        boards_from_text(BOARD + DEFECT.replace("335", "1335").replace("70", "270") + BOARD)
    assert [problem.line for problem in caught.value.problems] == [9, 9, 15]


def test_a_missing_file_of_boards(tmp_path):
    with pytest.raises(BoardsFileError, match=r"^boards\.toml: there is no such file in "):
        read_boards(tmp_path / "boards.toml")
