"""Lesson 4's scenes: what their sliders show, what keeping writes, what boxes they put up with."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.boxes import ears, inch_postcard, lift_off
from tests.files.keeping import change_box
from tests.lesson.showing import can_be_made, stands_on_its_marks
from toolkit.box import written
from toolkit.document import as_text
from toolkit.explore import lesson4
from toolkit.files import read_box
from toolkit.lesson.lesson4 import SEASON
from toolkit.lesson.lesson4_box import CONTENTS
from toolkit.lesson.lesson4_lid import EDGES, LID
from toolkit.lesson.scene import ImpossibleError
from toolkit.plan import plan
from toolkit.study import example_path

BOX = read_box(example_path())
KINDS = {
    "example": BOX,
    "left out": BOX.having(
        {
            "panels.lid_across": None,
            "panels.bottom_across": None,
            "groove.depth": None,
            "groove.bottom_edge": None,
            "groove.top_edge": None,
            "corner.tails_back": None,
            "corner.tails_front": None,
        }
    ),
    "ears": ears(),
    "inches": inch_postcard(),
    "through": BOX.having({"corner.joint": "through", "corner.lap": None}),
    "made": BOX.having(
        {"made.lid_width": 115.3, "made.groove_depth": 4.2, "made.side_width": 64.2}
    ),
    "grain across": BOX.having({"panels.grain": "across"}),
}
ADDED = (SEASON, LID, EDGES, CONTENTS)


def words(view: Any) -> str:
    return re.sub(r"\s+", " ", as_text(view.numbers))


@pytest.mark.parametrize("scene", ADDED, ids=lambda scene: scene.name)
@pytest.mark.parametrize("kind", list(KINDS))
def test_every_box_can_be_shown_and_every_slider_stands_on_one_of_its_marks(scene, kind) -> None:
    stands_on_its_marks(scene, KINDS[kind])


@pytest.mark.parametrize("scene", ADDED, ids=lambda scene: scene.name)
def test_each_slider_moves_the_picture_within_three_steps_and_not_the_page(scene) -> None:
    first = scene.view(BOX)
    assert first.picture.drawn.height <= scene.height
    assert len(scene.controls) <= 4
    for control in scene.controls:
        start = control.first(BOX)
        values = [value for _, value in control.options(BOX.rule, start)]
        shown = set()
        for place, value in enumerate(values):
            near = 0 < abs(place - values.index(start)) <= 3
            if place % 3 and not near:
                continue
            view = scene.view(BOX, dict.fromkeys(control.keys, value))
            assert view.picture.drawn.height == first.picture.drawn.height
            if near:
                shown.add(view.picture.svg)
        assert shown - {first.picture.svg}, control.label


# The season


def test_beech_fails_both_ways_and_the_changes_are_ranked() -> None:
    beech = {"wood.lid": "American beech", "wood.bottom": "American beech"}
    view = SEASON.view(BOX, beech)
    assert {"swells-tight", "drops-out"} <= {row.code for row in view.findings}
    said = words(view)
    assert "no clearance does for both" in said
    assert [row[0] for row in view.numbers.rows if row[0].startswith("change")] == [
        f"change {rank}" for rank in range(1, 6)
    ]
    first = next(row for row in view.numbers.rows if row[0] == "change 1")
    assert first[1].startswith("Plough every groove 5.6 mm deep") and "over a third" in first[2]


def test_damper_wood_moves_both_limits_down() -> None:
    dry, damp = (SEASON.view(BOX, {"try.moisture": value}).numbers.rows for value in (7.0, 13.0))
    needed = [float(rows[0][1].split()[0]) for rows in (dry, damp)]
    allowed = [float(rows[1][1].split()[0]) for rows in (dry, damp)]
    assert needed[1] < needed[0] and allowed[1] < allowed[0]


def test_keeping_writes_the_clearance_once_and_the_moisture(tmp_path: Path) -> None:
    path = tmp_path / "box.toml"
    path.write_text(example_path().read_text(encoding="utf-8"), encoding="utf-8")
    clearance = SEASON.controls[0]
    moment = SEASON.at(BOX, {"try.moisture": 11.0})
    assert SEASON.more is not None
    change_box(path, written({clearance.keys[0]: 2.4}, rule=BOX.rule) | SEASON.more(moment))
    box = read_box(path)
    assert (box.panels.lid_across, box.panels.bottom_across) == (2.4, 2.4)
    assert (box.rooms.make.humidity, box.rooms.make_moisture) == (50, 11)
    assert SEASON.controls[-1].first(box) == 11
    assert SEASON.more(SEASON.at(BOX)) == {}


def test_a_bottom_under_a_lid_that_lifts_off_has_limits_too() -> None:
    assert "The bottom between damp and dry" in words(SEASON.view(lift_off()))


# The lid


def test_a_front_at_the_middle_or_roof_stops_the_lid_and_at_the_floor_lets_it_pass() -> None:
    codes = {
        front: {row.code for row in LID.view(BOX, {"try.front": front}).findings}
        for front in ("own", "floor", "middle", "roof")
    }
    assert "front-too-high" in codes["middle"] & codes["roof"]
    assert "front-too-high" not in codes["own"] | codes["floor"]


def test_there_is_no_way_for_a_lid_that_lifts_off() -> None:
    with pytest.raises(ImpossibleError, match="lifts off") as caught:
        LID.view(lift_off())
    assert caught.value.there_is == "No such lid."


# The edges


def test_a_wider_bevel_leaves_a_thicker_rim_and_a_gentler_slope() -> None:
    def rim(wide: float) -> tuple[float, float]:
        rows = {row[0]: row[1] for row in EDGES.view(BOX, {"try.bevel": wide}).numbers.rows}
        return float(rows["thin edge"].split()[0]), float(rows["slope of the bevel"].rstrip("°"))

    (thin, steep), (thick, gentle) = rim(8.0), rim(24.0)
    assert thin < thick and steep > gentle
    found = EDGES.view(BOX, {"try.bevel": 5.0}).findings
    assert "bevel-too-narrow" in {row.code for row in found}


def test_keeping_a_bevel_writes_its_width_and_that_it_is_one(tmp_path: Path) -> None:
    path = tmp_path / "box.toml"
    path.write_text(example_path().read_text(encoding="utf-8"), encoding="utf-8")
    assert EDGES.more is not None
    assert EDGES.more(EDGES.at(BOX)) == {}
    change_box(path, EDGES.more(EDGES.at(BOX, {"try.bevel": 18.0})))
    box = read_box(path)
    assert (box.panels.lid_profile, box.panels.bevel_width) == ("bevelled", 18.0)
    assert plan(box).design.lid.bevel[1] == 18.0
    assert EDGES.controls[0].first(box) == 18.0


# The contents


def test_a_hundred_a6_cards_lead_to_the_workbooks_box() -> None:
    said = words(CONTENTS.view(BOX))
    for row in (
        "length inside 152 mm 148 mm A6 cards + 2 × 2 mm room",
        "height inside 38 mm 100 ÷ 10 × 3.6 mm stack + 2 mm",
        "wall height 66 mm",
        "side length 176 mm",
        "2 side, rough",
    ):
        assert row in said, row


def test_twice_the_cards_make_the_walls_36_higher() -> None:
    said = words(CONTENTS.view(BOX, {"try.cards": 200}))
    assert "height inside 74 mm" in said and "wall height 102 mm" in said


@pytest.mark.parametrize("size", [{}, {"size.inside_width": None, "size.outside_width": "134 mm"}])
def test_keeping_contents_replaces_the_sizes_of_the_file(tmp_path: Path, size: Any) -> None:
    path = tmp_path / "box.toml"
    path.write_text(example_path().read_text(encoding="utf-8"), encoding="utf-8")
    change_box(path, size)
    assert CONTENTS.more is not None
    box = read_box(path)
    assert CONTENTS.more(CONTENTS.at(box)) == {}
    moved = CONTENTS.at(box, {"try.what": "A5 cards", "try.cards": 50})
    change_box(path, CONTENTS.more(moved))
    made = plan(read_box(path)).design.frame
    assert (made.inside_length.value, made.inside_width.value) == (214, 152)
    assert made.inside_height.value == pytest.approx(20)


# On paper


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_cell_can_be_made_for_every_box(kind) -> None:
    cells = (
        "lid_still limits year_still ploughing stages edges exits months clearances worked carry"
    )
    can_be_made(lesson4, cells, KINDS[kind])
