"""What was measured at the bench: kept as fact in the box, and what follows from it."""

from __future__ import annotations

from collections.abc import Callable
from html import escape

import ipywidgets as widgets

from toolkit.box.made import Made
from toolkit.document import as_html, findings_html
from toolkit.explore.controls import Card, button, text_box
from toolkit.explore.engine import followed, follows
from toolkit.lesson import worked_out
from toolkit.measures import keys_of, length
from toolkit.plan import compare, tables
from toolkit.study import Loaded, OwnBox
from toolkit.truing import Tolerances, worth_measuring

_KEYS = {f"made.{name}": key for name, key in keys_of(Made).items()}


class MadeForm(Card):
    """Choose what was measured, type its size, keep it; the box follows. Display it in a cell."""

    def __init__(self) -> None:
        super().__init__()
        self.which = widgets.Dropdown(
            description="measured",
            options=[(key.words, name) for name, key in _KEYS.items()],
            layout={"width": "28em"},
        )
        self.size = text_box("as made", "with its unit: 11.4 mm")
        self.keep = button("It is made", lambda: self._change(self._kept))
        self.undo = button("Undo", lambda: self._change(lambda own: own.undo()))
        self.next = widgets.HTML()
        row = widgets.HBox([self.which, self.size, self.keep, self.undo])
        self.lay(row, self.said, self.next)
        self.follow()
        follows(self)

    def _kept(self, own: OwnBox) -> Loaded:
        zero = _KEYS[self.which.value].least is not None
        length(self.size.value, what=self.which.label, allow="zero" if zero else "positive")
        return own.keep({self.which.value: self.size.value})

    def _change(self, change: Callable[[OwnBox], Loaded]) -> None:
        own = OwnBox()
        loaded = self.tried(lambda: (own.load(), change(own)))
        if loaded is not None:
            self._changed(*loaded)

    def _changed(self, before: Loaded, after: Loaded) -> None:
        """What follows from it, and what is to be said of the box now."""
        rule = after.choices.rule
        told = compare(worked_out(before.choices), worked_out(after.choices))
        parts = [as_html(tables.comparison(told, rule))] if told.changes else []
        if not told.changes:
            parts.append("<p>Nothing else changes.</p>")
        if told.new_findings:
            parts.append(findings_html(told.new_findings))
        self.show("".join(parts))
        followed(after.choices)

    def follow(self) -> None:
        """What is worth measuring now, on the student's own rule, the most telling first."""
        choices = OwnBox().load().choices
        known = [key.partition(".")[2] for key in _KEYS if choices.value(key) is not None]
        limits = Tolerances(square=choices.customs.square_most)
        worth = worth_measuring(worked_out(choices).parts, made=known, limits=limits)
        items = "".join(f"<li>{escape(row.sentence(choices.rule))}</li>" for row in worth[:3])
        words = f"<p>Worth measuring now:</p><ul>{items}</ul>" if items else ""
        self.next.value = f'<div class="bench-view">{words}</div>'
