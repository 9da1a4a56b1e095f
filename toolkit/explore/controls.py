"""Controls as widgets: a slider or a row of buttons, and what forms are made of."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import Any, TypeVar

import ipywidgets as widgets

from toolkit.document import SHEET
from toolkit.lesson import ChoiceControl, Control, spoken
from toolkit.measures import Rule
from toolkit.study import Loaded, OwnBox, boxes, choose_box

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


ANOTHER = "another box…"


class BoxBar:
    """Keeps the slider's choice in the student's own file, and takes it back."""

    def __init__(
        self, *, changes: Callable[[], dict[str, Any]], reloaded: Callable[..., None]
    ) -> None:
        self._changes, self._reloaded = changes, reloaded
        self._quiet = False
        self._own = OwnBox()
        loaded = self._own.load()
        self.choices = loaded.choices
        self._which = widgets.Dropdown(description="box", layout=widgets.Layout(width="16em"))
        self._name = widgets.Text(
            description="its name",
            placeholder="letters, digits, - and _",
            continuous_update=False,
            layout=widgets.Layout(width="22em", display="none"),
        )
        self._units = widgets.ToggleButtons(
            options=[("millimetres", "mm"), ("inches", "in")],
            value=self.choices.rule.units,
            style={"button_width": "auto"},
            tooltips=["sizes in millimetres", "sizes in inches and fractions"],
        )
        self._buttons = [
            button("Keep this", self._kept, tip="writes the sliders' sizes into your own box file"),
            button("Undo", self._undone, tip="takes the last kept change back"),
            button(
                "Start again", self._begun, tip="begins from the workbook's example; undo works"
            ),
        ]
        self._status = widgets.HTML()
        self._offer()
        self._which.observe(self._chose, names="value")
        self._name.observe(self._named, names="value")
        self._units.observe(self._switched, names="value")
        self._say(loaded.notice or self._whose(loaded))

    @property
    def widget(self) -> widgets.Widget:
        """The bar and the line below it that says what happened."""
        flow = widgets.Layout(flex_flow="row wrap", align_items="center")
        row = [self._which, self._name, self._units, *self._buttons]
        return widgets.VBox([widgets.Box(row, layout=flow), self._status])

    def _undone(self) -> None:
        self._try(self._own.undo, "Taken back.", forget=True)

    def _begun(self) -> None:
        self._try(self._own.start_again, "Begun again from the example.", forget=True)

    def _whose(self, loaded: Loaded) -> str:
        if loaded.path is None:
            return "This is the workbook's example. Keep a change and it becomes your own box."
        return f"This is your own box, {loaded.path.name}."

    def _say(self, text: str) -> None:
        self._status.value = f'<p class="bench-say" role="status">{escape(text)}</p>'

    def _offer(self) -> None:
        self._quiet = True
        names = dict.fromkeys([*boxes(), self._own.name])
        self._which.options = [*names, ANOTHER]
        self._which.value = self._own.name
        self._quiet = False

    def _try(self, change: Callable[[], Loaded], done: str, *, forget: bool) -> None:
        """Do something to the kept box; a refusal is a sentence and changes nothing."""
        try:
            loaded = change()
        except (ValueError, OSError) as error:
            self._say(str(error))
            return
        self._take(loaded, done, forget=forget)

    def _take(self, loaded: Loaded, done: str, *, forget: bool) -> None:
        self._stand_at(loaded)
        self._reloaded(loaded.choices, forget=forget)
        self._say(" ".join(filter(None, [done, loaded.notice or self._whose(loaded)])))
        self._offer()

    def _stand_at(self, loaded: Loaded) -> None:
        self.choices = loaded.choices
        self._quiet = True
        self._units.value = loaded.choices.rule.units
        self._quiet = False

    def follow(self) -> None:
        """Another bar of this kernel changed or chose the box: be at the same one."""
        self._own = OwnBox()
        loaded = self._own.load()
        self._stand_at(loaded)
        self._say(loaded.notice or self._whose(loaded))
        self._offer()

    def _kept(self) -> None:
        changes = self._changes()
        if not changes:
            self._say("Nothing to keep: no slider has moved.")
            return
        kept = ", ".join(f"{key} {value}" for key, value in changes.items())
        self._try(lambda: self._own.keep(changes), f"Kept: {kept}.", forget=True)

    def _switched(self, change: Any) -> None:
        if not self._quiet:
            units = change["new"]
            word = "millimetres" if units == "mm" else "inches"
            self._try(lambda: self._own.switch_units(units), f"Sizes now in {word}.", forget=False)

    def _chose(self, change: Any) -> None:
        if self._quiet:
            return
        another = change["new"] == ANOTHER
        self._name.layout.display = None if another else "none"
        if not another:
            self._open(change["new"])

    def _named(self, change: Any) -> None:
        if change["new"]:
            self._open(change["new"])
            self._name.value = ""

    def _open(self, name: str) -> None:
        def opened() -> Loaded:
            self._own = OwnBox(choose_box(name))
            return self._own.load()

        self._try(opened, f"Opened {name}.", forget=True)
        self._name.layout.display = "none"
        self._offer()
