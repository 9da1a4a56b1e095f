"""What was measured at the bench: kept as fact in the box, and what follows from it."""

from __future__ import annotations

from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.box.made import Made
from toolkit.document import SHEET, as_html, findings_html
from toolkit.explore.controls import ANSWER, BUTTON
from toolkit.explore.engine import followed, follows
from toolkit.lesson.view import spoken
from toolkit.lesson.worked import worked_out
from toolkit.measures import keys_of, length
from toolkit.plan import compare, tables
from toolkit.study import Loaded, OwnBox
from toolkit.truing import Tolerances, worth_measuring

_KEYS = {f"made.{name}": key for name, key in keys_of(Made).items()}


class MadeForm:
    """Choose what was measured, type its size, keep it; the box follows. Display it in a cell."""

    def __init__(self) -> None:
        self.which = widgets.Dropdown(
            description="measured",
            options=[(key.words, name) for name, key in _KEYS.items()],
            layout={"width": "28em"},
        )
        self.size = widgets.Text(
            description="as made", placeholder="with its unit: 11.4 mm", layout=ANSWER
        )
        self.keep = widgets.Button(description="It is made", layout=BUTTON)
        self.undo = widgets.Button(description="Undo", layout=BUTTON)
        self.said = widgets.HTML()
        self.next = widgets.HTML()
        self.keep.on_click(self._kept)
        self.undo.on_click(self._undone)
        row = widgets.HBox([self.which, self.size, self.keep, self.undo])
        self.widget = widgets.VBox([widgets.HTML(SHEET), row, self.said, self.next])
        self.follow()
        follows(self)

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

    def _kept(self, _: Any) -> None:
        try:
            zero = _KEYS[self.which.value].least is not None
            length(self.size.value, what=self.which.label, allow="zero" if zero else "positive")
            own = OwnBox()
            before = own.load()
            after = own.keep({self.which.value: self.size.value})
        except (ValueError, OSError) as error:
            self.said.value = spoken(str(error), "bench-hint")
            return
        self._changed(before, after)

    def _undone(self, _: Any) -> None:
        own = OwnBox()
        try:
            before = own.load()
            after = own.undo()
        except (ValueError, OSError) as error:
            self.said.value = spoken(str(error), "bench-hint")
            return
        self._changed(before, after)

    def _changed(self, before: Loaded, after: Loaded) -> None:
        """What follows from it, and what is to be said of the box now."""
        rule = after.choices.rule
        told = compare(worked_out(before.choices), worked_out(after.choices))
        parts = [as_html(tables.comparison(told, rule))] if told.changes else []
        if not told.changes:
            parts.append("<p>Nothing else changes.</p>")
        if told.new_findings:
            parts.append(findings_html(told.new_findings))
        self._say("".join(parts))
        followed(after.choices)

    def _say(self, html: str) -> None:
        self.said.value = f'<div class="bench-view" role="status">{html}</div>'

    def follow(self) -> None:
        """What is worth measuring now, on the student's own rule, the most telling first."""
        choices = OwnBox().load().choices
        made = [key.partition(".")[2] for key in _KEYS if choices.value(key) is not None]
        limits = Tolerances(square=choices.customs.square_most)
        worth = worth_measuring(worked_out(choices).parts, made=made, limits=limits)
        items = "".join(f"<li>{escape(row.sentence(choices.rule))}</li>" for row in worth[:3])
        words = f"<p>Worth measuring now:</p><ul>{items}</ul>" if items else ""
        self.next.value = f'<div class="bench-view">{words}</div>'
