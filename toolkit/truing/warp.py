"""A board's warp in the words of the bench: bow, cup, twist and crook; and the face it makes.

A warped board is taken to be bent evenly: its bow is an arc along the length, its cup an arc
across the width, its twist a steady turning from end to end. Then a shorter or narrower piece
of it has less of each, and how much less is known before the saw is picked up.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.results import above, above_zero, finite

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from toolkit.measures import Rule

    Numbers = NDArray[np.float64]

# A warp of less than this shows on no rule and is left unsaid. [mm]
NO_WARP = 0.005


@dataclass(frozen=True, slots=True)
class Warp:
    """How a board is bent, its upper face seen from above, left to right along the bench.

    Parameters
    ----------
    length, width : float
        Of the board. [mm]
    bow : float
        How far the middle of the face stands above its two ends: positive round, negative
        hollow. [mm]
    cup : float
        How far the middle stands above the two edges, in the same way. [mm]
    twist : float
        How far the fourth corner lies off the plane of the other three: positive when the left
        near and the right far corner are high, negative when the other two are. [mm]
    crook : float
        How far the edges are bent, in the plane of the face. [mm]
    """

    length: float
    width: float
    bow: float = 0.0
    cup: float = 0.0
    twist: float = 0.0
    crook: float = 0.0

    def __post_init__(self) -> None:
        """Refuse what no board can be."""
        above_zero(self.length, name="length", example="700")
        above_zero(self.width, name="width", example="72")
        for name in ("bow", "cup", "twist", "crook"):
            finite(getattr(self, name), name=name, example="1.5, or 0 for none")

    @property
    def high_corners(self) -> tuple[str, ...]:
        """The two corners that stand high, none when there is no twist."""
        if abs(self.twist) < NO_WARP:
            return ()
        return ("left near", "right far") if self.twist > 0 else ("left far", "right near")

    def sentence(self, rule: Rule) -> str:
        """The warp in words."""
        size = f"Over {rule.exact(self.length)} × {rule.exact(self.width)}"
        said = []
        for name, value, way in (("bowed", self.bow, "along"), ("cupped", self.cup, "across")):
            if abs(value) >= NO_WARP:
                said.append(f"{name} {rule.exact(abs(value))}, {_side(value)} {way} the upper face")
        if self.high_corners:
            said.append(
                f"twisted {rule.exact(abs(self.twist))}, high at the "
                f"{' and '.join(self.high_corners)} corners"
            )
        if abs(self.crook) >= NO_WARP:
            said.append(f"crooked {rule.exact(abs(self.crook))} along its edges")
        return f"{size} the board is {'; '.join(said) or 'straight, flat and out of winding'}."


def _side(value: float) -> str:
    return "round" if value > 0 else "hollow"


@dataclass(frozen=True, slots=True, eq=False)
class FaceGrid:
    """Heights of one face, or of both, on a grid of readings.

    Attributes
    ----------
    x, y : array
        Where each reading lies; x changes slowest. [mm]
    height : array
        Of the face above the level of its middle line. [mm]
    bottom : array
        Of the other face, the board's thickness below. [mm]
    along, across : int
        How many readings along and across: ``height.reshape(along, across)`` is the grid. [1]
    """

    x: Numbers
    y: Numbers
    height: Numbers
    bottom: Numbers
    along: int
    across: int


def face_of(warp: Warp, *, thickness: float = 0.0, along: int = 13, across: int = 5) -> FaceGrid:
    """The face that a warp makes, as if it had been read on a grid: arcs as parabolas. [mm]

    The other face lies ``thickness`` below. Odd numbers of readings hold the middle.
    """
    lines = np.linspace(0.0, warp.length, along), np.linspace(0.0, warp.width, across)
    x, y = (grid.ravel() for grid in np.meshgrid(*lines, indexing="ij"))
    bow, cup, twist = shapes(x / warp.length, y / warp.width)
    height = warp.bow * bow + warp.cup * cup + warp.twist * twist
    return FaceGrid(x, y, height, height - thickness, along, across)


def shapes(u: Numbers, v: Numbers) -> tuple[Numbers, Numbers, Numbers]:
    """A bow, a cup and a twist of one, at shares of the length and of the width."""
    bow: Numbers = 1 - (2 * u - 1) ** 2
    cup: Numbers = 1 - (2 * v - 1) ** 2
    twist: Numbers = (u - 0.5) * (v - 0.5)
    return bow, cup, twist


def cut_to(warp: Warp, *, length: float | None = None, width: float | None = None) -> Warp:
    """The warp that is left in a piece sawn from a board.

    Parameters
    ----------
    warp : Warp
        The board's. [mm]
    length, width : float or None
        Of the piece; left out, the board's own. [mm]

    Returns
    -------
    Warp
        The piece's, wherever it lay in the board. [mm]

    Raises
    ------
    ValueError
        The piece is longer or wider than the board, or has no size.

    Source
    ------
    Geometry of even bending: bow and crook go with the square of the length, cup with the square
    of the width, twist with length times width.

    >>> round(cut_to(Warp(2000, 150, bow=12), length=700).bow, 2)
    1.47
    """
    shares = []
    for name, size, board in (("length", length, warp.length), ("width", width, warp.width)):
        wanted = board if size is None else above_zero(size, name=name, example=f"{board / 2:g}")
        if above(wanted, board):
            raise ValueError(
                f"a piece with a {name} of {wanted:g} mm was asked of a board of {board:g} mm; "
                f"give {board:g} mm or less"
            )
        shares.append(wanted / board)
    long, wide = shares
    return Warp(
        length=warp.length * long,
        width=warp.width * wide,
        bow=warp.bow * long**2,
        cup=warp.cup * wide**2,
        twist=warp.twist * long * wide,
        crook=warp.crook * long**2,
    )
