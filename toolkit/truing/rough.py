"""Rough sizes that follow from the board's own warp rather than from a constant."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from toolkit.results import Part, Working, above
from toolkit.truing._checks import above_zero, not_negative
from toolkit.truing.saving import thickness_from
from toolkit.truing.warp import Warp, cut_to

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class Allowances:
    """What comes off besides the warp: customs, common practice, no source.

    Parameters
    ----------
    saw : float
        How far a crosscut or rip may wander, at each end and each edge. [mm]
    end : float
        Planed off each end until it is square. [mm]
    edge : float
        Planed off each edge until it is straight. [mm]
    saw_marks : float
        Planed off each face until it is clean. [mm]
    smoothing : float
        Taken off each face by the smoothing plane at the last. [mm]

    Raises
    ------
    ValueError
        One of them is below 0.
    """

    saw: float = 2.0
    end: float = 1.0
    edge: float = 1.0
    saw_marks: float = 0.5
    smoothing: float = 0.1

    def __post_init__(self) -> None:
        """An allowance below nothing would hide a mistake."""
        for name in ("saw", "end", "edge", "saw_marks", "smoothing"):
            not_negative(getattr(self, name), name=name, example="1")


@dataclass(frozen=True, slots=True)
class RoughSize:
    """A part's rough sizes on one board.

    Attributes
    ----------
    part : str
        Its name.
    length, width, thickness : Working
        What to saw, each with its sum; the thickness by the sum on paper, which is safe. [mm]
    warp : Warp
        That is left in the rough piece. [mm]
    flattening : float
        What the warp really costs, by the program; never more than the sum says. [mm]
    """

    part: str
    length: Working
    width: Working
    thickness: Working
    warp: Warp
    flattening: float

    @property
    def least_thickness(self) -> float:
        """The thinnest board that gives the part, if every plane stroke is well placed. [mm]"""
        paper = abs(self.warp.bow) + abs(self.warp.cup) + abs(self.warp.twist) / 2
        return self.thickness.value - paper + self.flattening

    def sentence(self, rule: Rule) -> str:
        """The rough sizes in words."""
        long, wide = (
            rule.show(row.value, fineness="rough", direction="up", unit=False)
            for row in (self.length, self.width)
        )
        thick = rule.show(self.thickness.value, fineness="sizes", direction="up", unit=False)
        return (
            f"{self.part}: saw {long} × {wide} × {thick} {rule.units}; a board of "
            f"{rule.exact(self.least_thickness)} would just do."
        )

    def fits(self, thickness: float) -> bool:
        """Whether a board so thick is thick enough by the sum on paper. [mm]"""
        return not above(self.thickness.value, thickness)


def rough_size(
    part: Part,
    *,
    warp: Warp,
    allowances: Allowances | None = None,
    width: float | None = None,
) -> RoughSize:
    """What to saw for a part from a board of a known warp.

    Parameters
    ----------
    part : Part
        Finished sizes; its own rough sizes are not looked at. [mm]
    warp : Warp
        Of the whole board. [mm]
    allowances : Allowances or None
        What comes off besides; left out, the workbook's own. [mm]
    width : float or None
        To which it is planed first, when that is more than its finished width: a low front is
        planed as high as the walls and ripped after ploughing. [mm]

    Returns
    -------
    RoughSize
        Each size as a sum, and the warp left in the piece. [mm]

    Raises
    ------
    ValueError
        The rough piece is longer or wider than the board.

    Source
    ------
    Geometry: the warp of the piece by ``cut_to``; bow, cup and half the twist are planed off the
    thickness, the crook off the width. The rest are customs: common practice, no source.
    """
    extra = allowances or Allowances()
    for size in part.finished:
        above_zero(size.value, name=size.name, example="186")
    length = Working.of(
        f"{part.name} rough length",
        ("finished length", part.length.value),
        ("where the saw may wander", extra.saw, 2),
        ("to square an end", extra.end, 2),
    )
    board = f"this board of {warp.length:g} × {warp.width:g} mm"
    if above(length.value, warp.length):
        raise ValueError(
            f"{part.name}: it is sawn {length.value:g} mm long, longer than {board}; choose a "
            "longer one"
        )
    crook = warp.crook * (length.value / warp.length) ** 2
    first = (
        ("finished width", part.width.value)
        if width is None
        else ("width planed first", above_zero(width, name="width", example="64"))
    )
    wide = Working.of(
        f"{part.name} rough width",
        first,
        ("where the saw may wander", extra.saw, 2),
        ("to true an edge", extra.edge, 2),
        ("crook in the piece", abs(crook)),
    )
    if above(wide.value, warp.width):
        raise ValueError(
            f"{part.name}: it is sawn {wide.value:.4g} mm wide, wider than {board}; choose a "
            "wider one, or saw nearer to the line"
        )
    piece = cut_to(warp, length=length.value, width=wide.value)
    thickness = Working.of(
        f"{part.name} rough thickness",
        ("finished thickness", part.thickness.value),
        ("saw marks", extra.saw_marks, 2),
        ("smoothing", extra.smoothing, 2),
        ("bow in the piece", abs(piece.bow)),
        ("cup in the piece", abs(piece.cup)),
        ("half the twist in the piece", abs(piece.twist) / 2),
    )
    flat = thickness_from(piece, thickness=thickness.value, saw_marks=extra.saw_marks)
    return RoughSize(part.name, length, wide, thickness, piece, flat.flattening)
