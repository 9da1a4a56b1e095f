"""The two postcard builds, whose tables were worked out by hand and close exactly in their units.

The hand-worked tables give the front end at the floor of the lid groove, so its drop is 0 here.
The tolerance is rounding noise only: every number is an exact sum.
"""

import pytest

from tests.boxes import INCH, inch_postcard, postcard
from toolkit.plan import as_data, plan

METRIC = {
    "side": (176, 64, 12),
    "back": (126, 64, 12),
    "front": (126, 51, 12),
    "bottom": (159, 116, 8),
    "lid": (168, 116, 9),
}
INCHES = {
    "side": (7, 2 + 9 / 16, 1 / 2),
    "back": (5, 2 + 9 / 16, 1 / 2),
    "front": (5, 2 + 1 / 32, 1 / 2),
    "bottom": (6 + 9 / 32, 4 + 35 / 64, 5 / 16),
    "lid": (6 + 21 / 32, 4 + 35 / 64, 3 / 8),
}


@pytest.mark.parametrize("part", METRIC)
def test_metric_cut_list(part: str) -> None:
    made = plan(postcard().having({"panels.under_lid": 0.0})).part(part)
    assert [size.value for size in made.finished] == pytest.approx(METRIC[part])


@pytest.mark.parametrize("part", INCHES)
def test_inch_cut_list(part: str) -> None:
    made = plan(inch_postcard().having({"panels.under_lid": 0.0})).part(part)
    assert [size.value / INCH for size in made.finished] == pytest.approx(INCHES[part])


def test_the_file_takes_the_under_lid_off() -> None:
    assert plan(postcard()).part("front").width.value == pytest.approx(50.7)


def test_metric_corners() -> None:
    data = as_data(plan(postcard().having({"panels.under_lid": 0.0})))
    back, front = data["corners"]["back"], data["corners"]["front"]
    assert [(t["low"], t["high"]) for t in back["tails"]] == [(5, 19), (25, 39), (45, 59)]
    assert [(t["low"], t["high"]) for t in front["tails"]] == [(5, 22.5), (28.5, 46)]
    assert (back["step"], front["step"]) == (20, 23.5)
    # The printed tips and narrow pins are rounded to the last digit shown here.
    assert back["tails"][0]["tip_high"] - back["tails"][0]["tip_low"] == pytest.approx(
        16.3, abs=0.05
    )
    assert back["pins"][1]["tip_high"] - back["pins"][1]["tip_low"] == pytest.approx(
        3.71, abs=0.005
    )
    assert back["pins"][0]["tip_high"] == pytest.approx(3.86, abs=0.005)
    assert back["tail_length"] == 8
    # The side is the pin board: at the low front its topmost pin reaches to the rim.
    assert (front["pins"][-1]["low"], front["pins"][-1]["high"]) == (46, 64)


def test_inch_corners() -> None:
    data = as_data(plan(inch_postcard().having({"panels.under_lid": 0.0})))
    back, front = data["corners"]["back"], data["corners"]["front"]
    assert [(t["low"] / INCH, t["high"] / INCH) for t in back["tails"]] == [
        pytest.approx((3 / 16, 3 / 4)),
        pytest.approx((1, 1 + 9 / 16)),
        pytest.approx((1 + 13 / 16, 2 + 3 / 8)),
    ]
    assert [(t["low"] / INCH, t["high"] / INCH) for t in front["tails"]] == [
        pytest.approx((3 / 16, 57 / 64)),
        pytest.approx((1 + 9 / 64, 1 + 27 / 32)),
    ]
    assert back["step"] / INCH == pytest.approx(13 / 16)
    assert front["step"] / INCH == pytest.approx(61 / 64)
    # Printed to three decimals of an inch.
    assert back["pins"][1]["tip_high"] / INCH - back["pins"][1]["tip_low"] / INCH == pytest.approx(
        0.152, abs=0.0005
    )
    assert back["pins"][0]["tip_high"] / INCH == pytest.approx(0.138, abs=0.0005)
    assert back["tail_length"] / INCH == pytest.approx(11 / 32)


def test_grooves_outside_and_inside() -> None:
    data = as_data(plan(postcard()))
    assert data["grooves"]["bottom"] == {"low": 7, "high": 13, "depth": 4}
    assert data["grooves"]["lid"] == {"low": 51, "high": 57, "depth": 4}
    assert data["outside"] == {"length": 176, "width": 134, "height": 64}
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
        ):
            for key in keys:
                chosen = getattr(getattr(bare, section), key)
                assert chosen == pytest.approx(getattr(getattr(whole, section), key)), key
        laid = plan(type(whole)(whole.size, whole.thickness, rule=whole.rule)).design
        assert (len(laid.back.tails), len(laid.front.tails)) == (3, 2)
