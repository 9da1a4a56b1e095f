"""The card that asks whether a board is ready: readings in, findings or a sentence out."""

from dataclasses import replace

import pytest

from tests.boxes import postcard
from toolkit.explore import lesson1
from toolkit.explore.bench_forms import ReadyCard
from toolkit.lesson.lesson1 import buying
from toolkit.plan import plan


@pytest.fixture
def card() -> ReadyCard:
    return lesson1.ready()


def test_readings_become_findings(card: ReadyCard) -> None:
    card.moisture.value, card.weights.value = "12,5 %, 9.8 %", "412 g, 480 g"
    card.check.click()
    assert "12.5 % moisture" in card.said.value
    assert "these will disagree by spring" in card.said.value
    assert "480 g, 16.5 % more" in card.said.value


def test_grain_that_runs_out_is_seen(card: ReadyCard) -> None:
    card.grain.value = "1 in 20, 1:8"
    card.check.click()
    assert "board 2" in card.said.value
    assert "its grain runs out 1 in 8" in card.said.value


def test_a_damper_room_says_otherwise(card: ReadyCard) -> None:
    card.moisture.value = "12.4 %"
    assert {row.level for row in card.findings()} == {"care"}
    card.humidity.value = "66 %"
    assert {row.level for row in card.findings()} == {"good"}


def test_the_dust_of_a_listed_wood_is_told_where_it_is_bought() -> None:
    own = postcard()
    assert "Dust" not in buying(plan(own)).table.note
    cedar = replace(own, wood=replace(own.wood, lid="western redcedar", bottom="western redcedar"))
    note = buying(plan(cedar)).table.note
    assert note.count("Dust of western redcedar: asthma") == 1
    assert note.endswith("not thereby harmless.")


@pytest.mark.parametrize(
    ("field", "text", "said"),
    [
        ("moisture", "12.5", "12.5 %"),
        ("humidity", "130 %", "does not lie between 0 and 100"),
        ("weights", "412, 405", "412 g"),
        ("temperature", "20", "20 °C"),
        ("grain", "12", "1:12"),
        ("moisture", "", "Type a reading"),
    ],
)
def test_what_cannot_be_read_is_a_sentence(
    card: ReadyCard, field: str, text: str, said: str
) -> None:
    card.moisture.value = "9.5 %"
    getattr(card, field).value = text
    card.check.click()
    assert said in card.said.value
    assert "bench-hint" in card.said.value
