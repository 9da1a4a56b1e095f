"""``workbook layout``: the parts of a box on the boards of a rack, with the saw cuts in order."""

from __future__ import annotations

import argparse
import math
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from toolkit.cli.common import (
    DONE,
    WONT_WORK,
    dated,
    paragraphs,
    print_json,
    read_plan,
    spelling_of,
)
from toolkit.files import read_boards
from toolkit.plan import Plan
from toolkit.stock import BoxLaid

_paragraphs = partial(paragraphs, hanging="  ")


def _share(text: str) -> float:
    """The argument of ``--looks``."""
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not 0 <= value <= 1:
        raise argparse.ArgumentTypeError(
            f"read {text!r}; type a number from 0 for the least board to 1 for the best figure"
        )
    return value


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("box", metavar="BOX.toml")
    command.add_argument("boards", metavar="BOARDS.toml")
    command.add_argument("--json", action="store_true", help="as data, lengths in mm")
    command.add_argument(
        "--looks",
        type=_share,
        default=0.0,
        metavar="0..1",
        help="0, the least board (unless given), to 1, the best figure",
    )


def run(args: argparse.Namespace) -> int:
    """Lay out a box and print it; 1 where the wood falls short or the box won't work."""
    from toolkit.stock import BoxLayouts, blanks_of, layout_as_data, sawing

    plan = read_plan(args.box)
    boards = read_boards(Path(args.boards))
    blanks = blanks_of(plan.parts)
    rule = plan.choices.rule
    laid = BoxLayouts(blanks, boards, **sawing(rule)).laid(args.looks)
    if args.json:
        print_json(layout_as_data(laid, rule=rule))
    else:
        text = "\n\n".join(_page(plan, laid))
        print(spelling_of(plan, typed=[board.name for board in boards])(text))
    return DONE if plan.works and blanks and not laid.missing else WONT_WORK


def _page(plan: Plan, laid: BoxLaid) -> Iterator[str]:
    """The layout as a person reads it, piece by piece."""
    from toolkit.document import as_text
    from toolkit.plan import thick_boards
    from toolkit.stock import curve_sentence, cut_table, missing_sentences, piece_table, to_buy

    rule = plan.choices.rule
    yield dated(f"{plan.choices.title}, laid out", plan)
    if not plan.works:
        yield "This box won't work as it is; 'workbook check' says why."
    for one in laid.boards:
        if one.sections:
            yield as_text(piece_table(one, rule=rule))
            yield as_text(cut_table(one, rule=rule))
        else:
            yield one.sentence(rule)
    if any(one.sections for one in laid.boards):
        thick = (row.sentence for row in thick_boards(plan, laid.boards))
        yield _paragraphs(curve_sentence(laid, rule=rule), laid.proof(rule), *thick)
    if laid.missing:
        buys = to_buy(laid.missing, rule=rule)
        rows = [
            *missing_sentences(laid, rule=rule),
            *("To buy: " + buy.sentence(rule) for buy in buys),
        ]
        yield _paragraphs("The wood falls short.", *rows)
    elif prices := _grain(plan, laid):
        yield _paragraphs(*prices)


def _grain(plan: Plan, laid: BoxLaid) -> tuple[str, ...]:
    """What it costs to let the grain run round the corners, where the box has such walls."""
    from toolkit.stock import blanks_of, corner_prices

    boards = [one.board for one in laid.boards]
    try:
        how = {"gap": laid.boards[0].gap, "cell": laid.cell}
        prices = corner_prices(blanks_of(plan.parts), boards, **how)
    except ValueError:
        return ()
    return tuple(price.sentence(plan.choices.rule) for price in prices[1:])
