"""A small table for a student's own readings of a face: gaps under a straightedge, or heights."""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.explore.controls import BUTTON
from toolkit.explore.lesson2_board import stick_of, walls
from toolkit.explore.view import SHEET, spoken
from toolkit.measures import Rule, length
from toolkit.pages import findings_html
from toolkit.pictures import Picture, face_map
from toolkit.plan import Plan
from toolkit.results import Finding, below
from toolkit.truing import SAW_MARKS, least_planing, warp_from_readings

ALONG, ACROSS = 5, 3
_FIELD = {"width": "6.5em"}


class ReadingsForm:
    """Fifteen boxes laid out as the board lies: near edge, middle, far edge; left to right.

    Parameters
    ----------
    own : callable
        Gives the student's own box, worked out.
    """

    def __init__(self, own: Callable[[], Plan]) -> None:
        self._own = own
        made = own()
        rule = made.choices.rule
        long, wide, thick = stick_of(made)
        self.length, self.width, self.thickness = (
            widgets.Text(description=name, value=rule.exact(value), layout={"width": "18em"})
            for name, value in (("length", long), ("width", wide), ("thickness", thick))
        )
        zero = rule.exact(0.0)
        self.readings = [
            [widgets.Text(value=zero, layout=_FIELD) for _ in range(ALONG)] for _ in range(ACROSS)
        ]
        self.look = widgets.Button(description="Where to plane", layout=BUTTON)
        self.look.on_click(self._looked)
        self.said = widgets.HTML()
        rows = [
            widgets.HBox([widgets.Label(name, layout={"width": "6em"}), *fields])
            for name, fields in zip(
                ("far edge", "middle", "near edge"), reversed(self.readings), strict=True
            )
        ]
        self.widget = widgets.VBox(
            [
                widgets.HTML(SHEET),
                widgets.HBox([self.length, self.width, self.thickness]),
                *rows,
                widgets.HBox([self.look]),
                self.said,
            ]
        )

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

    def found(self) -> tuple[Picture, str, tuple[Finding, ...]]:
        """The map of what to remove, what the readings say, and whether the wood is enough.

        Raises
        ------
        ValueError
            A box can't be read, or the readings say nothing.
        """
        made = self._own()
        rule = made.choices.rule
        long = length(self.length.value, what="length")
        wide = length(self.width.value, what="width")
        thick = length(self.thickness.value, what="thickness")
        points = []
        for i in range(ALONG):
            for k in range(ACROSS):
                what = f"reading {i + 1} from the left, {('near', 'middle', 'far')[k]}"
                height = length(self.readings[k][i].value, what=what, allow="any")
                points.append((long * i / (ALONG - 1), wide * k / (ACROSS - 1), height))
        xs, ys, heights = zip(*points, strict=True)
        planed = least_planing(x=xs, y=ys, height=heights)
        fitted = warp_from_readings(points, length=long, width=wide)
        drawn = face_map(planed, along=ALONG, across=ACROSS, rule=rule)
        # By the readings themselves, not by the even warp that lies nearest to them.
        left = thick - planed.deepest - 2 * SAW_MARKS
        found = _enough(left, wanted=walls(made).thickness.value, rule=rule)
        return drawn, fitted.sentence(rule), (found,)

    def _looked(self, _: Any) -> None:
        try:
            drawn, said, found = self.found()
        except ValueError as error:
            self.said.value = spoken(str(error), "bench-hint")
            return
        self.said.value = (
            f'<div class="bench-view" role="status"><figure style="margin:0">{drawn.svg}'
            f"<figcaption>{escape(drawn.sentence)} {escape(said)}</figcaption></figure>"
            f"{findings_html(found)}</div>"
        )


def _enough(left: float, *, wanted: float, rule: Rule) -> Finding:
    """Whether a board planed true on the face that was read, its other face flat, is enough."""
    show = rule.exact
    source = "the flattest face through the readings; other face taken as flat, saw marks off both"
    if below(left, wanted):
        return Finding(
            "wont_work",
            "board-too-warped",
            "this board",
            f"{show(round(max(left, 0.0), 2))} would be left, and {show(wanted)} is wanted.",
            "Crosscut or rip it first and read the piece, or take another board.",
            source,
        )
    return Finding(
        "good",
        "good-thickness",
        "this board",
        f"{show(wanted)} can be had, with {show(round(left - wanted, 2))} to spare.",
        "",
        source,
    )
