"""Controls as widgets: a slider or a row of buttons, and what forms are made of."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, TypeVar

import ipywidgets as widgets

from toolkit.document import SHEET
from toolkit.lesson import ChoiceControl, Control, spoken
from toolkit.measures import Rule

# Not Layout objects, which widgets would share: a page that is opened again over a running kernel
# knows nothing yet of objects from before, and a widget that leans on one never appears.
WIDE = {"width": "100%", "max_width": "640px"}
WIDER = {"width": "100%", "max_width": "680px"}
ANSWER = {"width": "24em"}
BUTTON = {"width": "auto"}
STYLE = {"description_width": "11em"}
NARROW_STYLE = {"description_width": "9em"}

_Done = TypeVar("_Done")


def widget(control: Control, rule: Rule, value: Any) -> widgets.ValueWidget:
    """A slider over the control's options, or a row of buttons for a choice of words."""
    options = control.options(rule, value)
    if isinstance(control, ChoiceControl) and not control.slider:
        return widgets.ToggleButtons(
            options=options, value=value, description=control.label, style=STYLE
        )
    return widgets.SelectionSlider(
        options=options,
        value=value,
        description=control.label,
        tooltip=control.label,
        continuous_update=True,
        style=STYLE,
        layout=WIDE,
    )


def button(words: str, pressed: Callable[[], object], *, tip: str | None = None) -> widgets.Button:
    """A button and what it does."""
    made = widgets.Button(description=words, tooltip=tip, layout=BUTTON)
    made.on_click(lambda _: pressed())
    return made


def text_box(label: str, hint: str = "", **look: Any) -> widgets.Text:
    """A box for an answer, with a hint while it is empty."""
    return widgets.Text(description=label, placeholder=hint, **{"layout": ANSWER, **look})


def dropdown(label: str, options: Sequence[Any] = ()) -> widgets.Dropdown:
    """A list to choose from."""
    return widgets.Dropdown(
        description=label, options=options, layout=dict(WIDER), style=NARROW_STYLE
    )


class Displayed:
    """What a cell shows when it is its last value."""

    widget: widgets.Widget

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)


class Card(Displayed):
    """Rows of boxes and buttons, and under them what is said to them."""

    def __init__(self) -> None:
        self.said = widgets.HTML()

    def lay(self, *rows: widgets.Widget, sheet: str = SHEET) -> None:
        """Put the rows on the page, one below another."""
        self.widget = widgets.VBox([widgets.HTML(sheet), *rows])

    def say(self, text: str, look: str = "bench-say") -> None:
        """Say a sentence: ``bench-right`` or ``bench-hint`` to an answer."""
        self.said.value = spoken(text, look)

    def show(self, html: str) -> None:
        """Say it with tables and lists."""
        self.said.value = f'<div class="bench-view" role="status">{html}</div>'

    def tried(self, what: Callable[[], _Done]) -> _Done | None:
        """Do something; a refusal is a sentence, and everything stays as it was."""
        try:
            return what()
        except (ValueError, OSError) as error:
            self.say(str(error), "bench-hint")
            return None
