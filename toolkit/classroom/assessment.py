"""A finished box, measured and marked row by row by the one rubric."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from toolkit.files import Measured, Student
from toolkit.plan import BANDS, Band, Criterion, Plan, diagonals, rubric, told
from toolkit.results import read_table

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


def _read(box: Measured, key: str) -> float | str | None:
    """What was measured [mm] or seen; of the lid both sides together, of diagonals the odds."""
    if key == "diagonals":
        if box.diagonals is None or box.size is None:
            return None
        unlike = abs(box.diagonals[0] - box.diagonals[1])
        # What no box of that size can have is refused.
        diagonals.skew_angle(unlike, length=box.size[0], width=box.size[1])
        return unlike
    if key == "lid_play" and box.lid_play is not None:
        return box.lid_play * (2 if box.play_is == "per side" else 1)
    found: float | str | None = getattr(box, key)
    return found


def _marked(row: Criterion, box: Measured, plan: Plan) -> MarkedRow:
    seen, rule = _read(box, row.key), plan.choices.rule
    if seen is None:
        return MarkedRow(row.key, row.what, NOT_MEASURED, None, "", row.source)
    if isinstance(seen, str):
        return MarkedRow(row.key, row.what, seen, row.band(seen), "", row.source)
    words = told(seen, rule)
    if row.key == "lid_play" and box.play_is == "per side":
        words += f" ({told(seen / 2, rule)} per side, doubled)"
    return MarkedRow(row.key, row.what, words, row.band(seen), row.remedy(seen), row.source)


def assess(box: Measured, *, plan: Plan) -> Assessment:
    """Mark a finished box by the rubric of its plan."""
    rows = {row.key: row for row in rubric(plan, size=box.size)}
    marks = []
    for row in read_table("plan/bands.csv"):
        if row["key"] in rows:
            marks.append(_marked(rows[row["key"]], box, plan))
            continue
        # The row stays, so that all of a class have the same; it says why it is empty.
        why = plan.choices.lid.closure.says
        marks.append(MarkedRow(row["key"], row["what"], why, None, "", row["source"]))
    return Assessment(tuple(marks))


def assess_student(student: Student, *, plan: Plan) -> Assessment:
    """Mark what the class file says of a student's finished box."""
    frame = plan.design.frame
    known: dict[str, Any] = {"size": (frame.outside_length.value, frame.outside_width.value)}
    return assess(Measured(**{**known, **student.measured}), plan=plan)
