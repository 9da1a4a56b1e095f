"""Dividers, layouts, and setting out round the grooves."""

from itertools import count, islice, pairwise
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from tests.boxes import (
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from tests.files.keeping import change_box
from tests.oracle.designs import ARRANGEMENTS, Arrangement, random_box
from toolkit.box import (
    Choices,
    design,
    marks_error,
    set_out_round_grooves,
    setting_error,
    walk,
    written,
)
from toolkit.box.corner import equal_tails, lay_out
from toolkit.box.joinery.offers import needs, room_now
from toolkit.files import read_box
from toolkit.measures import Rule
from toolkit.plan import plan
from toolkit.study import example_path

MM = Rule.millimetres()


@given(
    half=st.floats(3, 9),
    pin=st.floats(3, 9),
    n=st.integers(1, 9),
    tail=st.floats(6, 30),
    error=st.floats(-0.3, 0.3),
)
def test_a_wrong_step_keeps_the_layout_even(
    half: float, pin: float, n: int, tail: float, error: float
) -> None:
    """Both walks prick their marks; what lies between neighbouring marks is pin or tail."""
    height = 2 * half + n * tail + (n - 1) * pin
    corner = lay_out(
        "back",
        height=height,
        rim=height,
        tail_length=8,
        slope=7,
        half_pin=half,
        pin=pin,
        tails=n,
    )
    told = walk(corner, error=error)
    assert told is not None
    assert told.step == pytest.approx(tail + pin)
    assert told.forward[0] == pytest.approx(half)
    assert told.back[0] == pytest.approx(height - half)
    assert all(b - a == pytest.approx(told.step + error) for a, b in pairwise(told.forward))
    assert told.accumulated == pytest.approx(n * error)
    for low, high in told.tails:
        assert high - low == pytest.approx(tail - (n - 1) * error)
    for (_, high), (low, _) in pairwise(told.tails):
        assert low - high == pytest.approx(told.past)
    assert told.past == pytest.approx(pin + n * error)
    # The last mark gives the error back, so that the dividers can be put right.
    assert setting_error(told.past, pin=pin, steps=n) == pytest.approx(error, abs=1e-9)


def test_the_last_mark_off_the_board_and_its_remedy() -> None:
    back = walk(design(postcard()).back)
    assert back is not None
    assert back.off_edge == pytest.approx(1)
    assert "1 mm off the board" in back.remedy(MM)
    wide = walk(design(postcard().having({"corner.half_pin": 6.0})).back)
    assert wide is not None
    assert wide.off_edge == 0
    assert wide.remedy(MM) == ""
    assert "scrap" not in wide.sentence(MM)
    out = walk(design(postcard()).back, error=-0.2)
    assert out is not None
    assert "every pin comes out 5.4 mm and every tail 14.4 mm" in out.sentence(MM)


def test_unequal_tails_cannot_be_stepped() -> None:
    unequal = postcard().having({"corner.tails_back": ((5.0, 19.0), (25.0, 59.0))})
    assert walk(design(unequal).back) is None
    assert marks_error(design(unequal).back, rule=MM) is None
    assert walk(design(postcard().having({"corner.tails_back": 24})).back) is None
    with pytest.raises(ValueError, match="0 steps are no walk"):
        setting_error(6.0, pin=6.0, steps=0)


def test_dividers_set_to_a_mark_of_the_rule() -> None:
    corner = design(postcard()).front
    told = marks_error(corner, rule=Rule.millimetres())
    assert told is not None
    # (50.7 − 10 + 6) / 2 = 23.35, and the nearest tenth further from nothing is 23.4.
    assert corner.step == pytest.approx(23.35)
    assert told.error == pytest.approx(0.05)
    assert told.accumulated == pytest.approx(0.1)


def test_the_workbooks_own_box_is_the_first_offer() -> None:
    for box in (postcard(), inch_postcard()):
        told = set_out_round_grooves(box)
        assert told.hidden_now
        assert told.offers[0].is_now
        assert told.offers[0].name == "3 tails at the back, 2 at the front"
        assert 2 <= len(told.offers) <= 3


def able(arrangement: Arrangement, boxes: int) -> list[Choices]:
    def every() -> object:
        for seed in count():
            choices = random_box(arrangement, seed)
            if design(choices).exists:
                yield choices

    return list(islice(every(), boxes))  # type: ignore[call-overload]


UNWANTED = {
    "groove-outside-tail",
    "groove-sliver",
    "pin-narrower-than-chisel",
    "half-pin-thin",
    "tails-dont-fit",
    "tail-tips-meet",
}


@pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)
def test_offers_stand_up_to_the_boxs_own_checks(arrangement: Arrangement) -> None:
    """Each offer, put into the box, draws none of the findings that it promises to avoid."""
    offered = 0
    boxes = able(arrangement, 12)
    # Where no room beyond the least is aimed at, nothing but the least itself keeps it.
    boxes += [box.having({"customs.groove_margin_wanted": 0.1}) for box in boxes]
    for choices in boxes:
        told = set_out_round_grooves(choices)
        assert bool(told.problem) == (not told.offers)
        assert len(told.offers) <= 3
        for offer in told.offers:
            offered += 1
            made = plan(offer.choices)
            bad = {row.code for row in made.found} & UNWANTED
            assert not bad, (offer.sentence, bad)
            assert room_now(made.design) == pytest.approx(offer.room)
            assert offer.room >= choices.customs.groove_margin_least - 1e-6
            assert offer.sentence in told.sentence
        names = [(offer.name, offer.changes["corner.pin"]) for offer in told.offers]
        assert len(names) == len(set(names))
    assert offered


