"""A box worked out for a slider, once for all lessons: remembered, and refused in a sentence."""

from __future__ import annotations

from functools import lru_cache

from toolkit.box import Choices
from toolkit.lesson.view import ImpossibleError
from toolkit.plan import Plan, plan

worked_out = lru_cache(maxsize=64)(plan)


def drawable(plan: Plan) -> Plan:
    """The plan itself, or the sentence that says why there is no such box."""
    if not plan.design.exists:
        raise ImpossibleError(plan.findings[0].sentence)
    return plan


def possible(choices: Choices) -> Plan:
    """A box worked out, or the sentence that says why there is none."""
    return drawable(worked_out(choices))
