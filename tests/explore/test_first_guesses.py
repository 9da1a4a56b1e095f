"""What a lesson asks first is the same on the page, in its reveal, and in the room."""

from html import escape

import ipywidgets as widgets
import pytest

from toolkit import explore
from toolkit.explore.lessons import own
from toolkit.study import OwnBox, first_guess, guess


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("number", [1, 2, 3, 4, 5])
def test_one_question(number: int, units: str) -> None:
    OwnBox().switch_units(units)  # type: ignore[arg-type]
    lesson = getattr(explore, f"lesson{number}")
    asked = first_guess(own(), lesson=number)
    assert asked is not None
    shown = [box.value for box in lesson.guess().children if isinstance(box, widgets.HTML)]
    assert any(escape(asked.prompt) in text for text in shown)
    # Guessed exactly, it is found to be right on.
    guess(asked.id, f"{asked.answer:.4f} mm", what="guess")
    rule = own().choices.rule
    assert any(
        rule.exact(round(asked.answer + off, 2)) in str(lesson.compare())
        for off in (-0.01, 0.0, 0.01)
    )
