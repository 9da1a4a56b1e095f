"""The student's own box, of which a lesson's cells speak."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from inspect import signature
from typing import Concatenate, ParamSpec, TypeVar

from toolkit.lesson.worked import worked_out
from toolkit.plan import Plan
from toolkit.study import OwnBox

_More = ParamSpec("_More")
_Block = TypeVar("_Block")


def own() -> Plan:
    """The student's own box, worked out; the workbook's example until one is kept."""
    return worked_out(OwnBox().load().choices)


def of_own(block: Callable[Concatenate[Plan, _More], _Block]) -> Callable[_More, _Block]:
    """What a lesson shows of a plan, as a cell asks for it: of the student's own box."""

    @wraps(block)
    def shown(*args: _More.args, **named: _More.kwargs) -> _Block:
        return block(own(), *args, **named)

    taken = signature(block)
    less = list(taken.parameters.values())[1:]
    shown.__signature__ = taken.replace(parameters=less)  # type: ignore[attr-defined]
    return shown
