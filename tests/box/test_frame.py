"""Walls: what follows from what, in both arrangements, and what has been made is fact."""

from typing import Any

import pytest

from tests.boxes import first_ears as ears, first_lift_off as lift_off, first_postcard as postcard
from toolkit.plan import Plan, plan


def finished(made: Plan, part: str) -> tuple[float, ...]:
    return tuple(size.value for size in made.part(part).finished)


def cut(made: Plan, part: str) -> tuple[float, ...]:
    return tuple(size.value for size in made.part(part).cut)


def test_tails_on_ends() -> None:
    made = plan(
        postcard().having({"thickness.side": 13.0, "thickness.end": 11.0, "corner.lap": 3.5})
    )
    # 110 + 2 × (13 − 3.5), and agreeing with the outside less both laps
    assert finished(made, "back") == (129.0, 64.0, 11.0)
    f = made.design.frame
    assert f.outside_width.value - 2 * f.lap_back.value == pytest.approx(129.0)
    assert finished(made, "side") == (152 + 22, 64.0, 13.0)
    assert finished(made, "lid")[0] == 152 + 4 + 11
    assert finished(made, "bottom")[:2] == (152 + 8 - 1, 110 + 8 - 2)


def test_tails_on_sides_with_the_ear() -> None:
    made = plan(ears().having({"thickness.side": 11.0, "thickness.end": 13.0}))
    assert made.design.frame.outside_length.value == 152 + 26
    assert finished(made, "side")[0] == 178 - 4  # one lap at the back, the ear at the front
    assert finished(made, "back")[0] == 110 + 22
    assert made.design.frame.tail_back.value == 13 - 4
    # Without a sliding lid there is no ear: the side stops a lap short of both faces.
    closed = plan(lift_off().having({"corner.tails_on": "sides", "thickness.end": 13.0}))
    assert finished(closed, "side")[0] == 178 - 8


def test_through_joint_has_no_lap() -> None:
    for tails_on, part, length in (("ends", "back", 134.0), ("sides", "side", 176.0)):
        choices = postcard().having(
            {"corner.joint": "through", "corner.lap": None, "corner.tails_on": tails_on}
        )
        made = plan(choices)
        assert made.design.frame.tail_back.value == 12
        assert finished(made, part)[0] == length


def test_lap_or_tail_length() -> None:
    by_tail = plan(postcard().having({"corner.lap": None, "corner.tail_length": 8.5}))
    assert by_tail.design.frame.lap_back.value == 3.5


def test_inside_and_outside_agree() -> None:
    sizes = {"length": 176.0, "width": 134.0, "height": 64.0}
    outside = {f"size.outside_{axis}": size for axis, size in sizes.items()}
    inner = plan(postcard())
    outer = plan(
        postcard().having(dict.fromkeys(f"size.inside_{axis}" for axis in sizes) | outside)
    )
    for part in inner.parts:
        assert finished(outer, part.name) == pytest.approx(finished(inner, part.name))


def test_contents_decide_the_inside() -> None:
    made = plan(
        postcard().having(
            dict.fromkeys(["size.inside_length", "size.inside_width"])
            | {"size.contents": "A6 cards", "size.ease": 4.0}
        )
    )
    f = made.design.frame
    assert (f.inside_length.value, f.inside_width.value) == (152.0, 109.0)
    assert "148 length of A6 cards" in f.inside_length.sentence(made.choices.rule)


def test_lift_off_walls_have_no_lid_groove() -> None:
    made = plan(lift_off())
    assert made.design.frame.wall_height.value == 7 + 6 + 38
    assert made.design.frame.lid_groove is None
    assert finished(made, "front") == finished(made, "back")
    lid = made.design.lid
    assert lid.seat == "rebate"  # type: ignore[union-attr]
    assert finished(made, "lid")[:2] == (176.0, 134 + 4)
    battens = plan(lift_off().having({"lid.seat": "battens"}))
    assert battens.part("batten").count == 2
    assert finished(battens, "batten") == (109.0, 20.0, 8.0)
    assert battens.design.lid.centre_length.value == 151.0  # type: ignore[union-attr]


