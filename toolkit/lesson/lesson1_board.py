"""Lesson 1, the board: where each part comes from, from the least waste to the best figure."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from toolkit.box import Choices
from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import ImpossibleError, View
from toolkit.lesson.worked import worked_out
from toolkit.measures import Rule
from toolkit.pictures import board_picture, curve_picture
from toolkit.plan import Plan
from toolkit.results import Finding, Table
from toolkit.stock import (
    Board,
    BoxLaid,
    BoxLayouts,
    Corners,
    blanks_of,
    board_feet_by_volume,
    cut_table,
    missing_sentences,
    sets_needed,
    to_buy,
)
from toolkit.study import OwnBoards
from toolkit.wood import CAUTION, sensitiser

CLASS = 10  # students in the weekend class
_HANDSOME = 10
_LOOKS_WORDS = {0: "0 sparing", _HANDSOME: "10 handsome"}


def rack() -> tuple[Board, ...]:
    """The boards on the student's rack, read again only when their file was changed. [mm]"""
    path = OwnBoards().source
    return _rack(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=4)
def _rack(path: Path, changed: int) -> tuple[Board, ...]:
    return OwnBoards().load().boards


@dataclass(frozen=True, slots=True)
class BoardControl(ChoiceControl):
    """Which board of the rack, as the rack is at that moment."""

    def options(self, rule: Rule, value: Any) -> list[tuple[str, Any]]:
        """The boards by their names."""
        return [(board.name, board.name) for board in rack()]


def _first_knot(_: Choices) -> float:
    knots = [row.from_along for row in rack()[0].defects if "knot" in row.kind]
    return knots[0] if knots else 0.0


CONTROLS = (
    BoardControl(("try.board",), "board", (), start=lambda _: rack()[0].name),
    ChoiceControl(
        ("try.looks",),
        "looks",
        tuple((_LOOKS_WORDS.get(step, f"{step}"), step) for step in range(_HANDSOME + 1)),
        start=lambda _: 0,
        slider=True,
    ),
    LengthControl(("try.knot",), "first knot at", 0.0, 2000.0, "rough", start=_first_knot),
    ChoiceControl(
        ("try.corners",),
        "grain round the corners",
        (("as it comes", "free"), ("two runs", "two runs"), ("one run", "one run")),
        start=lambda _: "free",
    ),
)


def with_knot(board: Board, along: float) -> Board:
    """A board whose first knot lies elsewhere along it; without a knot it stays as it is. [mm]"""
    for index, row in enumerate(board.defects):
        if "knot" in row.kind:
            long = row.to_along - row.from_along
            left = min(along, board.length - long)
            moved = replace(row, from_along=left, to_along=left + long)
            defects = (*board.defects[:index], moved, *board.defects[index + 1 :])
            return replace(board, defects=defects)
    return board


@lru_cache(maxsize=24)
def layouts_of(choices: Choices, board: Board, corners: Corners, cell: float) -> BoxLayouts:
    """Every layout worth having of a box on one board. [mm]"""
    made = worked_out(choices)
    blanks = blanks_of(made.parts)
    if not blanks:
        raise ImpossibleError(made.findings[0].sentence)
    try:
        return BoxLayouts(blanks, [board], cell=cell, corners=corners)
    except ValueError as error:
        raise ImpossibleError(str(error), there_is="No such layout.") from error


def _laid(at: Moment, values: dict[str, Any]) -> tuple[Board, BoxLaid]:
    named = {board.name: board for board in rack()}
    board = named.get(values["try.board"], rack()[0])
    # On other boards than the first the slider does not say where a knot lies until it is moved.
    if board.name == rack()[0].name or values["try.knot"] != at.before["try.knot"]:
        board = with_knot(board, values["try.knot"])
    made = layouts_of(at.choices, board, values["try.corners"], 2.0)
    return board, made.laid(values["try.looks"] / _HANDSOME)


