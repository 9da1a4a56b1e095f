"""Ways out of a mishap: sizes that follow, what is fixed at each stage, ranking, box-file keys."""

from dataclasses import replace

import pytest

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from tests.files.written import as_toml
from toolkit.box import Choices, written
from toolkit.files import box_from_text
from toolkit.files.editing import edited
from toolkit.plan import (
    WITH_LENGTH,
    WITHOUT,
    Mishap,
    Option,
    Plan,
    Rescue,
    Weights,
    meant_of,
    plan,
    rescue,
)

POSTCARD = plan(postcard())
SLIDING = ("lid_tight", "lid_play", "lid_rattle")


def ways(what: str, value: float | None = None, stage: str | None = None, **more) -> Rescue:  # type: ignore[no-untyped-def]
    made: Plan = more.pop("box", POSTCARD)
    return rescue(made, mishap=Mishap(what, value, stage=stage, **more))  # type: ignore[arg-type]


def way(found: Rescue, code: str) -> Option:
    return next(option for option in found.options if option.code == code)


def codes(found: Rescue) -> set[str]:
    return {option.code for option in found.options}


def size(option: Option, part: str, axis: str) -> float:
    return float(getattr(option.plan.part(part), axis).value)


def test_front_cut_short_before_the_tails_are_gauged() -> None:
    """126 − 0.8: three boxes close again, by hand: the inside 110 is 125.2 − 2 × 7.6."""
    found = ways("front_length", 125.2)
    shorter = way(found, "shorten-both")
    assert size(shorter, "back", "length") == size(shorter, "front", "length") == 125.2
    assert shorter.plan.design.frame.inside_width.value == pytest.approx(125.2 - 16)
    assert size(shorter, "lid", "width") == pytest.approx(116 - 0.8)
    tails = way(found, "tails").plan.design.frame
    assert tails.inside_width.value == pytest.approx(110)
    assert tails.tail_back.value == pytest.approx(7.6)
    assert tails.lap_back.value == pytest.approx(4.4)
    thin = way(found, "thin-sides").plan.design.frame
    assert thin.side_thickness.value == pytest.approx(11.6)
    assert thin.inside_width.value == pytest.approx(110)
    assert way(found, "new-part").plan == POSTCARD


def test_front_cut_short_when_the_tails_are_sawn() -> None:
    found = ways("front_length", 125.2, "jointed")
    assert codes(found) == {"shorten-both", "new-part"}
    first = way(found, "shorten-both")
    assert first.plan.design.frame.tail_back.value == 8
    assert first.plan.design.frame.inside_width.value == pytest.approx(109.2)
    assert "baselines on the back" in first.words
    # The gauge line is a fact from now on: a side planed thinner later loses lap, not tail.
    later = plan(first.plan.choices.having({"made.side_thickness": 11.4})).design.frame
    assert (later.tail_back.value, later.lap_back.value) == pytest.approx((8, 3.4))
    # With tails on the sides the ends carry the sockets.
    assert "sockets" in way(ways("front_length", 133.0, "jointed", box=plan(ears())),
                            "shorten-both").words  # fmt: skip


def test_a_wall_left_long_is_trimmed_or_the_box_grows() -> None:
    found = ways("front_length", 126.8)
    assert way(found, "trim").plan == POSTCARD
    assert way(found, "grow").plan.design.frame.inside_width.value == pytest.approx(110.8)
    assert "thin-sides" not in codes(found), "planed wood does not grow"


def test_side_came_out_thin_before_and_after_the_gauge() -> None:
    """Before gauging, tails 7.4 and ends 124.8; afterwards lap 3.4 and ends 126: by hand."""
    before = ways("side_thickness", 11.4)
    kept = way(before, "keep-lap")
    assert kept.plan.design.frame.tail_back.value == pytest.approx(7.4)
    assert size(kept, "front", "length") == pytest.approx(124.8)
    for stage in ("true", "jointed", "grooved", "fitted"):
        lost = way(ways("side_thickness", 11.4, stage), "keep-tails")
        assert lost.plan.design.frame.lap_back.value == pytest.approx(3.4)
        assert size(lost, "front", "length") == pytest.approx(126)
    assert "keep-lap" not in codes(ways("side_thickness", 11.4, "jointed"))
    gauged = plan(postcard().having({"made.tail_length": 8.0}))
    assert "keep-lap" not in codes(ways("side_thickness", 11.4, box=gauged))


def test_groove_wandered() -> None:
    found = ways("bottom_edge", 7.5)
    assert way(found, "follow").plan.design.frame.bottom_groove.low == 7.5
    assert way(found, "follow").plan.design.frame.wall_height.value == 64
    wide = way(found, "widen").plan.design
    assert (wide.frame.bottom_groove.low, wide.frame.bottom_groove.high) == (7.0, 13.5)
    down = way(ways("bottom_edge", 6.4, "grooved"), "widen").plan.design.frame.bottom_groove
    assert (down.low, down.high) == pytest.approx((6.4, 13.0))
    assert "follow" not in codes(ways("bottom_edge", 7.5, "grooved"))


def test_a_groove_too_deep_for_the_panel_ranks_last_where_it_drops_out() -> None:
    found = ways("groove_depth", 4.8)
    assert found.options[-1].code == "leave" and not found.options[-1].works
    assert size(way(found, "follow"), "bottom", "width") == pytest.approx(117.6)


