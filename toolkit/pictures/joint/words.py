"""The sentences that pictures of a joint state."""

from __future__ import annotations

from toolkit.box.joinery import joint_direction
from toolkit.pictures.corner.jointed import Joint
from toolkit.pictures.joint.net import UnfoldedEnd
from toolkit.plan import Plan
from toolkit.results import capital


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
        rest = "the flanks of the tails go on the outside face and are squared across the end."
    elif w.through:
        rest = "the pins are knifed from the finished tails and squared down both faces."
    else:
        rest = (
            "the pins are knifed from the finished tails and squared down the inside face. "
            "Nothing is gauged outside, where it would show."
        )
    return f"{capital(w.title)}: {said}; {rest}"