def _view(at: Moment) -> View:
    rule = at.choices.rule
    board, laid = _laid(at, dict(at.tried))
    ghost = None
    if at.moved and at.tried["try.board"] == at.before["try.board"]:
        ghost = _laid(at, dict(at.before))[1].boards[0]
    one = laid.boards[0]
    picture = board_picture(board, one if one.sections else None, rule=rule, ghost=ghost)
    chosen = min(laid.curve, key=lambda point: abs(point.looks - laid.looks))
    beside = (curve_picture(laid.curve, chosen=chosen, rule=rule),) if len(laid.curve) > 1 else ()
    return View(picture, _table(laid, rule), _findings(laid, rule), beside)


def _table(laid: BoxLaid, rule: Rule) -> Table:
    one = laid.boards[0]
    if not one.sections:
        return Table("Saw cuts in order", ("nothing",), ((one.sentence(rule),),))
    return cut_table(one, rule=rule)


def _findings(laid: BoxLaid, rule: Rule) -> tuple[Finding, ...]:
    name = laid.boards[0].board.name
    if not laid.missing:
        return (
            Finding(
                "good",
                "good-layout",
                name,
                laid.proof(rule),
                "",
                "dynamic programming over sets; compared with a second solver in the tests",
            ),
        )
    buys = "; ".join(buy.sentence(rule) for buy in to_buy(laid.missing, gap=laid.boards[0].gap))
    return tuple(
        Finding(
            "wont_work",
            "parts-missing",
            name,
            sentence,
            f"Take another board, or buy. {buys}",
            "the layout's own search",
        )
        for sentence in missing_sentences(laid, rule=rule)
    )


BOARD = Scene("board", CONTROLS, _view, height=560)


def bought(made: Plan) -> Table:
    """What to ask the yard for: one box, and a class with its spares."""
    rule, sets = made.choices.rule, sets_needed(CLASS)
    rows = []
    for buy in to_buy(blanks_of(made.parts)):
        sizes = (
            rule.show(buy.length, fineness="rough", direction="up", unit=False),
            rule.show(buy.width, fineness="rough", direction="up", unit=False),
            rule.show(buy.thickness, fineness="sizes", direction="up", unit=False),
        )
        names = ", ".join(part.name for part in buy.parts)
        many = buy.volume * sets
        rows.append(
            (
                names,
                " × ".join(sizes),
                f"{sets * buy.length / 1000:.1f} m",
                f"{many:.3f} m³, {board_feet_by_volume(many):.1f} board feet",
                f"{buy.board_feet * sets:.1f} board feet",
            )
        )
    return Table(
        f"To buy, clear and with allowances, for one box and for a class of {CLASS}",
        (
            "for",
            f"one box asks for ({rule.units})",
            f"{sets} sets, with spares",
            "by volume",
            "as a hardwood yard counts it",
        ),
        tuple(rows),
        note=f"A yard counts wood thinner than an inch as an inch: ask which way it will be billed."
        f"{_dust(made)}",
        numeric=(1, 2, 3, 4),
    )


def _dust(made: Plan) -> str:
    """The reports on the dust of the box's woods; empty if none of them is listed."""
    found = (sensitiser(wood) for wood in dict.fromkeys(part.wood for part in made.parts))
    told = [row.sentence for row in dict.fromkeys(found) if row is not None]
    return " ".join(["", *told, CAUTION]) if told else ""


def chalked(made: Plan, board: Board) -> str:
    """Two lines to carry to the rack."""
    rule = made.choices.rule
    longest = max(made.parts, key=lambda part: part.rough_length.value)
    laid = layouts_of(made.choices, board, "free", 2.0).laid(0.0)
    return (
        f"Clean both faces, mark knots and checks a little large, chalk the parts on. Longest "
        f"rough part: {longest.name}, {rule.show(longest.rough_length.value, fineness='rough')}. "
        f"{laid.boards[0].sentence(rule)}"
    )
