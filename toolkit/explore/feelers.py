"""A card that reads feeler gauges: what the gaps of real corners say of the hand that sawed."""

from __future__ import annotations

from collections.abc import Callable

import ipywidgets as widgets

from toolkit.box.joinery import compare_readings
from toolkit.explore.controls import Card, button, text_box
from toolkit.explore.ready_card import each_of
from toolkit.lesson import drawable, gaps_of
from toolkit.measures import length
from toolkit.plan import Plan


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
