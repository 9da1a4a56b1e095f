"""Two boxes side by side: which sizes moved, by how much, and which term of the sum moved them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.plan.box_plan import Plan
from toolkit.plan.squareness import measured, rooms
from toolkit.results import AXES, ROUNDING, Finding, Working


@dataclass(frozen=True, slots=True)
class Moved:
    """One size before and after; ``None`` where one of the boxes has no such size. [mm]"""

    where: str
    before: Working | None
    after: Working | None

    @property
    def amount(self) -> float | None:
        """After less before. [mm]"""
        if self.before is None or self.after is None:
            return None
        return self.after.value - self.before.value

    def why(self, rule: Rule) -> str:
        """The terms that moved: ``2 × side thickness + 1 mm``."""
        if self.before is None or self.after is None:
            return "only in one of the two boxes"
        old = {term.label: term for term in self.before.terms}
        new = {term.label: term for term in self.after.terms}
        words = []
        for label in dict.fromkeys([*old, *new]):
            was = old[label].value if label in old else 0.0
            now = new[label].value if label in new else 0.0
            if label == ROUNDING:
                # The change itself says how far it went.
                words += [label] if now != was else []
            elif now != was:
                sign = "+" if now > was else "−"
                words.append(f"{label} {sign} {rule.exact(abs(now - was))}")
        return "; ".join(words)


@dataclass(frozen=True, slots=True)
class Comparison:
    """What changed between two boxes; ``same`` names the sizes that did not."""

    changes: tuple[Moved, ...]
    same: tuple[str, ...]
    new_findings: tuple[Finding, ...]
    gone_findings: tuple[Finding, ...]


def _sizes(plan: Plan) -> Iterator[tuple[str, Working]]:
    f = plan.design.frame
    for place in ("outside", "inside"):
        for axis in ("length", "width"):
            yield f"{place} {axis}", getattr(f, f"{place}_{axis}")
    yield "wall height", f.wall_height
    yield "inside height", f.inside_height
    yield "lap, back corners", f.lap_back
    yield "lap, front corners", f.lap_front
    yield "tail length, back corners", f.tail_back
    yield "tail length, front corners", f.tail_front
    for part in plan.parts:
        for axis, size in zip(AXES, part.cut, strict=True):
            yield f"{part.name} {axis}", size
    for part in plan.parts:
        for size in part.rough:
            yield size.name, size


def compare(before: Plan, after: Plan) -> Comparison:
    """What changed from one box to another, and why. [mm]"""
    old, new = dict(_sizes(before)), dict(_sizes(after))
    made = (before.design, after.design)
    # The corners' rooms are worth a line only where squareness was measured.
    if all(d.exists for d in made) and any(measured(d) for d in made):
        old |= {row.name: row.left for row in rooms(before.design)}
        new |= {row.name: row.left for row in rooms(after.design)}
    changes, same = [], []
    for where in dict.fromkeys([*old, *new]):
        change = Moved(where, old.get(where), new.get(where))
        amount = change.amount
        if amount is not None and abs(amount) < 1e-9:
            same.append(where)
        else:
            changes.append(change)
    had = {(row.level, row.code, row.where) for row in before.found}
    has = {(row.level, row.code, row.where) for row in after.found}
    return Comparison(
        tuple(changes),
        tuple(same),
        after.advised(row for row in after.found if (row.level, row.code, row.where) not in had),
        before.advised(row for row in before.found if (row.level, row.code, row.where) not in has),
    )
