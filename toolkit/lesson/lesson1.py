"""Lesson 1, what its cells show of a plan: the tree, the room, the board."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import Any, Self

from toolkit.box import Choices
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.lesson1_tree import LOG, SEASON, sawn_panel
from toolkit.lesson.scene import ImpossibleError, Scene, Shown, Tried, worked_out
from toolkit.measures import Rule
from toolkit.pictures import Picture, board_picture, curve_picture, log_end
from toolkit.plan import Plan, thick_boards
from toolkit.results import Finding, Table
from toolkit.stock import (
    MM_PER_FOOT,
    Board,
    BoxLayouts,
    Corners,
    blanks_of,
    board_feet_by_volume,
    cut_table,
    missing_sentences,
    sawing,
    sets_needed,
    to_buy,
)
from toolkit.wood import CAUTION, movement, quick_rule, sensitiser, species

_BEST = 10
_FIGURE_WORDS = {0: "0 most economical", _BEST: "10 best figure"}


Rack = Callable[[], tuple[Board, ...]]


@dataclass(frozen=True, slots=True)
class BoardControl(ChoiceControl):
    """Which board of the rack, as the rack is at that moment."""

    rack: Rack = field(kw_only=True)

    def options(self, rule: Rule, value: Any) -> list[tuple[str, Any]]:
        """The boards by their names."""
        return [(board.name, board.name) for board in self.rack()]


def _with_knot(board: Board, along: float) -> Board:
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
def layouts_of(choices: Choices, board: Board, corners: Corners) -> BoxLayouts:
    """Every layout worth having of a box on one board. [mm]"""
    plan = worked_out(choices)
    blanks = blanks_of(plan.parts)
    if not blanks:
        raise ImpossibleError(plan.findings[0].sentence)
    try:
        return BoxLayouts(blanks, [board], corners=corners, **sawing(choices.rule))
    except ValueError as error:
        raise ImpossibleError(str(error), there_is="No such layout.") from error


class LaidOut(Shown):
    """A box laid out on one board of the rack."""

    needs_a_box = False

    def __init__(self, choices: Choices, tried: Tried, *, boards: tuple[Board, ...]) -> None:
        super().__init__(choices, tried)
        board = {board.name: board for board in boards}.get(tried["try.board"], boards[0])
        # On other boards than the first the slider does not say where a knot lies until it moves.
        if board.name == boards[0].name or tried["try.knot"] != _knot_at(boards):
            board = _with_knot(board, tried["try.knot"])
        layouts = layouts_of(choices, board, tried["try.corners"])
        self.board, self.laid = board, layouts.laid(tried["try.looks"] / _BEST)

    def picture(self, before: Self | None) -> Picture:
        same = before and before.tried["try.board"] == self.tried["try.board"]
        ghost = before.laid.boards[0] if before and same else None
        one = self.laid.boards[0]
        on_it = one if one.sections else None
        return board_picture(self.board, on_it, rule=self.rule, ghost=ghost)

    def beside(self, before: Self | None) -> tuple[Picture, ...]:
        """Figure against waste, where there is anything to choose."""
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
            good = Finding("good", "good-layout", name, laid.proof(rule), "", source)
            return (*thick_boards(self.plan, laid.boards), good)
        buys = "; ".join(buy.sentence(rule) for buy in to_buy(laid.missing, rule=rule))
        remedy, source = f"Take another board, or buy. {buys}", "the layout's own search"
        return tuple(
            Finding("wont_work", "parts-missing", name, sentence, remedy, source)
            for sentence in missing_sentences(laid, rule=rule)
        )


def _knot_at(boards: tuple[Board, ...]) -> float:
    """Where the first board's first knot begins, along it. [mm]"""
    return next((row.from_along for row in boards[0].defects if "knot" in row.kind), 0.0)


def _board_scene(rack: Rack) -> Scene:
    """The boards of a rack, which may change while the scene is shown."""
    controls = (
        BoardControl(("try.board",), "board", (), start=lambda _: rack()[0].name, rack=rack),
        ChoiceControl(
            ("try.looks",),
            "figure",
            tuple((_FIGURE_WORDS.get(step, f"{step}"), step) for step in range(_BEST + 1)),
            start=0,
            slider=True,
        ),
        LengthControl(
            ("try.knot",),
            "first knot at",
            0.0,
            2000.0,
            "rough",
            start=lambda _: _knot_at(rack()),
        ),
        ChoiceControl(
            ("try.corners",),
            "grain round the corners",
            (("as it comes", "free"), "two runs", "one run"),
            start="free",
        ),
    )
    return Scene("board", controls, lambda *at: LaidOut(*at, boards=rack()), height=560)


