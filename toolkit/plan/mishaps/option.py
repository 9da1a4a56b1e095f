"""One way out of a mishap: what to do, the box that follows, and what it costs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any

from toolkit.measures import Rule
from toolkit.plan.box_plan import Plan, plan
from toolkit.plan.comparison import Comparison, compare
from toolkit.plan.mishaps.mishap import Mishap, before, facts, meant_of
from toolkit.results import (
    GEOMETRY,
    Finding,
    Level,
    above,
    filled,
    gathered,
    read_table,
    rows_by_name,
)

PRACTICE = "common practice, no source"
COSTS = ("parts", "minutes", "looks", "wait")
DAY = 24 * 60.0  # [min]


@dataclass(frozen=True, slots=True)
class Weights:
    """How minutes, wood and looks are put on one scale: customs, to be changed at will.

    A new part counts as so many minutes, and so does each step in looks (0 unseen, 1 found if
    looked for, 2 seen, 3 spoils it) and each warning that the box did not have. [min]
    """

    part: float = 40.0
    looks: float = 15.0
    care: float = 15.0

    @property
    def sentence(self) -> str:
        """The scale in words."""
        return (
            f"Ranked by minutes at the bench, a new part counted as {self.part:g} and each step "
            f"in looks (0 unseen to 3 spoilt) as {self.looks:g}, each new warning as "
            f"{self.care:g}: customs, no source. What won't work comes last."
        )


@dataclass(frozen=True, slots=True)
class Costs:
    """What a way out costs: new parts, minutes at the bench, a step in looks, new warnings; and
    the minutes that glue takes to dry, or wood to come to rest.
    """

    parts: int = 0
    minutes: float = 0.0
    looks: int = 0
    wait: float = 0.0
    cares: int = 0

    def total(self, weights: Weights) -> float:
        """On one scale; a wait costs no work. [min]"""
        seen = self.looks * weights.looks + self.cares * weights.care
        return self.minutes + self.parts * weights.part + seen

    @property
    def sentence(self) -> str:
        """The costs in words."""
        looks = ("not seen", "found if looked for", "seen", "spoils it")[self.looks]
        wood = {0: "no wood", 1: "1 new part"}.get(self.parts, f"{self.parts} new parts")
        days = f", and {self.wait / DAY:g} d of rest for the wood" if self.wait >= DAY else ""
        wait = days or (f", and about {self.wait:g} min for glue to dry" if self.wait else "")
        return f"about {self.minutes:g} min{wait}; {wood}; {looks}"


@dataclass(frozen=True, slots=True)
class Option:
    """One way out: what to do, the box that follows, and what changed from the box as meant.

    ``changes`` is what to put into the box file, by key such as ``made.front_length``: a length in
    mm, a word, a count, or None for a key to take out.
    """

    code: str
    words: str
    changes: Mapping[str, Any]
    plan: Plan
    comparison: Comparison
    costs: Costs
    source: str

    @property
    def works(self) -> bool:
        """Whether the box that follows has nothing that won't work."""
        return self.plan.works and not self.news("wont_work")

    @property
    def strains(self) -> bool:
        """Whether a panel then has less room or hold than is customary."""
        return any(row.topic == "season" for row in self.news("care"))

    @property
    def sizes(self) -> tuple[tuple[str, float, float], ...]:
        """The finished sizes that follow: which, as meant, and now. [mm]"""
        return tuple(
            (row.where, row.before.value, row.after.value)
            for row in self.comparison.changes
            if row.before is not None and row.after is not None and " rough " not in row.where
        )

    def moved(self, rule: Rule) -> tuple[str, ...]:
        """The finished sizes that follow, each in words."""
        return tuple(
            f"{name} {rule.exact(before)} → {rule.exact(after)}"
            for name, before, after in self.sizes
        )

    def lines(self, rule: Rule) -> tuple[str, ...]:
        """What else changes, what is to be said of it and what it costs, each a line."""
        return (
            *(f"Then: {moved}." for moved in self.moved(rule)),
            *(f"Won't work: {row.sentence}" for row in self.news("wont_work")),
            *(f"Care: {row.sentence}" for row in self.news("care")),
            f"Costs {self.costs.sentence}.",
        )

    def news(self, *levels: Level) -> tuple[Finding, ...]:
        """What is to be said of this box and was not of the one meant, alike put together."""
        return gathered(row for row in self.comparison.new_findings if row.level in levels)


