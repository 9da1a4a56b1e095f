"""The five lessons as their notebooks know them: scenes, blocks and cards by the cells' names."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property, lru_cache, partial, wraps
from inspect import signature
from os import environ
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from toolkit import explore
from toolkit.document import Block, Sentence
from toolkit.files import read_box
from toolkit.lesson import Lesson, Scene, lesson, worked_out
from toolkit.pictures import usually_for_phones
from toolkit.plan import Plan
from toolkit.stock import Board
from toolkit.study import OwnBoards, OwnBox, Question, example_path, first_guess

# The server without code hands on what the browser that has asked for the page is.
if "Mobi" in environ.get("HTTP_USER_AGENT", ""):
    usually_for_phones()


class LiveLesson:
    """A lesson over the student's own box: what a cell asks for is made when it is called."""

    def __init__(self, number: int, **cards: Callable[[], Any]) -> None:
        """The lesson of that number; its modules are loaded with its first cell."""
        self.number, self._cards = number, cards

    @cached_property
    def _lesson(self) -> Lesson:
        return lesson(self.number)

    @cached_property
    def scenes(self) -> dict[str, Scene]:
        """Its scenes by the names of their cells."""
        made = self._lesson.scenes.items()
        return {name: row if isinstance(row, Scene) else row(explore.rack) for name, row in made}

    def __getattr__(self, name: str) -> Callable[..., Any]:
        if name.startswith("_"):
            raise AttributeError(name)
        if name in self._cards:
            return self._cards[name]
        if name in self.scenes:
            return partial(explore.Explorer, self.scenes[name])
        if name in self._lesson.blocks:
            return explore.of_own(self._lesson.blocks[name])
        known = ", ".join(name for name in dir(self) if not name.startswith("_"))
        raise AttributeError(f"lesson {self.number} has no {name!r}; it has {known}")

    def __dir__(self) -> list[str]:
        return sorted({*super().__dir__(), *self._cards, *self.scenes, *self._lesson.blocks})

    def own(self) -> Plan:
        """The student's own box, worked out, for cells that go on with it."""
        return explore.own()

    def _asked(self) -> Question:
        """The question that the lesson opens with; of the example where a box has none."""
        asked = first_guess(explore.own(), lesson=self.number)
        asked = asked or first_guess(worked_out(read_box(example_path())), lesson=self.number)
        if asked is None:
            raise ValueError("the example box can't be built: there is nothing to guess")
        return asked

    def guess(self) -> widgets.Widget:
        """Guess first, before anything is shown."""
        asked = self._asked()
        return explore.guess_card(asked.id, asked.prompt, hint=self._lesson.hint)

    def compare(self) -> Sentence:
        """The guess beside the answer."""
        asked = self._asked()
        return explore.compare_guess(asked.id, explore.own(), answer=asked.answer)

    def your_turn(self, seed: int | str | None = None) -> explore.YourTurn:
        """Questions on the student's own box; a seed makes other sizes the same for a class."""
        return explore.YourTurn(self.number, own=explore.own, seed=seed)


def _rescue(*stages: Any) -> Callable[[], Any]:
    return lambda: explore.RescueCard(explore.own, stages=stages)


# The forms are fetched through the face, each when its cell is run.
lesson1 = LiveLesson(
    1, own_board=lambda: explore.own_board(), ready=lambda: explore.ReadyCard(explore.own)
)
lesson2 = LiveLesson(
    2,
    readings=lambda: explore.ReadingsForm(explore.own),
    made=lambda: explore.MadeForm(),
    rescue=_rescue("rough", "true"),
)
lesson3 = LiveLesson(3, feelers=lambda: explore.feeler_card(explore.own), rescue=_rescue("jointed"))
lesson4 = LiveLesson(
    4,
    moisture=lambda: explore.MoistureForm(explore.own),
    rescue=_rescue("grooved", "fitted", "gluing", "glued"),
)
lesson5 = LiveLesson(5)


def own() -> Plan:
    """The student's own box, worked out; the workbook's example until one is kept."""
    return worked_out(OwnBox().load().choices)


def rack() -> tuple[Board, ...]:
    """The boards on the student's rack, read again only when their file was changed. [mm]"""
    path = OwnBoards().source
    return _rack(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=4)
def _rack(path: Path, changed: int) -> tuple[Board, ...]:
    return OwnBoards().load().boards


def of_own(block: Callable[..., Block]) -> Callable[..., Block]:
    """What a lesson shows of a plan and of boards, as a cell asks for it: of the student's own."""
    taken = signature(block)
    asked = {"plan": own, "boards": rack}
    given = [asked.pop(name) for name in taken.parameters if name in asked]

    @wraps(block)
    def shown(*args: Any, **named: Any) -> Block:
        return block(*(fetch() for fetch in given), *args, **named)

    less = list(taken.parameters.values())[len(given) :]
    shown.__signature__ = taken.replace(parameters=less)  # type: ignore[attr-defined]
    return shown
