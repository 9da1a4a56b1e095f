"""``workbook layout``: the parts of a box on the boards of a rack, with the saw cuts in order."""

from __future__ import annotations

import argparse
import json
import math
from pathlib import Path

from toolkit.files import read_box, read_boards
from toolkit.measures import Rule
from toolkit.plan import Plan, plan
from toolkit.stock.boards import Board

DONE, FALLS_SHORT = 0, 1
# A rack of more boards than this is laid out on the coarser grid, so as not to keep people waiting.
MANY_BOARDS = 12


def slider(text: str) -> float:
    """The argument of ``--looks``: a number from 0 to 1."""
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not 0 <= value <= 1:
        raise argparse.ArgumentTypeError(
            f"read {text!r}; type a number from 0 for the least board to 1 for the best looks"
        )
    return value


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("box", metavar="BOX.toml")
    command.add_argument("boards", metavar="BOARDS.toml")
    command.add_argument("--json", action="store_true", help="as data, lengths in mm")
    command.add_argument(
        "--looks", type=slider, default=0.0, metavar="0..1", help="0 sparing, 1 handsome"
    )


def layout(args: argparse.Namespace) -> int:
    """Lay out a box and print it; 1 if the wood falls short or the box won't work."""
    from toolkit.stock import BoxLayouts, blanks_of, layout_data

    made = plan(read_box(Path(args.box)))
    boards = read_boards(Path(args.boards))
    rule = made.choices.rule
    blanks = blanks_of(made.parts)
    cell = 1.0 if len(boards) <= MANY_BOARDS else 2.0
    layouts = BoxLayouts(blanks, boards, cell=cell)
    laid = layouts.laid(args.looks)
    if args.json:
        print(json.dumps(layout_data(laid, rule=rule), ensure_ascii=False, indent=1,
                         allow_nan=False))
    else:
        _print(made, boards, layouts, args.looks)
    return DONE if made.works and not laid.missing and blanks else FALLS_SHORT


def _print(made: Plan, boards: tuple[Board, ...], layouts: BoxLayouts, looks: float) -> None:
    """The layout as a person reads it."""
