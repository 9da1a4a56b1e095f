"""Lesson 2, the board: how it is bent, what that costs, and what crosscutting first saves."""

from __future__ import annotations

from functools import lru_cache
from math import ceil
from typing import Any

from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import worked_out
from toolkit.measures import Rule
from toolkit.pictures import board_inside, face_map
from toolkit.plan import Plan
from toolkit.planes import JACK
from toolkit.results import WALLS, Finding, Part, Table
from toolkit.truing import (
    EYE,
    LeastPlaning,
    Warp,
    Yield,
    check_thickness,
    check_twist,
    crosscut_first,
    cut_to,
    face_of,
    least_planing,
    least_twist,
    longest_piece,
    rough_size,
    stick_reading,
    thickness_from,
)

STICK = 400.0  # winding sticks: common practice, no source [mm]
ALONG, ACROSS = 13, 5  # readings of the scene's face
# The rack's long board as the weekend class found it: invented. [mm]
BOARD = (2000.0, 150.0, 25.0)


def walls(made: Plan) -> Part:
    """The side of the box, for which the walls' board is made ready. [mm]"""
    return next(part for part in made.parts if part.name == "side")


def stick_of(made: Plan) -> tuple[float, float, float]:
    """Length, width and thickness of the rough stick that four walls come from. [mm]"""
    parts = [part for part in made.parts if part.name in WALLS]
    length = sum(part.rough_length.value * part.count for part in parts)
    side = walls(made)
    return 10.0 * ceil(length / 10), side.rough_width.value, side.rough_thickness.value


WARP_CONTROLS = (
    LengthControl(("try.bow",), "bow", 0.0, 5.0, "joints", start=lambda _: 1.5),
    LengthControl(("try.cup",), "cup", 0.0, 2.0, "joints", start=lambda _: 0.5),
    LengthControl(("try.twist",), "twist", 0.0, 5.0, "joints", start=lambda _: 1.3),
    ChoiceControl(
        ("try.up",),
        "this face is",
        (("round", 1), ("hollow", -1)),
        start=lambda _: 1,
    ),
)


def _warp(at: Moment, values: Any) -> Warp:
    length, width, _ = stick_of(worked_out(at.choices))
    up = values["try.up"]
    return Warp(
        length,
        width,
        bow=up * values["try.bow"],
        cup=up * values["try.cup"],
        twist=values["try.twist"],
    )


@lru_cache(maxsize=64)
def planed(warp: Warp) -> LeastPlaning:
    """The least that makes a face true. [mm]"""
    face = face_of(warp, along=ALONG, across=ACROSS)
    return least_planing(x=face.x, y=face.y, height=face.height)


@lru_cache(maxsize=64)
def yield_of(warp: Warp, thickness: float) -> Yield:
    """How thick a true board a warped one gives. [mm]"""
    return thickness_from(warp, thickness=thickness)


def _warped(at: Moment) -> View:
    made, rule = worked_out(at.choices), at.choices.rule
    warp = _warp(at, at.tried)
    _, width, thick = stick_of(made)
    gives = yield_of(warp, thick)
    wanted = walls(made).thickness.value
    found: tuple[Finding, ...] = (
        check_thickness(gives, wanted=wanted, rule=rule, where="walls' stick"),
        check_twist(warp, rule=rule, where="walls' stick"),
    )
    before = _warp(at.first, at.before) if at.moved else None
    picture = face_map(
        planed(warp),
        along=ALONG,
        across=ACROSS,
        rule=rule,
        shaving=JACK.shaving,
        ghost=planed(before) if before else None,
    )
    inside = board_inside(
        warp,
        thickness=thick,
        wanted=wanted,
        rule=rule,
        sentence=gives.sentence(rule),
        ghost=before,
    )
    return View(picture, _warp_table(warp, gives, width, rule), found, (inside,))


