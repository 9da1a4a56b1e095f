"""Lesson 5, what its cells show of a plan: the surface and its finish."""

from __future__ import annotations

from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson5_box import FINISH, FIT, SKIM, finish_table
from toolkit.lesson.lesson5_plane import CAP, EDGE, LIGHT, surface_of
from toolkit.pictures import iron_picture, raking_light
from toolkit.plan import Plan
from toolkit.plan.flushed import flushed
from toolkit.planes import SMOOTHER
from toolkit.results import Table
from toolkit.smoothing import shadow_length, where_to_start

HINT = "with its unit: 1 mm, 1/32 in"
SCENES = {
    "light": LIGHT,
    "edge": EDGE,
    "cap_iron": CAP,
    "skim": SKIM,
    "fit": FIT,
    "finishes": FINISH,
}

STEP, LAMP = 0.02, 5.0  # a plane track, and a lamp low over the bench [mm, degrees]


def worked() -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    low, high = (shadow_length(STEP, lamp_height=lamp) for lamp in (LAMP, 45.0))
    return Sentence(
        f"{STEP:g} mm ÷ tan {LAMP:g}° = {low:.2f} mm; from 45° it would be {high:.2f} mm, and "
        "nobody would see it."
    )


def light_still(plan: Plan) -> Figure:
    """A smoothing plane's surface in raking light, for paper."""
    return Figure(raking_light(surface_of(SMOOTHER), lamp_height=LAMP, rule=plan.choices.rule))


def edge_still(plan: Plan) -> Figure:
    """The edge in the wood, for paper."""
    return Figure(iron_picture(SMOOTHER, rule=plan.choices.rule))


def start() -> TableBlock:
    """From which end to plane each surface, when its lines climb to the right."""
    rows = []
    for name in ("face", "edge", "rim", "end grain"):
        reading = where_to_start(name, rise=2.0, run=60.0)
        rows.append((name, reading.start, reading.sentence()))
    columns = ("surface", "start at", "why")
    title = "Where to start, when the lines beside it climb towards the right"
    return TableBlock(Table(title, columns, tuple(rows)))


def finish(plan: Plan) -> TableBlock:
    """How much finish the student's own box takes, and a class of them."""
    return TableBlock(finish_table(plan))


def carry(plan: Plan) -> Sentence:
    """What to carry to the bench: what flushing leaves of the lap."""
    rule = plan.choices.rule
    left = flushed(plan)
    return Sentence(f"Off each outside face {rule.exact(left.skim)}: {left.sentence}")
