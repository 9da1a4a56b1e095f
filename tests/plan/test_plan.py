"""The plan as a whole: the JSON contract, settings, comparisons, what was chosen."""

import json

import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.plan import as_data, compare, plan

PIECE = {"low", "high", "tip_low", "tip_high"}


@pytest.mark.parametrize("choices", [postcard(), inch_postcard(), ears(), lift_off()])
def test_json_has_the_published_shape(choices) -> None:  # type: ignore[no-untyped-def]
    data = json.loads(json.dumps(as_data(plan(choices)), allow_nan=False))
    assert {"title", "outside", "inside", "parts", "corners", "grooves", "findings"} <= set(data)
    for place in ("outside", "inside"):
        assert set(data[place]) == {"length", "width", "height"}
    for part in data["parts"]:
        assert set(part) == {"name", "count", "finished", "cut", "rough", "working"}
        for key in ("finished", "cut", "rough", "working"):
            assert set(part[key]) == {"length", "width", "thickness"}
    for name in ("back", "front"):
        corner = data["corners"][name]
        assert set(corner) == {"tail_length", "step", "angle_deg", "tails", "pins"}
        assert len(corner["pins"]) == len(corner["tails"]) + 1
        for piece in corner["tails"] + corner["pins"]:
            assert set(piece) == PIECE
    assert (data["grooves"]["lid"] is None) == (choices.lid.kind == "lift-off")
    for row in data["findings"]:
        assert set(row) == {"level", "code", "where", "message", "remedy", "source"}
        assert row["level"] in ("wont_work", "care", "good")


def test_unequal_tails_have_no_step() -> None:
    data = as_data(plan(postcard().having({"corner.tails_back": ((5.0, 19.0), (25.0, 59.0))})))
    assert data["corners"]["back"]["step"] is None
    assert len(data["corners"]["back"]["tails"]) == 2


def test_a_box_that_cannot_exist_has_findings_and_no_part_it_cannot_compute() -> None:
    made = plan(postcard().having({"size.inside_length": None, "size.outside_length": 10.0}))
    assert not made.works
    assert "bottom" not in {part.name for part in made.parts}
    assert made.findings[0].code == "inside-negative"
    assert "2 × 12 end thickness" in made.findings[0].message
    assert json.dumps(as_data(made))


def test_a_box_without_room_for_its_tails_is_still_told() -> None:
    made = plan(postcard().having({"corner.tails_front": 24}))
    data = as_data(made)
    assert data["corners"]["front"]["tails"] == []
    assert not made.works
    assert made.settings == ()


def test_settings_of_the_postcard_box() -> None:
    values = {row.tool: row.value for row in plan(postcard()).settings}
    assert values["gauge 1, tail length"] == "8 mm"
    assert values["gauge 2, tail-board thickness"] == "12.2 mm"
    assert values["dividers, back corners"] == "20 mm"
    assert values["bevel gauge"] == "8.1°"
    assert values["plough"] == "iron 6 mm, depth 4 mm"
    assert values["front end, rip line"] == "51.4 mm"
    assert values["rebate, lid"] == "3.3 mm deep, 5 mm wide"


def test_the_ear_has_its_own_gauge() -> None:
    rows = {row.tool: row for row in plan(ears()).settings}
    assert rows["gauge for the ear"].value == "4 mm and 12 mm"


def test_thicker_sides_move_the_ends_and_nothing_else() -> None:
    told = compare(plan(postcard()), plan(postcard().having({"thickness.side": 13.0})))
    moved = {change.where: change.amount for change in told.changes}
    assert moved["back length"] == moved["front length"] == pytest.approx(2)
    assert moved["outside width"] == pytest.approx(2)
    assert moved["side rough thickness"] == pytest.approx(1)
    for still in ("lid length", "lid width", "bottom length", "lap, back corners", "wall height"):
        assert still in told.same
    why = {change.where: change.why(postcard().rule) for change in told.changes}
    assert why["back length"] == "tail length + 2 mm"


def test_comparison_tells_findings_that_come_and_go() -> None:
    told = compare(plan(postcard()), plan(postcard().having({"corner.lap": 2.5})))
    assert "lap-thin" in {row.code for row in told.new_findings}
    assert "good-lap" in {row.code for row in told.gone_findings}


def test_the_fingerprint_changes_with_any_choice() -> None:
    prints = {
        plan(choices).fingerprint
        for choices in (
            postcard(),
            postcard(),
            postcard().having({"groove.depth": 4.1}),
            postcard().having({"title": "Another"}),
            postcard().having({"rooms.dry": postcard().rooms.make}),
        )
    }
    assert len(prints) == 4


def test_what_was_left_out_is_told_with_its_rule() -> None:
    bare = postcard().having({"corner.lap": None, "groove.depth": None, "corner.tails_back": None})
    told = {row.key: row for row in plan(bare).chosen}
    assert told["corner.lap"].value == "4 mm"
    assert "third" in told["corner.lap"].why
    assert told["corner.tails_back"].value == "3"
