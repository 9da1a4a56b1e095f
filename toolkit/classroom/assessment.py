"""A finished box, measured and marked row by row, in bands that are all customs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Any, Literal

from toolkit.files import Measured, Student
from toolkit.measures import Rule
from toolkit.plan import Plan, diagonals
from toolkit.results import above, below, read_table

Band = Literal["Excellent", "Pass", "acceptable after a note", "Rework"]
BANDS: tuple[Band, ...] = ("Excellent", "Pass", "acceptable after a note", "Rework")

# The box whose diagonals the limits were told of; other boxes are held to the same angles. [mm]
TOLD_OF = (176.0, 134.0)
PLAY = "lid side play in the dry season, per side"
PLAY_LEAST, PLAY_MOST, PLAY_PASS = 0.5, 1.5, 2.2
PLAY_SOURCE = "bands of this workbook: custom, common practice, no source"
NOT_MEASURED = "not measured"


@dataclass(frozen=True, slots=True)
class Limits:
    """A row with numbers: up to ``excellent``, up to ``passing``, and over ``rework``."""

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
        difference = diagonals.diagonal_difference(value, length=size[0], width=size[1])
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
            numbers = [
                diagonals.skew_angle(number, length=length, width=width) for number in numbers
            ]
            unit = "deg"
        best, good, bad = numbers
        what = (row["key"], row["what"], row["measured"], unit)
        found.append(Limits(*what, best, good, bad, row["if_noted"], row["source"]))
    return tuple(found)


@cache
def word_rows() -> tuple[WordRow, ...]:
    """The rows that are seen."""
    columns: tuple[tuple[str, Band], ...] = tuple(
        zip(("excellent", "pass", "noted", "rework"), BANDS, strict=True)
    )
    found = []
    for row in read_table("classroom/words.csv"):
        words = tuple((row[column], band) for column, band in columns if row[column])
        found.append(WordRow(row["key"], row["what"], words, row["source"]))
    return tuple(found)


def play_band(play: float, *, drops_out_at: float | None = None) -> Band:
    """The band of a lid's side play."""
    if play <= 0 or (drops_out_at is not None and not below(play, drops_out_at)):
        return "Rework"
    if below(play, PLAY_LEAST) or above(play, PLAY_PASS):
        return "acceptable after a note"
    return "Pass" if above(play, PLAY_MOST) else "Excellent"


@dataclass(frozen=True, slots=True)
class MarkedRow:
    """One row of a marking: what, the value in words, its band, what to do, and whose limit."""

    key: str
    what: str
    value: str
    band: Band | None
    remedy: str
    source: str


@dataclass(frozen=True, slots=True)
class Assessment:
    """A box marked row by row."""

    marks: tuple[MarkedRow, ...]

    @property
    def worst(self) -> Band | None:
        """The band of the worst row; None if nothing was measured."""
        found = [mark.band for mark in self.marks if mark.band is not None]
        return max(found, key=BANDS.index) if found else None

    @property
    def sentence(self) -> str:
        """How many rows stand in each band, and which want work."""
        counts = [(band, sum(mark.band == band for mark in self.marks)) for band in BANDS]
        told = ", ".join(f"{count} {band}" for band, count in counts if count)
        missing = sum(mark.band is None for mark in self.marks)
        left = f", {missing} not measured" if missing else ""
        work = [mark.what for mark in self.marks if mark.band == "Rework"]
        again = f" To work on: {'; '.join(work)}." if work else ""
        return f"{told or 'Nothing marked'}{left}.{again}"


def _read(box: Measured, key: str, rule: Rule) -> tuple[float | None, str]:
    """What was measured, of diagonals by how much the corners miss square [deg], and more words."""
    if key != "diagonals":
        return getattr(box, key), ""
    if box.diagonals is None or box.size is None:
        return None, ""
    difference = abs(box.diagonals[0] - box.diagonals[1])
    angle = diagonals.skew_angle(difference, length=box.size[0], width=box.size[1])
    return angle, f", diagonals {rule.exact(difference)} unlike"


def assess(box: Measured, *, rule: Rule) -> Assessment:
    """Mark a finished box."""
    marks: list[MarkedRow] = []
    for row in limits():
        value, more = _read(box, row.key, rule)
        band, words, remedy = None, NOT_MEASURED, ""
        if value is not None:
            band, words = row.band(value), row.show(value, rule) + more
            remedy = row.if_noted if BANDS.index(band) > 1 else ""
        marks.append(MarkedRow(row.key, row.what, words, band, remedy, row.source))
    marks.append(_play(box, rule))
    for seen in word_rows():
        word = getattr(box, seen.key)
        band = None if word is None else seen.band(word)
        marks.append(MarkedRow(seen.key, seen.what, word or NOT_MEASURED, band, "", seen.source))
    return Assessment(tuple(marks))


def _play(box: Measured, rule: Rule) -> MarkedRow:
    if box.lid_play is None:
        return MarkedRow("lid_play", PLAY, NOT_MEASURED, None, "", PLAY_SOURCE)
    total = box.play_is == "total"
    play = box.lid_play / 2 if total else box.lid_play
    value = rule.exact(play)
    if total:
        value += f" ({rule.exact(box.lid_play)} in all, halved)"
    out = None if box.groove_depth is None else box.groove_depth / 2
    band = play_band(play, drops_out_at=out)
    remedy = ""
    if band in ("acceptable after a note", "Rework"):
        remedy = (
            "plane the shiny edge, a shaving at a time"
            if play < PLAY_LEAST
            else "glue a strip to an edge that the groove hides"
        )
    return MarkedRow("lid_play", PLAY, value, band, remedy, PLAY_SOURCE)


def assess_student(student: Student, *, plan: Plan) -> Assessment:
    """Mark what the class file says of a student's finished box."""
    frame, grooves = plan.design.frame, plan.design.choices.groove
    known: dict[str, Any] = {"size": (frame.outside_length.value, frame.outside_width.value)}
    if frame.lid_groove is not None:
        known["groove_depth"] = grooves.depth
    marked = assess(Measured(**{**known, **student.measured}), rule=plan.choices.rule)
    if plan.design.lids:
        return marked
    # The row stays, so that all of a class have the same; it says why it is empty.
    why = plan.choices.lid.closure.says
    return Assessment(
        tuple(replace(row, value=why) if row.key == "lid_play" else row for row in marked.marks)
    )
