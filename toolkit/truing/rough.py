"""Rough sizes that follow from the board's own warp rather than from a constant."""

from __future__ import annotations

from dataclasses import dataclass, fields

from toolkit.results import Part, Working, above
from toolkit.results.refusals import above_zero, not_negative
from toolkit.truing.saving import SAW_MARKS
from toolkit.truing.warp import Warp, cut_to


@dataclass(frozen=True, slots=True)
class RoughAllowances:
    """Wood that comes off besides the warp: customs, common practice, no source. [mm]"""

    saw: float = 2.0  # how far a crosscut or rip may wander, at each end and each edge
    end: float = 1.0  # planed off each end until it is square
    edge: float = 1.0  # planed off each edge until it is straight
    saw_marks: float = SAW_MARKS
    smoothing: float = 0.1  # taken off each face by the smoothing plane at the last

    def __post_init__(self) -> None:
        """An allowance below nothing would hide a mistake."""
        for spec in fields(self):
            not_negative(getattr(self, spec.name), name=spec.name, example="1")


@dataclass(frozen=True, slots=True)
class RoughSize:
    """Rough sizes of a part on one board, each with its sum; the thickness is safe. [mm]"""

    length: Working
    width: Working
    thickness: Working


def rough_size(part: Part, *, warp: Warp, allowances: RoughAllowances | None = None) -> RoughSize:
    """The rough sizes of a part from a board of a known warp.

    Parameters
    ----------
    part : Part
        Finished sizes; its own rough sizes are not looked at. [mm]
    warp : Warp
        Of the whole board. [mm]
    allowances : RoughAllowances or None
        For what comes off besides. [mm]

    Returns
    -------
    RoughSize
        Each size as a sum. [mm]

    Raises
    ------
    ValueError
        The rough piece is longer or wider than the board.

    Source
    ------
    Geometry: the warp of the piece by ``cut_to``; bow, cup and half the twist are planed off the
    thickness, the crook off the width. The rest are customs: common practice, no source.
    """
    extra = allowances or RoughAllowances()
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
    wide = Working.of(
        f"{part.name} rough width",
        ("finished width", part.width.value),
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
    return RoughSize(length, wide, thickness)
