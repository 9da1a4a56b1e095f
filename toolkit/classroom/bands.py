"""Bands of a box's marking: Excellent, Pass, acceptable after a note, Rework. All are customs."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

from toolkit.measures import Rule
from toolkit.plan.diagonals import diagonal_difference, skew_angle
from toolkit.results import above, below, read_table

Band = Literal["Excellent", "Pass", "acceptable after a note", "Rework"]
BANDS: tuple[Band, ...] = ("Excellent", "Pass", "acceptable after a note", "Rework")

# The box whose diagonals the limits were told of; other boxes are held to the same angles. [mm]
TOLD_OF = (176.0, 134.0)
PLAY = "lid side play in the dry season, per side"
PLAY_LEAST, PLAY_MOST, PLAY_PASS = 0.5, 1.5, 2.2
PLAY_SOURCE = "bands of this workbook: custom, common practice, no source"


@dataclass(frozen=True, slots=True)
class Limits:
    """A row with numbers: up to ``excellent``, up to ``passing``, and over ``rework``.

    ``unit`` is mm or deg, and the limits are in it.
    """

    key: str
    what: str
    measured: str
    unit: str
    excellent: float
    passing: float
    rework: float
    if_noted: str
    source: str

    def band(self, value: float) -> Band:
        """The band of a measured value, on the limit the better one. [unit of the row]"""
        for limit, band in ((self.excellent, BANDS[0]), (self.passing, BANDS[1])):
            if not above(value, limit):
                return band
        return "Rework" if above(value, self.rework) else "acceptable after a note"

    def show(self, value: float, rule: Rule, *, size: tuple[float, float] | None = None) -> str:
        """A value of this row in words; an angle as diagonals of a box of a size. [mm]"""
        if self.unit != "deg":
            return rule.exact(value)
        if size is None:
            return f"{value:.2f}°"
        difference = diagonal_difference(value, length=size[0], width=size[1])
        return f"{rule.exact(difference)} between the diagonals"


@dataclass(frozen=True, slots=True)
class WordRow:
    """A row that is seen, not measured: a word for each band, some bands without one."""

    key: str
    what: str
    words: tuple[tuple[str, Band], ...]
    source: str

    def band(self, word: str) -> Band:
        """The band of what was seen."""
        for known, band in self.words:
            if word.strip().lower() == known:
                return band
        choices = " or ".join(f'"{known}"' for known, _band in self.words)
        raise ValueError(f"{self.what}: read {word!r}; type {choices}")


@cache
def limits() -> tuple[Limits, ...]:
    """The rows with numbers, limits in mm or degrees."""
    found = []
    for row in read_table("classroom/bands.csv"):
        numbers = [float(row[column]) for column in ("excellent", "pass", "rework")]
        unit = row["kind"]
        if unit == "diagonals":
            length, width = TOLD_OF
            numbers = [skew_angle(number, length=length, width=width) for number in numbers]
            unit = "deg"
        excellent, passing, rework = numbers
        found.append(
            Limits(
                key=row["key"],
                what=row["what"],
                measured=row["measured"],
                unit=unit,
                excellent=excellent,
                passing=passing,
                rework=rework,
                if_noted=row["if_noted"],
                source=row["source"],
            )
        )
    return tuple(found)


@cache
def word_rows() -> tuple[WordRow, ...]:
    """The rows that are seen."""
    columns: tuple[tuple[str, Band], ...] = tuple(
        zip(("excellent", "pass", "noted", "rework"), BANDS, strict=True)
    )
    return tuple(
        WordRow(
            key=row["key"],
            what=row["what"],
            words=tuple((row[column], band) for column, band in columns if row[column]),
            source=row["source"],
        )
        for row in read_table("classroom/words.csv")
    )


def play_band(play: float, *, drops_out_at: float | None = None) -> Band:
    """The band of a lid's side play."""
    if play <= 0 or (drops_out_at is not None and not below(play, drops_out_at)):
        return "Rework"
    if below(play, PLAY_LEAST) or above(play, PLAY_PASS):
        return "acceptable after a note"
    return "Pass" if above(play, PLAY_MOST) else "Excellent"
