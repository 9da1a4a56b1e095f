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
    parts_of,
    plan,
    rescue,
    stages_of,
)

POSTCARD = plan(postcard())


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
    assert found.options[-1].code == "leave" and found.options[-1].strains
    assert not way(ways("groove_depth", 6.0), "leave").works
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
    with pytest.raises(ValueError, match="a lapped joint"):
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
    assert way(ways("lid_play", 3.0), "leave").strains, "0.1 mm of hold, dry and pushed over"
    loose = way(ways("lid_play", 3.2), "leave")
    assert size(loose, "lid", "width") == pytest.approx(114.8)
    assert not loose.works, "dry and pushed over, it leaves its groove"
    assert "116 mm" in way(ways("lid_tight"), "shiny").words
    assert "0.40°" in way(ways("diagonals", 1.5, "gluing"), "cramps").words
    with pytest.raises(ValueError, match="sliding lid"):
        ways("lid_tight", box=plan(lift_off()))


THROUGH = {"corner.joint": "through", "corner.lap": None}
KINDS = {
    "inches": inch_postcard(),
    "tails on sides": ears(),
    "lift-off": lift_off(),
    "tray": postcard().having({"lid.kind": "none"}),
    "through": postcard().having(THROUGH),
    "through, inches, tails on sides": inch_postcard().having(
        {**THROUGH, "corner.tails_on": "sides"}
    ),
}
NOT_HERE = ("sliding lid", "has no lid", "has none", "no laps there")


@pytest.mark.parametrize("kind", KINDS)
def test_every_mishap_speaks_and_its_keys_make_a_box_that_stands(kind: str) -> None:
    """Each at every third stage, so that two kinds meet each; what a box has not is refused."""
    choices, third = KINDS[kind], list(KINDS).index(kind) % 3
    made, told, refused = plan(choices), 0, []
    for number, what in enumerate((*WITH_LENGTH, *WITHOUT)):
        # One too small at one stage, the next too large, so that all are met in turn.
        for turn, stage in enumerate(stages_of(what)[third::3], number):
            part = ("", *parts_of(what))[turn % (1 + len(parts_of(what)))]
            try:
                meant = meant_of(made, what) or 1.0
                value = None if what in WITHOUT else max(meant + (0.5, -0.5)[turn % 2], 0.1)
                found = ways(what, value, stage, box=made, part=part)
            except ValueError as error:
                refused.append(str(error))
                continue
            told += 1
            assert found.options and found.sentence(choices.rule)
            assert found.saved or stage in ("gluing", "glued"), (what, stage)
            assert len(found.table(choices.rule).rows) == len(found.options)
            for option in found.options:
                assert option.source and option.lines(choices.rule)[-1].startswith("Costs")
                if option.changes:
                    stands(option, choices)
                else:
                    assert option.plan == made
    assert told > 30
    assert [said for said in refused if not any(words in said for words in NOT_HERE)] == []


def stands(option: Option, choices: Choices) -> None:
    """What is written into the box's file makes that very box."""
    keys = written(option.changes, rule=choices.rule)
    again = plan(box_from_text(edited(as_toml(choices), keys, name="box.toml")))
    assert again.works or not option.works
    for part in option.plan.parts:
        twin = again.part(part.name)
        for one, two in zip(part.finished, twin.finished, strict=True):
            assert one.value == pytest.approx(two.value, abs=1e-5)


def test_what_exists_bounds_the_ways_out() -> None:
    """By hand: what can still be sawn, glued or made anew when the work has come so far."""
    assert codes(ways("diagonals", 1.5, "fitted")) == {"pairs"}
    assert codes(ways("diagonals", 1.5, "gluing")) == {"cramps"}
    assert codes(ways("diagonals", 1.5, "glued")) == {"follow", "reglue"}
    for what in ("lap_through", "half_pin_split", "side_thickness", "tear_out", "front_width"):
        value = None if what in WITHOUT else 11.0
        assert not codes(ways(what, value, "glued")) & {"new-part", "through", "pin-block"}
    assert "new-part" in codes(ways("lid_width", 115.0, "glued"))
    for what, value in (("front_length", 125.0), ("groove_depth", 4.5), ("bottom_width", 115.0)):
        with pytest.raises(ValueError, match="nothing can be changed of it any more"):
            ways(what, value, "glued")
    # A box that is shortened while its panels are planed cuts them down too.
    cut = way(ways("front_length", 125.2, "fitted"), "shorten-both")
    assert cut.works and size(cut, "bottom", "width") == pytest.approx(115.2)
    assert "move-baseline" not in codes(ways("baseline_over", 0.5, "fitted"))
    assert "tear-inside" not in codes(ways("tear_out", 0.4, "grooved", part="back end"))


