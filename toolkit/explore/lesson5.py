"""Lesson 5, finish off the plane: the surface before you cut it, and what flushing takes."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.lesson5_box import FIT, SKIM
from toolkit.explore.lesson5_finish import FINISH, finish_table
from toolkit.explore.lesson5_plane import CAP, EDGE, LIGHT, surface_of
from toolkit.explore.scene import Scene
from toolkit.explore.view import Listed, Said, Still
from toolkit.explore.worked import own
from toolkit.pictures import iron_picture, raking_light
from toolkit.plan.flushed import flushed
from toolkit.planes import SMOOTHER
from toolkit.results import Table
from toolkit.smoothing import shadow_length, where_to_start

GUESS = "lesson5.shadow"
STEP, LAMP = 0.02, 5.0  # a plane track, and a lamp low over the bench [mm, degrees]
SCENES: tuple[Scene, ...] = (LIGHT, EDGE, CAP, SKIM, FIT, FINISH)


def guess() -> widgets.Widget:
    """Guess first: how long the shadow of a plane track is."""
    return guess_card(
        GUESS,
        f"The corner of an iron left a step {STEP:g} mm high. A lamp shines across it from "
        f"{LAMP:g}° above the bench. How long is the step's shadow?",
        hint="with its unit: 1 mm, 1/32 in",
    )


def worked() -> Said:
    """One worked by hand, then the same from the toolkit."""
    low, high = (shadow_length(STEP, lamp_height=lamp) for lamp in (LAMP, 45.0))
    return Said(
        f"{STEP:g} mm ÷ tan {LAMP:g}° = {low:.2f} mm; from 45° it would be {high:.2f} mm, and "
        "nobody would see it."
    )


def light() -> Explorer:
    """A planed surface under a low lamp."""
    return Explorer(LIGHT)


def edge() -> Explorer:
    """The edge in the wood."""
    return Explorer(EDGE)


def cap_iron() -> Explorer:
    """The cap iron close or far, and the plane skewed."""
    return Explorer(CAP)


def skim() -> Explorer:
    """What flushing takes from the box."""
    return Explorer(SKIM)


def fit() -> Explorer:
    """How much the lid may lose before it rattles or drops out."""
    return Explorer(FIT)


def finishes() -> Explorer:
    """Oil, shellac or wax, and how much of it."""
    return Explorer(FINISH)


def light_still() -> Still:
    """A smoothing plane's surface in raking light, for paper."""
    return Still(raking_light(surface_of(SMOOTHER), lamp_height=LAMP, rule=own().choices.rule))


def edge_still() -> Still:
    """The edge in the wood, for paper."""
    return Still(iron_picture(SMOOTHER, rule=own().choices.rule))


def start() -> Listed:
    """From which end to plane each surface, when its lines climb to the right."""
    rows = []
    for name in ("face", "edge", "rim", "end grain"):
        reading = where_to_start(name, rise=2.0, run=60.0)
        rows.append((name, reading.start, reading.sentence()))
    columns = ("surface", "start at", "why")
    title = "Where to start, when the lines beside it climb towards the right"
    return Listed(Table(title, columns, tuple(rows)))


def finish() -> Listed:
    """How much finish the student's own box takes, and a class of them."""
    return Listed(finish_table(own()))


def compare() -> Said:
    """The guess beside the answer."""
    return compare_guess(GUESS, own(), answer=shadow_length(STEP, lamp_height=LAMP))


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(5, own=own, seed=seed)


def carry() -> Said:
    """What to carry to the bench: what flushing leaves of the lap."""
    box = own()
    rule = box.choices.rule
    left = flushed(box)
    return Said(f"Off each outside face {rule.exact(left.skim)}: {left.sentence}")
