"""Lesson 5, what its cells show of a plan: the surface and its finish."""

from __future__ import annotations

from functools import lru_cache
from typing import Self

from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.controls import ChoiceControl, NumberControl
from toolkit.lesson.lesson5_box import FINISH, FIT, SKIM, finish_table
from toolkit.lesson.scene import ImpossibleError, Scene, Shown, Tried, numbers
from toolkit.measures import MM_PER_INCH, Rule
from toolkit.pictures import Picture, iron_picture, raking_light
from toolkit.plan import Plan, flushed
from toolkit.planes import SMOOTHER, Plane, Surface, camber_radius, planed
from toolkit.results import Finding, Table
from toolkit.smoothing import check_plane, setbacks, shadow_length, what_shows, where_to_start

# How a beginner's tracks stray; invented for the picture. [mm, %]
SCATTER, DEPTH_SCATTER = 2.0, 12.0

LIGHT_CONTROLS = (
    NumberControl(("try.camber",), "camber of the iron", 0.02, 0.4, 0.02, "mm", start=0.06),
    NumberControl(("try.shaving",), "shaving", 0.01, 0.2, 0.01, "mm", start=0.03),
    NumberControl(("try.overlap",), "overlap", 0, 80, 4, "%", start=40),
    NumberControl(("try.lamp",), "lamp height", 1, 45, 1, "°", start=5),
)


@lru_cache(maxsize=48)
def surface_of(plane: Plane) -> Surface:
    """What it leaves on the wood, stroke by stroke. [mm]"""
    return planed(plane, scatter=SCATTER, depth_scatter=DEPTH_SCATTER)


