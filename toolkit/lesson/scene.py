"""A scene of a lesson: a few sliders, and what they show when they stand where they stand."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from toolkit.box import Choices
from toolkit.lesson.controls import Control, first_value, in_box, with_values
from toolkit.lesson.view import View


@dataclass(frozen=True, slots=True)
class Moment:
    """Where all sliders of a scene stand, and where they stood when the box was last kept.

    ``tried`` and ``before`` hold the sliders that set nothing in the box, such as a season's
    humidity, by their key.
    """

    choices: Choices
    kept: Choices
    tried: Mapping[str, Any]
    before: Mapping[str, Any]

    @property
    def moved(self) -> bool:
        """Whether anything stands elsewhere than it was kept."""
        return self.choices != self.kept or dict(self.tried) != dict(self.before)

    @property
    def first(self) -> Moment:
        """The state that was kept, to be drawn thinly behind."""
        return Moment(self.kept, self.kept, self.before, self.before)


@dataclass(frozen=True, slots=True)
class Scene:
    """Some controls and the pure function that turns where they stand into a view.

    Parameters
    ----------
    name : str
        A word by which a page finds it.
    controls : tuple of Control
        Three or four at most: geometry first, view options last.
    compute : callable
        From a `Moment` to a `View`; raises `ImpossibleError` with a sentence where there is none.
    height : int
        Height held free for the picture, so that the page does not jump. [px]
    more : callable, optional
        From a `Moment` to what is kept besides where the sliders stand: changes to the box by key,
        as its file says them.
    """

    name: str
    controls: tuple[Control, ...]
    compute: Callable[[Moment], View]
    height: int = 420
    more: Callable[[Moment], dict[str, Any]] | None = None

    def moment(self, kept: Choices, values: Mapping[str, Any] | None = None) -> Moment:
        """The state in which some sliders were moved away from the kept box, by key."""
        moved = dict(values or {})
        before = {
            key: first_value(control, kept)
            for control in self.controls
            for key in control.keys
            if not in_box(key)
        }
        tried = before | {key: value for key, value in moved.items() if not in_box(key)}
        return Moment(with_values(kept, moved), kept, tried, before)

    def view(self, kept: Choices, values: Mapping[str, Any] | None = None) -> View:
        """What it shows when some sliders were moved by key; else `ImpossibleError`."""
        return self.compute(self.moment(kept, values))
