"""Lesson 2, the time: strokes are counted, minutes are an estimate that a class makes its own."""

from __future__ import annotations

from toolkit.lesson.controls import LengthControl, NumberControl
from toolkit.lesson.lesson2_board import walls
from toolkit.lesson.lesson2_planes import COARSE
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import worked_out
from toolkit.pictures import clock_picture
from toolkit.results import WALLS, Table
from toolkit.truing import LEARNER, SECONDS, PlaningJob, bench_time, planing_job

CONTROLS = (
    LengthControl(("try.off",), "take off", 0.5, 4.0, "sizes", start=lambda _: COARSE),
    NumberControl(("try.seconds",), "a stroke takes", 1.0, 6.0, 0.5, "s", start=lambda _: SECONDS),
    NumberControl(
        ("try.learner",),
        "a learner needs",
        1.0,
        12.0,
        1.0,
        "× as long",
        start=lambda _: LEARNER,
    ),
)


def _job(at: Moment, off: float) -> PlaningJob:
    side = walls(worked_out(at.choices))
    return planing_job(off, length=side.rough_length.value, width=side.rough_width.value)


def _view(at: Moment) -> View:
    rule, tried, before = at.choices.rule, at.tried, at.before
    job = _job(at, tried["try.off"])
    time = bench_time(job.count, seconds=tried["try.seconds"], learner=tried["try.learner"])
    was = None
    if at.moved:
        was = bench_time(
            _job(at, before["try.off"]).count,
            seconds=before["try.seconds"],
            learner=before["try.learner"],
        )
    faces = 2 * sum(part.count for part in worked_out(at.choices).parts if part.name in WALLS)
    rows = (
        ("strokes", f"{job.count}", job.sentence(rule)),
        ("nothing but strokes", f"{time.practised:.1f} min", f"strokes × {time.seconds:g} s ÷ 60"),
        (
            "for a learner",
            f"{time.minutes:.1f} min",
            f"× {time.learner:g}, for testing, setting the plane anew and rest",
        ),
        (
            f"all {faces} faces of the walls",
            f"{time.minutes * faces / 60:.1f} h",
            f"for a learner, {faces} faces like this one",
        ),
    )
    table = Table("Numbers", ("what", "value", "where it comes from"), rows, numeric=(1,))
    return View(clock_picture(time, before=was), table, ())


TIME = Scene("time", CONTROLS, _view, height=387)
