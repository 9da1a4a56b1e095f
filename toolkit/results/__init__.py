"""What the rooms hand on to one another: workings, findings, parts, tables, sources.

All of them are frozen, carry lengths in millimetres, and can describe themselves in words.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from math import isclose
from typing import TYPE_CHECKING, Literal

# The same names are handed on from here.
from toolkit.results.findings import (
    CUSTOM as CUSTOM,
    GEOMETRY as GEOMETRY,
    LEVELS as LEVELS,
    About as About,
    Finding as Finding,
    Findings as Findings,
    Level as Level,
    Place as Place,
    Spot as Spot,
    Topic as Topic,
    filled as filled,
    gathered as gathered,
    sorted_findings as sorted_findings,
)
from toolkit.results.refusals import (
    above_zero as above_zero,
    between as between,
    finite as finite,
    not_negative as not_negative,
    one_of as one_of,
)
from toolkit.results.sizes import SizedText as SizedText, TaggedSize as TaggedSize
from toolkit.results.tables import (
    number as number,
    read_table as read_table,
    read_words as read_words,
    rows_by_name as rows_by_name,
)

if TYPE_CHECKING:
    from toolkit.measures import Rule

# Limits are compared with this relative tolerance: the postcard box sits exactly on several of
# them (its lap is exactly a third of its side), and binary fractions must not tip it over.
TOLERANCE = 1e-6

# The names of the parts that are walls; there are two sides.
WALLS = ("side", "back", "front")

AXES = ("length", "width", "thickness")

# The last term of a rough size, which takes it up to a mark that a saw can follow.
ROUNDING = "up to the rough mark"

# What a square tells of a part, by the name under which it is written down.
SQUARE = {
    "end_out": "end square to the edge",
    "end_lean": "end square to the face",
    "edge_out": "edge square to the face",
}


def below(value: float, limit: float) -> bool:
    """Whether a value is under a limit by more than rounding noise, both in one unit."""
    return value < limit and not isclose(value, limit, rel_tol=TOLERANCE, abs_tol=1e-9)


def above(value: float, limit: float) -> bool:
    """Whether a value is over a limit by more than rounding noise, both in one unit."""
    return below(limit, value)


def capital(text: str) -> str:
    """Text as it begins a line."""
    return text[:1].upper() + text[1:]


def listed(words: Iterable[str], last_word: str = "and") -> str:
    """Words in a row for a sentence: 'a, b and c'."""
    *head, last = words
    return f"{', '.join(head)} {last_word} {last}" if head else last


@dataclass(frozen=True, slots=True)
class Term:
    """One labelled, signed term of a sum: ``times`` × ``each``. [mm]"""

    label: str
    each: float
    times: int = 1

    @property
    def value(self) -> float:
        """What the term adds to the sum. [mm]"""
        return self.each * self.times


@dataclass(frozen=True, slots=True)
class Working:
    """A dimension as the sum of its labelled terms; its value *is* that sum.

    >>> Working.of("lid length", ("inside length", 152), ("back groove", 4),
    ...            ("front thickness", 12)).value
    168.0
    """

    name: str
    terms: tuple[Term, ...]
    value: float = field(init=False)

    def __post_init__(self) -> None:
        """Add the terms up once: a working is read far more often than it is made."""
        object.__setattr__(self, "value", float(sum(term.value for term in self.terms)))

    @classmethod
    def of(cls, name: str, *terms: tuple[str, float] | tuple[str, float, int]) -> Working:
        """Make a working from ``(label, each [mm])`` or ``(label, each [mm], times)`` rows."""
        return cls(name, tuple(Term(*term) for term in terms))

    @property
    def given(self) -> bool:
        """Whether this is a choice or a fact rather than a sum."""
        return len(self.terms) == 1 and self.terms[0].times == 1

    def sentence(self, rule: Rule) -> str:
        """The sum in words on somebody's rule: ``lid length = 152 inside length + … = 168 mm``."""
        return f"{self.name} = {self.reckoned(rule)}"

    def reckoned(self, rule: Rule) -> str:
        """The sum without its name: ``152 inside length + … = 168 mm``."""
        if self.given:
            return f"{rule.exact(self.value)}, {self.terms[0].label}"
        words: list[str] = []
        for term in self.terms:
            minus = term.value < 0
            sign = "− " if minus else "+ " if words else ""
            times = f"{abs(term.times)} × " if abs(term.times) != 1 else ""
            words.append(f"{sign}{times}{rule.exact(abs(term.each), unit=False)} {term.label}")
        return f"{' '.join(words)} = {rule.exact(self.value)}"


