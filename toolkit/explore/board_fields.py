"""Boxes for typing a board into: one for a length, and rows of them that come and go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import astuple, dataclass, field
from html import escape
from typing import Any, get_args

import ipywidgets as widgets

from toolkit.explore.controls import button, text_box
from toolkit.files import TypedBoard, TypedDefect
from toolkit.measures import Rule, keys_of, length_text
from toolkit.stock import Board, Defect
from toolkit.wood import all_species

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
    """A row's boxes; ``words`` holds its one list of words, if it has that."""

    number: widgets.HTML
    words: list[widgets.Dropdown]
    boxes: list[LengthBox]
    out: widgets.Button
    widget: widgets.HBox = field(init=False)

    def __post_init__(self) -> None:
        boxes = [box.widget for box in self.boxes]
        self.widget = widgets.HBox([self.number, *self.words, *boxes, self.out])
        self.widget.add_class("board-row")

    @property
    def typed(self) -> tuple[str, ...]:
        return (*(word.value for word in self.words), *(box.typed for box in self.boxes))


class Rows:
    """A small table of boxes: the defects of a board, or the places on its heart line."""

    def __init__(
        self, *, what: str, add: str, columns: Sequence[str], words: tuple[str, ...] = ()
    ) -> None:
        self._what, self._columns, self._words = what, tuple(columns), words
        self._rows: list[_Row] = []
        self._rule, self._hints = Rule.millimetres(), self._columns
        names = [("", _NUMBER), *([("kind", _WORD)] if words else [])]
        names += [(column, _LENGTH) for column in columns]
        self._heading = widgets.HBox(
            [widgets.HTML(f"<b>{n}</b>", layout=look) for n, look in names]
        )
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
        asked = {"options": self._words, "value": word or self._words[0]} if self._words else {}
        words = [widgets.Dropdown(**asked, layout=_WORD)] if asked else []
        boxes = [
            LengthBox(hint=hint, rule=self._rule, value=length, layout=_LENGTH)
            for hint, length in zip(self._hints, lengths, strict=True)
        ]
        out = button("Take out", lambda: self._take_out(row))
        row = _Row(widgets.HTML(layout=_NUMBER), words, boxes, out)
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
            boxes = [*row.words, *(box.widget for box in row.boxes)]
            for column, box in zip(("kind", *self._columns)[-len(boxes) :], boxes, strict=True):
                box.description = f"{name}, {column}"
        shown = [row.widget for row in self._rows]
        self._table.children = [self._heading, *shown] if shown else []
        for row in gone:
            close(row.widget)


FIELD = {"width": "24em"}
LABEL = {"description_width": "6em"}

_DEFECT = keys_of(Defect)

# What stands in the empty boxes, on marks that either rule reads easily. [mm]
_SIZES = {"length": 2200.0, "width": 225.0, "thickness": 25.0}
_CORNERS = (455.0, 115.0, 505.0, 160.0)
_ON_THE_LINE = (0.0, 195.0)

_FROM_WHERE = (
    "All lengths are measured from the board's lower left corner: first along the grain, then "
    "across it. Type each with its unit."
)
_DEFECTS = (
    "Give each by two opposite corners of what it spoils, measured a little generously; a fine "
    "check may be as thin as a line."
)
_HEART_LINE = (
    "If you can see it: the border between the heartwood, below it, and the paler sapwood, above "
    "it. Two points or more, from left to right."
)


class BoardFields:
    """One board in boxes, on the student's rule; it knows nothing of the rack."""

    def __init__(self) -> None:
        self._name = text_box("name", "such as long cherry", layout=FIELD, style=LABEL)
        self._species = widgets.Combobox(
            description="species",
            placeholder="such as black cherry",
            options=[wood.name for wood in all_species()],
            layout=FIELD,
            style=LABEL,
        )
        self._sizes: dict[str, LengthBox] = {}
        self._size_boxes = widgets.VBox()
        corners = [name.replace("_", " ") for name, key in _DEFECT.items() if key.kind == "length"]
        kinds = get_args(_DEFECT["kind"].type)
        self._defects = Rows(what="defect", add="Add a defect", columns=corners, words=kinds)
        point = "heart line, point"
        self._heart_line = Rows(what=point, add="Add a point", columns=("along", "across"))
        typed = [_words(_FROM_WHERE), self._name, self._species, self._size_boxes]
        defects = [_words(_DEFECTS, title="Defects"), self._defects.widget]
        line = [_words(_HEART_LINE, title="Heart line"), self._heart_line.widget]
        self.widget = widgets.VBox([*typed, *defects, *line])
        self.fill(None, rule=Rule.millimetres())

    def fill(self, board: Board | None, *, rule: Rule) -> None:
        """Put a board into the boxes, or empty them."""
        self._name.value = board.name if board else ""
        self._species.value = board.species if board else ""
        gone = [box.widget for box in self._sizes.values()]
        self._sizes = {
            key: LengthBox(
                hint=f"such as {_example(rule, example)}",
                rule=rule,
                value=getattr(board, key) if board else None,
                description=key,
                layout=FIELD,
                style=LABEL,
            )
            for key, example in _SIZES.items()
        }
        self._size_boxes.children = [box.widget for box in self._sizes.values()]
        for box in gone:
            close(box)
        corners, point = ([_example(rule, at) for at in of] for of in (_CORNERS, _ON_THE_LINE))
        defects = [(each.kind, astuple(each)[1:]) for each in (board.defects if board else ())]
        line = [("", each) for each in (board.heart_line if board else ())]
        self._defects.fill(defects, rule=rule, hints=corners)
        self._heart_line.fill(line, rule=rule, hints=point)
        self._filled = self.typed

    @property
    def typed(self) -> TypedBoard:
        """What is in the boxes now."""
        return TypedBoard(
            name=self._name.value.strip(),
            species=self._species.value.strip(),
            **{key: box.typed for key, box in self._sizes.items()},
            defects=tuple(TypedDefect(*row) for row in self._defects.typed),
            heart_line=tuple((along, across) for along, across in self._heart_line.typed),
        )

    @property
    def touched(self) -> bool:
        """Whether anything in them is another thing than was put there."""
        return self.typed != self._filled

    def drop_empty(self) -> None:
        """Take out the rows in which nothing was typed, before anything counts them."""
        self._defects.drop_empty()
        self._heart_line.drop_empty()


def _example(rule: Rule, length: float) -> str:
    return rule.exact(rule.round(length, fineness="rough"))


def _words(text: str, *, title: str = "") -> widgets.HTML:
    head = f"<b>{escape(title)}.</b> " if title else ""
    return widgets.HTML(
        f'<div class="bench-view"><p class="bench-say">{head}{escape(text)}</p></div>'
    )
