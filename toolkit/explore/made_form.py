"""What was measured at the bench: kept as fact in the box, and what follows from it."""

from __future__ import annotations

from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.document import SHEET, as_html, findings_html
from toolkit.explore.controls import ANSWER, BUTTON
from toolkit.explore.engine import followed, follows
from toolkit.lesson.view import spoken
from toolkit.lesson.worked import worked_out
from toolkit.measures import length
from toolkit.plan import compare, tables
from toolkit.results import SQUARE, WALLS
from toolkit.study import Loaded, OwnBox
from toolkit.truing import Tolerances, worth_measuring

# What a student measures, and the key of the box file that says so.
_MEASURED = (
    *(
        (f"{part}, {axis}", f"made.{part}_{axis}")
        for part in (*WALLS, "bottom", "lid")
        for axis in ("thickness", "length", "width")
    ),
    ("gauge set to the tail length", "made.tail_length"),
    ("groove depth", "made.groove_depth"),
    ("groove width", "made.groove_width"),
    ("bottom groove from the edge", "made.bottom_edge"),
    ("lid groove from the edge", "made.top_edge"),
    ("walls' rough board, thickness", "made.wall_board_thickness"),
    ("panels' rough board, thickness", "made.panel_board_thickness"),
    *(
        (f"{part}, {words}: gap", f"made.{part}_{key}")
        for part in WALLS
        for key, words in SQUARE.items()
    ),
    *((f"{part}, {SQUARE['end_out']}: gap", f"made.{part}_end_out") for part in ("bottom", "lid")),
)
# What may be nothing at all: a part that is square, a groove at the very edge.
_FROM_ZERO = ("_edge", *SQUARE)


class MadeForm:
    """Choose what was measured, type its size, keep it; the box follows. Display it in a cell."""

    def __init__(self) -> None:
        self.which = widgets.Dropdown(
            description="measured", options=list(_MEASURED), layout={"width": "28em"}
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
            zero = self.which.value.endswith(_FROM_ZERO)
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
        made = [name for _, key in _MEASURED if _is_made(choices, name := key.partition(".")[2])]
        limits = Tolerances(square=choices.customs.square_most)
        worth = worth_measuring(worked_out(choices).parts, made=made, limits=limits)
        items = "".join(f"<li>{escape(row.sentence(choices.rule))}</li>" for row in worth[:3])
        words = f"<p>Worth measuring now:</p><ul>{items}</ul>" if items else ""
        self.next.value = f'<div class="bench-view">{words}</div>'


def _is_made(choices: Any, name: str) -> bool:
    return getattr(choices.made, name, None) is not None
