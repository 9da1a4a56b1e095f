"""A box with its tails on the sides, worked out aloud in a class. Common practice, no source.

Outside 12 × 4 3/8 × 3 1/2 in, sides 3/8, ends 5/8, lap 3/16, grooves 1/4 wide. Panel sizes are
before clearances, so that clearances are zero here. Exact sums, so that only noise is allowed.
"""

import pytest

from tests.boxes import INCH
from toolkit.box import Choices, Size, Thickness
from toolkit.box.choices import CornerChoice, GrooveChoice, Panels
from toolkit.measures import Rule
from toolkit.plan import Plan, plan


def trade_box(*, depth: float, end: float = 5 / 8, **corner: float) -> Plan:
    corner = corner or {"lap": 3 / 16 * INCH}
    return plan(
        Choices(
            Size(
                outside_length=12 * INCH,
                outside_width=(4 + 3 / 8) * INCH,
                outside_height=3.5 * INCH,
            ),
            Thickness(side=3 / 8 * INCH, end=end * INCH, bottom=INCH / 4, lid=3 / 8 * INCH),
            rule=Rule.inches(),
            corner=CornerChoice(tails_on="sides", **corner),  # type: ignore[arg-type]
            groove=GrooveChoice(width=INCH / 4, depth=depth * INCH),
            panels=Panels(bottom_across=0.0, lid_across=0.0, along=0.0),
        )
    )


def codes(made: Plan) -> set[tuple[str, str]]:
    return {(row.code, row.where) for row in made.findings if row.level != "good"}


@pytest.mark.parametrize(
    ("depth", "bottom", "lid_length"),
    [(1 / 4, (11 + 1 / 4, 4 + 1 / 8), 11 + 5 / 8), (3 / 16, (11 + 1 / 8, 4.0), 11 + 9 / 16)],
)
def test_panels(depth: float, bottom: tuple[float, float], lid_length: float) -> None:
    made = trade_box(depth=depth)
    panel = made.part("bottom")
    assert (panel.length.value / INCH, panel.width.value / INCH) == pytest.approx(bottom)
    assert made.part("lid").length.value / INCH == pytest.approx(lid_length)
    # Rough panels of 11 3/4 × 4 1/8 in cover both.
    assert max(panel.length.value, made.part("lid").length.value) <= (11 + 3 / 4) * INCH
    assert panel.width.value <= (4 + 1 / 8) * INCH + 1e-9


def test_a_three_eighths_side_takes_a_groove_of_three_sixteenths() -> None:
    assert ("groove-deep", "sides") not in codes(trade_box(depth=3 / 16))
    assert ("groove-deep", "sides") in codes(trade_box(depth=3 / 16 + 1 / 64))


def test_lap_left_by_tails_of_seven_sixteenths() -> None:
    tails = {"tail_length": 7 / 16 * INCH}
    thin = codes(trade_box(depth=3 / 16, end=9 / 16, **tails))
    assert {where for code, where in thin if code == "lap-thin"} == {
        "back corners",
        "front corners",
    }
    assert "lap-thin" not in {
        code for code, _ in codes(trade_box(depth=3 / 16, end=5 / 8, **tails))
    }


def test_the_ear_runs_on_to_the_front_face() -> None:
    made = trade_box(depth=3 / 16)
    assert made.part("side").length.value / INCH == pytest.approx(12 - 3 / 16)
    assert made.part("back").length.value / INCH == pytest.approx(4 + 3 / 8)
