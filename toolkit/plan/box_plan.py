"""The plan: one box worked out, from a file's choices to cut list, settings and findings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from hashlib import sha256

from toolkit.box import Choices, Design, design
from toolkit.plan.advice import Adviser
from toolkit.plan.checks import findings
from toolkit.plan.cut_parts import parts
from toolkit.plan.tool_settings import Setting, settings
from toolkit.results import AXES, Chosen, Finding, Part, Spot, TaggedSize, Topic


@dataclass(frozen=True)
class Plan:
    """One box, worked out. Lengths in mm.

    ``found`` is what the checks say, what won't work first; ``findings`` are the same with each
    remedy tried on this box, which takes as long as the plan itself and so waits until asked for.
    """

    choices: Choices
    design: Design
    parts: tuple[Part, ...]
    settings: tuple[Setting, ...]
    found: tuple[Finding, ...]

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What a maker would say of it, what won't work first, each remedy tried."""
        return self.advised(self.found)

    @property
    def works(self) -> bool:
        """Whether nothing was found that can't be made or fails in use."""
        return all(row.level != "wont_work" for row in self.found)

    @property
    def left_handed(self) -> bool:
        """Whether its maker works with the left hand, so that boards lie the other way round."""
        return self.choices.tools.hand == "left"

    @property
    def chosen(self) -> tuple[Chosen, ...]:
        """What was left out of the file, and by which rule it was chosen."""
        return self.design.chosen

    @property
    def fingerprint(self) -> str:
        """Eight characters that change whenever a choice does; printed on every sheet."""
        return sha256(repr(self.choices).encode()).hexdigest()[:8]

    @property
    def outside(self) -> str:
        """Outside length, width and height on the student's own rule: ``176 × 134 × 64 mm``."""
        rule, f = self.choices.rule, self.design.frame
        sizes = (f.outside_length, f.outside_width, f.wall_height)
        figures = " × ".join(rule.show(size.value, unit=False) for size in sizes)
        return f"{figures} {rule.units}"

    def about(self, *topics: Topic) -> tuple[Finding, ...]:
        """What was found on some topics."""
        return self.advised(row for row in self.found if row.topic in topics)

    def advised(self, rows: Iterable[Finding]) -> tuple[Finding, ...]:
        """Some of what was found, each remedy tried."""
        return tuple(map(self._adviser.on, rows))

    @cached_property
    def _adviser(self) -> Adviser:
        return Adviser(self.choices, self.found)

    def wrong(self, *spots: Spot, part: str = "", corner: str = "") -> tuple[Finding, ...]:
        """What is wrong at some spots, in their order; of one part or corner where one is named."""
        return tuple(
            row
            for spot in spots
            for row in self.found
            if row.level != "good"
            and row.place.spot == spot
            and row.place.meets(part=part, corner=corner)
        )

    def part(self, name: str) -> Part:
        """A part by its name."""
        for part in self.parts:
            if part.name == name:
                return part
        raise KeyError(name)

    def size(self, part: str, what: str) -> TaggedSize:
        """A part's ``rough length``, ``finished width``, … as every page writes it."""
        kind, axis = what.split()
        return self.part(part).sizes(kind, self.choices.rule)[AXES.index(axis)]


def plan(choices: Choices) -> Plan:
    """Work out one box from its choices. [mm]

    A box that cannot exist has findings that say so, and no settings.
    """
    d = design(choices)
    cut_list = parts(d)
    return Plan(
        choices=choices,
        design=d,
        parts=cut_list,
        settings=settings(d) if d.exists else (),
        found=findings(d, cut_list),
    )
