"""Lesson 2, the board: how it is bent, what that costs, and what crosscutting first saves."""

from __future__ import annotations

from functools import lru_cache
from typing import Self

from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.scene import Scene, Shown, Tried, numbers
from toolkit.measures import Rule
from toolkit.pictures import Picture, board_inside, face_map
from toolkit.plan import Plan
from toolkit.planes import JACK
from toolkit.results import WALLS, Finding, Part, Table
from toolkit.stock import Purchase, blanks_of, to_buy
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
    safe_thickness,
    stick_reading,
    thickness_from,
)

STICK = 400.0  # winding sticks: common practice, no source [mm]
ALONG, ACROSS = 13, 5  # readings of the scene's face
# The rack's long board as the weekend class found it: invented. [mm]
BOARD = (2000.0, 150.0, 25.0)


def walls(plan: Plan) -> Part:
    """The side of the box, for which the walls' board is made ready. [mm]"""
    return next(part for part in plan.parts if part.name == "side")


def stick_of(plan: Plan) -> Purchase:
    """The rough blank that the walls come from, as it is asked for at the yard. [mm]"""
    parts = [part for part in plan.parts if part.name in WALLS]
    return to_buy(blanks_of(parts), rule=plan.choices.rule)[0]


WARP_CONTROLS = (
    LengthControl(("try.bow",), "bow", 0.0, 5.0, "joints", start=1.5),
    LengthControl(("try.cup",), "cup", 0.0, 2.0, "joints", start=0.5),
    LengthControl(("try.twist",), "twist", 0.0, 5.0, "joints", start=1.3),
    ChoiceControl(("try.up",), "this face is", (("round", 1), ("hollow", -1)), start=1),
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


class WarpedStick(Shown):
    """The walls' rough blank and how it is warped."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        stick = stick_of(self.plan)
        self.thickness = stick.thickness
        bow, cup = (tried["try.up"] * tried[f"try.{bent}"] for bent in ("bow", "cup"))
        self.warp = Warp(stick.length, stick.width, bow=bow, cup=cup, twist=tried["try.twist"])
        self.gives = yield_of(self.warp, self.thickness)
        self.wanted = walls(self.plan).thickness.value

    def picture(self, before: Self | None) -> Picture:
        return face_map(
            planed(self.warp),
            along=ALONG,
            across=ACROSS,
            rule=self.rule,
            shaving=JACK.shaving,
            ghost=planed(before.warp) if before else None,
        )

    def beside(self, before: Self | None) -> tuple[Picture, ...]:
        drawn = board_inside(
            self.warp,
            thickness=self.thickness,
            wanted=self.wanted,
            rule=self.rule,
            sentence=self.gives.sentence(self.rule),
            ghost=before.warp if before else None,
        )
        return (drawn,)

    def verdict(self) -> tuple[Finding, ...]:
        rule, where = self.rule, "walls' blank"
        thick = check_thickness(self.gives, wanted=self.wanted, rule=rule, where=where)
        return thick, check_twist(self.warp, rule=rule, where=where)

    def values(self) -> Table:
        return numbers(_warp_rows(self.warp, self.gives, self.rule))


def _warp_rows(warp: Warp, gives: Yield, rule: Rule) -> tuple[tuple[str, str, str], ...]:
    show, width = rule.exact, warp.width
    reading = stick_reading(warp.twist, stick=STICK, width=width)
    return (
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
            gives.bound.reckoned(rule),
        ),
        ("true thickness by the best plane", show(round(gives.program, 2)), "linear program"),
    )


WARP = Scene("warp", WARP_CONTROLS, WarpedStick, height=440)

sawn_first = lru_cache(maxsize=64)(crosscut_first)
longest_that_will_do = lru_cache(maxsize=64)(longest_piece)

CUT_CONTROLS = (
    LengthControl(("try.cut",), "cut to", 150.0, 2000.0, "rough", start=700.0),
    LengthControl(("try.ripped",), "ripped to", 50.0, 150.0, "rough", start=75.0),
    LengthControl(("try.long_bow",), "bow of the board", 0.0, 20.0, "sizes", start=12.0),
    LengthControl(("try.long_twist",), "its twist", 0.0, 15.0, "sizes", start=8.0),
)


def long_board(bow: float = 12.0, twist: float = 8.0) -> Warp:
    """A long board of the rack, bent so. [mm]"""
    length, width, _ = BOARD
    return Warp(length, width, bow=bow, cup=2.0, twist=twist)


class Crosscut(Shown):
    """The long board, and a piece crosscut and ripped from it before any planing."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        self.whole = long_board(tried["try.long_bow"], tried["try.long_twist"])
        size = {"length": tried["try.cut"], "width": tried["try.ripped"]}
        self.piece = cut_to(self.whole, **size)
        self.saved = sawn_first(self.whole, thickness=BOARD[2], **size)
        self.wanted = walls(self.plan).thickness.value

    def picture(self, before: Self | None) -> Picture:
        return board_inside(
            self.whole,
            piece=self.piece,
            thickness=BOARD[2],
            wanted=self.wanted,
            rule=self.rule,
            sentence=self.saved.sentence(self.rule),
            ghost=before.whole if before and before.whole != self.whole else None,
            ghost_piece=before.piece if before else None,
        )

    def verdict(self) -> tuple[Finding, ...]:
        gives, rule = self.saved.piece, self.rule
        return (check_thickness(gives, wanted=self.wanted, rule=rule, where="piece"),)

    def values(self) -> Table:
        columns = ("what", "whole board", "piece", "how it goes down")
        return numbers(self._rows(), columns=columns, numeric=(1, 2))

    def _rows(self) -> list[tuple[str, str, str, str]]:
        show, whole, piece, saved = self.rule.exact, self.whole, self.piece, self.saved
        rows = [
            (name, show(round(before, 2)), show(round(after, 2)), how)
            for name, before, after, how in (
                ("bow", whole.bow, piece.bow, "with the square of the length"),
                ("cup", whole.cup, piece.cup, "with the square of the width"),
                ("twist", whole.twist, piece.twist, "with length and width"),
                ("true thickness", saved.whole.program, saved.piece.program, "by the best plane"),
            )
        ]
        sizes = {"thickness": BOARD[2], "wanted": self.wanted, "width": piece.width}
        longest = longest_that_will_do(whole, **sizes)
        said = (
            "the longest that still makes the walls" if longest > 1 else "no length makes the walls"
        )
        will_do = show(float(int(longest))) if longest > 1 else "none"
        return [*rows, ("length of piece", "", will_do, said)]


CROSSCUT = Scene("crosscut", CUT_CONTROLS, Crosscut)


def rough_table(plan: Plan, warp: Warp) -> Table:
    """Whether the rough list's thickness does for the walls, by their blank's own warp."""
    rule, rows = plan.choices.rule, []
    for part in plan.parts:
        if part.name in WALLS:
            safe = safe_thickness(part, warp=warp)
            least = rule.show(safe.value, direction="up")
            rows.append((part.name, part.by("rough", rule), least, safe.reckoned(rule)))
    return Table(
        "Is the rough list thick enough for this blank?",
        ("part", "rough list", "this blank needs, thick", "where that comes from"),
        tuple(rows),
        numeric=(1, 2),
    )
