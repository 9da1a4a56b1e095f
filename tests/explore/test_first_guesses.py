"""What a lesson asks first is the same on the page, in its reveal, and in the room."""

from __future__ import annotations

from html import escape
from importlib import import_module

import ipywidgets as widgets
import pytest

from toolkit.explore.own import own
from toolkit.study import OwnBox, first_guess, guess


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("number", [1, 2, 3, 4, 5])
def test_one_question(number: int, units: str) -> None:
    OwnBox().switch_units(units)  # type: ignore[arg-type]
    lesson = import_module(f"toolkit.explore.lesson{number}")
    asked = first_guess(own(), lesson=number)
    assert asked is not None and asked.id == lesson.GUESS
    shown = [box.value for box in lesson.guess().children if isinstance(box, widgets.HTML)]
    assert any(escape(asked.prompt) in text for text in shown)
    # Guessed exactly, it is found to be right on.
    guess(asked.id, f"{asked.answer:.4f} mm", what="guess")
    rule = own().choices.rule
    assert any(
        rule.exact(round(asked.answer + off, 2)) in str(lesson.compare())
        for off in (-0.01, 0.0, 0.01)
    )