@dataclass(frozen=True, slots=True)
class Case:
    """A mishap in its box: where the ways out are reckoned."""

    plan: Plan
    mishap: Mishap
    facts: Mapping[str, Any]
    meant: float | None
    found: list[Option] = field(default_factory=list)

    @classmethod
    def of(cls, made: Plan, mishap: Mishap) -> Case:
        """The case, with what exists at its stage."""
        return cls(made, mishap, facts(made, mishap), meant_of(made, mishap.what))

    @property
    def off(self) -> float:
        """As made less as meant: under 0 for what is too small, 0 where no size was meant. [mm]"""
        off = 0.0 if self.meant is None else self.mishap.measured - self.meant
        return 0.0 if abs(off) < 1e-9 else off

    def show(self, value: float) -> str:
        """A length on the student's rule. [mm]"""
        return self.plan.choices.rule.exact(value)

    def after(self, changes: Mapping[str, Any]) -> Plan:
        """The box with what exists and some changes."""
        return plan(self.plan.choices.having({**self.facts, **changes}))

    def offer(
        self,
        way: str,
        changes: Mapping[str, Any] | None = None,
        *,
        tried: Mapping[str, Any] | None = None,
        without: tuple[str, ...] = (),
        costs: Mapping[str, Any] = MappingProxyType({}),
        **values: object,
    ) -> None:
        """One more way out, a row of the table with its words' values; ``costs`` go before its own.

        With changes the box is reckoned anew, without them it is advice. A file has one size for
        both of a pair: what is ``tried`` on both tells what is to be said of one. What the stage or
        the size of the mishap rules out is not offered.
        """
        row = rows_by_name("plan/mishaps/ways.csv", "way")[way]
        if not self._can(row):
            return
        own = {name: int(row[name]) for name in COSTS if row[name]}
        values |= {"made": self.mishap.measured, "meant": self.meant or 0.0, "off": self.off}
        words = filled(row["words"], values, write=self.show)
        asked = changes if tried is None else tried
        kept = {key: value for key, value in self.facts.items() if key not in without}
        told = {} if asked is None else {**kept, **asked}
        after = self.plan if asked is None else plan(self.plan.choices.having(told))
        differs = compare(self.plan, after)
        if changes is None:
            told, after, differs = {}, self.plan, replace(differs, changes=(), gone_findings=())
        source = PRACTICE if asked is None else f"{GEOMETRY}; costs: {PRACTICE}"
        code, paid = way.partition(",")[0], Costs(**{**own, **costs})
        option = Option(code, words, told, after, differs, paid, source)
        paid = replace(paid, cares=len(option.news("care")))
        self.found.append(replace(option, costs=paid))

    def _can(self, row: Mapping[str, str]) -> bool:
        """Whether a way is open at the mishap's stage, and suits its size."""
        reached, size = self.mishap.reached, self.mishap.measured
        late = row["first"] and before(reached, row["first"])
        early = row["last"] and before(row["last"], reached)
        small = row["over"] and not above(size, float(row["over"]))
        large = row["upto"] and above(size, float(row["upto"]))
        return not (late or early or small or large)

    def usual(self) -> None:
        """The ways out that the table names for this mishap, whatever the box."""
        for row in read_table("plan/mishaps/ways.csv"):
            if row["mishap"] == self.mishap.what:
                self.offer(row["way"])

    def as_meant(self) -> bool:
        """Whether nothing is off at all; then that is what there is to say."""
        if not self.off:
            self.offer("as-meant")
        return not self.off

    def new_part(self, name: str, minutes: float, *, count: int = 1) -> None:
        """The spare, or a new part: the box stays as meant."""
        way = "new-part, lid" if name == "lid" else "new-part"
        way = "new-part, several" if count > 1 else way
        costs = {"minutes": minutes, "parts": count}
        self.offer(way, costs=costs, name=name, count=str(count))
