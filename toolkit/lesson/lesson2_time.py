"""Lesson 2, the time: strokes are counted, minutes are an estimate that a class makes its own."""

from __future__ import annotations

from typing import Self

from toolkit.lesson.controls import LengthControl, NumberControl
from toolkit.lesson.lesson2_board import walls
from toolkit.lesson.lesson2_planes import COARSE
from toolkit.lesson.scene import Scene, Shown, Tried
from toolkit.lesson.view import numbers
from toolkit.pictures import Picture, clock_picture
from toolkit.results import WALLS, Table
from toolkit.truing import LEARNER, SECONDS, bench_time, planing_job

CONTROLS = (
    LengthControl(("try.off",), "take off", 0.5, 4.0, "sizes", start=COARSE),
    NumberControl(("try.seconds",), "a stroke takes", 1.0, 6.0, 0.5, "s", start=SECONDS),
    NumberControl(("try.learner",), "a learner needs", 1.0, 12.0, 1.0, "× as long", start=LEARNER),
)


class FaceTime(Shown):
    """One face of a side: its strokes, and how long they take."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        side = walls(self.plan)
        long, wide = side.rough_length.value, side.rough_width.value
        self.job = planing_job(tried["try.off"], length=long, width=wide)
        pace = {"seconds": tried["try.seconds"], "learner": tried["try.learner"]}
        self.time = bench_time(self.job.count, **pace)

    def picture(self, before: Self | None) -> Picture:
        return clock_picture(self.time, before=before.time if before else None)

    def values(self) -> Table:
        job, time = self.job, self.time
        faces = 2 * sum(part.count for part in self.plan.parts if part.name in WALLS)
        return numbers(
            (
                ("strokes", f"{job.count}", job.sentence(self.rule)),
                (
                    "nothing but strokes",
                    f"{time.practised:.1f} min",
                    f"strokes × {time.seconds:g} s ÷ 60",
                ),
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
        )


TIME = Scene("time", CONTROLS, FaceTime, height=387)
