"""Small helps for making questions: sums gone wrong, and how to answer."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import TypeVar

from toolkit.measures import Fineness, Rule
from toolkit.results import Working

Choice = TypeVar("Choice")


def pick(chance: Random | None, options: Sequence[Choice]) -> Choice:
    """One of some values: the first, which is the usual one, unless questions are drawn afresh."""
    return options[0] if chance is None else chance.choice(options)


def answer_in(rule: Rule, fineness: Fineness = "sizes") -> str:
    """How to answer, for the end of a prompt."""
    unit = "millimetres" if rule.units == "mm" else "inches"
    mark = rule.exact(rule.mark(fineness))
    return f"Answer in {unit} with the unit, to the nearest {mark}."


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
