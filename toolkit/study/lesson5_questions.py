"""Lesson 5, finish off the plane: angles, shadows, ridges, flushing and finish."""

from __future__ import annotations

from math import asin, cos, degrees, radians, sin

from toolkit.measures import MM_PER_INCH
from toolkit.planes import Iron, camber_radius, skewed
from toolkit.results import above
from toolkit.smoothing import shadow_length
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

_SKIMS = {"mm": (0.3, 0.2, 0.4), "in": (MM_PER_INCH / 64, MM_PER_INCH / 32)}
_BEDS = (45.0, 50.0, 55.0)
_HONED = (30.0, 33.0, 38.0)
_SKEWS = (30.0, 20.0, 40.0)
_LAMPS = (5.0, 3.0, 8.0)


def bevel_up(ask: Asking) -> Question:
    """The cutting angle of a plane with its bevel up."""
    bed, honed = 12.0, ask.pick(_HONED)
    slips = {"bed": bed, "bevel": honed, "subtracted": honed - bed, "hook": 90 - bed - honed}
    return ask.question("lesson5.bevel-up", bed + honed, slips, bed=bed, honed=honed)


def back_bevel(ask: Asking) -> Question:
    """What back bevel makes a cutting angle."""
    bed = ask.pick(_BEDS)
    wanted = bed + ask.pick((10.0, 5.0, 12.0))
    slips = {"honed": wanted - 30, "whole-angle": wanted, "added": wanted + bed}
    return ask.question("lesson5.back-bevel", wanted - bed, slips, bed=bed, wanted=wanted)


def skewed_angle(ask: Asking) -> Question:
    """What skewing makes of the cutting angle."""
    bed, skew = ask.pick(_BEDS), ask.pick(_SKEWS)
    answer = skewed(bed, skew=skew).up_the_iron
    slips = {
        "unchanged": bed,
        "whole-skew": bed - skew,
        "shared-out": bed * (1 - skew / 90),
    }
    if (divided := sin(radians(bed)) / cos(radians(skew))) < 1:
        slips["raised"] = degrees(asin(divided))
    return ask.question("lesson5.skew", answer, slips, bed=bed, skew=skew)


def camber_in_wood(ask: Asking) -> Question:
    """What share of an iron's camber reaches the wood, the iron lying on its bed."""
    bed = ask.pick(_BEDS)
    iron = Iron(50.0, radius=camber_radius(0.1, width=50.0), bed=bed)
    answer = 100 * iron.drop_in_wood / iron.drop
    slips = {
        "unchanged": 100.0,
        "grown": 100 / sin(radians(bed)),
        "twelve": 100 * sin(radians(12)),
        "in-step": 100 * bed / 90,
    }
    return ask.question("lesson5.camber", answer, slips, bed=bed)


def shadow(ask: Asking) -> Question:
    """How many times its height the shadow of a plane track is."""
    lamp = ask.pick(_LAMPS)
    times = shadow_length(1.0, lamp_height=lamp)
    slips = {
        "at-45": 1.0,
        "angle": lamp,
        "twice-as-high": round(shadow_length(1.0, lamp_height=2 * lamp)),
    }
    return ask.question("lesson5.shadow-length", round(times), slips, lamp=lamp, times=times)


def lap_left(ask: Asking) -> Question:
    """What flushing leaves of the lap."""
    f, rule = ask.frame, ask.rule
    lap, tail = f.lap_back.value, f.tail_back.value
    skim = ask.pick(_SKIMS[rule.units])
    ask.only_if(ask.design.choices.corner.joint == "half-blind" and lap > skim)
    slips = {
        "unplaned": lap,
        "both-faces": lap - 2 * skim,
        "halved": lap - skim / 2,
        "tail": tail - skim,
    }
    return ask.question("lesson5.lap", lap - skim, slips, skim=skim)


def outside_left(ask: Asking) -> Question:
    """What flushing makes of the outside length."""
    f, rule = ask.frame, ask.rule
    whole, proud = f.outside_length.value, ask.design.choices.corner.proud
    skim = ask.pick(_SKIMS[rule.units])
    stands = above(f.side_cut.value, f.side_length.value)
    also = f" The sides' end grain stands {rule.exact(proud)} proud of it at each end."
    slips = {
        "proud-too": whole - 2 * (skim + (proud if stands else 0.0)),
        "one-face": whole - skim,
        "four-faces": whole - 4 * skim,
        "inside": f.inside_length.value,
        "inside-planed": f.inside_length.value - 2 * skim,
    }
    told = also if stands else ""
    return ask.question("lesson5.outside", whole - 2 * skim, slips, skim=skim, also=told)


def lid_left(ask: Asking) -> Question:
    """What flushing makes of a lid that is planed flush with the front."""
    lid, rule = ask.known(ask.design.sliding_lid), ask.rule
    long = lid.length.value
    skim = ask.pick(_SKIMS[rule.units])
    slips = {"unplaned": long, "both-ends": long - 2 * skim, "grown": long + skim}
    return ask.question("lesson5.lid", long - skim, slips, skim=skim)


def flakes(ask: Asking) -> Question:
    """How many grams of flakes a cut of shellac takes."""
    cut, alcohol = ask.pick((120.0, 240.0, 180.0)), ask.pick((250.0, 500.0, 200.0))
    answer = cut * alcohol / 1000
    slips = {
        "litre": cut,
        "tenfold": round(answer * 10),
        "divided": round(alcohol / cut),
        "other-way": round(alcohol * 1000 / cut),
    }
    return ask.question("lesson5.flakes", round(answer), slips, cut=cut, alcohol=alcohol)
