"""Which way a joint goes together, which way it locks or opens, and the order of gluing up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from toolkit.box.design import Design
from toolkit.box.joinery.gauges import has_ear
from toolkit.box.joinery.steps import BenchStep
from toolkit.measures import Rule

Axis = Literal["length", "width"]


@dataclass(frozen=True, slots=True)
class Direction:
    """How the corners of a box move. ``slides`` and ``locks`` are axes of the box.

    ``pushed`` are the walls that a swelling panel pushes apart, along the axis ``pushes``;
    ``swelling`` is how far the one that moves most would push them without its clearance. [mm]
    """

    tail_boards: str
    pin_boards: str
    slides: Axis
    locks: Axis
    pushed: str
    pushes: Axis
    swelling: float

    @property
    def opens(self) -> bool:
        """Whether a panel that swells pushes the joint open."""
        return self.pushes == self.slides

    def together(self) -> str:
        """Which way it goes together."""
        way = "lengthwise" if self.slides == "length" else "crosswise"
        return (
            f"The {self.tail_boards} carry the tails and go on last, driven {way} onto the "
            f"{self.pin_boards}; they come off the same way and no other."
        )

    def locked(self) -> str:
        """Which way it locks."""
        return (
            f"Pull the {self.pin_boards} apart along the {self.locks} of the box and the joint "
            f"locks, even without glue; pull the {self.tail_boards} off along the {self.slides} "
            "and only the glue holds."
        )

    def swollen(self, rule: Rule) -> str:
        """What a panel does to it that has no room to swell."""
        far = rule.exact(self.swelling)
        does = (
            "the one way the tails slide out: the joint opens"
            if self.opens
            else "against the tails, which lock"
        )
        return (
            f"In its dampest room a panel swells {far}. Without clearance it would push the "
            f"{self.pushed} apart, {does}."
        )

    def sentence(self, rule: Rule) -> str:
        """All three."""
        return f"{self.together()} {self.locked()} {self.swollen(rule)}"


def joint_direction(d: Design) -> Direction:
    """Which way the corners of a box go together, lock and open."""
    on_ends = d.choices.corner.tails_on == "ends"
    along = d.choices.panels.grain == "along"
    return Direction(
        tail_boards="ends" if on_ends else "sides",
        pin_boards="sides" if on_ends else "ends",
        slides="length" if on_ends else "width",
        locks="width" if on_ends else "length",
        pushed="sides" if along else "ends",
        pushes="width" if along else "length",
        swelling=max(panel.swelling for panel in d.grooved),
    )


def _squeeze_out(d: Design) -> str:
    if d.frame.lid_floor is None:
        return "Wipe out squeezed glue inside with a damp stick before it skins."
    return (
        "Clear squeezed glue out of the lid grooves at once with a stick that fits them, and slide "
        "the lid through: a dry bead there holds it for ever."
    )


def glue_up_steps(d: Design) -> tuple[BenchStep, ...]:
    """The order of gluing up, for this box's own arrangement (common practice, no source)."""
    way = joint_direction(d)
    lengthwise = way.slides == "length"
    show, f = d.choices.rule.exact, d.frame
    drive = "lengthwise" if lengthwise else "crosswise"
    cramps = "along the length, over the tails of both ends"
    if not lengthwise:
        cramps = "across the width, over the tails of both sides"
    first, second = ("the back", "the front") if lengthwise else ("one side", "the other")
    proud = d.choices.customs.pins_proud > d.choices.customs.pins_shy
    blocks = (
        " Blocks that bear on the tails alone, cut clear of the pins that stand proud."
        if proud
        else " Blocks as wide as the joint."
    )
    ear = " Mind the ears: a knock breaks them." if has_ear(d) else ""
    long, wide = f.outside_length.value, f.outside_width.value
    return (
        BenchStep(
            "finish what can't be reached later",
            "Plane the inside faces and finish the bottom on both faces, its hidden edges too.",
            "No bare wood will show when the bottom shrinks away from its grooves in winter.",
        ),
        BenchStep(
            "rehearse dry",
            f"Do everything that follows without glue, cramps and all, with a watch.{ear}",
            "It takes well under the open time on the glue's label, and nothing was looked for.",
        ),
        BenchStep(
            "glue the first joints thinly",
            "Brush glue on the flanks of tails and pins, long grain to long grain; little on end "
            "grain, none in a groove and none on the bottom.",
            "Flanks wet all over, grooves dry.",
        ),
        BenchStep(
            f"the {way.pin_boards} onto the bottom",
            f"Stand one of the {way.pin_boards} up, set the bottom in its groove, and put the "
            f"other of the {way.pin_boards} on.",
            "The bottom moves in its grooves by hand.",
        ),
        BenchStep(
            f"the {way.tail_boards} {drive}",
            f"Start the tails of {first} by hand and drive them home {drive} with a block, a "
            f"little at each corner in turn; then those of {second}.",
            "Shoulders closed inside at all four corners; corner numbers agree.",
        ),
        BenchStep(
            "cramps",
            f"Set cramps {cramps}.{blocks} Only as tight as closes the shoulders.",
            "Shoulders shut, walls straight: a cramp closes no gap, it bends boards.",
        ),
        BenchStep(
            "square and flat",
            f"Compare the two diagonals of {show(long)} × {show(wide)} and sight across the rim. "
            "Shift the cramps along the longer diagonal; wedge up the low corner.",
            f"Diagonals within {show(0.5)} of each other, no rock on a flat plate.",
        ),
        BenchStep(
            "squeezed glue",
            _squeeze_out(d),
            "The lid runs through and the bottom can still be pushed to and fro."
            if f.lid_floor is not None
            else "Corners clean inside, and the bottom can still be pushed to and fro.",
        ),
    )
