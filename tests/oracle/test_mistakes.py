"""The solids notice: a part moved by a hair, a wrong number in a plan, a box that can't be made."""

from copy import deepcopy
from functools import cache
from itertools import product
from typing import Any

import pytest

from tests.boxes import first_postcard as postcard
from tests.oracle.daylight import openings
from tests.oracle.designs import ARRANGEMENTS, Arrangement
from tests.oracle.faults import overlapping_walls, standing
from tests.oracle.motion import HAIR, WAYS, moving
from tests.oracle.mutations import MISTAKES
from tests.oracle.solids import Solids, build
from toolkit.box import Choices
from toolkit.plan import as_data, plan

each_arrangement = pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)


def box(arrangement: Arrangement) -> Choices:
    """The postcard box in another arrangement, with sides and ends unlike each other."""
    through = arrangement.joint == "through"
    return postcard().having(
        {
            "thickness.side": 13.0,
            "thickness.end": 11.0,
            "corner.joint": arrangement.joint,
            "corner.tails_on": arrangement.tails_on,
            "corner.lap": None if through else 4.0,
            "lid.kind": arrangement.lid,
            "lid.seat": "battens" if through else "rebate",
        }
    )


@cache
def sound(arrangement: Arrangement) -> tuple[Solids, dict[str, Any]]:
    made = plan(box(arrangement))
    assert made.works
    data = as_data(made)
    return build(data, made.choices), data


@each_arrangement
def test_sound_box_has_no_fault(arrangement: Arrangement) -> None:
    solids, _ = sound(arrangement)
    assert standing(solids) == []
    assert overlapping_walls(solids) == []
    assert moving(solids) == []


def test_volumes_of_the_postcard_box() -> None:
    """Worked out by hand from the cut list, in mm³."""
    choices = postcard()
    walls = build(as_data(plan(choices)), choices).walls
    # Back: 110 between baselines, three tails of 14 growing to 16 2/7 over 8 at either end;
    # grooves of 6 × 4 through those tails and what is between.
    tails = 2 * 3 * 8 * (14 + 16 + 2 / 7) / 2
    back = 12 * (110 * 64 + tails) - 2 * (6 * 4) * 126
    assert walls["back"].volume() == pytest.approx(back, abs=1e-3)
    # Side: full but for 3 sockets behind, and 2 of 17.35 in front, each 12 across; the lid's
    # groove runs out in front through the topmost pin, the other ends run out in sockets.
    front = 2 * 8 * (17.35 + 17.35 + 16 / 7) / 2
    side = 176 * 64 * 12 - 12 * (tails / 2 + front) - (6 * 4) * (152 + 164)
    assert walls["left side"].volume() == pytest.approx(side, abs=1e-3)
    # Front: 50.7 high, grooved once.
    low = 12 * (110 * 50.7 + 2 * front) - (6 * 4) * 126
    assert walls["front"].volume() == pytest.approx(low, abs=1e-3)


# Each choice of an arrangement meets each other choice.
@pytest.mark.parametrize("arrangement", [ARRANGEMENTS[i] for i in (0, 2, 4, 7, 9, 11)], ids=str)
def test_wall_out_of_place_by_a_hundredth(arrangement: Arrangement) -> None:
    solids, _ = sound(arrangement)
    for wall, (way, (x, y, z)) in product(solids.walls, WAYS.items()):
        moved = solids.moved(wall, HAIR * x, HAIR * y, HAIR * z)
        assert standing(moved), f"{wall} moved {way}"


@each_arrangement
def test_panel_a_hundredth_beyond_its_play(arrangement: Arrangement) -> None:
    solids, _ = sound(arrangement)
    along, across = 0.5 + HAIR, 1.0 + HAIR
    for way in (
        {"x": along},
        {"x": -along},
        {"y": across},
        {"y": -across},
        {"z": 0.2 + HAIR},
        {"z": -HAIR},
    ):
        assert standing(solids.moved("bottom", **way)), f"bottom moved by {way}"
    lid_moves = {"sliding": ({"x": HAIR}, {"x": -HAIR}), "lift-off": ({"z": -HAIR},)}
    for way in lid_moves.get(arrangement.lid, ()):
        assert standing(solids.moved("lid", **way)), f"lid moved by {way}"


@pytest.mark.parametrize("name", MISTAKES)
def test_mistake_in_a_plan(name: str) -> None:
    made_by = 0
    for arrangement in ARRANGEMENTS:
        data = deepcopy(sound(arrangement)[1])
        choices = box(arrangement)
        if MISTAKES[name](data, choices) is False:
            continue
        made_by += 1
        wrong = build(data, choices)
        assert standing(wrong) or moving(wrong), str(arrangement)
    assert made_by > 0


@pytest.mark.parametrize(
    ("name", "noticed"),
    [
        ("tails and pins agree but taper the wrong way", "no tail keeps it from being pulled off"),
        ("slope reversed from the baseline", "no tail keeps it from being pulled off"),
        ("one groove counted in the width of the bottom", "it comes -z out of"),
        ("one groove counted in the length of the bottom", "it comes -z out of"),
        ("one groove counted in the width of the lid", "it comes +z out of"),
    ],
)
def test_mistake_that_shows_when_parts_are_pushed(name: str, noticed: str) -> None:
    arrangement = ARRANGEMENTS[0]
    data = deepcopy(sound(arrangement)[1])
    MISTAKES[name](data, box(arrangement))
    assert any(noticed in fault for fault in moving(build(data, box(arrangement))))


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("front-too-high", {"panels.under_lid": -0.5}),
        ("panel-too-thick", {"panels.lid_profile": "flat"}),
        ("groove-and-lap", {"groove.depth": 8.5, "thickness.side": 12.0}),
        ("groove-through-wall", {"groove.depth": 11.5}),
        ("bottom-below-walls", {"thickness.bottom": 13.5}),
        ("tail-tips-meet", {"corner.pin": 2.0}),
        ("lid-short", {"made.lid_length": 165.0}),
    ],
)
def test_what_a_finding_refuses_shows_in_the_solids(code: str, changes: dict[str, Any]) -> None:
    choices = box(ARRANGEMENTS[0]).having(changes)
    made = plan(choices)
    assert code in {row.code for row in made.found if row.level != "good"}
    assert standing(build(as_data(made), choices))


def test_tail_that_stands_above_the_low_front_is_refused() -> None:
    """Its tip of 51.04 has no wood in a front of 50.7, though the side's topmost pin is wide."""
    choices = postcard().having({"corner.tails_front": ((5.0, 22.0), (28.0, 49.9))})
    made = plan(choices)
    assert standing(build(as_data(made), choices)) == [
        "front measures 51.0429 along z; its part has 50.7"
    ]
    assert not made.works


def test_daylight_of_a_groove_moved_off_its_tail() -> None:
    """The bottom groove 3 mm lower: 1 mm of it meets the half pin of 5 mm, 4 to 5 up."""
    choices = postcard().having({"groove.bottom_edge": 4.0})
    seen = openings(build(as_data(plan(choices)), choices))
    assert [row.face for row in seen] == ["back end, outside face", "front end, outside face"]
    for row in seen:
        assert (row.low, row.high, row.wide) == pytest.approx((4.0, 5.0, 4.0), abs=1e-3)
