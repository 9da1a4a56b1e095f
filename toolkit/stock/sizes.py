"""Thicknesses that yards sell by: quarters of an inch rough, and what is left of them surfaced."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import isfinite
from typing import Literal

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.results import Source, below, read_table

# Kiln-dried boards may be this much under the thickness they are sold by (common practice, from
# memory).
SCANT = MM_PER_INCH / 16


@dataclass(frozen=True, slots=True)
class LumberSize:
    """One thickness of a yard. [mm]

    ``nominal`` is the rough hardwood, or the name of a softwood board; ``two_sides`` is surfaced,
    for softwood dry; None where the table has no number. ``quarter`` is the trade's name, such as
    4/4, empty where it has none.
    """

    kind: Literal["hardwood", "softwood"]
    quarter: str
    nominal: float
    two_sides: float | None
    source: Source
    note: str

    @property
    def inches(self) -> str:
        """Its name at the yard."""
        text = Rule.inches().exact(self.nominal)
        return f"{self.quarter} ({text})" if self.quarter else text

    @property
    def sold(self) -> float:
        """Thickness of the board as usually sold: hardwood rough, softwood planed dry. [mm]"""
        if self.kind == "softwood" and self.two_sides is not None:
            return self.two_sides
        return self.nominal


@cache
def lumber_sizes() -> tuple[LumberSize, ...]:
    """Every thickness of the table, thinnest first of each kind; sources row by row."""

    def mm(cell: str) -> float | None:
        return float(cell) * MM_PER_INCH if cell else None

    return tuple(
        LumberSize(
            kind="softwood" if row["kind"] == "softwood" else "hardwood",
            quarter=row["quarter"],
            nominal=float(row["nominal_in"]) * MM_PER_INCH,
            two_sides=mm(row["surfaced_two_sides_in"]),
            source=Source.of(row),
            note=row["note"],
        )
        for row in read_table("stock/lumber_sizes.csv")
    )


def size_to_ask_for(
    thickness: float, *, kind: Literal["hardwood", "softwood"] = "hardwood"
) -> LumberSize | None:
    """The thinnest board of a yard that has a thickness, None if the table has none so thick. [mm]

    >>> size_to_ask_for(16).inches
    '3/4 in'
    """
    rows = [size for size in lumber_sizes() if size.kind == kind]
    return next((size for size in rows if not below(size.sold, thickness)), None)


def counted_thickness(thickness: float) -> float:
    """The thickness that a hardwood yard counts a board by, never under an inch.

    Parameters
    ----------
    thickness : float
        As measured. [mm]

    Returns
    -------
    float
        The thickest standard that it reaches, 1/16 in scant allowed; above the table, its own. [in]

    Raises
    ------
    ValueError
        The thickness is not above 0.

    Source
    ------
    NHLA rules: under 1 in counts as 1 in. 1/16 in scant when kiln-dried: from memory.

    >>> counted_thickness(25), counted_thickness(16), counted_thickness(33)
    (1.0, 1.0, 1.25)
    """
    if not (isfinite(thickness) and thickness > 0):
        raise ValueError(f"the thickness was given as {thickness:g} mm; give one above 0")
    rows = [size.nominal for size in lumber_sizes() if size.kind == "hardwood"]
    if thickness > rows[-1]:
        return thickness / MM_PER_INCH
    reached = [row for row in rows if not below(thickness, row - SCANT)]
    return max(1.0, max(reached, default=0.0) / MM_PER_INCH)
