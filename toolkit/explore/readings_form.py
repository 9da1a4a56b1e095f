"""A small table for a student's own readings of a face: heights, or gaps under a straightedge."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from html import escape

import ipywidgets as widgets
import numpy as np

from toolkit.document import findings_html
from toolkit.explore.controls import Card, button
from toolkit.explore.engine import follows
from toolkit.lesson import spoken, stick_of, walls
from toolkit.measures import Rule, length
from toolkit.pictures import Picture, face_map
from toolkit.plan import Plan
from toolkit.results import GEOMETRY, Finding, below
from toolkit.truing import (
    SAW_MARKS,
    LeastPlaning,
    between_readings,
    least_planing,
    warp_from_readings,
)

ALONG, ACROSS = 5, 3
_FIELD = {"width": "6.5em"}
_WAYS = (("heights above the bench", "heights"), ("gaps under a straightedge", "gaps"))
_HINTS = {
    "heights": "How far the face stands above something flat at each place. A place that was not "
    "read stays empty.",
    "gaps": "Straightedge and winding sticks held level over the board: slip feelers under them. "
    "0 mm is where they touch; a place that was not read stays empty.",
}
# Three readings tell a plane, six a warp; with fewer than this none is left to show a slip.
_SPARE = 9  # custom, no source
_CORNERS = (0, ACROSS - 1, (ALONG - 1) * ACROSS, ALONG * ACROSS - 1)


class ReadingsForm(Card):
    """Fifteen boxes laid out as the board lies: near edge, middle, far edge; left to right."""

    def __init__(self, own: Callable[[], Plan]) -> None:
        super().__init__()
        self._own = own
        self.measured = widgets.ToggleButtons(
            options=_WAYS, description="readings are", style={"button_width": "auto"}
        )
        self._hint = widgets.HTML()
        self.length, self.width, self.thickness = (
            widgets.Text(description=name, layout={"width": "18em"})
            for name in ("length", "width", "thickness")
        )
        self._shown: tuple[str, ...] = ("", "", "")
        self.readings = [[widgets.Text(layout=_FIELD) for _ in range(ALONG)] for _ in range(ACROSS)]
        self.look = button("Where to plane", self._looked)
        self.measured.observe(lambda _: self._hinted(), names="value")
        rows = [
            widgets.HBox([widgets.Label(name, layout={"width": "6em"}), *fields])
            for name, fields in zip(
                ("far edge", "middle", "near edge"), reversed(self.readings), strict=True
            )
        ]
        sizes = widgets.HBox([self.length, self.width, self.thickness])
        look = widgets.HBox([self.look])
        self.lay(sizes, self.measured, self._hint, *rows, look, self.said)
        self._hinted()
        self.follow()
        follows(self)

    def follow(self) -> None:
        """Be on the student's own rule: sizes that nobody has typed over, and what is hinted."""
        plan = self._own()
        rule = plan.choices.rule
        sizes = (self.length, self.width, self.thickness)
        stick = stick_of(plan)
        new = tuple(map(rule.exact, (stick.length, stick.width, stick.thickness)))
        for box, shown, text in zip(sizes, self._shown, new, strict=True):
            if box.value == shown:
                box.value = text
        self._shown = new
        for box in (box for row in self.readings for box in row):
            box.placeholder = rule.exact(rule.round(1.0))
        if self.said.value:
            self._looked()

    def _hinted(self) -> None:
        self._hint.value = spoken(_HINTS[self.measured.value])

    def found(self) -> tuple[Picture, str, tuple[Finding, ...]]:
        """The map of what to remove, what the readings say, and whether the wood is enough."""
        plan = self._own()
        rule = plan.choices.rule
        long = length(self.length.value, what="length")
        wide = length(self.width.value, what="width")
        thick = length(self.thickness.value, what="thickness")
        places = [
            (long * i / (ALONG - 1), wide * k / (ACROSS - 1))
            for i in range(ALONG)
            for k in range(ACROSS)
        ]
        read = self._read()
        points = [(*places[at], value) for at, value in read.items()]
        way = self.measured.value
        sign = -1.0 if way == "gaps" else 1.0
        planed = least_planing(
            x=[row[0] for row in points],
            y=[row[1] for row in points],
            height=[sign * row[2] for row in points],
        )
        # By the readings themselves, not by the even warp that lies nearest to them.
        left = thick - planed.deepest - 2 * SAW_MARKS
        found = [_enough(left, wanted=walls(plan).thickness.value, rule=rule)]
        try:
            said = warp_from_readings(points, length=long, width=wide, measured=way).sentence(rule)
        except ValueError as error:
            said = f"Bow, cup and twist stay unknown: {error}."
        found += _too_few(read)
        drawn = face_map(
            _on_the_grid(planed, places, list(read)),
            along=ALONG,
            across=ACROSS,
            rule=rule,
            read=None if len(read) == len(places) else list(read),
        )
        return replace(drawn, sentence=planed.sentence(rule)), said, tuple(found)

    def _read(self) -> dict[int, float]:
        """What was read, by number of the place; what is empty was not. [mm]"""
        heights = self.measured.value == "heights"
        read = {}
        for i in range(ALONG):
            for k in range(ACROSS):
                text = self.readings[k][i].value.strip()
                what = f"reading {i + 1} from the left, {('near', 'middle', 'far')[k]}"
                if text:
                    value = length(text, what=what, allow="any" if heights else "zero")
                    read[i * ACROSS + k] = value
        return read

    def _looked(self) -> None:
        if found := self.tried(self.found):
            drawn, said, findings = found
            self.show(
                f'<figure style="margin:0">{drawn.svg}'
                f"<figcaption>{escape(drawn.sentence)} {escape(said)}</figcaption></figure>"
                f"{findings_html(findings)}"
            )


def _on_the_grid(
    planed: LeastPlaning, places: list[tuple[float, float]], read: list[int]
) -> LeastPlaning:
    """The same planing over all places, those that were not read drawn from their neighbours."""
    removal = np.full(len(places), np.nan)
    removal[read] = planed.removal
    x, y = np.array(places).T
    whole = between_readings(removal.reshape(ALONG, ACROSS)).ravel()
    return replace(planed, x=x, y=y, removal=whole)


def _too_few(read: dict[int, float]) -> list[Finding]:
    """What the places that were not read leave open."""
    many, whole = len(read), ALONG * ACROSS
    corners = sum(corner not in read for corner in _CORNERS)
    if not corners and many >= _SPARE:
        return []
    message = f"{many} of {whole} places were read"
    if corners:
        message += f", and {corners} of the four corners not: there the face is a guess"
    else:
        message += ": a hump or a slip between them would not show"
    remedy = "Read the corners first, then the middles of the edges and the middle."
    return [Finding("care", "readings-too-few", "this board", f"{message}.", remedy, GEOMETRY)]


def _enough(left: float, *, wanted: float, rule: Rule) -> Finding:
    """Whether a board planed true on the face that was read, its other face flat, is enough."""
    show = rule.exact
    source = "the flattest face through the readings; other face taken as flat, saw marks off both"
    if below(left, wanted):
        said = f"{show(round(max(left, 0.0), 2))} would be left, and {show(wanted)} is wanted."
        remedy = "Crosscut or rip it first and read the piece, or take another board."
        return Finding("wont_work", "board-too-warped", "this board", said, remedy, source)
    said = f"{show(wanted)} can be had, with {show(round(left - wanted, 2))} to spare."
    return Finding("good", "good-thickness", "this board", said, "", source)
