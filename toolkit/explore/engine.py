"""The one slider engine of all lessons: a scene of named controls becomes a picture and words."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Collection
from contextlib import suppress
from html import escape
from typing import Any, Protocol
from weakref import WeakSet

import ipywidgets as widgets

from toolkit.box import Choices, written
from toolkit.document import SHEET
from toolkit.explore.controls import BoxBar, Displayed, widget
from toolkit.lesson import Control, ImpossibleError, Scene, View, in_box
from toolkit.measures import Rule
from toolkit.pictures import face_of_drawings
from toolkit.study import OwnBox

# Between a picture and its words: a browser needs two or three frames to paint one. [s]
PAUSE = 0.05
# A slider that has not moved for so long is not being dragged; the next step can be foreseen. [s]
STILL = 0.09

_alive: WeakSet[Explorer] = WeakSet()


class Follower(Protocol):
    """A form beside the scenes that is written on the student's own rule."""

    def follow(self) -> None:
        """The kept box is another one, or is read on another rule."""
        ...


_followers: WeakSet[Follower] = WeakSet()


def follows(form: Follower) -> None:
    """Tell a form whenever another box is kept, or the same on another rule."""
    _followers.add(form)


def _later(seconds: float, what: Callable[[], None]) -> asyncio.TimerHandle | None:
    """Have the kernel do something a little later; None where no kernel is running. [s]"""
    try:
        return asyncio.get_running_loop().call_later(seconds, what)
    except RuntimeError:
        return None


