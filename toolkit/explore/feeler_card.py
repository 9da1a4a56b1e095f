"""A card that reads feeler gauges: what the gaps of real corners say of the hand that sawed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import ipywidgets as widgets

from toolkit.box.joinery import compare_readings
from toolkit.document import SHEET
from toolkit.explore.controls import ANSWER, BUTTON
from toolkit.lesson.lesson3_saw import gaps_of
from toolkit.lesson.view import spoken
from toolkit.measures import length
from toolkit.plan import Plan


def readings_of(text: str) -> tuple[float, ...]:
    """Thicknesses as they are typed, parted by commas or semicolons. [mm]"""
    parts = [part.strip() for part in text.replace(";", ", ").split(", ") if part.strip(" ,")]
    return tuple(
        0.0 if part == "0" else length(part.strip(" ,"), what="reading", allow="zero")
        for part in parts
    )


def feeler_card(own: Callable[[], Plan]) -> widgets.Widget:
    """A box for readings, and what they say."""
    box = widgets.Text(
        description="my readings",
        placeholder="0.1 mm, 0.25 mm, 0",
        layout=ANSWER,
        continuous_update=False,
    )
    check = widgets.Button(description="What do they say?", layout=BUTTON)
    said = widgets.HTML()

    def read(_: Any) -> None:
        if not box.value.strip():
            return
        look = "bench-say"
        try:
            made = own()
            read = compare_readings(gaps_of(made), readings=readings_of(box.value))
            words = read.sentence(made.choices.rule)
        except ValueError as error:
            words, look = str(error), "bench-hint"
        said.value = spoken(words, look)

    check.on_click(read)
    box.observe(read, names="value")
    return widgets.VBox([widgets.HTML(SHEET), widgets.HBox([box, check]), said])
