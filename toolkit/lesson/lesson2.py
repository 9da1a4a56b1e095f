"""Lesson 2, what its cells show of a plan: from a warped board to true parts."""

from __future__ import annotations

from typing import Self

from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.lesson2_board import (
    CROSSCUT,
    WARP,
    long_board,
    rough_table,
    stick_of,
    walls,
    yield_of,
)
from toolkit.lesson.scene import Scene, Shown, Tried, numbers
from toolkit.measures import Rule
from toolkit.pictures import Picture, clock_picture, shavings_picture
from toolkit.plan import Plan
from toolkit.planes import JACK, SMOOTHER, TRY
from toolkit.results import WALLS, Finding, Part, Table
from toolkit.truing import (
    LEARNER,
    ORDERS,
    SECONDS,
    THICKNESS_FIRST,
    Strokes,
    Warp,
    bench_time,
    check_iron,
    check_scallops,
    clearing,
    cut_to,
    least_strokes,
    order_of_work,
    planing_job,
    shavings,
    strokes_as_set,
)

NEXT_PASSES = 2  # of the next plane, to clear the ridges: custom, no source
# What each plane takes off a face on the way: common practice, no source. [mm]
COARSE, MEDIUM, FINE = 2.0, 0.3, 0.1

PLANE_CONTROLS = (
    LengthControl(("try.camber",), "camber radius", 100.0, 500.0, "rough", start=255.0),
    LengthControl(("try.depth",), "depth of cut", 0.1, 0.8, "joints", start=0.4),
    NumberControl(("try.overlap",), "overlap", 0, 80, 2, "%", start=60),
    ChoiceControl(
        ("try.bed",),
        "iron bedded at",
        (("45°, bevel down", 45.0), ("12°, bevel up", 12.0)),
        start=45.0,
    ),
)


class Coarse(Shown):
    """A side's face and the jack plane's strokes on it."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        jack = JACK.having(
            camber_radius=tried["try.camber"],
            shaving=tried["try.depth"],
            overlap=tried["try.overlap"],
            bed=tried["try.bed"],
        )
        width = walls(self.plan).rough_width.value
        self.strokes = strokes_as_set(jack, width=width, remove=COARSE)

    def picture(self, before: Self | None) -> Picture:
        coarse, rule = self.strokes, self.rule
        rows = [
            coarse,
            least_strokes(TRY, width=coarse.width, remove=MEDIUM),
            least_strokes(SMOOTHER, width=coarse.width, remove=FINE),
        ]
        ghost = before.strokes if before else None
        return shavings_picture(rows, rule=rule, sentence=coarse.sentence(rule), ghost=ghost)

    def verdict(self) -> tuple[Finding, ...]:
        coarse = self.strokes
        clears = clearing(coarse.ridge, after=TRY, width=coarse.width, passes=NEXT_PASSES)
        return check_scallops(clears, rule=self.rule), check_iron(coarse.plane, rule=self.rule)

    def values(self) -> Table:
        return numbers(_plane_rows(self.strokes, walls(self.plan), self.rule))


def _plane_rows(coarse: Strokes, side: Part, rule: Rule) -> tuple[tuple[str, str, str], ...]:
    best = least_strokes(coarse.plane, width=coarse.width, remove=COARSE)
    planes = (coarse.plane, TRY, SMOOTHER)
    job = planing_job(COARSE, length=side.rough_length.value, width=coarse.width, planes=planes)
    time = bench_time(job.count)
    return (
        ("strokes with this overlap", f"{coarse.strokes}", coarse.sentence(rule)),
        (
            "fewest strokes",
            f"{best.strokes}",
            f"{best.tracks} tracks, overlap {best.overlap:.0%}: the whole number of tracks "
            f"decides; on a wide board {coarse.plane.best_overlap:.0%} is best",
        ),
        ("all three planes, one side", f"{job.count}", job.sentence(rule)),
        ("shavings of it", rule.volume(job.volume), shavings(job.volume).sentence),
        ("time, an estimate", f"{time.minutes:.0f} min", time.sentence),
    )


PLANES = Scene("planes", PLANE_CONTROLS, Coarse)


TIME_CONTROLS = (
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


TIME = Scene("time", TIME_CONTROLS, FaceTime, height=387)


HINT = "with its unit: 4 mm, 1/8 in"
SCENES = {"warp": WARP, "crosscut": CROSSCUT, "planes": PLANES, "time": TIME}
STILLS = {"face_still": WARP, "crosscut_still": CROSSCUT, "time_still": TIME}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    rule, whole = plan.choices.rule, long_board()
    part, left = 700.0 / whole.length, cut_to(whole, length=700.0).bow
    return Sentence(
        f"{rule.exact(whole.bow)} bow × ({rule.exact(700.0, unit=False)} ÷ "
        f"{rule.exact(whole.length, unit=False)})² = {rule.exact(whole.bow)} × {part**2:.4g} = "
        f"{rule.exact(round(left, 2))}."
    )


def _own_warp(plan: Plan) -> Warp:
    """A warp for the walls' blank, as a class's blanks had it. [mm]"""
    stick = stick_of(plan)
    return Warp(stick.length, stick.width, bow=1.5, cup=0.5, twist=1.3)


def planes_still(plan: Plan) -> Figure:
    """What three planes leave, for paper."""
    rule, width = plan.choices.rule, walls(plan).rough_width.value
    rows = [
        least_strokes(plane, width=width, remove=remove)
        for plane, remove in ((JACK, COARSE), (TRY, MEDIUM), (SMOOTHER, FINE))
    ]
    said = " ".join(row.sentence(rule) for row in rows)
    return Figure(shavings_picture(rows, rule=rule, sentence=said))


def order(plan: Plan, *steps: str) -> TableBlock:
    """The order of work for a side and its tests; a teacher's own ``steps``, or an order's name."""
    rule, side = plan.choices.rule, walls(plan)
    named = ORDERS.get(steps[0]) if len(steps) == 1 else steps
    found = order_of_work(side, order=named or THICKNESS_FIRST)
    rows = tuple(
        (str(number), task.step.name, task.sentence(rule))
        for number, task in enumerate(found.tasks, start=1)
    )
    said = " ".join(row.sentence for row in found.findings if row.level != "good")
    others = f"Another order: {', '.join(repr(name) for name in ORDERS)}, or the steps by name."
    columns = ("step", "name", "what to do")
    title = "Order of work for a side, with its tests"
    return TableBlock(Table(title, columns, rows, note=said or others))


def rough(plan: Plan) -> TableBlock:
    """The rough list beside what the blank's own warp asks for."""
    return TableBlock(rough_table(plan, _own_warp(plan)))


def carry(plan: Plan) -> Sentence:
    """What to carry to the bench: what the blank must give, and the first plane's setting."""
    rule = plan.choices.rule
    stick = stick_of(plan)
    gives = yield_of(_own_warp(plan), stick.thickness)
    strokes = least_strokes(JACK, width=stick.width, remove=COARSE)
    return Sentence.of(
        "Walls' blank ",
        stick.by(rule),
        f"; warped like the one above it gives {rule.exact(round(gives.program, 2))} for walls of ",
        plan.size("side", "finished thickness"),
        f". Jack plane: {strokes.tracks} tracks side by side, each {strokes.overlap:.0%} over the "
        "last. Crosscut first, then plane.",
    )
