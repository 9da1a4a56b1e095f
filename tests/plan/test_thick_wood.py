"""Wood thicker than its part: what comes off, and what a saw cut along it gives."""

import pytest

from tests.boxes import postcard
from toolkit.plan import plan, thick_boards
from toolkit.stock import Board, BoxLayouts, blanks_of


@pytest.mark.parametrize(
    ("key", "board", "off", "told"),
    [
        # (25 − 1.5) ÷ 2 = 11.75, less 1 for the wander and 1 for planing true: not a wall of 12.
        # One leaf of 12 + 2 leaves 25 − 1.5 − 14 − 2 = 7.5: under a bottom of 8 and a lid of 9.
        ("wall", 25.0, 13, "one makes the side, the other planes to 7.5 mm, too thin for a panel"),
        ("wall", 26.0, 14, "planes to 8.5 mm, enough for the bottom."),
        # (28 ÷ 2 − 0.75) − 2 is 11.25; (29.5 − 1.5) ÷ 2 − 2 is 12.
        ("wall", 29.5, 17.5, "two that plane to 12 mm each, both thick enough for a side"),
        ("panel", 25.0, 17, "two that plane to 9.75 mm each, both thick enough for a bottom"),
        ("wall", 20.0, 8, "what is left over is too thin to use"),
    ],
)
def test_a_measured_board(key: str, board: float, off: float, told: str) -> None:
    found = plan(postcard().having({f"made.{key}_board_thickness": board})).findings
    (row,) = [row for row in found if row.code == "rough-too-thick"]
    assert f"{board:g} mm thick for" in row.message and f"{off:g} mm has to come off" in row.message
    assert told in row.remedy and "min for one" in row.remedy


def test_a_board_that_parts_were_laid_on() -> None:
    box = plan(postcard())
    boards = [
        Board("thick", "black cherry", 900, 160, 25),
        Board("panels", "black cherry", 900, 160, 14),
    ]
    (row,) = thick_boards(box, BoxLayouts(blanks_of(box.parts), boards).laid().boards)
    assert (row.level, row.code, row.where) == ("care", "rough-too-thick", "thick")
