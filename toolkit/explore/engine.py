"""The one slider engine of all lessons: named controls, a pure computation, a picture and words.

A lesson gives the controls and a function from a box to a `View`; everything else is here: the
student's own units, the last good picture when a combination is impossible, the kept state drawn
thinly behind the moving one, keeping and taking back.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Sequence
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.box import Choices
from toolkit.explore.box_bar import BoxBar
from toolkit.explore.controls import Control, value_of, widget, with_values
from toolkit.explore.view import SHEET, ImpossibleError, View
from toolkit.measures import Rule

# Between a picture and its words: a browser needs two or three frames to paint one. [s]
PAUSE = 0.05

Compute = Callable[[Choices, Choices], View]


class Explorer:
    """Sliders over one box. Display it as the last value of a cell.

    Parameters
    ----------
    controls : sequence of Control
        Three or four at most: geometry first, view options last.
    compute : callable
        ``compute(choices, kept) -> View``, pure; raises `ImpossibleError` with a sentence where
        no such box can be. ``kept`` is the box as it was last kept, to be drawn behind. [mm]
    height : int
        Height held free for the picture, so that the page does not jump. [px]
    """

    def __init__(self, controls: Sequence[Control], *, compute: Compute, height: int = 420) -> None:
        self.controls = tuple(controls)
        self._compute = compute
        self.bar = BoxBar(changes=self._changes, reloaded=self._reload)
        self.kept = self.bar.choices
        self.values: dict[str, Any] = {}
        self._picture = widgets.HTML(layout=widgets.Layout(min_height=f"{height}px"))
        self._words = widgets.HTML()
        self._unsaid: View | None = None
        # Two lines are held free, so that saying what is wrong does not push the picture down.
        self._trouble = widgets.HTML(layout={"min_height": "58px"})
        self._sliders = widgets.VBox()
        self._make_sliders()
        self.show()

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

    @property
    def widget(self) -> widgets.Widget:
        """Everything in the order in which it is used."""
        return widgets.VBox(
            [
                widgets.HTML(SHEET),
                self.bar.widget,
                self._sliders,
                self._trouble,
                self._picture,
                self._words,
            ]
        )

    @property
    def choices(self) -> Choices:
        """The box as the sliders now have it."""
        return with_values(self.kept, self.values)

    def _make_sliders(self) -> None:
        rule: Rule = self.kept.rule
        made = []
        for control in self.controls:
            value = self.values.get(control.keys[0], value_of(self.kept, control.keys[0]))
            slider = widget(control, rule, value)
            slider.observe(self._moved(control), names="value")
            made.append(slider)
        self._sliders.children = made

    def _moved(self, control: Control) -> Callable[[Any], None]:
        def moved(change: Any) -> None:
            for key in control.keys:
                self.values[key] = change["new"]
            self.show(words_later=True)

        return moved

    def show(self, *, words_later: bool = False) -> None:
        """Compute and show the present state, or say why there is none.

        With ``words_later`` numbers and findings follow a blink after their picture, so that what
        the eye waits for is painted sooner.
        """
        try:
            view = self._compute(self.choices, self.kept)
        except ImpossibleError as error:
            self._trouble.value = (
                f'<div class="bench-view"><p class="bench-impossible" role="status">'
                f"<b>No such box.</b> {escape(str(error))} "
                "The picture shows the last one that could be made.</p></div>"
            )
            return
        self._trouble.value = ""
        self._picture.value = view.figure
        waiting, self._unsaid = self._unsaid is not None, view
        if not words_later:
            self._say()
        elif not waiting:
            try:
                asyncio.get_running_loop().call_later(PAUSE, self._say)
            except RuntimeError:  # no kernel is running, so nobody waits for a picture either
                self._say()

    def _say(self) -> None:
        """The words of the latest picture."""
        view, self._unsaid = self._unsaid, None
        if view is not None:
            self._words.value = view.words

    def _changes(self) -> dict[str, Any]:
        """What differs from the kept box, as the box file says it."""
        rule = self.kept.rule
        changes = {}
        for control in self.controls:
            for key in control.keys:
                if key in self.values and self.values[key] != value_of(self.kept, key):
                    changes[key] = control.written(rule, self.values[key])
        return changes

    def _reload(self, choices: Choices, *, forget: bool) -> None:
        """The kept box was changed or is shown on another rule: begin from it again."""
        self.kept = choices
        if forget:
            self.values.clear()
        self._make_sliders()
        self.show()
