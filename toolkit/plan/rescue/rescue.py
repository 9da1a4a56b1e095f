"""From a mishap to the ways out of it, ranked by what they cost."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.plan.plan import Plan
from toolkit.plan.rescue import joints, lids
from toolkit.plan.rescue.grooves import grooves
from toolkit.plan.rescue.mishap import GROOVES, SIZES, STAGES, Mishap
from toolkit.plan.rescue.option import Case, Option, Weights
from toolkit.plan.rescue.square import diagonals
from toolkit.plan.rescue.walls import sizes
from toolkit.results import Table

WAYS: dict[str, Callable[[Case], None]] = {
    **dict.fromkeys(SIZES, sizes),
    **dict.fromkeys(GROOVES, grooves),
    "lap_through": joints.lap_through,
    "baseline_over": joints.baseline_over,
    "socket_depth": joints.socket_depth,
    "tail_wrong_side": joints.tail_wrong_side,
    "lid_tight": lids.lid_tight,
    "lid_play": lids.lid_play,
    "lid_rattle": lids.lid_rattle,
    "diagonals": diagonals,
}


@dataclass(frozen=True, slots=True)
class Rescue:
    """A mishap and its ways out, the cheapest first.

    Attributes
    ----------
    plan : Plan
        The box as meant.
    mishap : Mishap
        What was made.
    meant : float or None
        The size that was meant; None where none was. [mm]
    options : tuple of Option
        The ways out, ranked; those whose box won't work come last.
    weights : Weights
        The scale they are ranked on.
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
                    option.moved(rule) or "as meant",
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
    """What can still be done about a mishap.

    Parameters
    ----------
    plan : Plan
        The box as meant. [mm]
    mishap : Mishap
        What was made, and how far the work had come. [mm]
    weights : Weights, optional
        The scale to rank by. [min]

    Returns
    -------
    Rescue
        Every way out with the box that follows, its findings and its costs, the cheapest first.

    Raises
    ------
    ValueError
        There is no such box, or it has no such part or joint.

    Source
    ------
    The sizes: the plan, with what was made as a fact. What to do, and its costs: common
    practice, no source.
    """
    if not plan.design.exists:
        raise ValueError(plan.findings[0].sentence if plan.findings else "there is no such box")
    case = Case.of(plan, mishap)
    WAYS[mishap.what](case)
    scale = weights or Weights()
    ranked = sorted(case.found, key=lambda option: (not option.works, option.costs.total(scale)))
    return Rescue(plan, mishap, case.meant, tuple(ranked), scale)
