"""Lesson 5, finish off the plane: angles, shadows, ridges, flushing and finish."""

from __future__ import annotations

from math import radians, sin

from toolkit.planes import Iron, camber_radius, skewed
from toolkit.smoothing import shadow_length
from toolkit.study.asking import Asking
from toolkit.study.lesson5_box import lap_left, lid_left, outside_left
from toolkit.study.marking import Question

_BEDS = (45.0, 50.0, 55.0)
_HONED = (30.0, 33.0, 38.0)
_SKEWS = (30.0, 20.0, 40.0)
_LAMPS = (5.0, 3.0, 8.0)


def bevel_up(ask: Asking) -> Question | None:
    """The cutting angle of a plane with its bevel up."""
    bed, honed = 12.0, ask.pick(_HONED)
    return ask.question(
        "lesson5.bevel-up",
        f"A plane with its bevel up beds its iron at {bed:g}°; the iron is honed at "
        f"{honed:g}°. What is its cutting angle?",
        (bed + honed, f"{bed:g}° bed + {honed:g}° honed bevel = {bed + honed:g}°"),
        (bed, "That is the bed alone; with the bevel up the bevel adds to it."),
        (honed, "That is the bevel alone; the iron lies on a slope as well."),
        (honed - bed, "Add them: the bevel stands on top of the bed."),
        (90 - bed - honed, "That is the hook angle, what is missing to a right angle."),
        kind="deg",
        nudge="From the wood up to the face that lifts the shaving.",
        how='Answer in degrees, such as "45 deg".',
    )


def back_bevel(ask: Asking) -> Question | None:
    """What back bevel makes a cutting angle."""
    bed = ask.pick(_BEDS)
    wanted = bed + ask.pick((10.0, 5.0, 12.0))
    return ask.question(
        "lesson5.back-bevel",
        f"Curly wood tears under an iron bedded at {bed:g}°, bevel down and honed at 30°. "
        f"What back bevel gives a cutting angle of {wanted:g}°?",
        (wanted - bed, f"{wanted:g}° wanted − {bed:g}° bed = {wanted - bed:g}° back bevel"),
        (wanted - 30, "With the bevel down the honed bevel lies below and does not count."),
        (wanted, "That is the whole angle; the bed gives most of it."),
        (wanted + bed, "Take the bed away from what is wanted."),
        kind="deg",
        nudge="The bed is there already; the back bevel gives the rest.",
    )


def skewed_angle(ask: Asking) -> Question | None:
    """What skewing makes of the cutting angle."""
    bed, skew = ask.pick(_BEDS), ask.pick(_SKEWS)
    answer = skewed(bed, skew=skew).up_the_iron
    return ask.question(
        "lesson5.skew",
        f"An iron that cuts at {bed:g}° is pushed skewed by {skew:g}°. At what angle does the "
        "wood climb it (sin of it = sin of the cutting angle × cos of the skew)?",
        (answer, f"arcsin(sin {bed:g}° × cos {skew:g}°) = {answer:.1f}°"),
        (bed + skew / 4, "Skewing lowers the angle; it never raises it."),
        (bed, "It does change: the wood goes the longer way up the slope."),
        (bed - skew, "Not by the whole skew: go by the sine and the cosine."),
        (bed * (1 - skew / 90), "Angles are not shared out like lengths: use sine."),
        kind="deg",
        nudge="A path taken askew up a hill is less steep.",
    )


def shadow(ask: Asking) -> Question:
    """How many times its height the shadow of a plane track is."""
    lamp = ask.pick(_LAMPS)
    times = shadow_length(1.0, lamp_height=lamp)
    return ask.question(
        "lesson5.shadow-length",
        f"A lamp shines across a plane track from {lamp:g}° above the bench. How many times as "
        "long as the track is high is its shadow, to the nearest whole number?",
        (round(times), f"1 ÷ tan {lamp:g}° = {times:.1f}, so about {round(times)} times"),
        (1.0, "That is a lamp at 45°. The lower it stands, the longer the shadow."),
        (lamp, "That is the angle itself; divide 1 by its tangent."),
        (round(shadow_length(1.0, lamp_height=2 * lamp)), "That lamp stands twice as high."),
        kind="count",
        senses=("too long", "too short"),
        nudge="Height over length is the tangent of the lamp's angle.",
    )


def camber_in_wood(ask: Asking) -> Question | None:
    """What share of an iron's camber reaches the wood, the iron lying on its bed."""
    bed = ask.pick(_BEDS)
    iron = Iron(50.0, radius=camber_radius(0.1, width=50.0), bed=bed)
    answer = 100 * iron.drop_in_wood / iron.drop
    return ask.question(
        "lesson5.camber",
        "The corners of an iron stand back from the middle of its edge, measured on the iron. "
        f"Bedded at {bed:g}°, what share of that reaches the wood?",
        (answer, f"sin {bed:g}° = {answer:.1f} %"),
        (100.0, "The iron lies on a slope: less of its camber reaches the wood."),
        (100 / sin(radians(bed)), "It grows less, not more: times the sine."),
        (100 * sin(radians(12)), "That is a bed of 12°, as with the bevel up."),
        (100 * bed / 90, "Not in step with the angle: take its sine."),
        kind="%",
        nudge="Seen along the sole, a slope shows the sine of its length.",
        how='Answer in percent, such as "80 %".',
    )


def flakes(ask: Asking) -> Question | None:
    """How many grams of flakes a cut of shellac takes."""
    cut, alcohol = ask.pick((120.0, 240.0, 180.0)), ask.pick((250.0, 500.0, 200.0))
    answer = cut * alcohol / 1000
    return ask.question(
        "lesson5.flakes",
        f"A shellac of {cut:g} g to the litre is wanted, and there are {alcohol:g} mL of "
        "alcohol. How many grams of flakes go in?",
        (round(answer), f"{cut:g} g/L × {alcohol:g} mL ÷ 1000 = {answer:g} g"),
        (cut, "That is for a whole litre."),
        (round(answer * 10), "Ten times too much: a litre is 1000 mL."),
        (round(alcohol / cut), "Multiply by the share of a litre."),
        (round(alcohol * 1000 / cut), "The other way round: grams to the litre."),
        kind="count",
        nudge="What share of a litre is it?",
    )


TEMPLATES = (
    bevel_up,
    back_bevel,
    skewed_angle,
    camber_in_wood,
    shadow,
    lap_left,
    outside_left,
    lid_left,
    flakes,
)
