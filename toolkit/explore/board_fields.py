"""The boxes in which a board is typed: what it is, what is wrong with it, where the heart ends."""

from __future__ import annotations

from dataclasses import astuple
from html import escape
from typing import get_args

import ipywidgets as widgets

from toolkit.explore.board_rows import LengthBox, Rows, close
from toolkit.files import TypedBoard, TypedDefect
from toolkit.measures import Rule, keys_of
from toolkit.stock import Board, Defect
from toolkit.wood import all_species

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
        self._name = widgets.Text(
            description="name", placeholder="such as long cherry", layout=FIELD, style=LABEL
        )
        self._species = widgets.Combobox(
            description="species",
            placeholder="such as black cherry",
            options=[wood.name for wood in all_species()],
            layout=FIELD,
            style=LABEL,
        )
        self._sizes: dict[str, LengthBox] = {}
        self._size_boxes = widgets.VBox()
        self._defects = Rows(
            what="defect",
            add="Add a defect",
            columns=[
                name.replace("_", " ") for name, key in _DEFECT.items() if key.kind == "length"
            ],
            words=get_args(_DEFECT["kind"].type),
        )
        self._heart_line = Rows(
            what="heart line, point", add="Add a point", columns=("along", "across")
        )
        self.widget = widgets.VBox(
            [
                _words(_FROM_WHERE),
                self._name,
                self._species,
                self._size_boxes,
                _words(_DEFECTS, title="Defects"),
                self._defects.widget,
                _words(_HEART_LINE, title="Heart line"),
                self._heart_line.widget,
            ]
        )
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
        self._defects.fill(
            [(each.kind, astuple(each)[1:]) for each in (board.defects if board else ())],
            rule=rule,
            hints=[_example(rule, length) for length in _CORNERS],
        )
        self._heart_line.fill(
            [("", point) for point in (board.heart_line if board else ())],
            rule=rule,
            hints=[_example(rule, length) for length in _ON_THE_LINE],
        )
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