class Lit(Shown):
    """A planed surface under a lamp."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        self.lamp = tried["try.lamp"]
        self.plane = SMOOTHER.having(
            camber_radius=camber_radius(tried["try.camber"], width=SMOOTHER.iron_width),
            shaving=tried["try.shaving"],
            overlap=tried["try.overlap"],
        )

    def picture(self, before: Self | None) -> Picture:
        ghost = surface_of(before.plane) if before and before.plane != self.plane else None
        surface = surface_of(self.plane)
        return raking_light(surface, lamp_height=self.lamp, rule=self.rule, ghost=ghost)

    def verdict(self) -> tuple[Finding, ...]:
        return check_plane(self.plane, rule=self.rule)

    def values(self) -> Table:
        return numbers(_light_rows(self.plane, self.lamp, self.rule))


def _light_rows(plane: Plane, lamp: float, rule: Rule) -> tuple[tuple[str, str, str], ...]:
    s, surface = plane.scallops, surface_of(plane)
    shows = what_shows(lamp, ridge=s.depth, slope=s.steepest, step=plane.corner_depth)
    return (
        ("width of the shaving", rule.exact(round(plane.shaving_width, 1)), "arc of the camber"),
        ("from track to track", rule.exact(round(plane.pitch, 1)), "less the overlap"),
        ("ridges between tracks", rule.fine(s.depth), "step squared over eight radii"),
        (
            "Ra and Rz of the tracks",
            f"{rule.roughness(s.ra)} and {rule.roughness(s.rz)}",
            "shallow arcs, laid evenly",
        ),
        (
            "Ra and Rz in the picture",
            f"{rule.roughness(surface.ra)} and {rule.roughness(surface.rz)}",
            f"a hand's tracks stray by about {rule.exact(SCATTER)} and {DEPTH_SCATTER:g} % in "
            "depth, so that some ridges are wide and others gone",
        ),
        ("corners of the iron dig", rule.fine(plane.corner_depth), "where camber is too little"),
        ("what shows", "", shows.sentence(rule)),
    )


LIGHT = Scene("light", LIGHT_CONTROLS, Lit, height=640)

_LIKE_THIS = ("smoother", "awkward grain")  # what the cap iron is set back for
SETBACK = 0.8  # of the cap iron, as a student finds it on the bench [mm]
_BED = NumberControl(("try.bed",), "bed angle", 12, 60, 1, "°", start=45)
EDGE_CONTROLS = (
    _BED,
    NumberControl(("try.honed",), "honed bevel", 20, 45, 1, "°", start=30),
    NumberControl(("try.back",), "back bevel", 0, 30, 1, "°", start=0),
    ChoiceControl(("try.bevel",), "bevel", ("down", "up"), start="down"),
)
CAP_CONTROLS = (
    _BED,
    NumberControl(("try.setback",), "cap iron set back", 0.1, 3.0, 0.1, "mm", start=SETBACK),
    NumberControl(("try.skew",), "skew", 0, 45, 5, "°", start=0),
)


def _plane(values: Tried) -> Plane:
    """A plane as the sliders of either scene have it; what the other sets stays as found."""
    bevel = values.get("try.bevel", "down")
    try:
        return SMOOTHER.having(
            bed=values["try.bed"],
            bevel=bevel,
            honed_bevel=values.get("try.honed", 30),
            back_bevel=values.get("try.back", 0),
            setback=None if bevel == "up" else values.get("try.setback", SETBACK),
            skew=values.get("try.skew", 0),
        )
    except ValueError as error:
        raise ImpossibleError(str(error), there_is="No such plane.") from error


class Cutting(Shown):
    """The edge of a plane in the wood."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        self.plane = _plane(tried)

    def picture(self, before: Self | None) -> Picture:
        return iron_picture(self.plane, rule=self.rule, ghost=before.plane if before else None)

    def values(self) -> Table:
        plane, turned = self.plane, self.plane.turned
        rows = [("cutting angle", f"{plane.cutting.angle:.3g}°", plane.cutting.sentence())]
        if "try.skew" in self.tried:
            rows += [
                (
                    "skewed",
                    f"{turned.up_the_iron:.1f}°",
                    "sin e = sin p × cos s, up the iron (a book on wooden planes); along the "
                    f"travel tan e = tan p × cos s gives {turned.along_the_travel:.1f}°",
                ),
                (
                    "width of cut",
                    f"{100 * turned.width_share:.0f} %",
                    "of the iron's width: × cos s, s being the skew",
                ),
            ]
        if "try.setback" in self.tried:
            read = [row for row in setbacks() if row.source.seen == "read"]
            said = [row.sentence(self.rule) for row in read if row.plane in _LIKE_THIS]
            rows.append(("what is in print of it", "", "; ".join(said)))
        return numbers(rows)

    def verdict(self) -> tuple[Finding, ...]:
        return check_plane(self.plane, rule=self.rule, grain="curly")


EDGE = Scene("edge", EDGE_CONTROLS, Cutting)
CAP = Scene("cap", CAP_CONTROLS, Cutting)


HINT = "with its unit: 1 mm, 1/32 in"
SCENES = {
    "light": LIGHT,
    "edge": EDGE,
    "cap_iron": CAP,
    "skim": SKIM,
    "fit": FIT,
    "finishes": FINISH,
}

# A plane track, and a lamp low over the bench. [mm, degrees]
STEPS, LAMP = {"mm": 0.02, "in": MM_PER_INCH / 1000}, 5.0


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    rule = plan.choices.rule
    step = STEPS[rule.units]
    low, high = (rule.fine(shadow_length(step, lamp_height=lamp)) for lamp in (LAMP, 45.0))
    return Sentence(
        f"{rule.fine(step)} ÷ tan {LAMP:g}° = {low}; from 45° it would be {high}, and nobody "
        "would see it."
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
    """What to carry to the bench: what flushing leaves of the walls, and what to write down."""
    rule, d = plan.choices.rule, plan.design
    left = flushed(plan)
    lap = " Lap after flushing: ______." if d.choices.corner.joint == "half-blind" else ""
    play = " Play of the lid: ______." if d.sliding_lid is not None else ""
    return Sentence(f"Off each outside face {rule.exact(left.skim)}: {left.sentence}{lap}{play}")
