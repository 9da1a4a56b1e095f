"""Rough sizes that follow from the board's own warp rather than from a constant."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.results import Part, Working, above
from toolkit.truing.saving import SAW_MARKS
from toolkit.truing.warp import Warp, cut_to

# Wood that comes off besides the warp: customs, common practice, no source. [mm]
SAW = 2.0  # how far a crosscut or rip may wander, at each end and each edge
SQUARING = 1.0  # planed off each end until it is square, and each edge until it is straight
SMOOTHING = 0.1  # taken off each face by the smoothing plane at the last


@dataclass(frozen=True, slots=True)
class RoughSize:
    """Rough sizes of a part on one board, each with its sum; the thickness is safe. [mm]"""

    length: Working
    width: Working
    thickness: Working


def rough_size(part: Part, *, warp: Warp) -> RoughSize:
    """The rough sizes of a part from a board of a known warp.

    Parameters
    ----------
    part : Part
        Finished sizes; its own rough sizes are not looked at. [mm]
    warp : Warp
        Of the whole board. [mm]

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
    length = Working.of(
        f"{part.name} rough length",
        ("finished length", part.length.value),
        ("where the saw may wander", SAW, 2),
        ("to square an end", SQUARING, 2),
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
        ("where the saw may wander", SAW, 2),
        ("to true an edge", SQUARING, 2),
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
        ("saw marks", SAW_MARKS, 2),
        ("smoothing", SMOOTHING, 2),
        ("bow in the piece", abs(piece.bow)),
        ("cup in the piece", abs(piece.cup)),
        ("half the twist in the piece", abs(piece.twist) / 2),
    )
    return RoughSize(length, wide, thickness)