def _warp_table(warp: Warp, gives: Yield, width: float, rule: Rule) -> Table:
    show = rule.exact
    reading = stick_reading(warp.twist, stick=STICK, width=width)
    rows = [
        (
            "winding sticks read",
            show(round(reading, 2)),
            f"sticks {show(STICK)} long on {show(width)} show the twist "
            f"{STICK / width:.1f} times as large",
        ),
        (
            "least twist the eye catches",
            show(round(least_twist(stick=STICK, width=width), 3)),
            f"where it sees {show(EYE)} at the sticks' ends",
        ),
        (
            "true thickness at least",
            show(round(gives.bound.value, 2)),
            gives.bound.sentence(rule).partition(" = ")[2],
        ),
        ("true thickness by the best plane", show(round(gives.program, 2)), "linear program"),
    ]
    return Table("Numbers", ("what", "value", "where it comes from"), tuple(rows), numeric=(1,))


WARP = Scene("warp", WARP_CONTROLS, _warped, height=440)

sawn_first = lru_cache(maxsize=64)(crosscut_first)
longest_that_will_do = lru_cache(maxsize=64)(longest_piece)

CUT_CONTROLS = (
    LengthControl(("try.cut",), "cut to", 150.0, 2000.0, "rough", start=lambda _: 700.0),
    LengthControl(("try.ripped",), "ripped to", 50.0, 150.0, "rough", start=lambda _: 75.0),
    LengthControl(("try.long_bow",), "bow of the board", 0.0, 20.0, "sizes", start=lambda _: 12.0),
    LengthControl(("try.long_twist",), "its twist", 0.0, 15.0, "sizes", start=lambda _: 8.0),
)


def long_board(bow: float = 12.0, twist: float = 8.0) -> Warp:
    """A long board of the rack, bent so. [mm]"""
    length, width, _ = BOARD
    return Warp(length, width, bow=bow, cup=2.0, twist=twist)


def _cut(at: Moment) -> View:
    made, rule, tried = worked_out(at.choices), at.choices.rule, at.tried
    whole = long_board(tried["try.long_bow"], tried["try.long_twist"])
    thick, wanted = BOARD[2], walls(made).thickness.value
    length, width = tried["try.cut"], tried["try.ripped"]
    saved = sawn_first(whole, thickness=thick, length=length, width=width)
    piece = cut_to(whole, length=length, width=width)
    ghost = ghost_piece = None
    if at.moved:
        was = at.before
        ghost = long_board(was["try.long_bow"], was["try.long_twist"])
        ghost_piece = cut_to(ghost, length=was["try.cut"], width=was["try.ripped"])
    picture = board_inside(
        whole,
        piece=piece,
        thickness=thick,
        wanted=wanted,
        rule=rule,
        sentence=saved.sentence(rule),
        ghost=ghost if ghost != whole else None,
        ghost_piece=ghost_piece,
    )
    show = rule.exact
    rows = [
        (name, show(round(before, 2)), show(round(after, 2)), how)
        for name, before, after, how in (
            ("bow", whole.bow, piece.bow, "with the square of the length"),
            ("cup", whole.cup, piece.cup, "with the square of the width"),
            ("twist", whole.twist, piece.twist, "with length and width"),
            ("true thickness", saved.whole.program, saved.piece.program, "by the best plane"),
        )
    ]
    longest = longest_that_will_do(whole, thickness=thick, wanted=wanted, width=width)
    said = "the longest that still makes the walls" if longest > 1 else "no length makes the walls"
    rows.append(("length of piece", "", show(float(int(longest))) if longest > 1 else "none", said))
    found = (check_thickness(saved.piece, wanted=wanted, rule=rule, where="piece"),)
    columns = ("what", "whole board", "piece", "how it goes down")
    return View(picture, Table("Numbers", columns, tuple(rows), numeric=(1, 2)), found)


CROSSCUT = Scene("crosscut", CUT_CONTROLS, _cut)


def rough_table(made: Plan, warp: Warp) -> Table:
    """Rough sizes of the walls that follow from their stick's own warp."""
    rule = made.choices.rule
    rows = []
    for part in made.parts:
        if part.name not in WALLS:
            continue
        rough = rough_size(part, warp=warp)
        rows.append(
            (
                part.name,
                *(
                    rule.show(size.value, fineness="sizes", direction="up", unit=False)
                    for size in (rough.length, rough.width, rough.thickness)
                ),
                rough.thickness.sentence(rule).partition(" = ")[2],
            )
        )
    return Table(
        f"Rough sizes of the walls from this stick ({rule.units})",
        ("part", "length", "width", "thickness", "where the thickness comes from"),
        tuple(rows),
        numeric=(1, 2, 3),
    )
