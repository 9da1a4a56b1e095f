"""How good a finished box is: one table of bands, for a student's own box and rule."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.plan.box_plan import Plan
from toolkit.plan.diagonals import diagonal_difference, skew_angle
from toolkit.results import Table, above, below, read_table, rows_by_name

Band = Literal["Excellent", "Pass", "acceptable after a note", "Rework"]
BANDS: tuple[Band, ...] = ("Excellent", "Pass", "acceptable after a note", "Rework")
_COLUMNS = ("excellent", "pass", "noted", "rework")
NOTE = "Bands are customs: common practice, no source. On a limit the better band counts."

# The box whose diagonals the limits were told of; other boxes are held to the same angles. [mm]
TOLD_OF = (176.0, 134.0)
# How closely limits that follow from a box are told, and what counts as a small tear-out. [mm]
_STEP = {"mm": 0.1, "in": MM_PER_INCH / 1000}
_SMALL = {"mm": 5.0, "in": MM_PER_INCH * 3 / 16}
# How well a joint fits, as feeler blades read its gaps. [mm]
FINE, FAIR = (float(rows_by_name("plan/bands.csv", "key")["gap"][band]) for band in _COLUMNS[:2])


@dataclass(frozen=True, slots=True)
class Limits:
    """From and up to which value a band holds; what lies outside ``rework`` wants work. [mm]"""

    excellent: tuple[float, float]
    passing: tuple[float, float]
    rework: tuple[float, float]

    def band(self, value: float) -> Band:
        """The band of a measured value, on a limit the better one."""
        for (least, most), band in ((self.excellent, BANDS[0]), (self.passing, BANDS[1])):
            if not below(value, least) and not above(value, most):
                return band
        outside = below(value, self.rework[0]) or above(value, self.rework[1])
        return BANDS[3] if outside else BANDS[2]

    def cells(self, rule: Rule) -> tuple[str, str, str, str]:
        """Each band in words."""

        def within(least: float, most: float) -> str:
            if above(least, most):
                return "none"
            return f"{bare(least)} to {told(most, rule)}" if least else f"≤ {told(most, rule)}"

        def bare(value: float) -> str:
            return told(value, rule, unit=False)

        (low, bad), good = self.rework, self.passing[1]
        noted = f"over {bare(good)}, up to {told(bad, rule)}" if above(bad, good) else "none"
        under = f"under {bare(low)} or " if low else ""
        outside = f"{under}over {told(bad, rule)}"
        return within(*self.excellent), within(*self.passing), noted, outside


@dataclass(frozen=True, slots=True)
class Criterion:
    """A row of the rubric: measured, with limits, or seen, with a word for each band."""

    key: str
    what: str
    measured: str
    limits: Limits | None
    words: tuple[tuple[str, Band], ...]
    if_noted: str
    if_under: str
    source: str

    def band(self, seen: float | str) -> Band:
        """The band of what was measured [mm] or seen."""
        if self.limits is not None and not isinstance(seen, str):
            return self.limits.band(seen)
        for known, band in self.words:
            if str(seen).strip().lower() == known:
                return band
        choices = " or ".join(f'"{known}"' for known, _band in self.words)
        raise ValueError(f"{self.what}: read {seen!r}; type {choices}")

    def remedy(self, value: float) -> str:
        """What would mend a measured value; nothing where it passes. [mm]"""
        if self.limits is None or BANDS.index(self.limits.band(value)) < 2:
            return ""
        return self.if_under if below(value, self.limits.passing[0]) else self.if_noted

    def cells(self, rule: Rule) -> tuple[str, ...]:
        """Each band in words."""
        if self.limits is not None:
            return self.limits.cells(rule)
        words = {band: word for word, band in self.words}
        return tuple(words.get(band, "") for band in BANDS)


def told(value: float, rule: Rule, *, unit: bool = True) -> str:
    """What was measured, or may be: hundredths of a millimetre, or thousandths of an inch. [mm]"""
    if rule.units == "mm":
        return rule.exact(value, unit=unit)
    return f"{value / MM_PER_INCH:.3f}{' in' if unit else ''}"


def _play(plan: Plan) -> Limits | None:
    """Side play of a sliding lid, from its own season; None for a box without one. [mm]

    Least where it swells: it may not bind in the damp. Most where it shrinks: dry and pushed over,
    as much as is wanted of it, half as much, or nothing stays in the other groove.
    """
    lids = [panel for panel in plan.design.grooved if panel.name == "lid"]
    if not lids:
        return None
    lid, rule = lids[0], plan.choices.rule
    grip = plan.design.choices.customs.grip_least
    swells, shrinks = (0.0, 0.0) if lid.grain_across else (lid.swelling, lid.shrinking)
    step = _STEP[rule.units]

    def up(value: float) -> float:
        return -(-value // step) * step

    binds, room = up(swells), up(swells + lid.season.room)
    most = [(lid.reach - shrinks - held) // step * step for held in (grip, grip / 2, 0.0)]
    return Limits((room, most[0]), (binds, most[1]), (binds, most[2]))


def _limits(row: Mapping[str, str], plan: Plan, size: tuple[float, float]) -> Limits | None:
    """The limits of a row that is measured, for this box. [mm]"""
    rule = plan.choices.rule
    if row["kind"] == "play":
        return _play(plan) if plan.design.exists else None
    numbers = [float(row[column]) for column in ("excellent", "pass", "rework")]
    if row["kind"] == "diagonals":
        # As much out of square, over the size of another box.
        angles = [skew_angle(one, length=TOLD_OF[0], width=TOLD_OF[1]) for one in numbers]
        numbers = [diagonal_difference(a, length=size[0], width=size[1]) for a in angles]
    if row["kind"] == "diagonals" or rule.units == "in":
        step = _STEP[rule.units]
        numbers = [max(round(number / step), 1) * step for number in numbers]
    best, good, bad = numbers
    return Limits((0.0, best), (0.0, good), (0.0, bad))


def rubric(plan: Plan, *, size: tuple[float, float] | None = None) -> tuple[Criterion, ...]:
    """The rows for a box; ``size`` is over what its diagonals are taken, left out the outside."""
    rule, frame = plan.choices.rule, plan.design.frame
    if size is None:
        outside = frame.outside_length.value, frame.outside_width.value
        size = outside if plan.design.exists else TOLD_OF
    found = []
    for row in read_table("plan/bands.csv"):
        seen = row["kind"] == "words"
        pairs = zip((row[column] for column in _COLUMNS), BANDS, strict=True)
        words = tuple((word, band) for word, band in pairs if word and seen)
        limits = None if seen else _limits(row, plan, size)
        if seen or limits is not None:
            measured = row["measured"].format(small=rule.exact(_SMALL[rule.units]))
            about = (row["if_noted"], row["if_under"], row["source"])
            found.append(Criterion(row["key"], row["what"], measured, limits, words, *about))
    return tuple(found)


def rubric_table(plan: Plan) -> Table:
    """The rubric on somebody's own rule, with room to write what was measured."""
    rows = tuple(
        (row.what, row.measured, *row.cells(plan.choices.rule), "") for row in rubric(plan)
    )
    return Table("How good is it", ("what", "how", *BANDS, "measured"), rows, note=NOTE)