CLASS = 10  # students in the weekend class
HINT = "with its unit: 5 mm, 1/8 in"
SCENES = {"seasons": SEASON, "log": LOG, "board": _board_scene}
STILLS = {"year_still": SEASON}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    panel, rule = plan.design.uppermost, plan.choices.rule
    wood = plan.design.wood_of(panel)
    dry, damp, wide = panel.season.make, panel.season.damp, panel.width.value
    moves: dict[str, Any] = {
        "species": wood,
        "rings": 0.0,
        "moisture_from": dry,
        "moisture_to": damp,
    }
    grown = rule.exact(round(movement(wide, **moves), 2))
    words = f"{wood}, flat-sawn, from {dry:.1f} % on the bench to {damp:.1f} % in the damp: "
    size = plan.size(panel.name, "finished width")
    try:
        quick = quick_rule(wide, **moves)
    except ValueError:
        told = f" wide grows {grown}.{panel.season.told}"
        return Sentence.of(f"{words}a {panel.name} ", size, told)
    coefficient = species(wood).coefficient_tangential
    return Sentence(
        f"{words}{rule.show(wide, unit=False)} width × {coefficient} × ({damp:.1f} − {dry:.1f}) = "
        f"{rule.exact(round(quick.change, 2))} on paper; by the law for every moisture {grown}."
        f"{panel.season.told}"
    )


def log_still(plan: Plan) -> Figure:
    """Where the student's own lid might have been sawn, for paper."""
    return Figure(log_end(sawn_panel(plan), rule=plan.choices.rule))


def board_still(plan: Plan, boards: Sequence[Board]) -> Figure:
    """The first board of the rack with the student's own parts, for paper."""
    laid = layouts_of(plan.choices, boards[0], "free").laid(0.0)
    return Figure(board_picture(boards[0], laid.boards[0], rule=plan.choices.rule))


def buying(plan: Plan) -> TableBlock:
    """What to ask the yard for: one box, and a class with its spares."""
    rule, sets = plan.choices.rule, sets_needed(CLASS)
    unit, name = (1000.0, "m") if rule.units == "mm" else (MM_PER_FOOT, "ft")
    rows = []
    for buy in to_buy(blanks_of(plan.parts), rule=rule):
        names = ", ".join(part.name for part in buy.parts)
        many = buy.volume * sets
        rows.append(
            (
                names,
                buy.by(rule),
                f"{sets * buy.length / unit:.1f} {name}",
                f"{many:.3f} m³, {board_feet_by_volume(many):.1f} board feet",
                f"{buy.board_feet * sets:.1f} board feet",
            )
        )
    table = Table(
        f"To buy, clear and with allowances, for one box and for a class of {CLASS}",
        (
            "for",
            "one box asks for",
            f"{sets} sets, with spares",
            "by volume",
            "as a hardwood yard counts it",
        ),
        tuple(rows),
        note=f"A yard counts wood thinner than an inch as an inch: ask which way it will be billed."
        f"{_of_woods(plan)}",
        numeric=(1, 2, 3, 4),
    )
    return TableBlock(table)


def _of_woods(plan: Plan) -> str:
    """What a buyer should know of the box's woods: weights not known, reports on their dust."""
    woods = dict.fromkeys(species(part.wood) for part in plan.parts)
    weights = [wood.unweighed for wood in woods if wood.unweighed]
    found = dict.fromkeys(sensitiser(wood.name) for wood in woods)
    dust = [row.sentence for row in found if row is not None]
    return " ".join(["", *weights, *dust, *([CAUTION] if dust else [])])


def carry(plan: Plan, boards: Sequence[Board]) -> Sentence:
    """Two lines to carry to the rack."""
    rule = plan.choices.rule
    longest = max(plan.parts, key=lambda part: part.rough_length.value)
    laid = layouts_of(plan.choices, boards[0], "free").laid(0.0)
    return Sentence.of(
        "Clean both faces, mark knots and checks a little large, chalk the parts on. Longest rough "
        f"part: {longest.name}, ",
        plan.size(longest.name, "rough length"),
        f". {laid.boards[0].sentence(rule)}",
    )