def test_one_of_a_pair() -> None:
    """12 − 0.6 − 8: the lap of the one side is 3.4; only to match it does the box file change."""
    one = ways("side_thickness", 11.4, "jointed", part="left side")
    assert "left side" in one.sentence(POSTCARD.choices.rule).lower()
    left = way(one, "leave")
    assert "left side alone loses 0.6 mm" in left.words and "is 3.4 mm there" in left.words
    assert not left.changes and left.plan == POSTCARD
    assert size(way(one, "match"), "side", "thickness") == 11.4
    assert way(one, "new-part").costs.parts == 1
    assert way(ways("side_thickness", 11.4, "jointed"), "new-part").costs.parts == 2
    # What is said of the side is said though the file cannot have it.
    thin = way(ways("side_thickness", 9.0, "jointed", part="right side"), "leave")
    assert any("lap" in row.sentence for row in thin.news("care", "wont_work"))
    short = ways("side_length", 175.0, part="right side")
    assert "Shorten the other side" in way(short, "shorten-both").words
    assert codes(ways("side_length", 175.0)) == {"leave-both", "new-part"}
    with pytest.raises(ValueError, match="without a part"):
        ways("front_length", 125.0, part="left side")


def test_a_lap_lost_is_patched_first_and_planed_away_last() -> None:
    """By hand: 12 − 4 = 8; three holes of 6 × 4 a side; the box 134 − 2 × 4 = 126 with both."""
    found = ways("lap_through", part="left side")
    assert [option.code for option in found.options[:2]] == ["chip", "patch"]
    one, both = (option for option in found.options if option.code == "laps-off")
    assert "8 mm" in one.words and "4 mm narrower" in one.words
    assert "6 mm × 4 mm holes, 3 to be plugged" in one.words and "ends" in one.words
    assert one.works and both.works and not one.changes
    assert both.changes["groove.ends"] == "plugged"
    assert both.plan.design.frame.outside_width.value == pytest.approx(126)
    assert both.plan.design.frame.inside_width.value == pytest.approx(110)
    with pytest.raises(ValueError, match="type back end or front end"):
        ways("lap_through", box=plan(ears()), part="left side")
    stopped = plan(postcard().having({"groove.ends": "stopped"}))
    assert "holes" not in way(ways("lap_through", box=stopped), "laps-off").words


def test_by_its_size() -> None:
    """Each size of a gap, of tear-out and of a cup has its own ways."""
    assert codes(ways("gap_beside_tail", 0.1)) == {"gap-leave"}
    assert codes(ways("gap_beside_tail", 0.3)) == {"gap-shaving"}
    assert codes(ways("gap_beside_tail", 0.31)) == {"gap-wedge"}
    assert codes(ways("tear_out", 0.1)) == {"tear-fine"}
    deep = ways("tear_out", 0.4, "true", part="left side")
    assert {"tear-patch", "tear-plane", "tear-inside", "new-part"} <= codes(deep)
    assert size(way(deep, "tear-plane"), "side", "thickness") == pytest.approx(11.6)
    flat = way(ways("lid_cupped", 0.5), "cup-flat")
    assert size(flat, "lid", "thickness") == pytest.approx(8.5)
    assert "cup-leave" not in codes(ways("lid_cupped", 0.5))
    assert "cup-leave" in codes(ways("lid_cupped", 0.1))


def test_a_corner_cut_anew_makes_the_box_smaller() -> None:
    """Tails of 8 sawn off the ends: 126 − 8; sockets as wide as an end is thick off the sides."""
    narrow = way(ways("corner_swapped", part="back end"), "shorter")
    assert size(narrow, "front", "length") == pytest.approx(118)
    short = way(ways("corner_swapped", part="left side"), "shorter")
    assert size(short, "side", "length") == pytest.approx(164)


def test_a_thick_board_resawn_gives_one_and_a_panel() -> None:
    """25 − 1.5 − (12 + 2) − 2 = 7.5: a panel; 22 leaves 4.5, no panel; 29.5 a second end of 12."""
    panel = way(ways("back_thickness", 25.0, "rough"), "resaw").words
    assert "7.5 mm" in panel and "a panel of that thickness, and no second" in panel
    assert "second one" in way(ways("back_thickness", 29.5, "rough"), "resaw").words
    assert "resaw" not in codes(ways("back_thickness", 22.0, "rough"))
    assert "resaw" not in codes(ways("back_thickness", 25.0, "true"))
    # Twice as thick as meant is never left so, of one side or of both.
    for part in ("", "left side"):
        thick = ways("side_thickness", 25.0, "rough", part=part)
        assert codes(thick) == {"resaw", "new-part", "plane-on"} and thick.options[0].works
    assert way(thick, "plane-on").costs.minutes == 130


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
