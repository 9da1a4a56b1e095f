"""European woods, worked by hand from the differential swelling of their rows.

The table has it from memory (DIN 68100): oak 0.36 % of the width for each % along the rings and
0.16 across, Scots pine 0.36 and 0.19, beech 0.41 and 0.20.
"""

import pytest

from tests.boxes import postcard
from toolkit.plan import plan
from toolkit.wood import all_species, cup, movement, quick_rule, species

EUROPEAN = [wood for wood in all_species() if wood.from_memory]


def test_there_are_thirteen_and_none_of_them_is_known_by_more():
    assert len(EUROPEAN) == 13
    for wood in EUROPEAN:
        assert wood.name in wood.caution
        assert wood.shrinkage_volumetric is None
        assert wood.specific_gravity_green is wood.specific_gravity_12 is None


@pytest.mark.parametrize(
    ("name", "rings", "start", "end", "change"),
    [
        # From 10 % the law is the swelling itself: 100 × 0.0036 × 4.
        ("European oak", 0, 10, 14, 1.44),
        ("European oak", 90, 10, 6, -0.64),
        ("European beech", 0, 10, 13, 1.23),
        # Elsewhere of the width at 10 %: 8 to 12 % is 100 × 0.0144 / (1 - 2 × 0.0036).
        ("European oak", 0, 8, 12, 1.4504),
        ("Scots pine", 90, 15, 5, -1.8821),
        # Half the one shrinkage and half the other: (10.0746 + 4.6512) / 2 = 7.3629 %.
        ("European oak", 45, 10, 14, 1.0324),
        # Wood as wet as fibre saturation moves no more: 20 points from 10 to 30 %.
        ("European oak", 0, 10, 40, 7.2),
    ],
)
def test_the_law_agrees_with_the_differential_swelling_at_10_percent(
    name, rings, start, end, change
):
    found = movement(100, species=name, rings=rings, moisture_from=start, moisture_to=end)
    assert found == pytest.approx(change, abs=0.00006)


def test_shrinkage_is_worked_back_and_says_so():
    """S = 100 × 30 × 0.0036 / (1 + 20 × 0.0036) = 10.8 / 1.072."""
    oak = species("European oak")
    assert oak.shrinkage_tangential == pytest.approx(10.0746, abs=0.00005)
    assert oak.shrinkage_radial == pytest.approx(4.6512, abs=0.00005)
    assert oak.shrinkage_from.seen == "computed"


def test_the_quick_rule_is_width_times_swelling_times_percent():
    rule = quick_rule(116, species="European beech", rings=0, moisture_from=9, moisture_to=13)
    assert rule.change == pytest.approx(116 * 0.41 / 100 * 4)
    assert rule.valid
    assert rule.coefficients_fit
    assert rule.doubt == species("European beech").caution


def test_a_drying_board_of_european_oak_goes_hollow_on_its_bark_side():
    """1.44 % less along the rings, 0.64 across, u = 116 / 160: 80 × 0.008 × u atan u is 0.291.

    That is the first term of the exact map, and within 5 % of it.
    """
    found = cup(
        116, thickness=9, ring_radius=80, species="European oak", moisture_from=10, moisture_to=6
    )
    assert found.hollow_side == "bark"
    assert found.bark_hollow == pytest.approx(0.291, rel=0.05)


def clear(wood, **more):
    """Clearance that the default rule gives a lid. [mm]"""
    made = plan(postcard().having({"panels.lid_across": None, "wood.lid": wood, **more}))
    return made.design.lid.across


def test_a_default_clearance_has_half_a_millimetre_more_for_a_number_from_memory():
    """118 mm between groove bottoms, 9.27 to 14.38 %: 118 s + 0.3 + 0.5 over 1 + s, up to 0.1 mm.

    Oak: s = 0.0036 × 5.11 / (1 - 0.73 × 0.0036) = 0.01844, so 2.92 and 3.0.
    """
    assert clear("European oak") == pytest.approx(3.0)
    assert clear("European oak", **{"customs.memory_room": 0.0}) == pytest.approx(2.5)
    assert clear("black cherry") == clear("black cherry", **{"customs.memory_room": 2.0})


@pytest.mark.parametrize(
    ("rings", "code"), [(0.0, "drops-out"), (90.0, "good-season"), (90.0, "swells-tight")]
)
def test_each_finding_of_the_seasons_says_that_it_rests_on_memory(rings, code):
    changes = {"wood.rings": rings, "wood.lid": "European oak", "wood.bottom": "European oak"}
    changes["panels.lid_across"] = 1.5 if code == "swells-tight" else None
    made = plan(postcard().having(changes))
    said = [row.message for row in made.findings if row.code == code]
    assert said
    assert all(species("European oak").caution in text for text in said)


@pytest.mark.parametrize(("across", "level"), [(3.0, None), (2.4, "care"), (2.0, "wont_work")])
def test_only_a_clearance_that_the_swelling_itself_exceeds_won_t_work(across, level):
    """Oak swells 2.12 to 2.13; 0.3 over, and half a millimetre more, is what customs ask for."""
    made = plan(postcard().having({"panels.lid_across": across, "wood.lid": "European oak"}))
    levels = [row.level for row in made.findings if row.code == "swells-tight"]
    assert levels == ([level] if level else [])
