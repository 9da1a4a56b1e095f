"""From a mishap to the ways out of it, ranked by what they cost."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any

from toolkit.box import written
from toolkit.measures import Rule
from toolkit.plan.box_plan import Plan
from toolkit.plan.contract import finding_data
from toolkit.plan.mishaps.joints import WAYS
from toolkit.plan.mishaps.mishap import GROOVES, SIZES, STAGES, Mishap
from toolkit.plan.mishaps.option import Case, Option, Weights
from toolkit.plan.mishaps.parts import sizes
from toolkit.plan.mishaps.ploughing import grooves
from toolkit.results import Table


def _ways(case: Case) -> None:
    """Put all ways out into the case."""
    what = case.mishap.what
    if what in SIZES:
        sizes(case)
    elif what in GROOVES:
        grooves(case)
    else:
        WAYS[what](case)


@dataclass(frozen=True, slots=True)
class Rescue:
    """A mishap in the box as meant, and its ways out, the cheapest first.

    ``meant`` is the size that was meant, None where none was. [mm] Options that leave a panel
    less room or hold than is customary come after those, and whose box won't work last.
    """

    plan: Plan
    mishap: Mishap
    meant: float | None
    options: tuple[Option, ...]
    weights: Weights

    @property
    def saved(self) -> bool:
        """Whether there is a way out to a box that works."""
        return any(option.works for option in self.options)

    def sentence(self, rule: Rule) -> str:
        """What went wrong, and the way out that costs least."""
        stage = f"Stage {self.mishap.reached}: {STAGES[self.mishap.reached]}."
        said = f"{self.mishap.sentence(rule, meant=self.meant)} {stage}"
        if not self.saved:
            return f"{said} None of the ways out leads to a box that works."
        return f"{said} Least cost: {self.options[0].words}"

    def table(self, rule: Rule) -> Table:
        """The ways out side by side."""
        rows = []
        for number, option in enumerate(self.options, 1):
            said = [row.sentence for row in option.news("wont_work", "care")]
            rows.append(
                (
                    str(number),
                    option.words,
                    "; ".join(option.moved(rule)) or "as meant",
                    " ".join(said) or "nothing new",
                    option.costs.sentence,
                    option.source,
                )
            )
        return Table(
            "Ways out",
            ("no.", "what to do", "sizes that follow", "to be said of it", "costs", "source"),
            tuple(rows),
            note=self.weights.sentence,
        )


def rescue(plan: Plan, *, mishap: Mishap, weights: Weights | None = None) -> Rescue:
    """What can still be done about a mishap: every way out, ranked by what it costs. [mm]"""
    if not plan.design.exists:
        raise ValueError(plan.findings[0].sentence if plan.findings else "there is no such box")
    case = Case.of(plan, mishap)
    _ways(case)
    scale = weights or Weights()

    def order(option: Option) -> tuple[bool, bool, float]:
        return not option.works, option.strains, option.costs.total(scale)

    ranked = sorted(case.found, key=order)
    return Rescue(plan, mishap, case.meant, tuple(ranked), scale)


def rescue_data(found: Rescue) -> dict[str, Any]:
    """A rescue as dictionaries and lists of numbers and text.

    Every length is in mm, unrounded, but for ``box_file``: there each is text as a file has it, and
    a key that is to be taken out of the file is None.
    """
    mishap, rule = found.mishap, found.plan.choices.rule
    return {
        "title": found.plan.choices.title,
        "fingerprint": found.plan.fingerprint,
        "mishap": {
            "what": mishap.what,
            "value": mishap.value,
            "meant": found.meant,
            "stage": mishap.reached,
            "corner": mishap.corner,
            "tail": mishap.tail,
            "part": mishap.part,
        },
        "message": found.sentence(rule),
        "saved": found.saved,
        "weights": asdict(found.weights),
        "options": [
            {"rank": rank, **_option(option, rule, found.weights)}
            for rank, option in enumerate(found.options, 1)
        ],
    }


def _option(option: Option, rule: Rule, weights: Weights) -> dict[str, Any]:
    costs = option.costs
    return {
        "code": option.code,
        "words": option.words,
        "works": option.works,
        "sizes": [
            {"name": name, "meant": before, "now": after} for name, before, after in option.sizes
        ],
        "changes": dict(option.changes),
        "box_file": written(option.changes, rule=rule),
        "findings": [finding_data(row) for row in option.news("wont_work", "care")],
        "costs": {
            "minutes": costs.minutes,
            "parts": costs.parts,
            "looks": costs.looks,
            "wait": costs.wait,
            "cares": costs.cares,
            "total": costs.total(weights),
        },
        "source": option.source,
    }
