"""What a maker would say of a box: a finding, what it is about, and where a drawing marks it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from string import Formatter
from typing import Any, Literal, Self, cast

from toolkit.results.tables import rows_by_name

Level = Literal["wont_work", "care", "good"]
LEVELS: tuple[Level, ...] = ("wont_work", "care", "good")

CUSTOM = "custom: common practice, no source"

GEOMETRY = "geometry"

# What a finding is about: a lesson shows some of these.
Topic = Literal[
    "",  # of no part of a box: a board, a plane, a finish
    "corner",  # lap, tails and pins, and what grooves do to them
    "marking out",  # lines only; past once the joints are cut
    "groove",  # how deep, and the wall behind it
    "panel",  # thickness and edges of lid and bottom
    "lid",  # how it slides, or lies on the rim
    "season",  # how panels swell and shrink
    "space",  # the space inside, and what goes in
    "square",  # measured ends and edges that are out of square
    "rough",  # the boards that parts are sawn from
]  # fmt: skip

# Where a drawing can mark what is wrong.
Spot = Literal[
    "",  # nothing of it is to be seen in a drawing
    "lap", "socket", "pin", "half pin", "tail", "tail tip",
    "tail corners",  # what stands out beyond a tail's baseline
    "groove at lap",  # where a groove's floor comes near a lap
    "groove side",  # the wood of a tail beside a groove
    "groove floor",  # and the wall behind it
    "rim",  # the strip above the lid groove
    "front edge",  # the low front's, under the lid
    "front in the damp",
    "lid end",  # in the back groove
    "lid top", "lid rebate", "underside",  # the last of the bottom
    "tongue", "play",  # a panel's edge, and the room round its thickness
    "clearance", "grip",  # of a panel across: room to swell, hold when it has shrunk
    "bevel", "grain",
    "inside",  # of the box
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Place:
    """Where on a box a drawing marks a finding: a spot of one part or corner, else of all.

    A groove is a part too (``lid groove``). ``name`` is the place in words, where part or corner
    alone would not do.
    """

    spot: Spot = ""
    part: str = ""
    corner: str = ""
    name: str = ""

    @property
    def words(self) -> str:
        """The place as a finding names it."""
        return self.name or (f"{self.corner} corners" if self.corner else self.part)

    def meets(self, *, part: str = "", corner: str = "") -> bool:
        """Whether it belongs to a part and a corner; left out, any does."""
        asked = ((part, self.part), (corner, self.corner))
        return all(not wanted or own in ("", wanted) for wanted, own in asked)


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that an experienced maker would say about a box.

    ``source`` names the document, or says that the limit is a custom and where to edit it.
    ``brief`` is what a drawing's sentence says of it, ``note`` what stands beside its mark.
    ``cures`` are changes to the box's file by key, the least trouble first, that should cure it; a
    plan's findings keep the one that was tried and does, and ``remedy`` says just that one.
    """

    level: Level
    code: str
    where: str
    message: str
    remedy: str = ""
    source: str = ""
    topic: Topic = ""
    place: Place = Place()
    brief: str = ""
    note: str = ""
    cures: tuple[Mapping[str, Any], ...] = field(default=(), compare=False, repr=False)

    @property
    def sentence(self) -> str:
        """The finding as one line of prose, place first."""
        return f"{self.where}: {self.message}" + (f" {self.remedy}" if self.remedy else "")


@dataclass(frozen=True, slots=True)
class About:
    """Findings of one topic; what limits a box and names no source is geometry."""

    topic: Topic

    def __call__(
        self,
        level: Level,
        code: str,
        at: Place | str,
        message: str,
        remedy: str = "",
        source: str | None = None,
        *,
        brief: str = "",
        note: str = "",
    ) -> Finding:
        """One finding, at a place or at one that no drawing marks."""
        place = Place(name=at) if isinstance(at, str) else at
        if source is None:
            source = "" if level == "good" else GEOMETRY
        return Finding(
            level, code, place.words, message, remedy, source, self.topic, place, brief, note
        )


