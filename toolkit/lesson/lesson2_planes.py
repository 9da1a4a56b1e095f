"""Lesson 2, the planes: camber, depth and overlap, and the strokes that they cost."""

from __future__ import annotations

from typing import Any

from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.lesson2_board import walls
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import worked_out
from toolkit.measures import Rule
from toolkit.pictures import shavings_picture
from toolkit.planes import JACK, SMOOTHER, TRY, Plane
from toolkit.results import Table
from toolkit.truing import (
    Strokes,
    bench_time,
    check_iron,
    check_scallops,
    clearing,
    least_strokes,
    planing_job,
    shavings,
    strokes_as_set,
)

NEXT_PASSES = 2  # of the next plane, to clear the ridges: custom, no source
# What each plane takes off a face on the way: common practice, no source. [mm]
COARSE, MEDIUM, FINE = 2.0, 0.3, 0.1

CONTROLS = (
    LengthControl(("try.camber",), "camber radius", 100.0, 500.0, "rough", start=lambda _: 255.0),
    LengthControl(("try.depth",), "depth of cut", 0.1, 0.8, "joints", start=lambda _: 0.4),
    NumberControl(("try.overlap",), "overlap", 0, 80, 2, "%", start=lambda _: 60),
    ChoiceControl(
        ("try.bed",),
        "iron bedded at",
        (("45°, bevel down", 45.0), ("12°, bevel up", 12.0)),
        start=lambda _: 45.0,
    ),
)


def jack(values: Any) -> Plane:
    """The jack plane as the sliders have it. [mm]"""
    return JACK.having(
        camber_radius=values["try.camber"],
        shaving=values["try.depth"],
        overlap=values["try.overlap"],
        bed=values["try.bed"],
    )


def _strokes(at: Moment, values: Any) -> Strokes:
    width = walls(worked_out(at.choices)).rough_width.value
    return strokes_as_set(jack(values), width=width, remove=COARSE)


def _view(at: Moment) -> View:
    rule = at.choices.rule
    coarse = _strokes(at, at.tried)
    before = _strokes(at, at.before) if at.moved else None
    rows = [
        coarse,
        least_strokes(TRY, width=coarse.width, remove=MEDIUM),
        least_strokes(SMOOTHER, width=coarse.width, remove=FINE),
    ]
    clears = clearing(coarse.ridge, after=TRY, width=coarse.width, passes=NEXT_PASSES)
    found = (check_scallops(clears), check_iron(coarse.plane))
    picture = shavings_picture(rows, rule=rule, sentence=coarse.sentence(rule), ghost=before)
    return View(picture, _table(at, coarse, rule), found)


def _table(at: Moment, coarse: Strokes, rule: Rule) -> Table:
    side = walls(worked_out(at.choices))
    best = least_strokes(coarse.plane, width=coarse.width, remove=COARSE)
    planes = (coarse.plane, TRY, SMOOTHER)
    job = planing_job(COARSE, length=side.rough_length.value, width=coarse.width, planes=planes)
    rows = (
        ("strokes with this overlap", f"{coarse.strokes}", coarse.sentence(rule)),
        (
            "fewest strokes",
            f"{best.strokes}",
            f"{best.tracks} tracks, overlap {best.overlap:.0%}: the whole number of tracks "
            f"decides; on a wide board {coarse.plane.best_overlap:.0%} is best",
        ),
        ("all three planes, one side", f"{job.count}", job.sentence(rule)),
        (
            "shavings of it",
            f"{job.volume / 1000:.0f} cm³",
            shavings(job.volume).sentence,
        ),
        (
            "time, an estimate",
            f"{bench_time(job.count).minutes:.0f} min",
            bench_time(job.count).sentence,
        ),
    )
    return Table("Numbers", ("what", "value", "where it comes from"), rows, numeric=(1,))


PLANES_SCENE = Scene("planes", CONTROLS, _view)
