"""The two postcard builds, whose tables were worked out by hand and close exactly in their units.

Fences, half pins and the clearance under the lid are those with which the box earns no warning.
The tolerance is rounding noise only: every number is an exact sum.
"""

import pytest

from tests.boxes import INCH, inch_postcard, postcard
from toolkit.box import Choices
from toolkit.plan import as_data, plan

METRIC = {
    "side": (176, 66, 12),
    "back": (126, 66, 12),
    "front": (126, 51.4, 12),
    "bottom": (159, 116, 8),
    "lid": (168, 116, 9),
}
INCHES = {
    "side": (7, 2 + 11 / 16, 1 / 2),
    "back": (5, 2 + 11 / 16, 1 / 2),
    "front": (5, 2 + 1 / 16, 1 / 2),
    "bottom": (6 + 9 / 32, 4 + 35 / 64, 5 / 16),
    "lid": (6 + 21 / 32, 4 + 35 / 64, 3 / 8),
}


@pytest.mark.parametrize("part", METRIC)
def test_metric_cut_list(part: str) -> None:
    made = plan(postcard()).part(part)
    assert [size.value for size in made.finished] == pytest.approx(METRIC[part])


@pytest.mark.parametrize("part", INCHES)
def test_inch_cut_list(part: str) -> None:
    made = plan(inch_postcard()).part(part)
    assert [size.value / INCH for size in made.finished] == pytest.approx(INCHES[part])


@pytest.mark.parametrize("whole", [postcard(), inch_postcard()])
def test_the_example_earns_no_warning(whole: Choices) -> None:
    assert {row.level for row in plan(whole).findings} == {"good"}


def test_metric_corners() -> None:
    data = as_data(plan(postcard()))
    back, front = data["corners"]["back"], data["corners"]["front"]
    assert [(t["low"], t["high"]) for t in back["tails"]] == [(6, 20), (26, 40), (46, 60)]
    assert [t[end] for t in front["tails"] for end in ("low", "high")] == pytest.approx(
        [6, 22.7, 28.7, 45.4]
    )
    assert (back["step"], front["step"]) == pytest.approx((20, 22.7))
    # The divider's last step falls on the far edge.
    assert 6 + 3 * back["step"] == 66
    # The printed tips and narrow pins are rounded to the last digit shown here.
    assert back["tails"][0]["tip_high"] - back["tails"][0]["tip_low"] == pytest.approx(
        16.3, abs=0.05
    )
    assert back["pins"][1]["tip_high"] - back["pins"][1]["tip_low"] == pytest.approx(
        3.71, abs=0.005
    )
    assert back["pins"][0]["tip_high"] == pytest.approx(4.86, abs=0.005)
    assert back["tail_length"] == 8
    # The side is the pin board: at the low front its topmost pin reaches to the rim.
    assert (front["pins"][-1]["low"], front["pins"][-1]["high"]) == pytest.approx((45.4, 66))


def test_inch_corners() -> None:
    data = as_data(plan(inch_postcard()))
    back, front = data["corners"]["back"], data["corners"]["front"]
    assert [(t["low"] / INCH, t["high"] / INCH) for t in back["tails"]] == [
        pytest.approx((1 / 4, 13 / 16)),
        pytest.approx((1 + 1 / 16, 1 + 5 / 8)),
        pytest.approx((1 + 7 / 8, 2 + 7 / 16)),
    ]
    assert [(t["low"] / INCH, t["high"] / INCH) for t in front["tails"]] == [
        pytest.approx((1 / 4, 29 / 32)),
        pytest.approx((1 + 5 / 32, 1 + 13 / 16)),
    ]
    assert back["step"] / INCH == pytest.approx(13 / 16)
    assert front["step"] / INCH == pytest.approx(29 / 32)
    # Printed to three decimals of an inch.
    assert back["pins"][1]["tip_high"] / INCH - back["pins"][1]["tip_low"] / INCH == pytest.approx(
        0.152, abs=0.0005
    )
    assert back["pins"][0]["tip_high"] / INCH == pytest.approx(0.201, abs=0.0005)
    assert back["tail_length"] / INCH == pytest.approx(11 / 32)


def test_grooves_outside_and_inside() -> None:
    data = as_data(plan(postcard()))
    assert data["grooves"]["bottom"] == {"low": 8, "high": 14, "depth": 4}
    assert data["grooves"]["lid"] == {"low": 52, "high": 58, "depth": 4}
    assert data["outside"] == {"length": 176, "width": 134, "height": 66}
    assert data["inside"] == {"length": 152, "width": 110, "height": 38}


def test_panel_edges() -> None:
    design = plan(postcard()).design
    assert design.bottom.rebate_depth == pytest.approx(2.2)
    assert design.lid.rebate_width == pytest.approx(5)  # type: ignore[union-attr]
    # The hand-worked table gives the lid a tongue with 0.2 of play, the file 0.3.
    tighter = plan(postcard().having({"panels.lid_tongue": 0.2})).design
    assert tighter.lid.rebate_depth == pytest.approx(3.2)  # type: ignore[union-attr]


def test_grooves_stand_two_inside_their_tails() -> None:
    margins = [fit.margins for fit in plan(postcard()).design.fits]
    assert margins[0] == pytest.approx((2, 6))
    assert margins[2] == pytest.approx((6, 2))


def test_defaults_alone_arrive_at_the_same_box() -> None:
    """With only sizes and thicknesses given, the rules choose the hand-worked numbers."""
    for whole in (postcard(), inch_postcard()):
        bare = plan(type(whole)(whole.size, whole.thickness, rule=whole.rule)).design.choices
        for section, keys in (
            ("corner", ("lap", "slope", "half_pin", "pin")),
            ("groove", ("width", "depth", "bottom_edge", "top_edge")),
            ("panels", ("under_lid",)),
        ):
            for key in keys:
                chosen = getattr(getattr(bare, section), key)
                assert chosen == pytest.approx(getattr(getattr(whole, section), key)), key
        laid = plan(type(whole)(whole.size, whole.thickness, rule=whole.rule)).design
        assert (len(laid.back.tails), len(laid.front.tails)) == (3, 2)