@cache
def _parsed(text: str) -> list[Any]:
    """A sentence of a table in its pieces: sentences are few and said often."""
    return list(Formatter().parse(text))


_FIELDS = Formatter()


def filled(text: str, values: Mapping[str, Any], *, write: Callable[[float], str]) -> str:
    """A sentence with its values, by name; ``write`` says a length. [mm]

    A number that the sentence gives no format is a length.
    """
    done = []
    for words, name, spec, _ in _parsed(text):
        done.append(words)
        if name is not None:
            value = values[name] if name in values else _FIELDS.get_field(name, (), values)[0]
            length = not spec and isinstance(value, (int, float))
            done.append(write(value) if length else format(value, spec))
    return "".join(done)


class Findings(list[Finding]):
    """Findings in the order in which they are said, each a row of a table with its numbers.

    ``write`` writes a length of a sentence, ``show`` one of the short note in a drawing [mm];
    ``cite`` names a custom by its key. ``known`` is what every row may name.
    """

    def __init__(
        self,
        table: str,
        *,
        write: Callable[[float], str] = str,
        show: Callable[[float], str] = str,
        cite: Callable[[str], str] = str,
        **known: Any,
    ) -> None:
        super().__init__()
        self._rows = rows_by_name(table, "finding")
        self._write, self._show, self._cite, self._known = write, show, cite, known

    def say(
        self,
        finding: str,
        *,
        at: Place | str | None = None,
        part: str = "",
        corner: str = "",
        where: str = "",
        custom: str = "",
        cures: Iterable[Mapping[str, Any]] = (),
        **values: Any,
    ) -> Self:
        """Say a finding by its name, with its numbers.

        ``custom`` is the key of the custom that it goes against, where that depends on the case;
        a ``source`` among the values goes before the row's own. ``cures`` are changes that should
        cure it, the least trouble first.
        """
        row = self._rows[finding]
        if at is None:
            spot: Any = row.get("spot", "")
            at = Place(spot, part or row.get("part", ""), corner, where or row["where"])
        custom = custom or row["custom"]
        sources = [row["source"], self._cite(custom) if custom else ""]
        source = values.get("source") or "; ".join(filter(None, sources))
        values = self._known | values | {"part": part, "corner": corner}

        def words(column: str, write: Callable[[float], str]) -> str:
            text = row.get(column, "")
            return filled(text, values, write=write).replace("\\n", "\n") if text else ""

        level, topic = cast(Level, row["level"]), cast(Topic, row.get("topic", ""))
        message, remedy, brief = (
            words(name, self._write) for name in ("message", "remedy", "brief")
        )
        note, code = words("note", self._show), finding.partition(",")[0]
        said = About(topic)(
            level, code, at, message, remedy, source or None, brief=brief, note=note
        )
        cures = tuple(cures)
        self.append(replace(said, cures=cures) if cures else said)
        return self


def sorted_findings(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings in the order a maker needs them: what won't work first, what is good last."""
    return tuple(sorted(findings, key=lambda finding: LEVELS.index(finding.level)))


def gathered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings with those that say the same of several places put together, in their order.

    >>> pair = [Finding("care", "thin", place, "it is thin.") for place in ("back", "front")]
    >>> [finding.where for finding in gathered(pair)]
    ['back and front']
    """
    places: dict[tuple[str, ...], list[str]] = {}
    first: dict[tuple[str, ...], Finding] = {}
    for row in findings:
        said = (row.level, row.code, row.message, row.remedy, row.source)
        first.setdefault(said, row)
        named = places.setdefault(said, [])
        if row.where not in named:
            named.append(row.where)
    return tuple(
        replace(first[said], where=" and ".join(filter(None, [", ".join(named[:-1]), named[-1]])))
        for said, named in places.items()
    )
