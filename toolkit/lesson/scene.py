"""A scene of a lesson: a few sliders, what they come to, and the view that is put on the page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache
from html import escape
from types import MappingProxyType
from typing import Any, ClassVar, Self

from toolkit.box import Choices
from toolkit.document import SCREEN, Edition, Figure, FindingsBlock, as_html
from toolkit.lesson.controls import Control, in_box, with_values
from toolkit.measures import Rule
from toolkit.pictures import Picture
from toolkit.plan import Plan, plan
from toolkit.results import Finding, Table, Topic, Working


def spoken(text: str, look: str = "bench-say") -> str:
    """A sentence of a card, read out when it changes: to say, ``bench-right``, ``bench-hint``."""
    return f'<div class="bench-view"><p class="{look}" role="status">{escape(text)}</p></div>'


@dataclass(frozen=True, slots=True)
class View:
    """A picture with its sentence, numbers with their workings, and findings.

    Advice is tried on the box before it is given: it is ``judged`` when its words are wanted, after
    the picture is painted.
    """

    picture: Picture
    numbers: Table
    judged: Callable[[], tuple[Finding, ...]] = tuple
    beside: tuple[Picture, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What a maker would say."""
        return self.judged()

    def figure(self, scene: str) -> str:
        """The picture and its sentence as one figure of HTML, for a scene of that name."""
        return Figure(self.picture).html(Edition(screen=True, place=scene))

    def words(self, scene: str) -> str:
        """What is under it, the numbers and the findings, as HTML."""
        beside = Edition(screen=True, place=f"{scene}-beside")
        parts = [*(Figure(picture).html(beside) for picture in self.beside), as_html(self.numbers)]
        if found := self.findings:
            parts.append(FindingsBlock(found).html(SCREEN))
        return f'<div class="bench-view">{"".join(parts)}</div>'


MUCH = ("what", "how much", "where it comes from")


def numbers(
    rows: Iterable[tuple[str, ...]],
    *,
    title: str = "Numbers",
    columns: tuple[str, ...] = ("what", "value", "where it comes from"),
    numeric: tuple[int, ...] = (1,),
) -> Table:
    """The numbers of a scene, each with its working."""
    return Table(title, columns, tuple(rows), numeric=numeric)


def size_row(size: Working, rule: Rule) -> tuple[str, str, str]:
    """A size as a row of the numbers."""
    return size.name, rule.show(size.value), size.reckoned(rule)


class ImpossibleError(ValueError):
    """A combination of sliders that can't be; its text is the sentence shown."""

    def __init__(self, sentence: str, *, there_is: str = "No such box.") -> None:
        super().__init__(sentence)
        self.there_is = there_is


worked_out = lru_cache(maxsize=64)(plan)


def drawable(plan: Plan) -> Plan:
    """The plan itself, or the sentence that says why there is no such box."""
    if not plan.design.exists:
        raise ImpossibleError(plan.findings[0].sentence)
    return plan


def possible(choices: Choices) -> Plan:
    """A box worked out, or the sentence that says why there is none."""
    return drawable(worked_out(choices))


Tried = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class SliderState:
    """Where all sliders of a scene stand, and where they stood when the box was last kept."""

    choices: Choices
    kept: Choices
    tried: Tried
    before: Tried

    @property
    def moved(self) -> bool:
        """Whether anything stands elsewhere than it was kept."""
        return self.choices != self.kept or self.tried != self.before


class Shown:
    """What the sliders of a scene come to: how it is drawn, listed and judged."""

    # Topics of the box's own findings that belong to it.

    topics: ClassVar[tuple[Topic, ...]] = ()
    needs_a_box: ClassVar[bool] = True

    def __init__(self, choices: Choices, tried: Tried) -> None:
        """The box with what is tried; `ImpossibleError` where there is none."""
        self.choices, self.tried, self.rule = choices, tried, choices.rule
        self.plan = worked_out(self.box())
        if self.needs_a_box:
            drawable(self.plan)
        self.set_up(tried)

    def set_up(self, tried: Tried) -> None:
        """Work out what is drawn, listed and judged alike."""

    def box(self) -> Choices:
        """The box that is looked at: what is tried may change it."""
        return self.choices

    def picture(self, before: Self | None) -> Picture:
        """The picture, with the kept state drawn thinly behind if anything has moved."""
        raise NotImplementedError

    def beside(self, before: Self | None) -> tuple[Picture, ...]:
        """Pictures that belong under it."""
        return ()

    def values(self) -> Table:
        """The numbers with their workings."""
        raise NotImplementedError

    def verdict(self) -> tuple[Finding, ...]:
        """What a maker would say."""
        return self.plan.about(*self.topics) if self.topics else ()


@dataclass(frozen=True, slots=True)
class Scene:
    """Some controls, and what they come to.

    Parameters
    ----------
    name : str
        A word by which a page finds it.
    controls : tuple of Control
        Three or four at most: geometry first, view options last.
    shown : callable
        From a box and what is tried to a `Shown`, or to a `View` where nothing is drawn behind;
        raises `ImpossibleError` with a sentence where there is nothing.
    height : int
        Height held free for the picture, so that the page does not jump. [px]
    more : callable, optional
        From a `SliderState` to what is kept besides where the sliders stand: changes to the box by
        key, as its file says them.
    check : callable
        From a `SliderState`, raises `ImpossibleError` where a move can't be.
    """

    name: str
    controls: tuple[Control, ...]
    shown: Callable[[Choices, Tried], Shown | View]
    height: int = 420
    more: Callable[[SliderState], dict[str, Any]] | None = None
    check: Callable[[SliderState], None] = lambda _: None

    def live(self, kept: Choices) -> tuple[Control, ...]:
        """The controls that move something in such a box."""
        idle = set(kept.lid.closure.idle)
        if kept.corner.joint == "through":
            idle.add("corner.lap")
        return tuple(control for control in self.controls if not idle.issuperset(control.keys))

    def at(self, kept: Choices, values: Tried = MappingProxyType({})) -> SliderState:
        """The state in which some sliders were moved away from the kept box, by key."""
        before = {
            key: control.first(kept)
            for control in self.controls
            for key in control.keys
            if not in_box(key)
        }
        tried = before | {key: value for key, value in values.items() if not in_box(key)}
        return SliderState(with_values(kept, values), kept, tried, before)

    def view(self, kept: Choices, values: Tried = MappingProxyType({})) -> View:
        """What it shows when some sliders were moved by key; else `ImpossibleError`."""
        at = self.at(kept, values)
        before: Any = None
        self.check(at)
        now = self.shown(at.choices, at.tried)
        if isinstance(now, View):
            return now
        if at.moved:
            with suppress(ImpossibleError):
                before = self.shown(at.kept, at.before)
        return View(now.picture(before), now.values(), now.verdict, now.beside(before))

    def still(self, kept: Choices) -> Picture:
        """Its picture before anything is moved."""
        at = self.at(kept)
        now = self.shown(at.choices, at.tried)
        return now.picture if isinstance(now, View) else now.picture(None)
