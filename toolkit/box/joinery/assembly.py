"""Which way a joint goes together and locks; copying the pins from the tails, and gluing up."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

from toolkit.box.designing import Design
from toolkit.box.joinery.dividers import GaugeSettings, gauge_settings, has_ear
from toolkit.measures import Rule
from toolkit.results import Table, above, filled, rows_by_name


@dataclass(frozen=True, slots=True)
class BenchStep:
    """One step in its order, with the test that tells whether to go on."""

    title: str
    do: str
    test: str

    @property
    def sentence(self) -> str:
        """The step as prose, its test last."""
        return f"{self.title}: {self.do} Test: {self.test}"


def bench_steps(
    *names: str, write: Callable[[float], str], **values: object
) -> tuple[BenchStep, ...]:
    """Steps of the table by name, with their values; ``write`` says a length. [mm]"""
    rows = rows_by_name("box/joinery/steps.csv", "step")
    words = ("title", "do", "test")
    return tuple(
        BenchStep(*(filled(rows[name][word], values, write=write) for word in words))
        for name in names
    )


def step_table(steps: Iterable[BenchStep], *, title: str) -> Table:
    """Steps as a numbered table: what to do, and the test before going on."""
    rows = tuple(
        (str(number), step.title, step.do, step.test) for number, step in enumerate(steps, start=1)
    )
    return Table(title, ("no.", "step", "do", "test before you go on"), rows, numeric=(0,))


Axis = Literal["length", "width"]


@dataclass(frozen=True, slots=True)
class Direction:
    """How the corners of a box move. ``slides`` and ``locks`` are axes of the box.

    ``pushed`` are the walls that a swelling panel pushes apart, along the axis ``pushes``;
    ``swelling`` is how far the one that moves most would push them without its clearance [mm], and
    ``told`` what to say of that number, if anything.
    """

    tail_boards: str
    pin_boards: str
    slides: Axis
    locks: Axis
    pushed: str
    pushes: Axis
    swelling: float
    told: str = ""

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
            f"{self.pushed} apart, {does}.{self.told}"
        )

    def sentence(self, rule: Rule) -> str:
        """All three."""
        return f"{self.together()} {self.locked()} {self.swollen(rule)}"


def joint_direction(d: Design) -> Direction:
    """Which way the corners of a box go together, lock and open."""
    on_ends = d.choices.corner.tails_on == "ends"
    along = d.choices.panels.grain == "along"
    most = max(d.grooved, key=lambda panel: panel.swelling)
    return Direction(
        tail_boards="ends" if on_ends else "sides",
        pin_boards="sides" if on_ends else "ends",
        slides="length" if on_ends else "width",
        locks="width" if on_ends else "length",
        pushed="sides" if along else "ends",
        pushes="width" if along else "length",
        swelling=most.swelling,
        told=most.season.told,
    )


def glue_up_steps(d: Design) -> tuple[BenchStep, ...]:
    """The order of gluing up, for this box's own arrangement (common practice, no source)."""
    way, proud = joint_direction(d), d.choices.corner.proud
    lengthwise = way.slides == "length"
    return bench_steps(
        "rehearse",
        "finish-first",
        "glue-thinly",
        "pin-boards",
        "tail-boards",
        "cramps",
        "square",
        "squeezed" if d.frame.lid_floor is None else "squeezed-lid-grooves",
        write=d.choices.rule.exact,
        way=way,
        frame=d.frame,
        within=0.5,
        drive="lengthwise" if lengthwise else "crosswise",
        first="the back" if lengthwise else "one side",
        second="the front" if lengthwise else "the other",
        cramps="along the length, over the tails of both ends"
        if lengthwise
        else "across the width, over the tails of both sides",
        blocks=" Blocks notched over the tails: they bear on these alone, and clear the pins, "
        f"which stand {d.choices.rule.exact(proud)} proud."
        if proud > 0
        else " Blocks as wide as the joint.",
        # The bottom's end grain stands in the ends, or with its grain across in the sides.
        dab="the back end's bottom groove" if way.pushed == "sides" else "one side's bottom groove",
        ear=" Mind the ears: a knock breaks them." if has_ear(d) else "",
    )


def _tips(d: Design) -> str:
    """Where the tails' tips come to while the pins are copied from them."""
    proud = d.choices.corner.proud
    if d.choices.corner.joint == "half-blind":
        return "reach the gauge-1 line on the end grain"
    if not proud:
        return "end flush outside"
    way = "stand {} proud outside" if proud > 0 else "end {} short of the outside"
    return way.format(d.choices.rule.exact(abs(proud)))


def _ear_words(gauges: GaugeSettings) -> str:
    """How an eared front end differs, where there is one."""
    if gauges.ear is None:
        return ""
    tips = ", and cut the tails back to their own line" if above(gauges.ear[0].value, 0.0) else ""
    words = " At the front end saw along the ear's underside to the baseline, not down a shoulder"
    return f"{words}{tips}."


def transfer_steps(d: Design) -> tuple[BenchStep, ...]:
    """How the tails are cut and the pins copied from them, with a test for each step.

    Common practice, no source. Why the tails are tested square first: see `gaps` with ``copied``.
    """
    c, f, gauges = d.choices, d.frame, gauge_settings(d)
    show, blind = c.rule.exact, c.corner.joint == "half-blind"
    tail, pin = ("end", "side") if c.corner.tails_on == "ends" else ("side", "end")
    low = ""
    if f.lid_floor is not None:
        low = f" At the front, {show(f.front_height.value)} high, only the bottom edges tell."
    if has_ear(d):
        low += " There the ear passes over the front's top edge."
    back, front = (c.rule.show(one.value) for one in (gauges.board_back, gauges.board_front))
    return bench_steps(
        "saw-tails",
        "shoulders",
        "between-tails",
        "try-tails",
        "number",
        "register",
        "hold",
        "knife",
        "square-down",
        "mark-waste",
        "saw-half-blind" if blind else "saw-through",
        "chop-half-blind" if blind else "chop-through",
        "try-it",
        write=show,
        tail=tail,
        pin=pin,
        low=low,
        groove=c.rule.exact(c.groove.width),
        up_to=_tips(d),
        ear=_ear_words(gauges),
        down="the inside face only" if blind else "both faces",
        base=back if back == front else f"{back} at the back and {front} at the front",
        past=c.customs.socket_over,
        tails=str(len(d.back.tails)),
        lines=str(2 * len(d.back.tails)),
    )
