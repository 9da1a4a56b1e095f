"""A box worked out for a slider, once for all lessons: remembered, and refused in a sentence."""

from __future__ import annotations

from functools import lru_cache

from toolkit.box import Choices
from toolkit.explore.view import ImpossibleError
from toolkit.plan import Plan, plan
from toolkit.study import OwnBox

worked_out = lru_cache(maxsize=64)(plan)


def own() -> Plan:
    """The student's own box, worked out; the workbook's example until one is kept."""
    return worked_out(OwnBox().load().choices)


def possible(choices: Choices) -> Plan:
    """A box worked out, or the sentence that says why there is none.

    Parameters
    ----------
    choices : Choices
        The box. [mm]

    Raises
    ------
    ImpossibleError
        No such box can be.
    """
    made = worked_out(choices)
    if not made.design.exists:
        raise ImpossibleError(made.findings[0].sentence)
    return made
