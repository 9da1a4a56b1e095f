"""The card that asks how wet the panels' wood is: the best reading counts, and is kept."""

import pytest

from toolkit.explore import lesson4
from toolkit.explore.bench_forms import MoistureForm
from toolkit.study import OwnBox


@pytest.fixture
def form() -> MoistureForm:
    return lesson4.moisture()


def test_the_first_that_is_filled_in_counts(form: MoistureForm) -> None:
    form.today.value = "22 °C, 75 %"
    assert form.moisture()[0] == pytest.approx(14.4, abs=0.05)
    form.weeks.value = "20 °C, 50 %"
    assert form.moisture() == (pytest.approx(9.271, abs=0.001), "by the air of those weeks")
    # (41.2 - 37.8) ÷ 37.8, and 1.12 × 41.2 ÷ 42.3 - 1: by hand.
    form.weights.value = "41.2 g, 37.8 g"
    assert form.moisture()[0] == pytest.approx(8.995, abs=0.001)
    form.weights.value = "41.2 g, 42.3 g, 12 %"
    assert form.moisture()[0] == pytest.approx(9.087, abs=0.001)
    form.meter.value = "9.5 %, 10.5 %"
    assert form.moisture() == (10, "by the meter")


def test_one_day_s_air_is_told_beside_what_dry_wood_needs(form: MoistureForm) -> None:
    form.today.value = "22 °C, 75 %"
    form.tried(form._look)
    assert "at 14.4 % lid and bottom need 0.3 mm of clearance" in form.said.value
    assert "at 9.3 % lid and bottom need 1.8 mm of" in form.said.value
    form.weeks.value = "20 °C, 50 %"
    form.tried(form._look)
    assert "one day" not in form.said.value


@pytest.mark.parametrize(
    ("field", "text", "said"),
    [
        ("meter", "", "Type what you have"),
        ("meter", "9.5", "9.5 %"),
        ("weights", "41.2 g", "41.2 g, 37.8 g"),
        ("weights", "37.8 g, 41.2 g", "lighter than the piece is"),
        ("weeks", "50 %", "20 °C, 50 %"),
    ],
)
def test_what_cannot_be_read_is_a_sentence(
    form: MoistureForm, field: str, text: str, said: str
) -> None:
    getattr(form, field).value = text
    form.tried(form._look)
    assert said in form.said.value and "bench-hint" in form.said.value


def test_it_is_kept_in_the_box_and_its_room_stays(form: MoistureForm) -> None:
    form.meter.value = "10.2 %"
    form._keep()
    rooms = OwnBox().load().choices.rooms
    assert (rooms.make_moisture, rooms.make.humidity) == (10.2, 50)
    form.meter.value = "2 %"
    form._keep()
    assert "3 and 30 %" in form.said.value
    assert OwnBox().load().choices.rooms.make_moisture == 10.2
