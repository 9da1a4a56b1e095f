"""Moisture that wood should have when it is used, by use and region."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from toolkit.results import number, read_table


@dataclass(frozen=True, slots=True)
class IndoorMoisture:
    """Moisture to dry wood to for one use in one region; what the table lacks is None.

    Attributes
    ----------
    use, region : str
        What the wood is for and where.
    average_low, average_high : float or None
        Average over the pieces, lowest and highest; equal where one number is printed. [%]
    piece_low, piece_high : float or None
        Range for single pieces. [%]
    source, seen : str
        Where the numbers come from.
    """

    use: str
    region: str
    average_low: float | None
    average_high: float | None
    piece_low: float | None
    piece_high: float | None
    source: str
    seen: str


@cache
def indoor_moisture() -> tuple[IndoorMoisture, ...]:
    """The handbook's recommendations for wood at the time it is installed or used.

    Returns
    -------
    tuple of IndoorMoisture
        One row for each use and region. [%]

    Source
    ------
    Handbook (FPL-GTR-190), Table 13-2, from memory, and the text of its chapter 13, read.
    """
    return tuple(
        IndoorMoisture(
            use=row["use"],
            region=row["region"],
            average_low=number(row["average_low_pct"]),
            average_high=number(row["average_high_pct"]),
            piece_low=number(row["piece_low_pct"]),
            piece_high=number(row["piece_high_pct"]),
            source=row["source"],
            seen=row["seen"],
        )
        for row in read_table("wood/indoor_moisture.csv")
    )