def _any_layout(choices: Choices) -> bool:
    """Tried blindly: even tails of any number between any half pins, each corner by itself."""
    d = design(choices)
    least = choices.customs.groove_margin_least
    thin = choices.rule.round(max(one.half_pin for one in needs(d)), direction="up")
    for one in needs(d):
        found = False
        for n in range(1, 4):
            for tenths in range(120):
                half = thin + tenths / 10
                edges, step = equal_tails(one.height, count=n, half_pin=half, pin=one.pin)
                if step <= one.pin:
                    continue
                room = one.room(edges)
                found = found or (room is not None and room >= least - 1e-9)
        if not found:
            return False
    return True


def test_where_nothing_is_offered_nothing_can_be() -> None:
    refused = offered = 0
    for arrangement in ARRANGEMENTS[:4]:
        for choices in able(arrangement, 10):
            for edge in (None, 3.0, 5.5, 6.5):
                box = choices if edge is None else choices.having({"groove.bottom_edge": edge})
                told = set_out_round_grooves(box)
                assert bool(told.offers) == _any_layout(box), told.problem
                refused += not told.offers
                offered += bool(told.offers)
    assert refused > 20
    assert offered > 20


def test_customs_that_leave_no_choice_are_borne() -> None:
    strict = postcard().having({"customs.tail_least": 16.0, "customs.tail_most": 16.0})
    assert set_out_round_grooves(strict).offers


def test_why_nothing_can_be_is_told_with_what_to_change() -> None:
    low = set_out_round_grooves(postcard().having({"groove.bottom_edge": 4.0}))
    assert not low.offers
    assert "the bottom groove lies 4 mm from the bottom edge" in low.problem
    assert "need 5.7 mm" in low.problem
    assert "raise groove.bottom_edge" in low.problem
    assert set_out_round_grooves(postcard().having({"groove.bottom_edge": 5.7})).offers
    shallow = set_out_round_grooves(lift_off().having({"groove.bottom_edge": 7.0})).problem
    assert shallow == ""
    blind = set_out_round_grooves(postcard().having({"corner.lap": 12.0}))
    assert "no tail to set out" in blind.problem


def test_a_layout_that_shows_its_groove_now_is_told_so() -> None:
    told = set_out_round_grooves(postcard().having({"corner.tails_back": 4}))
    assert not told.hidden_now
    assert told.sentence.startswith("As set out now, a groove shows.")
    assert all(not offer.is_now for offer in told.offers)


def test_offers_can_be_written_into_a_box_file(tmp_path: Path) -> None:
    target = tmp_path / "box.toml"
    target.write_text(example_path().read_text(encoding="utf-8"), encoding="utf-8")
    box = read_box(target)
    rows = [offer.changes for offer in set_out_round_grooves(box).offers]
    for changes in rows:
        change_box(target, written(changes, rule=box.rule))
        back = read_box(target)
        for key, value in changes.items():
            assert getattr(back.corner, key.partition(".")[2]) == value