@dataclass(frozen=True, slots=True)
class Part:
    """One kind of part: finished, cut and rough sizes, each a working. Width is across the grain.

    It is cut longer than it is finished where its end grain is left standing, to be planed flush.
    ``rough`` is the rough list, rounded already. A part that has to go into something is written
    ``down`` where its sizes lie off the rule's marks.
    """

    name: str
    count: int
    length: Working
    width: Working
    thickness: Working
    cut_length: Working
    rough_length: Working
    rough_width: Working
    rough_thickness: Working
    wood: str = ""
    down: bool = False

    @property
    def finished(self) -> tuple[Working, Working, Working]:
        """Length, width and thickness in the box, its end grain planed flush. [mm]"""
        return self.length, self.width, self.thickness

    @property
    def cut(self) -> tuple[Working, Working, Working]:
        """Length, width and thickness to make before it is jointed. [mm]"""
        return self.cut_length, self.width, self.thickness

    @property
    def rough(self) -> tuple[Working, Working, Working]:
        """Length, width and thickness to saw first. [mm]"""
        return self.rough_length, self.rough_width, self.rough_thickness

    def sizes(self, kind: str, rule: Rule, *, unit: bool = True) -> tuple[TaggedSize, ...]:
        """Its three ``finished``, ``cut`` or ``rough`` sizes as pages write them, each tagged.

        What is cut as it is finished is tagged ``finished``.
        """
        way: Literal["down", "nearest", "up"] = "down" if self.down else "nearest"
        way = "up" if kind == "rough" else way
        own = {"finished": self.finished, "cut": self.cut, "rough": self.rough}[kind]
        sizes = []
        for axis, size, last in zip(AXES, own, self.finished, strict=True):
            word = "finished" if kind == "cut" and size.value == last.value else kind
            text = rule.show(size.value, direction=way, unit=unit)
            sizes.append(TaggedSize(text, self.name, f"{word} {axis}", size.value))
        return tuple(sizes)

    def by(self, kind: str, rule: Rule) -> SizedText:
        """Its ``finished``, ``cut`` or ``rough`` length × width × thickness."""
        length, width, thickness = self.sizes(kind, rule, unit=False)
        return SizedText.of(length, " × ", width, " × ", thickness, f" {rule.units}")


@dataclass(frozen=True, slots=True)
class Chosen:
    """A value that the student left out, what was chosen for it and by which rule."""

    key: str
    value: str
    why: str

    @property
    def sentence(self) -> str:
        """The choice as one line."""
        return f"{self.key} = {self.value}: {self.why}"


@dataclass(frozen=True, slots=True)
class Source:
    """Where a number comes from, and how: ``read`` in print, from ``memory``, ``computed`` …

    ``none`` where there is nothing to read, as for common practice.
    """

    text: str
    seen: str = "none"

    @classmethod
    def of(cls, row: Mapping[str, str], group: str = "") -> Source:
        """Where a row of a table comes from, or one group of its numbers."""
        return cls(row[f"{group}source"], row[f"{group}seen"])

    def __str__(self) -> str:
        """The source with its caveat."""
        return self.text + (" (from memory)" if self.seen == "memory" else "")


@dataclass(frozen=True, slots=True)
class Table:
    """A table of words, ready to be laid out as text or as HTML; every cell is text."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""
    numeric: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        """A ragged table is a mistake of the room that made it."""
        for row in self.rows:
            if len(row) != len(self.columns):
                raise ValueError(
                    f"table {self.title!r}: row {row!r} has {len(row)} cells, "
                    f"the heading has {len(self.columns)}"
                )
