"""Wood that is thicker than its part: what comes off it, and whether saw or plane takes it off."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from toolkit.box import Design
from toolkit.plan.squareness import said
from toolkit.results import WALLS, Finding, Findings, Part, above, below
from toolkit.stock import resawn

if TYPE_CHECKING:
    from toolkit.plan.box_plan import Plan
    from toolkit.stock import Laid

# Over the rough thickness; less is planed off without a thought. Custom, no source. [mm]
MUCH = 3.0
# The thinnest leaf that is worth a saw cut: custom, no source. [mm]
LEAF = 4.0


def say_thick(found: Findings, d: Design, part: Part, board: float, *, where: str = "") -> None:
    """Say what comes off a board for a part, and what resawing it gives. [mm]

    One leaf is as thick as the part asks for; where the other is too, both are sawn alike.
    """
    if not above(board, part.rough_thickness.value + MUCH):
        return
    thick = part.thickness.value
    _, left = resawn(board, thick=thick, rule=d.choices.rule)
    name = "rough-too-thick"
    if not below(left, thick):
        name = "rough-too-thick, in two"
    elif not below(left, LEAF):
        name = "rough-too-thick, and a leaf"
    fit = [panel.name for panel in d.panels if not above(panel.thickness.value, left)]
    found.say(
        name,
        part=part.name,
        where=where,
        board=board,
        thickness=thick,
        off=board - thick,
        half=(thick + left) / 2,
        left=left,
        use=f"enough for the {' or the '.join(fit)}" if fit else "too thin for a panel of this box",
        minutes=_minutes(part, board - thick),
    )


def _minutes(part: Part, off: float) -> float:
    """How long a learner planes at it, coarse to fine. [min]"""
    # Imported here: a plan is made far more often than wood is too thick.
    from toolkit.truing import bench_time, planing_job

    job = planing_job(off, length=part.rough_length.value, width=part.rough_width.value)
    return bench_time(job.count).minutes


def check_thick(d: Design, parts: Iterable[Part]) -> list[Finding]:
    """The boards that were measured, each for the first of the parts that it is for."""
    found, made, seen = said(d), d.choices.made, set[str]()
    for part in parts:
        kind = "wall" if part.name in WALLS else "panel"
        board = getattr(made, f"{kind}_board_thickness")
        if board is not None and kind not in seen and part.name != "batten":
            say_thick(found, d, part, board)
            seen.add(kind)
    return found


def thick_boards(plan: Plan, laid: Iterable[Laid]) -> tuple[Finding, ...]:
    """Boards that parts were laid on, much thicker than those parts."""
    found = said(plan.design)
    for one in laid:
        names = {piece.part.rstrip(" 12") for piece in one.pieces}
        for part in [part for part in plan.parts if part.name in names][:1]:
            say_thick(found, plan.design, part, one.board.thickness, where=one.board.name)
    return tuple(found)
