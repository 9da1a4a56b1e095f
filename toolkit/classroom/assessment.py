"""A finished box, measured and marked row by row."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from toolkit.classroom.bands import (
    BANDS,
    PLAY,
    PLAY_LEAST,
    PLAY_SOURCE,
    Band,
    limits,
    play_band,
    word_rows,
)
from toolkit.files import Measured, Student
from toolkit.measures import Rule
from toolkit.plan import Plan
from toolkit.plan.diagonals import skew_angle

NOT_MEASURED = "not measured"


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


def _diagonals(box: Measured, rule: Rule) -> tuple[float | None, str]:
    """By how much the corners miss square [deg], and both readings in words."""
    if box.diagonals is None or box.size is None:
        return None, ""
    difference = abs(box.diagonals[0] - box.diagonals[1])
    angle = skew_angle(difference, length=box.size[0], width=box.size[1])
    return angle, f", diagonals {rule.exact(difference)} unlike"


def assess(box: Measured, *, rule: Rule) -> Assessment:
    """MarkedRow a finished box."""
    marks: list[MarkedRow] = []
    for row in limits():
        more = ""
        value: float | None
        if row.key == "diagonals":
            value, more = _diagonals(box, rule)
        else:
            value = getattr(box, row.key)
        if value is None:
            marks.append(MarkedRow(row.key, row.what, NOT_MEASURED, None, "", row.source))
            continue
        band = row.band(value)
        remedy = row.if_noted if BANDS.index(band) > 1 else ""
        marks.append(
            MarkedRow(row.key, row.what, row.show(value, rule) + more, band, remedy, row.source)
        )
    marks.append(_play(box, rule))
    for seen in word_rows():
        word = getattr(box, seen.key)
        band_seen = None if word is None else seen.band(word)
        marks.append(
            MarkedRow(seen.key, seen.what, word or NOT_MEASURED, band_seen, "", seen.source)
        )
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
    """MarkedRow what the class file says of a student's finished box."""
    frame, grooves = plan.design.frame, plan.design.choices.groove
    known: dict[str, Any] = {"size": (frame.outside_length.value, frame.outside_width.value)}
    if frame.lid_groove is not None:
        known["groove_depth"] = grooves.depth
    return assess(Measured(**{**known, **student.measured}), rule=plan.choices.rule)