class Explorer(Displayed):
    """The sliders of a scene over one box. Display it as the last value of a cell."""

    def __init__(self, scene: Scene) -> None:
        self.scene = scene
        self.controls = scene.controls
        self.bar = BoxBar(changes=self._changes, reloaded=self._reload) if self._keeps else None
        self.kept = self.bar.choices if self.bar else OwnBox().load().choices
        self.values: dict[str, Any] = {}
        self._picture = widgets.HTML(layout={"min_height": f"{scene.height}px"})
        self._words = widgets.HTML()
        self._unsaid: View | None = None
        self._foreseen: tuple[dict[str, Any], View, str] | None = None
        self._ahead: asyncio.TimerHandle | None = None
        # Two lines are held free, so that saying what is wrong does not push the picture down.
        self._trouble = widgets.HTML(layout={"min_height": "58px"})
        self._sliders = widgets.VBox()
        self._make_sliders()
        self.show()
        _alive.add(self)

    @property
    def widget(self) -> widgets.Widget:
        """Everything in the order in which it is used."""
        bar = [self.bar.widget] if self.bar else []
        rows = [self._sliders, self._trouble, self._picture, self._words]
        # The letters come with each scene: a page that is opened again over a running kernel knows
        # no widget from before, and a scene that leaned on one would never appear.
        looks = widgets.HTML(face_of_drawings() + SHEET)
        whole = widgets.VBox([looks, *bar, *rows])
        whole.add_class(f"scene-{self.scene.name}")
        return whole

    @property
    def _keeps(self) -> bool:
        return any(in_box(key) for control in self.controls for key in control.keys)

    @property
    def choices(self) -> Choices:
        """The box as the sliders now have it."""
        return self.scene.at(self.kept, self.values).choices

    def _make_sliders(self) -> None:
        rule: Rule = self.kept.rule
        made = []
        for control in self.scene.live(self.kept):
            value = self.values.get(control.keys[0], control.first(self.kept))
            slider = widget(control, rule, value)
            slider.observe(self._moved(control), names="value")
            made.append(slider)
        self._sliders.children = made

    def _moved(self, control: Control) -> Callable[[Any], None]:
        def moved(change: Any) -> None:
            for key in control.keys:
                self.values[key] = change["new"]
            self.show(words_later=True)
            self._expect(control, change)

        return moved

    def show(self, *, words_later: bool = False) -> None:
        """Compute and show the present state, or say why there is none."""
        try:
            view, figure = self._looked_at(self.values)
        except ImpossibleError as error:
            self._trouble.value = (
                f'<div class="bench-view"><p class="bench-impossible" role="status">'
                f"<b>{escape(error.there_is)}</b> {escape(str(error))} "
                "The picture shows the last one that could be made.</p></div>"
            )
            return
        self._trouble.value = ""
        self._picture.value = figure
        waiting, self._unsaid = self._unsaid is not None, view
        if words_later and waiting:
            return
        if not words_later or _later(PAUSE, self._say) is None:
            self._say()

    def _looked_at(self, values: dict[str, Any]) -> tuple[View, str]:
        """The view of a state and its figure, which may have been foreseen."""
        if self._foreseen is not None and self._foreseen[0] == values:
            return self._foreseen[1:]
        view = self.scene.view(self.kept, values)
        return view, view.figure(self.scene.name)

    def _expect(self, control: Control, change: Any) -> None:
        """A slider that stands still for a moment will most likely go one step further."""
        if self._ahead is not None:
            self._ahead.cancel()
        places = [value for _, value in getattr(change["owner"], "options", ())]
        if change["old"] not in places or change["new"] not in places:
            return
        here, before = places.index(change["new"]), places.index(change["old"])
        there = here + (1 if here > before else -1)
        if 0 <= there < len(places):
            values = self.values | dict.fromkeys(control.keys, places[there])
            self._ahead = _later(STILL, lambda: self._foresee(values))

    def _foresee(self, values: dict[str, Any]) -> None:
        """Work a state out before it is asked for."""
        with suppress(ImpossibleError):
            self._foreseen = (values, *self._looked_at(values))

    def _say(self) -> None:
        """The words of the latest picture."""
        view, self._unsaid = self._unsaid, None
        if view is not None:
            self._words.value = view.words(self.scene.name)

    def _changes(self) -> dict[str, Any]:
        """What differs from the kept box, as the box file says it."""
        moved: dict[str, Any] = {}
        for control in self.controls:
            keys = [key for key in control.keys if in_box(key) and key in self.values]
            if any(self.values[key] != self.kept.value(key) for key in keys):
                moved |= {key: self.values[key] for key in keys}
        changes = written(moved, rule=self.kept.rule)
        if self.scene.more is not None:
            changes |= self.scene.more(self.scene.at(self.kept, self.values))
        return changes

    def _reload(self, choices: Choices, *, forget: bool) -> None:
        """The kept box was changed or is shown on another rule: all begin from it again."""
        self.begin_from(choices, forget=forget)
        followed(choices, forget=forget, but=self)

    def begin_from(self, choices: Choices, *, forget: bool = False) -> None:
        """Begin from a kept box; ``forget`` gives up what the sliders hold of the box. [mm]"""
        if self._ahead is not None:
            self._ahead.cancel()
        self.kept, self._foreseen = choices, None
        if forget:
            self.values = {key: value for key, value in self.values.items() if not in_box(key)}
        self._make_sliders()
        self.show()


def refresh(scene: str, *, forget: Collection[str] = ()) -> None:
    """Show a scene again wherever it stands, because something beside the box was changed.

    Sliders by the keys to ``forget`` begin again: what they stood at may be gone.
    """
    for one in list(_alive):
        if one.scene.name == scene:
            one.values = {key: value for key, value in one.values.items() if key not in forget}
            one.begin_from(one.kept)


def followed(choices: Choices, *, forget: bool = True, but: Explorer | None = None) -> None:
    """Begin the scenes of this kernel from a box that something else has kept."""
    for one in list(_alive):
        if one is not but:
            if one.bar:
                one.bar.follow()
            one.begin_from(choices, forget=forget)
    for form in list(_followers):
        # A box or a rack that can't be read is told by whoever reads it next; what a form shows
        # stays as it was.
        with suppress(ValueError, OSError):
            form.follow()
