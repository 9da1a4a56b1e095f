"""How much wood: cubic metres, and board feet as a hardwood yard counts them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, floor, isclose, isfinite

from toolkit.measures import MM_PER_INCH, convert
from toolkit.results import TOLERANCE
from toolkit.stock.boards import Board
from toolkit.stock.sizes import counted_thickness

MM_PER_FOOT = 12 * MM_PER_INCH
SPARE = 0.25  # custom, no source: share of spare sets


@dataclass(frozen=True, slots=True)
class BoardFeet:
    """One board as a hardwood yard counts it.

    ``raw`` is its surface measure before rounding and ``surface`` after it [ft²]; ``width`` [in],
    ``length`` [ft] and ``thickness`` [in] are those that counted. ``half`` says that ``raw`` is
    an exact half: such boards go up and down in turn, and this one went up or down as told.
    """

    width: float
    length: int
    thickness: float
    raw: float
    surface: int
    half: bool

    @property
    def board_feet(self) -> float:
        """Rounded surface measure times counted thickness. [board feet]"""
        return self.surface * self.thickness

    @property
    def sentence(self) -> str:
        """The count in words."""
        turn = ", an exact half, rounded up and down in turn" if self.half else ""
        return (
            f"{self.width:.4g} in × {self.length} ft / 12 = {self.raw:.3g} ft²{turn}; "
            f"counted as {self.surface} ft² × {self.thickness:g} in = {self.board_feet:g} board "
            "feet."
        )


def board_feet(
    length: float,
    *,
    width: float,
    thickness: float,
    half_up: bool = True,
) -> BoardFeet:
    """Board feet of one board as a hardwood yard counts them.

    Parameters
    ----------
    length : float
        Of the board; its fraction of a foot is dropped. [mm]
    width : float
        Of the board. [mm]
    thickness : float
        As measured; under an inch counts as an inch. [mm]
    half_up : bool
        Whether a surface measure of exactly so many and a half goes up this time.

    Returns
    -------
    BoardFeet
        The count and how it came about. [board feet]

    Raises
    ------
    ValueError
        A size is not above 0.

    Source
    ------
    NHLA rules: surface measure = width in inches × whole feet of length / 12, to the nearest
    whole, exact halves up and down in turn; times the thickness in inches.

    >>> board_feet(8 * 304.8, width=6.25 * 25.4, thickness=2 * 25.4).board_feet
    8.0
    """
    for name, size in (("length", length), ("width", width), ("thickness", thickness)):
        if not (isfinite(size) and size > 0):
            raise ValueError(f"the board's {name} was given as {size:g} mm; give one above 0")
    feet = floor(length / MM_PER_FOOT * (1 + TOLERANCE))
    inches = width / MM_PER_INCH
    raw = inches * feet / 12
    surface, half = _nearest(raw, half_up=half_up)
    return BoardFeet(inches, feet, counted_thickness(thickness), raw, surface, half)


def _nearest(value: float, *, half_up: bool) -> tuple[int, bool]:
    """The nearest whole number, and whether the value was an exact half between two."""
    half = isclose(value % 1, 0.5, abs_tol=TOLERANCE)
    if half:
        return (ceil(value) if half_up else floor(value)), True
    return floor(value + 0.5), False


def tally(boards: Iterable[Board]) -> tuple[BoardFeet, ...]:
    """Board feet of several boards, exact halves going up and down in turn, by NHLA rules."""
    counted, up = [], True
    for board in boards:
        one = board_feet(board.length, width=board.width, thickness=board.thickness, half_up=up)
        counted.append(one)
        up = up != one.half
    return tuple(counted)


def cubic_metres(length: float, *, width: float, thickness: float) -> float:
    """Volume of a board measured in millimetres. [m³]"""
    return length * width * thickness / 1e9


def board_feet_by_volume(volume: float) -> float:
    """Board feet as mere volume [m³], which is less than a yard counts for thin boards.

    >>> round(board_feet_by_volume(0.020), 1)
    8.5
    """
    return convert(volume, unit="m**3", to="board_foot")


def board_feet_of_sticks(length: float, *, width: float, thickness: float) -> float:
    """What a yard counts for lengths yet to be sawn, all of one section. [mm, board feet]

    NHLA rules: no rounding, but under 1 in counts as 1 in.

    >>> round(board_feet_of_sticks(9100, width=70, thickness=16), 1)
    6.9
    """
    return length * width / MM_PER_FOOT**2 * counted_thickness(thickness)


def sets_needed(students: int, *, spare: float = SPARE) -> int:
    """Sets of parts to saw for a class, with a share of spares; rounded up to whole sets. [share]

    A quarter in reserve: common practice, no source.

    >>> sets_needed(10)
    13
    """
    if students < 0 or not (isfinite(spare) and spare >= 0):
        raise ValueError(f"read {students} students and a spare of {spare:g}; give 0 or more")
    return ceil(students * (1 + spare) * (1 - TOLERANCE))