def test_lap_broken_through() -> None:
    found = ways("lap_through")
    assert found.mishap.reached == "jointed"
    off = way(found, "laps-off").plan.design.frame
    assert off.side_thickness.value == off.tail_back.value == 8
    assert off.lap_back.value == 0
    assert off.inside_width.value == pytest.approx(110)
    longer = way(found, "through")
    assert size(longer, "back", "length") == pytest.approx(110 + 24)
    assert longer.costs.parts == 2
    through = plan(postcard().having({"corner.joint": "through", "corner.lap": None}))
    with pytest.raises(ValueError, match="half-blind"):
        ways("lap_through", box=through)


def test_joints_cut_wrong() -> None:
    deep = ways("socket_depth", 9.0)
    assert deep.meant == pytest.approx(8.1)
    assert "3 mm" in way(deep, "leave").words
    assert way(deep, "follow").plan.design.frame.tail_back.value == pytest.approx(8.9)
    assert "leave" not in codes(ways("socket_depth", 12.5)), "no lap is left there"
    assert codes(ways("socket_depth", 7.0)) == {"chop-on"}
    over = way(ways("baseline_over", 0.5), "move-baseline").plan.design.frame
    assert over.lap_back.value == pytest.approx(3.5)
    assert over.inside_width.value == pytest.approx(109)
    copied = way(ways("tail_wrong_side", 1.0, tail=2), "copy").plan.design.back
    assert [round(tail.width, 6) for tail in copied.tails] == [14, 13, 14]
    with pytest.raises(ValueError, match="2 tails"):
        ways("tail_wrong_side", 1.0, corner="front", tail=3)


def test_lid_and_square() -> None:
    loose = way(ways("lid_play", 3.0), "leave")
    assert size(loose, "lid", "width") == pytest.approx(115)
    assert not loose.works, "dry and pushed over, it leaves its groove"
    assert "116 mm" in way(ways("lid_tight"), "shiny").words
    assert "0.40°" in way(ways("diagonals", 1.5), "cramps").words
    with pytest.raises(ValueError, match="sliding lid"):
        ways("lid_tight", box=plan(lift_off()))


def cannot_be(what: str, choices: Choices, stage: str) -> bool:
    """Mishaps that belong to another stage, or to a lid that this box has not."""
    of_joints = what in ("lap_through", "baseline_over", "socket_depth", "tail_wrong_side")
    of_lids = what in ("lid_tight", "lid_play", "lid_rattle", "diagonals")
    return (
        (of_joints and stage in ("rough", "true"))
        or (of_lids and stage != "fitted")
        or (choices.lid.kind == "lift-off" and what in (*SLIDING, "top_edge"))
    )


EVERY = [*WITH_LENGTH, *WITHOUT]
BY_KIND = ("front_length", "side_length", "side_thickness", "top_edge", "lap_through", "lid_width")


@pytest.mark.parametrize(
    ("choices", "what"),
    [
        *((inch_postcard(), what) for what in EVERY),
        *((choices, what) for choices in (ears(), lift_off()) for what in BY_KIND),
    ],
)
def test_every_mishap_speaks_and_its_keys_make_the_same_box(choices: Choices, what: str) -> None:
    made = plan(choices)
    for stage, off in (("rough", 0.5), ("true", -0.5), ("jointed", 0.5), ("fitted", -0.5)):
        if cannot_be(what, choices, stage):
            with pytest.raises(ValueError, match=r"does not happen at|sliding lid"):
                ways(what, None if what in WITHOUT else 1.0, stage, box=made)
            continue
        value = None if what in WITHOUT else max((meant_of(made, what) or 1.0) + off, 0.1)
        found = ways(what, value, stage, box=made)
        assert found.saved and found.sentence(choices.rule)
        assert len(found.table(choices.rule).rows) == len(found.options)
        for option in found.options:
            assert option.words in option.sentence(choices.rule)
            assert option.source
            if not option.changes:
                assert option.plan == made
                continue
            keys = written(option.changes, rule=choices.rule)
            again = plan(box_from_text(edited(as_toml(choices), keys, name="box.toml")))
            for part in option.plan.parts:
                twin = again.part(part.name)
                for one, two in zip(part.finished, twin.finished, strict=True):
                    assert one.value == pytest.approx(two.value, abs=1e-5)


def test_weights_rank() -> None:
    cheap_wood = rescue(
        POSTCARD,
        mishap=Mishap("lid_play", 3.0),
        weights=Weights(part=0.0, looks=200.0),
    )
    assert cheap_wood.options[0].code == "new-part"
    assert ways("lid_play", 3.0).options[0].code == "strip"
    assert "200" in cheap_wood.weights.sentence and "customs" in cheap_wood.weights.sentence
    totals = [option.costs.total(cheap_wood.weights) for option in cheap_wood.options[:-1]]
    assert totals == sorted(totals)


@pytest.mark.parametrize(
    ("what", "value", "stage", "words"),
    [
        ("frnt_length", 1.0, None, "front_length"),
        ("front_length", None, None, "needs its length"),
        ("lap_through", 1.0, None, "without a length"),
        ("lap_through", None, "rough", "type jointed"),
        ("front_length", 1.0, "varnished", "type rough"),
        ("front_length", -1.0, None, "measure it again"),
    ],
)
def test_refusals_say_what_to_type(
    what: str, value: float | None, stage: str | None, words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        Mishap(what, value, stage=stage)  # type: ignore[arg-type]


def test_no_box_no_rescue() -> None:
    none = plan(postcard().having({"size.inside_length": None, "size.outside_length": 10.0}))
    with pytest.raises(ValueError, match="inside"):
        ways("front_length", 125.0, box=none)
    assert replace(Mishap("lid_tight"), stage="fitted").had("grooved")
