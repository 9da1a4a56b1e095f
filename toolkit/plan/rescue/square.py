"""A box out of square."""

from __future__ import annotations

from math import radians, tan

from toolkit.plan.diagonals import skew_angle
from toolkit.plan.rescue.option import Case, Costs


def diagonals(case: Case) -> None:
    """The two diagonals differ."""
    f = case.plan.design.frame
    difference = case.mishap.measured
    sizes = f.outside_length.value, f.outside_width.value
    angle = skew_angle(difference, length=sizes[0], width=sizes[1])
    if not difference:
        case.offer("as-meant", "The box is square: nothing to do.", Costs())
        return
    words = (
        f"The corners miss square by {angle:.2f}°. Before the glue grabs, set the cramps a little "
        "askew along the longer diagonal and measure again."
    )
    case.offer("cramps", words, Costs(minutes=3))
    off = f.inside_width.value * tan(radians(angle))
    words = (
        f"The corners miss square by {angle:.2f}°. The glue has grabbed: leave it, and cut the "
        f"ends of lid and bottom to the same angle, {case.show(off)} over the inside "
        "width. They still slide, for the sides are parallel."
    )
    case.offer("follow", words, Costs(minutes=10, looks=1))
    words = "If the glue softens with warmth and water, ease the joints apart and glue again."
    case.offer("reglue", words, Costs(minutes=60, looks=1, wait=60))
