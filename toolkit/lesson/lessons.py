"""What a lesson is: its scenes and the blocks that its cells show, by the names of the cells."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from inspect import getmembers, isfunction
from typing import TYPE_CHECKING

from toolkit.document import Block, Figure, Prose
from toolkit.lesson.scene import Scene
from toolkit.plan import Plan, around

if TYPE_CHECKING:
    from toolkit.lesson.lesson1 import Rack


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson: a ``hint`` for its guess, its scenes, and its blocks, by the names of its cells.

    A scene may be made from a rack of boards. A block asks for a ``plan``, for ``boards`` or for
    neither by the names of its parameters.
    """

    hint: str
    scenes: Mapping[str, Scene | Callable[[Rack], Scene]]
    blocks: Mapping[str, Callable[..., Block]]


@cache
def lesson(number: int) -> Lesson:
    """A lesson by its number, read when it is first asked for; its public functions are blocks."""
    module = import_module(f"toolkit.lesson.lesson{number}")
    functions = getmembers(module, isfunction)
    public = ((name, row) for name, row in functions if not name.startswith("_"))
    own = {name: row for name, row in public if row.__module__ == module.__name__}
    stills = {name: _still(scene) for name, scene in getattr(module, "STILLS", {}).items()}
    return Lesson(module.HINT, module.SCENES, {**own, **stills, "bench": _bench(number)})


def _bench(number: int) -> Callable[[Plan], Prose]:
    """Where the lesson stands at the bench, which has another order than the lessons."""

    def bench(plan: Plan) -> Prose:
        before, now, after = around(plan, number)
        told = {
            "Before this at the bench": before or "nothing",
            "With this lesson": now,
            "After it": after,
        }
        return Prose(" ".join(f"*{what}:* {steps}." for what, steps in told.items() if steps))

    return bench


def _still(scene: Scene) -> Callable[[Plan], Figure]:
    """A scene as it stands before anything is moved, for paper and for readers without a mouse."""

    def still(plan: Plan) -> Figure:
        return Figure(scene.still(plan.choices))

    return still