def test_rough_sizes_and_the_front_at_full_height() -> None:
    made = plan(
        postcard().having(
            {"allowances.length": 11.0, "allowances.width": 7.0, "allowances.thickness": 3.0}
        )
    )
    front, side = made.part("front"), made.part("side")
    # 176 + 11, 64 + 7 and 12 + 3: up to 5 mm, the thickness to 1 mm.
    assert [size.value for size in side.rough] == [190.0, 75.0, 15.0]
    assert front.rough_width.value == 75.0
    assert front.width.value == pytest.approx(50.7)


SIDE_114: dict[str, Any] = {"made.side_thickness": 11.4}


@pytest.mark.parametrize(
    ("made", "tail", "lap", "end"),
    [
        # Before the tail length is gauged a thinner side keeps its lap…
        (SIDE_114, 7.4, 4.0, 124.8),
        # …and afterwards it loses it.
        ({**SIDE_114, "made.tail_length": 8.0}, 8.0, 3.4, 126.0),
    ],
)
def test_a_side_that_came_out_thin(
    made: dict[str, Any], tail: float, lap: float, end: float
) -> None:
    result = plan(postcard().having(made))
    f = result.design.frame
    assert f.tail_back.value == pytest.approx(tail)
    assert f.lap_back.value == pytest.approx(lap)
    assert finished(result, "back")[0] == pytest.approx(end)
    assert finished(result, "side")[2] == 11.4


@pytest.mark.parametrize(
    ("made", "expected"),
    [
        ({"made.front_length": 125.2}, {"back": (0, 125.2), "bottom": (1, 115.2)}),
        # As cut: its pins stand 0.2 mm proud at either end.
        ({"made.side_length": 175.4}, {"lid": (0, 167.0), "bottom": (0, 158.0)}),
        ({"made.back_thickness": 11.5}, {"side": (0, 175.9), "front": (2, 12.0)}),
        ({"made.front_thickness": 11.0}, {"lid": (0, 167.0), "side": (0, 175.4)}),
        ({"made.side_width": 63.0}, {"back": (1, 63.0), "front": (1, 49.7)}),
        ({"made.groove_depth": 4.5}, {"lid": (1, 117.0), "bottom": (0, 160.0)}),
        ({"made.bottom_edge": 7.5}, {"back": (1, 64.5), "front": (1, 51.2)}),
        ({"made.lid_width": 115.0}, {"lid": (1, 115.0), "bottom": (1, 116.0)}),
    ],
)
def test_what_is_made_is_fact_and_the_rest_follows(
    made: dict[str, Any], expected: dict[str, tuple[int, float]]
) -> None:
    result = plan(postcard().having(made))
    for part, (axis, value) in expected.items():
        assert cut(result, part)[axis] == pytest.approx(value), part
    for key, value in made.items():
        part, _, axis = key.removeprefix("made.").rpartition("_")
        if part in ("front", "side", "back", "lid"):
            place = ("length", "width", "thickness").index(axis)
            assert cut(result, part)[place] == value


def test_made_ends_with_tails_on_sides_set_the_outside_width() -> None:
    result = plan(ears().having({"made.back_length": 133.4}))
    assert result.design.frame.inside_width.value == pytest.approx(109.0)
    assert cut(result, "front")[0] == pytest.approx(133.4)


def test_the_shorter_of_two_unlike_ends_rules() -> None:
    result = plan(postcard().having({"made.front_length": 125.0, "made.back_length": 126.0}))
    assert result.design.frame.inside_width.value == 109.0


def test_tails_are_chosen_where_no_wood_is_wanted_beside_a_groove() -> None:
    bare = postcard().having({"corner.tails_back": None, "customs.groove_margin_wanted": 0.0})
    assert len(plan(bare).design.back.tails) == 3
