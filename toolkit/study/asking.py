"""How a question is put: about which box, answered how, and sums gone wrong."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from random import Random
from string import Formatter
from typing import Any, TypeVar

from toolkit.box import Design, Frame, Walk, walk
from toolkit.measures import Direction, Fineness, Rule
from toolkit.plan import Plan
from toolkit.results import TOLERANCE, Part, Working, above, read_words
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


class NotAskedError(Exception):
    """This box has no such thing to ask about."""


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

    def only_if(self, condition: object) -> None:
        """Ask only where this is so."""
        if not condition:
            raise NotAskedError

    def known(self, thing: Choice | None) -> Choice:
        """What a question is about; it is not asked where there is no such thing."""
        if thing is None:
            raise NotAskedError
        return thing

    def part(self, name: str) -> Part:
        """A part that is still to be made."""
        return self.known(next((part for part in self.plan.parts if part.name == name), None))

    @property
    def walked(self) -> Walk:
        """How dividers walk the back corner's tails, where these are equal."""
        return self.known(walk(self.design.back))

    def pick(self, options: Sequence[Choice]) -> Choice:
        """One of some values: the first, which is the usual one, unless chance decides."""
        return options[0] if self.chance is None else self.chance.choice(options)

    def question(
        self, id: str, answer: Working | float, slips: Mapping[str, float], **more: object
    ) -> Question:
        """A question in its lesson's words, with those of its slips that somebody can make here."""
        lesson, _, name = id.partition(".")
        words = _Words(**read_words(f"study/{lesson}_questions.toml")[lesson][name])
        working = ""
        if isinstance(answer, Working):
            working, answer = answer.sentence(self.rule), answer.value
        here = {"plan": self.plan, "design": self.design, "frame": self.frame, "answer": answer}

        def said(text: str) -> str:
            return _Sizes(self.rule).vformat(text, (), here | more)

        over, under = words.senses or _SENSES[words.kind]
        return Question(
            id=said(id),
            asks=said(words.asks),
            answer=float(answer),
            working=working or said(words.working),
            rule=self.rule,
            slips=tuple(Slip(float(slips[name]), said(words.slips[name])) for name in slips),
            kind=words.kind,
            fineness=words.fineness,
            direction=words.direction,
            senses=(over, under),
            nudge=said(words.nudge),
            how=said(words.how) or _HOW.get(words.kind) or _length_in(self.rule, words.fineness),
        )


@dataclass(frozen=True, slots=True)
class _Words:
    """What a table says of a question; ``slips`` are the hints by the names of the slips."""

    asks: str
    slips: Mapping[str, str]
    nudge: str
    working: str = ""
    kind: Kind = "length"
    fineness: Fineness = "sizes"
    direction: Direction = "nearest"
    senses: Sequence[str] = ()
    how: str = ""


class _Sizes(Formatter):
    """Puts sizes into words as the student's rule has them."""

    def __init__(self, rule: Rule) -> None:
        self.rule = rule

    def format_field(self, value: Any, format_spec: str) -> str:
        """One size in words."""
        if isinstance(value, Working):
            value = value.value
        if not isinstance(value, float) or format_spec[-1:] in ("g", "f"):
            return format(value, format_spec)
        return self.rule.exact(value, unit=format_spec != "bare")


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
