"""The saving of crosscutting first: how thick a true board comes out of a warped one, whole or cut.

Two answers stand side by side. The sum on paper takes cup, bow and half the twist off the
thickness: it is safe, and can be done at the bench. The program finds the plane that really
wastes least; with twist beside bow or cup it leaves more.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from toolkit.results import Part, Working, above, above_zero, not_negative
from toolkit.truing.flattest import least_planing
from toolkit.truing.warp import Warp, cut_to, face_of

if TYPE_CHECKING:
    from toolkit.measures import Rule


SAW_MARKS = 0.5  # custom, no source: planed off each sawn face before it is clean [mm]

# Readings along and across for the program: so many that the thickness is right to a hundredth
# of the warp.
FINE = (41, 21)


@dataclass(frozen=True, slots=True)
class Yield:
    """The true board that a warped one gives. [mm]"""

    warp: Warp
    thickness: float  # of the rough board
    saw_marks: float  # planed off each face besides the warp
    flattening: float  # the cost of the warp by the program

    @property
    def bound(self) -> Working:
        """The sum on paper; safe, for the real answer is never less. [mm]"""
        return Working.of(
            "true thickness at least",
            ("rough thickness", self.thickness),
            ("bow", -abs(self.warp.bow)),
            ("cup", -abs(self.warp.cup)),
            ("half the twist", -abs(self.warp.twist) / 2),
            ("saw marks", self.saw_marks, -2),
        )

    @property
    def program(self) -> float:
        """The thickness that the best plane leaves, 0 or less with more warp than wood. [mm]"""
        return self.thickness - self.flattening - 2 * self.saw_marks

    def sentence(self, rule: Rule) -> str:
        """Both answers in words."""
        size = f"{rule.exact(self.warp.length)} × {rule.exact(self.warp.width)}"
        if self.program <= 0:
            return (
                f"At {size} nothing is left: flattening takes {rule.exact(self.flattening)} and "
                f"saw marks {rule.exact(2 * self.saw_marks)} of {rule.exact(self.thickness)}."
            )
        paper = (
            f"the sum on paper promises {rule.exact(self.bound.value)}"
            if self.bound.value > 0
            else "the sum on paper promises nothing"
        )
        return f"At {size} the board gives {rule.exact(self.program)}; {paper}."


def thickness_from(warp: Warp, *, thickness: float, saw_marks: float = SAW_MARKS) -> Yield:
    """How thick a true board can be planed out of a warped one of even thickness.

    Parameters
    ----------
    warp : Warp
        The board's. [mm]
    thickness : float
        Of the rough board. [mm]
    saw_marks : float
        Planed off each face besides, until it is clean. [mm]

    Returns
    -------
    Yield
        By the sum on paper and by the program. [mm]

    Raises
    ------
    ValueError
        The thickness is not above 0, or the saw marks are below 0.

    Source
    ------
    Geometry: the sum adds up the worst of each; the program is ``least_planing`` on a fine grid.
    Saw marks are a custom: common practice, no source.

    >>> left = thickness_from(Warp(2000, 150, bow=12, cup=2, twist=8), thickness=25, saw_marks=0)
    >>> left.bound.value, round(left.program, 1)
    (7.0, 9.0)
    """
    above_zero(thickness, name="thickness", example="16")
    not_negative(saw_marks, name="saw_marks", example=f"{SAW_MARKS:g}")
    face = face_of(warp, along=FINE[0], across=FINE[1])
    shallow = least_planing(x=face.x, y=face.y, height=face.height)
    return Yield(warp, float(thickness), float(saw_marks), shallow.deepest)


@dataclass(frozen=True, slots=True)
class CrosscutFirst:
    """One board flattened whole, and flattened after a piece was sawn from it."""

    whole: Yield
    piece: Yield

    @property
    def saved(self) -> float:
        """Thickness that sawing first saves, by the program. [mm]"""
        return self.whole.flattening - self.piece.flattening

    def sentence(self, rule: Rule) -> str:
        """The saving in words."""
        piece = self.piece.sentence(rule)
        return (
            f"{self.whole.sentence(rule)} Saw first: {piece[:1].lower()}{piece[1:]} Sawing first "
            f"saves {rule.exact(self.saved)} of planing and of thickness."
        )


def crosscut_first(
    warp: Warp,
    *,
    thickness: float,
    length: float,
    width: float | None = None,
    saw_marks: float = SAW_MARKS,
) -> CrosscutFirst:
    """The thickness that is saved by sawing a piece from a board before flattening it. [mm]"""
    piece = cut_to(warp, length=length, width=width)
    return CrosscutFirst(
        whole=thickness_from(warp, thickness=thickness, saw_marks=saw_marks),
        piece=thickness_from(piece, thickness=thickness, saw_marks=saw_marks),
    )


def longest_piece(
    warp: Warp,
    *,
    thickness: float,
    wanted: float,
    width: float | None = None,
    saw_marks: float = SAW_MARKS,
) -> float:
    """The longest piece of a board that still gives the thickness wanted; 0 where none does. [mm]

    Warp grows with length, so halving the doubt finds where it is too much.
    """
    above_zero(wanted, name="wanted", example="12")
    least, most = 1.0, warp.length

    def gives(length: float) -> bool:
        piece = cut_to(warp, length=length, width=width)
        left = thickness_from(piece, thickness=thickness, saw_marks=saw_marks)
        return not above(wanted, left.program)

    if not gives(least):
        return 0.0
    if gives(most):
        return most
    while most - least > 1.0:
        middle = (least + most) / 2
        least, most = (middle, most) if gives(middle) else (least, middle)
    return least


# Wood that comes off besides the warp: customs, common practice, no source. [mm]
SMOOTHING = 0.1  # taken off each face by the smoothing plane at the last


def safe_thickness(part: Part, *, warp: Warp) -> Working:
    """How thick the rough piece of a part must be, on a board of a known warp, as a sum. [mm]

    The warp of the piece by ``cut_to``: bow, cup and half the twist are planed off. The rest are
    customs: common practice, no source.
    """
    length, width = part.rough_length.value, part.rough_width.value
    board = f"this board of {warp.length:g} × {warp.width:g} mm"
    for size, most, long, longer in (
        (length, warp.length, "long", "longer"),
        (width, warp.width, "wide", "wider"),
    ):
        if above(size, most):
            raise ValueError(
                f"{part.name}: it is sawn {size:g} mm {long}, {longer} than {board}; choose a "
                f"{longer} one"
            )
    piece = cut_to(warp, length=length, width=width)
    return Working.of(
        f"{part.name} rough thickness",
        ("finished thickness", part.thickness.value),
        ("saw marks", SAW_MARKS, 2),
        ("smoothing", SMOOTHING, 2),
        ("bow in the piece", abs(piece.bow)),
        ("cup in the piece", abs(piece.cup)),
        ("half the twist in the piece", abs(piece.twist) / 2),
    )
