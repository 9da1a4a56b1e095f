"""How a question is put: about which box, answered how, and sums gone wrong."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from random import Random
from typing import TypeVar

from toolkit.box import Design, Frame
from toolkit.measures import Direction, Fineness, Rule
from toolkit.plan import Plan
from toolkit.results import TOLERANCE, Part, Working, above
from toolkit.study.marking import Kind, Question, Slip

Choice = TypeVar("Choice")

# The words for an answer over and under, where a question has none of its own.
_SENSES: dict[Kind, tuple[str, str]] = {
    "length": ("too long", "too short"),
    "count": ("too many", "too few"),
    "deg": ("too steep", "too low"),
    "%": ("too much", "too little"),
}
_HOW: dict[Kind, str] = {
    "count": "Answer with a number.",
    "deg": "Answer in degrees.",
    "%": "Answer in percent with its sign, to the nearest 0.5 %.",
}


@dataclass(frozen=True, slots=True)
class Asking:
    """A box to ask about; with ``chance`` a question's own numbers are drawn, else the usual."""

    plan: Plan
    chance: Random | None = None

    @property
    def design(self) -> Design:
        return self.plan.design

    @property
    def frame(self) -> Frame:
        return self.plan.design.frame

    @property
    def rule(self) -> Rule:
        return self.plan.choices.rule

    def part(self, name: str) -> Part | None:
        """A part that is still to be made."""
        return next((part for part in self.plan.parts if part.name == name), None)

    def pick(self, options: Sequence[Choice]) -> Choice:
        """One of some values: the first, which is the usual one, unless chance decides."""
        return options[0] if self.chance is None else self.chance.choice(options)

    def question(
        self,
        id: str,
        asks: str,
        answer: Working | tuple[float, str],
        *slips: tuple[float, str],
        kind: Kind = "length",
        fineness: Fineness = "sizes",
        direction: Direction = "nearest",
        senses: tuple[str, str] | None = None,
        nudge: str,
        how: str = "",
    ) -> Question:
        """A question: its answer with the working, then each slip with its hint."""
        if isinstance(answer, Working):
            answer = answer.value, answer.sentence(self.rule)
        return Question(
            id=id,
            asks=asks,
            answer=float(answer[0]),
            working=answer[1],
            rule=self.rule,
            slips=tuple(Slip(float(value), hint) for value, hint in slips),
            kind=kind,
            fineness=fineness,
            direction=direction,
            senses=senses or _SENSES[kind],
            nudge=nudge,
            how=how or _HOW.get(kind) or _length_in(self.rule, fineness),
        )


def _length_in(rule: Rule, fineness: Fineness) -> str:
    unit = "millimetres" if rule.units == "mm" else "inches"
    return f"Answer in {unit} with the unit, to the nearest {rule.exact(rule.mark(fineness))}."


def without(working: Working, *labels: str) -> float:
    """What a sum comes to when some of its terms are forgotten. [mm]"""
    return working.value - sum(_term(working, label) for label in labels)


def turned(working: Working, label: str) -> float:
    """What a sum comes to when one of its terms is taken the wrong way round. [mm]"""
    return working.value - 2 * _term(working, label)


def once(working: Working, label: str) -> float:
    """What a sum comes to when a doubled term is taken once. [mm]"""
    return working.value - _term(working, label) / 2


def _term(working: Working, label: str) -> float:
    found = [term.value for term in working.terms if term.label == label]
    if not found:
        raise KeyError(f"{working.name} has no term {label!r}")
    return sum(found)


def told_apart(question: Question) -> Question:
    """The question without the slips that happen to be right here, or to agree with another."""
    kept: list[Slip] = []
    for slip in question.slips:
        again = any(not above(abs(slip.value - other.value), TOLERANCE) for other in kept)
        if not again and slip.value >= 0 and not question.is_right(slip.value):
            kept.append(slip)
    return replace(question, slips=tuple(kept))
