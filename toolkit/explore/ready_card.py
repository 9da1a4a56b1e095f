"""Is this board ready to cut: a card for what a meter, a scale and an eye say of it."""

from __future__ import annotations

from collections.abc import Callable
from itertools import zip_longest

import ipywidgets as widgets

from toolkit.box.joinery import compare_readings
from toolkit.document import findings_html
from toolkit.explore.controls import Card, button, text_box
from toolkit.lesson import drawable, gaps_of
from toolkit.measures import humidity, length, mass, percent, slope, temperature
from toolkit.plan import Plan
from toolkit.results import Finding
from toolkit.wood import BoardSeen, equilibrium_moisture, ready_to_cut

_STYLE = {"description_width": "15em"}
_WIDE = {"width": "36em"}


class ReadyCard(Card):
    """Boxes to type readings into, and what an experienced maker would say to them."""

    def __init__(self, own: Callable[[], Plan]) -> None:
        super().__init__()
        room = own().choices.rooms.make
        self.temperature = _box("temperature here", f"{room.temperature:g} °C")
        self.humidity = _box("humidity here", f"{room.humidity:g} %")
        self.moisture = _box("meter, one reading a board", "", hint="9.5 %, 10.2 %, 9.8 %")
        self.weights = _box("weights of alike pieces", "", hint="412 g, 405 g, 409 g")
        self.grain = _box("grain runs out, one a board", "", hint="1 in 20, 1 in 15, 1 in 25")
        self.check = button("Ready?", self._look)
        boxes = [self.temperature, self.humidity, self.moisture, self.weights, self.grain]
        self.lay(*boxes, widgets.HBox([self.check]), self.said)

    def _look(self) -> None:
        if found := self.tried(self.findings):
            self.show(findings_html(found))

    def findings(self) -> tuple[Finding, ...]:
        """What is to be said to the readings that stand in the boxes now."""
        room = equilibrium_moisture(
            temperature=temperature(self.temperature.value, what="temperature here"),
            humidity=humidity(self.humidity.value, what="humidity here"),
        )
        wet = [percent(text, what="a meter's reading") for text in each_of(self.moisture.value)]
        grams = [mass(text, what="a weight") for text in each_of(self.weights.value)]
        runs = [slope(text, what="the grain") for text in each_of(self.grain.value)]
        if not wet and not grams and not runs:
            raise ValueError("Type a reading of the meter or two weights first.")
        seen = [
            BoardSeen(f"board {number}", moisture=moisture, weight=weight, grain=run)
            for number, (moisture, weight, run) in enumerate(zip_longest(wet, grams, runs), 1)
        ]
        return ready_to_cut(seen, room_moisture=room)


def _box(label: str, value: str, *, hint: str = "") -> widgets.Text:
    return text_box(label, hint, value=value, layout=_WIDE, style=_STYLE)


def each_of(text: str) -> list[str]:
    """Readings between commas or semicolons; a decimal comma has no space behind it."""
    parts = (part.strip(" ,") for part in text.replace(";", ", ").split(", "))
    return [part for part in parts if part]


def readings_of(text: str) -> tuple[float, ...]:
    """Thicknesses as they are typed, parted by commas or semicolons. [mm]"""
    return tuple(
        0.0 if part == "0" else length(part, what="reading", allow="zero") for part in each_of(text)
    )


def feeler_card(own: Callable[[], Plan]) -> widgets.Widget:
    """A box for readings, and what they say."""
    card = Card()
    box = text_box("my readings", "0.1 mm, 0.25 mm, 0", continuous_update=False)

    def told() -> str:
        plan = drawable(own())
        read = compare_readings(gaps_of(plan), readings=readings_of(box.value))
        return read.sentence(plan.choices.rule)

    def read() -> None:
        if box.value.strip() and (words := card.tried(told)):
            card.say(words)

    box.observe(lambda _: read(), names="value")
    card.lay(widgets.HBox([box, button("What do they say?", read)]), card.said)
    return card.widget
