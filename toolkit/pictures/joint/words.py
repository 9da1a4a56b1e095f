"""Words of a joint's drawings: columns beside them, near what they speak of, and sentences."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise
from statistics import fmean

from toolkit.box import joint_direction
from toolkit.pictures.corner.boards import Joint
from toolkit.pictures.joint.net import UnfoldedEnd
from toolkit.pictures.kit import Point, Slot, extent
from toolkit.pictures.kit.lettering import LEADING
from toolkit.plan import Plan
from toolkit.results import capital

BETWEEN = 5.0  # between two blocks of words [pt]
SHIFTS = [0.0, *(way * 3.0 * i for i in range(1, 50) for way in (1, -1))]  # [pt]


def first_line(text: str, *, size: float) -> float:
    """How far the first line of a block stands above the block's middle. [pt]"""
    return text.count("\n") * LEADING * size / 2 - 0.36 * size


def levels(wanted: Sequence[float], *, rooms: Sequence[float]) -> list[float]:
    """The middle of each block of words, as near the height it wants as order and room allow.

    >>> levels([100.0, 98.0, 40.0], rooms=[20.0, 20.0, 20.0])
    [109.0, 89.0, 40.0]

    Source: isotonic regression by its min-max formula (from memory).
    """
    order = sorted(range(len(wanted)), key=lambda i: -wanted[i])
    edges = [0.0, *accumulate(rooms[i] for i in order)]
    down = [(top + foot) / 2 for top, foot in pairwise(edges)]
    free = [wanted[i] + under for i, under in zip(order, down, strict=True)]
    found, count = [0.0] * len(wanted), len(wanted)
    for k, (i, under) in enumerate(zip(order, down, strict=True)):
        highest = (
            max(fmean(free[first:last]) for last in range(k + 1, count + 1))
            for first in range(k + 1)
        )
        found[i] = min(highest) - under
    return found


def column(
    rows: Sequence[tuple[str, Point]], *, edge: float, right: bool, size: float
) -> list[tuple[Slot, ...]]:
    """Places for words beside a drawing, at its left or right, on leaders to their points. [pt]"""
    rooms = [(text.count("\n") + 1) * LEADING * size + BETWEEN for text, _ in rows]
    heights = levels([spot[1] for _, spot in rows], rooms=rooms)
    begin = edge + (-3.0 if right else 3.0)
    return [
        tuple(
            Slot(
                edge,
                height + by + first_line(text, size=size),
                "left" if right else "right",
                (spot, (begin, height + by)),
            )
            for by in SHIFTS
        )
        for (text, spot), height in zip(rows, heights, strict=True)
    ]


def wrapped(parts: Sequence[str], *, width: float, size: float) -> str:
    """Parts of a note, each on lines of its own no wider than a column [pt]; broken at spaces."""
    lines: list[str] = []
    for part in parts:
        line = ""
        for word in part.split(" "):
            longer = f"{line} {word}".strip()
            if line and extent(longer, size=size)[0] > width:
                lines.append(line)
                longer = word
            line = longer
        lines.append(line)
    return "\n".join(lines)


def apart_sentence(plan: Plan, j: Joint, *, opened: float) -> str:
    """What a joint apart or together shows, in the student's own units."""
    d, show = plan.design, plan.choices.rule.show
    count = len(j.corner.tails)
    if not d.exists:
        return no_joint(plan, j.which)
    way = joint_direction(d)
    state = "apart" if opened >= 1 else f"{100 * (1 - opened):.0f} % driven together"
    if opened <= 0:
        state = "together"
    pins = _one(way.pin_boards, j)
    kind = f"right through the {pins}" if j.through else f"a lap of {show(j.lap)} on the {pins}"
    tails = "one tail" if count == 1 else f"{count} tails"
    words = [
        f"{j.which.capitalize()} corner, {state}: {tails} on the {_one(way.tail_boards, j)}, "
        f"{kind}.",
        _moves(way.slides, way.locks),
    ]
    if d.frame.lid_floor is not None and j.which == "front":
        words.append(_low(plan, j))
    return " ".join(words)


def _why(plan: Plan) -> str:
    return plan.findings[0].sentence if plan.findings else ""


def _one(boards: str, j: Joint) -> str:
    return f"{j.which} end" if boards == "ends" else "side"


def _moves(slides: str, locks: str) -> str:
    words = {"length": "lengthwise", "width": "crosswise"}
    return f"It comes apart {words[slides]} and no other way; pulled {words[locks]} it locks."


def _low(plan: Plan, j: Joint) -> str:
    show, f = plan.choices.rule.show, plan.design.frame
    low = show(f.front_height.value)
    over = show(f.wall_height.value - f.front_height.value)
    if j.front_lap is not None:
        return (
            f"The front is only {low} high: above it the side runs on to the face of the front, "
            f"an ear {over} high."
        )
    return (
        f"The front is only {low} high: the side's topmost pin runs on {over} higher, up to the "
        "rim."
    )


def no_joint(plan: Plan, which: str) -> str:
    """Why there is no joint to draw."""
    return f"{which.capitalize()} corner: there is no joint to draw. {_why(plan)}"


def unfolded_sentence(plan: Plan, w: UnfoldedEnd) -> str:
    """Which lines an unfolded end carries, in the student's own units."""
    show = plan.choices.rule.show
    gauges = {
        row.name: f"{row.name} at {show(row.setting.value)} from {row.gauged_from}"
        for row in w.lines
        if row.setting is not None
    }
    said = "; ".join(gauges.values())
    if w.board == "tail board":
        rest = "the cheeks of the tails go on the outside face and are squared across the end."
    elif w.through:
        rest = "the pins are knifed from the finished tails and squared down both faces."
    else:
        rest = (
            "the pins are knifed from the finished tails and squared down the inside face. "
            "Nothing is gauged outside, where it would show."
        )
    return f"{capital(w.title)}: {said}; {rest}"
