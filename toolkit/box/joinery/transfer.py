"""From tails to pins: the tails are laid out freely, the pins are copied from the real tails."""

from __future__ import annotations

from toolkit.box.design import Design
from toolkit.box.joinery.gauges import gauge_settings, has_ear
from toolkit.box.joinery.steps import BenchStep


def _boards(d: Design) -> tuple[str, str]:
    return ("end", "side") if d.choices.corner.tails_on == "ends" else ("side", "end")


def _both(d: Design, back: float, front: float) -> str:
    """A size of both corners on the box's rule, said once where they are alike."""
    one, other = d.choices.rule.show(back), d.choices.rule.show(front)
    return one if one == other else f"{one} at the back and {other} at the front"


def _register(d: Design) -> BenchStep:
    tail, pin = _boards(d)
    show, c, f = d.choices.rule.exact, d.choices, d.frame
    up_to = "reach the tip line" if c.corner.joint == "half-blind" else "end flush outside"
    low = ""
    if f.lid_floor is not None:
        low = f" At the front, {show(f.front_height.value)} high, only the bottom edges tell."
    if has_ear(d):
        low += " There the ear passes over the front's top edge."
    return BenchStep(
        "register",
        f"Stand the {pin} in the vice, end up, inside face towards you, and lay the {tail} on it, "
        f"inside face down, a block under its far end. Bring the {tail}'s baseline to the {pin}'s "
        f"inside face and the bottom edges flush. A strip {show(c.groove.width)} thick pushed into "
        f"both bottom grooves lines them up.{low}",
        f"The strip slides in both grooves, no light shows along the shoulder, and the tails "
        f"{up_to}.",
    )


def transfer_steps(d: Design) -> tuple[BenchStep, ...]:
    """How the pins are copied from the finished tails, with a test for each step.

    Common practice, no source. Why the tails are tested square first: see `gaps` with ``copied``.
    """
    tail, pin = _boards(d)
    c, gauges = d.choices, gauge_settings(d)
    blind = c.corner.joint == "half-blind"
    base = _both(d, gauges.board_back.value, gauges.board_front.value)
    past = c.rule.exact(c.customs.socket_over)
    down = "the inside face only" if blind else "both faces"
    chop = (
        f"Saw the corners tilted, chop to the baseline and {past} past the tip line, a block "
        "under the lap; the chisel does what the saw can't reach."
        if blind
        else "Saw down to the baseline, then chop halfway from each face."
    )
    return (
        BenchStep(
            "try the tails",
            f"Set a small square on the {tail}'s outside face against each flank. Pare a flank "
            "that leans.",
            "Every flank is square across: what leans now is copied, and shows outside.",
        ),
        BenchStep(
            "number",
            f"Write the same number on both boards of the corner, on {tail} and {pin}, inside.",
            "No two corners have one number, and face marks look inwards.",
        ),
        _register(d),
        BenchStep(
            "hold",
            "Cramp the two, or lean on them with your whole forearm, without shifting.",
            "Push the upper board with a finger: it stays.",
        ),
        BenchStep(
            "knife",
            "Run the knife's flat side along each flank of each tail, from the shoulder outwards: "
            "one light stroke, then two firmer ones. Keep the other hand behind the edge.",
            f"{2 * len(d.back.tails)} fine lines at a back corner, one at each flank, that a "
            "fingernail catches in.",
        ),
        BenchStep(
            "square down",
            f"Square each line down {down} as far as the pins' baseline, {base} from the end.",
            "Each line meets the baseline and the knife line on the end.",
        ),
        BenchStep(
            "mark the waste",
            "Hatch what goes: on this board the shape of each tail. The pins, half pins at both "
            "edges too, stay bare.",
            f"{len(d.back.tails)} hatched places at a back corner, and bare wood at both edges.",
        ),
        BenchStep(
            "saw",
            "Set the saw in the hatched waste, its teeth just beside the knife line, and leave "
            "the line. Plumb, not sloping: the slope is on the end grain.",
            "Half the knife line is still there, at the end and at the baseline.",
        ),
        BenchStep(
            "chop",
            chop,
            f"The floor of each socket lies up to {past} past the tip line, never short of it."
            if blind
            else "A square's blade laid from face to face across the end grain touches no hump.",
        ),
        BenchStep(
            "try it",
            "Tap the joint half home, once. Take it apart, read the shiny spots, and pare only "
            "those on the pins.",
            "It goes half home by light taps. Don't try again and again: each time it loosens.",
        ),
    )
