"""The sentence that a corner's picture states: its sizes, its grooves, what is wrong."""

from __future__ import annotations

from toolkit.pictures.corner.jointed import Joint
from toolkit.pictures.kit.notes import not_right
from toolkit.plan import Plan
from toolkit.results import Spot

# What is said of a corner, in this order.
_SPOTS: tuple[Spot, ...] = (
    "lap", "socket", "pin", "half pin", "tail tip", "groove at lap", "groove side",
    "tail corners", "tail", "rim",
)  # fmt: skip


def sentence(plan: Plan, j: Joint) -> str:
    """What the picture of one corner shows, in the student's own units."""
    show, corner = plan.choices.rule.show, j.corner
    where = f"{j.which.capitalize()} corners"
    if not corner.tails:
        return (
            f"{where}: {corner.asked} tails find no room in "
            f"{show(max(j.tail_board.height, 0.0))} of height."
        )
    narrow, wide = (show(pick(tail.width for tail in corner.tails)) for pick in (min, max))
    tails = narrow if narrow == wide else f"{narrow} to {wide}"
    count = len(corner.tails)
    kind = "through joint" if j.through else f"lap {show(j.lap)}"
    words = [
        f"{where}: {count} tail{'s' if count > 1 else ''} of {tails} at the baseline and "
        f"{show(j.tail_length)} long, {kind}"
    ]
    if corner.whole_pins:
        words.append(f"pins {show(max(corner.narrowest_pin, 0.0))} at their narrow face")
    text = ", ".join(words) + "."
    wrong = not_right(plan.wrong(*_SPOTS, corner=j.which))
    return " ".join([text, *_grooves(plan, j)]) + wrong


def _grooves(plan: Plan, j: Joint) -> list[str]:
    show, rows = plan.choices.rule.show, []
    inside = []
    for fit in plan.design.fits:
        if fit.corner == j.which and fit.margins is not None:
            inside.append(f"the {fit.groove} groove {show(min(fit.margins))}")
    if inside:
        rows.append(f"Inside its tail: {' and '.join(inside)}.")
    for hole in j.holes:
        rows.append(
            f"The {hole.groove} groove leaves a hole of {show(hole.height, unit=False)} × "
            f"{show(hole.depth)} in the {hole.face}."
        )
    if not j.holes:
        rows.append("No groove shows outside.")
    return rows
