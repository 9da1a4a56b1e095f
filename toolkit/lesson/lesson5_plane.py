"""Lesson 5, the plane: its tracks in raking light, and how its edge meets the wood."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from toolkit.lesson.controls import ChoiceControl, NumberControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import ImpossibleError, View
from toolkit.measures import Rule
from toolkit.pictures import iron_picture, raking_light
from toolkit.planes import SMOOTHER, Plane, Surface, camber_radius, planed
from toolkit.results import Table
from toolkit.smoothing import check_plane, setbacks, what_shows

# How a beginner's tracks stray; invented for the picture. [mm, %]
SCATTER, DEPTH_SCATTER = 2.0, 12.0

LIGHT_CONTROLS = (
    NumberControl(("try.camber",), "camber over 50 mm", 0.02, 0.4, 0.02, "mm", lambda _: 0.06),
    NumberControl(("try.shaving",), "shaving", 0.01, 0.2, 0.01, "mm", lambda _: 0.03),
    NumberControl(("try.overlap",), "overlap", 0, 80, 4, "%", lambda _: 40),
    NumberControl(("try.lamp",), "lamp height", 1, 45, 1, "°", lambda _: 5),
)


def smoother(values: Any) -> Plane:
    """The smoothing plane as the sliders have it. [mm]"""
    return SMOOTHER.having(
        camber_radius=camber_radius(values["try.camber"], width=SMOOTHER.iron_width),
        shaving=values["try.shaving"],
        overlap=values["try.overlap"],
    )


@lru_cache(maxsize=48)
def surface_of(plane: Plane) -> Surface:
    """What it leaves on the wood, stroke by stroke. [mm]"""
    return planed(plane, scatter=SCATTER, depth_scatter=DEPTH_SCATTER)


def _light(at: Moment) -> View:
    rule, lamp = at.choices.rule, at.tried["try.lamp"]
    plane = smoother(at.tried)
    surface = surface_of(plane)
    ghost = surface_of(smoother(at.before)) if plane != smoother(at.before) else None
    picture = raking_light(surface, lamp_height=lamp, rule=rule, ghost=ghost)
    return View(picture, _numbers(plane, surface, lamp, rule), check_plane(plane, rule=rule))


def _numbers(plane: Plane, surface: Surface, lamp: float, rule: Rule) -> Table:
    s = plane.scallops
    shows = what_shows(lamp, ridge=s.depth, slope=s.steepest, step=plane.corner_depth)
    rows = (
        ("width of the shaving", rule.exact(round(plane.shaving_width, 1)), "arc of the camber"),
        ("from track to track", rule.exact(round(plane.pitch, 1)), "less the overlap"),
        ("ridges between tracks", f"{s.depth:.3f} mm", "step squared over eight radii"),
        (
            "Ra and Rz of the tracks",
            f"{s.ra * 1000:.1f} and {s.rz * 1000:.1f} µm",
            "shallow arcs, laid evenly",
        ),
        (
            "Ra and Rz in the picture",
            f"{surface.ra * 1000:.1f} and {surface.rz * 1000:.1f} µm",
            f"a hand's tracks stray by about {rule.exact(SCATTER)} and {DEPTH_SCATTER:g} % in "
            "depth, so that some ridges are wide and others gone",
        ),
        ("corners of the iron dig", f"{plane.corner_depth:.3f} mm", "where camber is too little"),
        ("what shows", "", shows.sentence(rule)),
    )
    return Table("Numbers", ("what", "value", "where it comes from"), rows, numeric=(1,))


LIGHT = Scene("light", LIGHT_CONTROLS, _light, height=640)

_LIKE_THIS = ("smoother", "awkward grain")  # what the cap iron is set back for
SETBACK = 0.8  # of the cap iron, as a student finds it on the bench [mm]
_BED = NumberControl(("try.bed",), "bed angle", 12, 60, 1, "°", lambda _: 45)
EDGE_CONTROLS = (
    _BED,
    NumberControl(("try.honed",), "honed bevel", 20, 45, 1, "°", lambda _: 30),
    NumberControl(("try.back",), "back bevel", 0, 30, 1, "°", lambda _: 0),
    ChoiceControl(
        ("try.bevel",), "bevel", (("down", "down"), ("up", "up")), start=lambda _: "down"
    ),
)
CAP_CONTROLS = (
    _BED,
    NumberControl(("try.setback",), "cap iron set back", 0.1, 3.0, 0.1, "mm", lambda _: SETBACK),
    NumberControl(("try.skew",), "skew", 0, 45, 5, "°", lambda _: 0),
)


def _plane(values: Any) -> Plane:
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


def _edge(at: Moment) -> View:
    plane = _plane(at.tried)
    ghost = _plane(at.before) if at.moved else None
    rule = at.choices.rule
    turned = plane.turned
    rows = [("cutting angle", f"{plane.cutting.angle:.3g}°", plane.cutting.sentence())]
    if "try.skew" in at.tried:
        rows += [
            (
                "skewed",
                f"{turned.up_the_iron:.1f}°",
                "sin e = sin p × cos s, up the iron (a book on wooden planes); along the travel "
                f"tan e = tan p × cos s gives {turned.along_the_travel:.1f}°",
            ),
            (
                "width of cut",
                f"{100 * turned.width_share:.0f} %",
                "of the iron's width: × cos s, s being the skew",
            ),
        ]
    if "try.setback" in at.tried:
        read = [row for row in setbacks() if row.source.seen == "read"]
        said = [row.sentence(rule) for row in read if row.plane in _LIKE_THIS]
        rows.append(("what is in print of it", "", "; ".join(said)))
    table = Table("Numbers", ("what", "value", "where it comes from"), tuple(rows), numeric=(1,))
    found = check_plane(plane, rule=rule, grain="curly")
    return View(iron_picture(plane, rule=rule, ghost=ghost), table, found)


EDGE = Scene("edge", EDGE_CONTROLS, _edge)
CAP = Scene("cap", CAP_CONTROLS, _edge)
