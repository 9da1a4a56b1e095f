"""Boxes for typing a board into: one for a length, and rows of them that come and go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

import ipywidgets as widgets

from toolkit.explore.controls import button
from toolkit.measures import Rule, length_text

# A box in a row is called by a label that is read aloud; the eye has the heading of its column.
ROW_SHEET = """
<style>
.board-row { position: relative; }
.board-row .widget-label { position: absolute !important; width: 1px !important;
  min-width: 0 !important; height: 1px !important; margin: 0 !important; padding: 0 !important;
  overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
</style>
"""

_NUMBER = {"width": "2em"}
_WORD = {"width": "9em"}
_LENGTH = {"width": "7.5em"}


class LengthBox:
    """A text box for a length, shown on the student's rule, with a hint while it is empty."""

    def __init__(self, *, hint: str, rule: Rule, value: float | None = None, **look: Any) -> None:
        self._shown = "" if value is None else rule.exact(rule.round(value))
        self._exact = "" if value is None else length_text(value, rule=rule)
        self.widget = widgets.Text(value=self._shown, placeholder=hint, **look)

    @property
    def typed(self) -> str:
        """The length as text with its unit, or whatever was typed instead."""
        text: str = self.widget.value.strip()
        return self._exact if text == self._shown else text


def close(part: widgets.Widget) -> None:
    """Let go of a widget that is on the page no more, with all that only it needs."""
    for child in getattr(part, "children", ()):
        close(child)
    for trait in ("layout", "style"):
        if (own := getattr(part, trait, None)) is not None:
            own.close()
    part.close()


@dataclass(slots=True, eq=False)
class _Row:
    number: widgets.HTML
    word: widgets.Dropdown | None
    boxes: list[LengthBox]
    out: widgets.Button
    widget: widgets.HBox = field(init=False)

    def __post_init__(self) -> None:
        word = [] if self.word is None else [self.word]
        boxes = [box.widget for box in self.boxes]
        self.widget = widgets.HBox([self.number, *word, *boxes, self.out])
        self.widget.add_class("board-row")

    @property
    def typed(self) -> tuple[str, ...]:
        word = [] if self.word is None else [self.word.value]
        return (*word, *(box.typed for box in self.boxes))


class Rows:
    """A small table of boxes: the defects of a board, or the places on its heart line."""

    def __init__(
        self, *, what: str, add: str, columns: Sequence[str], words: tuple[str, ...] = ()
    ) -> None:
        self._what, self._columns, self._words = what, tuple(columns), words
        self._rows: list[_Row] = []
        self._rule, self._hints = Rule.millimetres(), self._columns
        self._heading = self._named_columns()
        self._table = widgets.VBox(layout={"overflow": "auto", "max_width": "100%"})
        self._add = button(add, self.add)
        self.widget = widgets.VBox([self._table, self._add], layout={"align_items": "flex-start"})

    def fill(
        self, rows: Sequence[tuple[str, Sequence[float]]], *, rule: Rule, hints: Sequence[str]
    ) -> None:
        """Begin from these rows, each a word and its lengths. [mm]"""
        self._rule, self._hints = rule, tuple(hints)
        gone, self._rows = self._rows, [self._row(word, lengths) for word, lengths in rows]
        self._lay(gone)

    def add(self) -> None:
        """Add an empty row at the end."""
        self._rows.append(self._row("", [None] * len(self._columns)))
        self._lay()

    def drop_empty(self) -> None:
        """Take out the rows in which no length was typed."""
        empty = [row for row in self._rows if not any(box.typed for box in row.boxes)]
        if empty:
            self._rows = [row for row in self._rows if row not in empty]
            self._lay(empty)

    @property
    def typed(self) -> tuple[tuple[str, ...], ...]:
        """What was typed, row by row: the word, if there is one, and the lengths."""
        return tuple(row.typed for row in self._rows)

    def _row(self, word: str, lengths: Sequence[float | None]) -> _Row:
        row = _Row(
            number=widgets.HTML(layout=_NUMBER),
            word=(
                widgets.Dropdown(options=self._words, value=word or self._words[0], layout=_WORD)
                if self._words
                else None
            ),
            boxes=[
                LengthBox(hint=hint, rule=self._rule, value=length, layout=_LENGTH)
                for hint, length in zip(self._hints, lengths, strict=True)
            ],
            out=button("Take out", lambda: self._take_out(row)),
        )
        return row

    def _take_out(self, row: _Row) -> None:
        self._rows.remove(row)
        self._lay([row])
        # The button that had the keyboard is gone.
        self._add.focus()

    def _lay(self, gone: Sequence[_Row] = ()) -> None:
        """Number the rows, put them on the page under their heading, and let go of others."""
        for number, row in enumerate(self._rows, start=1):
            name = f"{self._what} {number}"
            row.number.value = f"<span>{number}</span>"
            row.out.tooltip = f"takes {name} out"
            if row.word is not None:
                row.word.description = f"{name}, kind"
            for column, box in zip(self._columns, row.boxes, strict=True):
                box.widget.description = f"{name}, {column}"
        shown = [row.widget for row in self._rows]
        self._table.children = [self._heading, *shown] if shown else []
        for row in gone:
            close(row.widget)

    def _named_columns(self) -> widgets.Widget:
        names = [("", _NUMBER), *([("kind", _WORD)] if self._words else [])]
        names += [(column, _LENGTH) for column in self._columns]
        return widgets.HBox([widgets.HTML(f"<b>{name}</b>", layout=look) for name, look in names])
