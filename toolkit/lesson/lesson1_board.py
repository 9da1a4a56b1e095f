"""Lesson 1, the board: where each part comes from, from the least waste to the best figure."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import Any, Self

from toolkit.box import Choices
from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.scene import ImpossibleError, Scene, Shown, Tried, worked_out
from toolkit.measures import Rule
from toolkit.pictures import Picture, board_picture, curve_picture
from toolkit.results import Finding, Table
from toolkit.stock import (
    Board,
    BoxLayouts,
    Corners,
    blanks_of,
    cut_table,
    missing_sentences,
    to_buy,
)

_HANDSOME = 10
_LOOKS_WORDS = {0: "0 sparing", _HANDSOME: "10 handsome"}


Rack = Callable[[], tuple[Board, ...]]


@dataclass(frozen=True, slots=True)
class BoardControl(ChoiceControl):
    """Which board of the rack, as the rack is at that moment."""

    rack: Rack = field(kw_only=True)

    def options(self, rule: Rule, value: Any) -> list[tuple[str, Any]]:
        """The boards by their names."""
        return [(board.name, board.name) for board in self.rack()]


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
    plan = worked_out(choices)
    blanks = blanks_of(plan.parts)
    if not blanks:
        raise ImpossibleError(plan.findings[0].sentence)
    try:
        return BoxLayouts(blanks, [board], cell=cell, corners=corners)
    except ValueError as error:
        raise ImpossibleError(str(error), there_is="No such layout.") from error


class LaidOut(Shown):
    """A box laid out on one board of the rack."""

    needs_a_box = False

    def __init__(self, choices: Choices, tried: Tried, *, boards: tuple[Board, ...]) -> None:
        """The board by the name that is chosen, its first knot moved."""
        super().__init__(choices, tried)
        board = {board.name: board for board in boards}.get(tried["try.board"], boards[0])
        # On other boards than the first the slider does not say where a knot lies until it moves.
        if board.name == boards[0].name or tried["try.knot"] != first_knot(boards):
            board = with_knot(board, tried["try.knot"])
        layouts = layouts_of(choices, board, tried["try.corners"], 2.0)
        self.board, self.laid = board, layouts.laid(tried["try.looks"] / _HANDSOME)

    def picture(self, before: Self | None) -> Picture:
        same = before and before.tried["try.board"] == self.tried["try.board"]
        ghost = before.laid.boards[0] if before and same else None
        one = self.laid.boards[0]
        on_it = one if one.sections else None
        return board_picture(self.board, on_it, rule=self.rule, ghost=ghost)

    def beside(self, before: Self | None) -> tuple[Picture, ...]:
        """Looks against waste, where there is anything to choose."""
        points = self.laid.curve
        if len(points) <= 1:
            return ()
        chosen = min(points, key=lambda point: abs(point.looks - self.laid.looks))
        return (curve_picture(points, chosen=chosen, rule=self.rule),)

    def values(self) -> Table:
        one = self.laid.boards[0]
        if not one.sections:
            return Table("Saw cuts in order", ("nothing",), ((one.sentence(self.rule),),))
        return cut_table(one, rule=self.rule)

    def verdict(self) -> tuple[Finding, ...]:
        laid, rule, name = self.laid, self.rule, self.laid.boards[0].board.name
        if not laid.missing:
            source = "dynamic programming over sets; compared with a second solver in the tests"
            return (Finding("good", "good-layout", name, laid.proof(rule), "", source),)
        buys = "; ".join(buy.sentence(rule) for buy in to_buy(laid.missing, gap=laid.boards[0].gap))
        remedy, source = f"Take another board, or buy. {buys}", "the layout's own search"
        return tuple(
            Finding("wont_work", "parts-missing", name, sentence, remedy, source)
            for sentence in missing_sentences(laid, rule=rule)
        )


def first_knot(boards: tuple[Board, ...]) -> float:
    """Where the first board's first knot begins, along it. [mm]"""
    return next((row.from_along for row in boards[0].defects if "knot" in row.kind), 0.0)


def board_scene(rack: Rack) -> Scene:
    """The boards of a rack, which may change while the scene is shown."""
    controls = (
        BoardControl(("try.board",), "board", (), start=lambda _: rack()[0].name, rack=rack),
        ChoiceControl(
            ("try.looks",),
            "looks",
            tuple((_LOOKS_WORDS.get(step, f"{step}"), step) for step in range(_HANDSOME + 1)),
            start=0,
            slider=True,
        ),
        LengthControl(
            ("try.knot",), "first knot at", 0.0, 2000.0, "rough", start=lambda _: first_knot(rack())
        ),
        ChoiceControl(
            ("try.corners",),
            "grain round the corners",
            (("as it comes", "free"), "two runs", "one run"),
            start="free",
        ),
    )
    return Scene("board", controls, lambda *at: LaidOut(*at, boards=rack()), height=560)
