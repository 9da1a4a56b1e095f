"""The joint apart, its boards unfolded, its fit: what is drawn is what the plan says."""

import random
from contextlib import nullcontext
from functools import cache
from itertools import pairwise, product

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_postcard as postcard,
)
from tests.pictures.designs import impossible, named, some
from tests.pictures.test_layout_of_labels import _faults
from toolkit.box import Hand, SawnJoint, gaps, setting_out_lines
from toolkit.measures import Rule
from toolkit.pictures import (
    Picture,
    corner_picture,
    for_paper,
    gap_picture,
    joint_apart,
    unfolded_end,
)
from toolkit.pictures.exploded.hidden_lines import visible_faces
from toolkit.pictures.exploded.view import carried, look_at
from toolkit.pictures.joint.gap import COLUMNS, COUNT, heap
from toolkit.pictures.joint.names import posed
from toolkit.pictures.joint.net import MIDDLE
from toolkit.pictures.joint.words import levels
from toolkit.pictures.kit.picture import PX_PER_PT
from toolkit.plan import Plan, plan

BOXES = {**named(), **{f"lot {i}": c for i, c in enumerate(some(40, seed=11))}}
MM = Rule.millimetres()
CORNERS, BOARDS = ("back", "front"), ("tail board", "pin board")


@cache
def made(name: str) -> Plan:
    return plan(BOXES[name])


def words(picture: Picture) -> str:
    return " | ".join(label.text.replace("\n", " ") for label in picture.drawn.labels)


# The joint as solids


@pytest.mark.parametrize("name", ["postcard", "ears", "through", "through ears", "tall", "unequal"])
@pytest.mark.parametrize("which", CORNERS)
def test_the_tail_board_comes_off_along_the_drawing_and_no_other_way(name, which) -> None:
    p = posed(made(name).design, which)
    tails, pins = p.tail_board, p.pin_board

    def bite(x: float, y: float, z: float) -> float:
        return (tails.translate((x, y, z)) ^ pins).volume()

    assert bite(0, 0, 0) == pytest.approx(0, abs=1e-6)
    for share in (0.02, 0.3, 1.0):
        assert bite(p.off * share, 0, 0) == pytest.approx(0, abs=1e-6)
    for other in ((-0.5, 0, 0), (0, -0.5, 0), (0, 0.5, 0), (0, 0, 0.5), (0, 0, -0.5)):
        # Through tails may leave outwards only by pulling their cheeks through the pins.
        assert bite(*other) > 0.5, other


@pytest.mark.parametrize("name", ["postcard", "ears", "tall", "lot 3"])
def test_one_pose_for_every_arrangement(name) -> None:
    d = made(name).design
    for which, number in (("back", 0), ("front", 1)):
        p = posed(d, which)
        x0, y0, z0, x1, y1, _ = p.pin_board.bounding_box()
        assert (x1, y0, z0) == pytest.approx((0, 0, 0), abs=1e-6)
        assert y1 == pytest.approx(d.pin_board_thickness[number])
        assert x0 < -p.tail_thickness
        x0, y0, _, x1, y1, _ = p.tail_board.bounding_box()
        assert (x0, x1) == pytest.approx((-d.tail_board_thickness[number], 0), abs=1e-6)
        assert y0 < 0 < y1 <= p.pin_thickness + 1e-6


def test_taken_apart_the_boards_do_not_hide_one_another() -> None:
    together, apart = (joint_apart(plan(postcard()), open=open) for open in (0.0, 1.0))
    for name, least in (("socket", 1), ("lap", 1), ("half pin", 1)):
        assert words(apart).count(name) == least
    assert "socket" not in words(together) and "pin, end grain" in words(together)
    assert "comes off lengthwise, no other way" in words(apart)
    assert "comes off" not in words(together)


def test_the_low_front_shows_its_ear_or_its_rim() -> None:
    ear, rim = (joint_apart(plan(box), which="front") for box in (ears(), postcard()))
    assert "ear over the low front" in words(ear) and "rim over the low front" in words(rim)
    # 64 high walls, a front of 51 less its drop of 0.3.
    assert "an ear 13.3 mm high" in ear.sentence
    assert "runs on 13.3 mm higher, up to the rim" in rim.sentence
    assert "crosswise" in ear.sentence and "lengthwise" in rim.sentence


def test_the_page_keeps_still_while_the_joint_opens() -> None:
    drawn = [joint_apart(plan(postcard()), open=i / 5).drawn for i in range(6)]
    assert len({(one.width, one.height, one.scale) for one in drawn}) == 1
    pins = [[o.points for o in one.named("side")] for one in drawn]
    assert pins[0] != pins[-1]
    assert max(p[0] for o in pins[0] for p in o) == pytest.approx(
        max(p[0] for o in pins[-1] for p in o)
    )


def test_opening_too_far_and_unknown_corners_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match="give 0 for together, 1 for apart"):
        joint_apart(plan(postcard()), open=1.5)
    with pytest.raises(ValueError, match='type "back" or "front"'):
        joint_apart(plan(postcard()), which="left")
    with pytest.raises(ValueError, match='give "tail board" or "pin board"'):
        unfolded_end(plan(postcard()), board="lid")


@pytest.mark.parametrize("name", list(impossible()))
def test_a_box_that_cannot_be_is_a_sentence(name) -> None:
    box = plan(impossible()[name])
    for picture in (joint_apart(box), unfolded_end(box)):
        if not box.design.exists:
            assert "there is no joint to draw" in picture.sentence


@pytest.mark.parametrize("which", CORNERS)
def test_a_board_carried_along_looks_as_if_it_were_looked_at_there(which) -> None:
    p = posed(plan(postcard()).design, which)
    shift, still = np.array((7.0, -2.0, 3.0)), np.zeros(3)
    moved = carried(look_at([(p.tail_board, still), (p.pin_board, still)]), part=0, shift=shift)
    there = look_at([(p.tail_board, shift), (p.pin_board, still)])
    for one, other in zip(moved[0], there[0], strict=True):
        assert one.part == other.part
        assert one.offset == pytest.approx(other.offset)
        assert one.outline.bounds() == pytest.approx(other.outline.bounds())
        assert one.triangles == pytest.approx(other.triangles)
        assert one.outline.area() == pytest.approx(other.outline.area())
    assert moved[1].ends == pytest.approx(there[1].ends)
    seen = [[face.area() for face in visible_faces(faces)] for faces, _ in (moved, there)]
    assert seen[0] == pytest.approx(seen[1], abs=1e-6)


# Left-handed


def _mirrored(picture: Picture, other: Picture, pens: tuple[str, ...]) -> None:
    width = picture.drawn.width
    for pen in pens:
        one, two = (
            sorted(
                tuple(sorted((round(flip(x), 1), round(y, 1)) for x, y in line.points))
                for line in which.drawn.lines
                if line.pen == pen
            )
            for which, flip in ((picture, lambda x: x), (other, lambda x: width - x))
        )
        assert len(one) == len(two) > 0, pen
        for a, b in zip(one, two, strict=True):
            assert np.array(a) == pytest.approx(np.array(b), abs=0.25), pen


@pytest.mark.parametrize("box", [postcard(), ears()])
@pytest.mark.parametrize("which", CORNERS)
def test_a_left_handed_view_is_the_mirror_image_with_words_that_can_be_read(box, which) -> None:
    views = [joint_apart(plan(box), which=which, left_handed=left) for left in (False, True)]
    _mirrored(*views, ("visible", "baseline"))
    assert set(words(views[0]).split(" | ")) == set(words(views[1]).split(" | "))
    nets = [unfolded_end(plan(box), which=which, left_handed=left) for left in (False, True)]
    _mirrored(*nets, ("visible", "baseline", "knife"))
    assert "scale(-1" not in views[1].svg + nets[1].svg


@pytest.mark.parametrize("which", CORNERS)
def test_a_left_handed_corner_has_its_tails_on_the_other_hand(which) -> None:
    for box in (postcard(), ears(), inch_postcard()):
        right, left = (
            corner_picture(plan(box), which=which, left_handed=hand) for hand in (False, True)
        )
        ends = []
        for picture in (right, left):
            lines = picture.drawn.lines
            tips = next(line for line in lines if line.pen == "visible").points
            base = next(line for line in lines if line.pen == "baseline").points[0][0]
            ends.append(np.sign(np.mean([x for x, _ in tips]) - base))
        assert ends[0] == -ends[1]
        assert right.sentence == left.sentence
        assert right.drawn.outline("tail 1") == left.drawn.outline("tail 1")
        assert _faults(left.drawn) == []


# Unfolded ends


@pytest.mark.parametrize("name", ["postcard", "ears", "inches", "through", "tall", "skimmed"])
@pytest.mark.parametrize(("board", "which"), list(product(BOARDS, CORNERS)))
def test_every_gauged_line_lies_on_its_face_at_its_setting(name, board, which) -> None:
    p = made(name)
    picture = unfolded_end(p, board=board, which=which)
    scale = picture.drawn.scale
    on_ends = p.design.choices.corner.tails_on == "ends"
    is_side = on_ends != (board == "tail board")
    part = "side" if is_side else which
    thick = (
        p.design.tail_board_thickness if board == "tail board" else p.design.pin_board_thickness
    )[0 if which == "back" else 1]
    turn = -1 if is_side and which == "front" else 1
    middle = MIDDLE * PX_PER_PT
    inner, outer = (middle + way * turn * thick * scale / 2 for way in (1, -1))
    lines = [line for line in picture.drawn.lines if line.pen in ("baseline", "gauge")]
    upright = [(line.points[0][0], abs(line.points[1][1] - line.points[0][1])) for line in lines]
    wanted = [
        row
        for row in setting_out_lines(p.design)
        if row.part == part and row.end in (f"{which} end", "each end") and row.setting
    ]
    assert wanted
    for row in wanted:
        if row.gauged_from == "the bottom edge":
            continue
        at = row.setting.value * scale
        x = {
            "inside face": inner + turn * at,
            "outside face": outer - turn * at,
            "top edge": inner + turn * at,
            "bottom edge": inner + turn * at,
            "end grain": inner - turn * at,
        }[row.face]
        long = thick if row.face.endswith("edge") else row.high - row.low
        assert any(abs(a - x) < 0.2 and abs(b - long * scale) < 0.2 for a, b in upright), (
            row.face,
            row.name,
        )
    inside = [line for line in lines if line.points[0][1] == line.points[1][1]]
    assert bool(inside) == any(
        row.gauged_from == "the bottom edge"
        for row in setting_out_lines(p.design)
        if row.part == part and row.end in (f"{which} end", "each end", "along")
    )


def test_nothing_is_gauged_on_the_outside_of_a_half_blind_pin_board() -> None:
    blind, through = (
        unfolded_end(made(name), board="pin board") for name in ("postcard", "through")
    )
    assert len(blind.drawn.named("waste 1, outside")) == 0
    assert len(through.drawn.named("waste 1, outside")) == 1
    assert "Nothing is gauged outside" in blind.sentence
    assert "squared down both faces" in through.sentence


def test_waste_on_the_end_grain_is_what_the_corner_s_own_drawing_hatches() -> None:
    for name in ("postcard", "ears", "unequal", "inches"):
        for which in CORNERS:
            net = unfolded_end(made(name), which=which)
            set_out = corner_picture(made(name), which=which)
            sockets = [o.points for o in set_out.drawn.named("socket")]
            assert [o.points for o in net.drawn.named("waste") if "end" in o.name] == sockets


# Labels


@pytest.mark.parametrize("name", list(BOXES))
def test_labels_keep_apart_off_lines_and_on_the_page(name) -> None:
    box = made(name)
    lot = random.Random(name)
    for which in CORNERS:
        left = lot.random() < 0.5
        nets = []
        for edition in (nullcontext, for_paper):
            with edition():
                nets += [
                    unfolded_end(box, board=board, which=which, left_handed=left)
                    for board in BOARDS
                ]
        for picture in nets:
            assert _faults(picture.drawn) == []
        if box.design.exists:
            gauges = {row.name for row in setting_out_lines(box.design) if row.setting}
            said = " ".join(words(net) for net in nets)
            for gauge in gauges & {"gauge 1", "gauge 2", f"gauge 1, {which}"}:
                assert gauge in said
        opened = joint_apart(box, which=which, open=lot.choice((0.0, 0.3, 1.0)), left_handed=left)
        # Leaders may run over edges, words may not.
        edges = [line for line in opened.drawn.strokes if line[0] in ("visible", "thin")]
        assert _faults(_only(opened, edges)) == []


def _only(picture: Picture, strokes: list):  # type: ignore[type-arg, no-untyped-def]
    from dataclasses import replace

    return replace(picture.drawn, strokes=tuple(strokes))


@given(st.lists(st.floats(0, 400), min_size=1, max_size=9))
@settings(max_examples=80, deadline=None)
def test_a_column_keeps_its_order_and_its_gaps(wanted) -> None:
    rooms = [12.0 + 6 * (i % 3) for i in range(len(wanted))]
    found = levels(wanted, rooms=rooms)
    order = sorted(range(len(wanted)), key=lambda i: -wanted[i])
    for upper, lower in pairwise(order):
        assert found[upper] - found[lower] >= (rooms[upper] + rooms[lower]) / 2 - 1e-6
    if len(wanted) == 1:
        assert found == pytest.approx(wanted)


# The fit


USUAL = gaps(SawnJoint(8, 12, 7, 3), hand=Hand())


@pytest.mark.parametrize(
    "spread",
    [
        USUAL,
        gaps(SawnJoint(8, 12, 7, 3), hand=Hand(), keep_off=0.2),
        gaps(SawnJoint(8, 12, 7, 5), hand=Hand(0.1, 0.1, 0.02)),
        gaps(SawnJoint(12, 12, 6, 2), hand=Hand(2.0, 1.0, 0.3), face="knifed", copied=True),
    ],
)
def test_a_hundred_corners_stand_where_the_spread_puts_them(spread) -> None:
    laid = heap(spread)
    assert laid.closed + sum(laid.columns) == COUNT
    assert laid.closed == pytest.approx(COUNT * spread.at_most(0.0), abs=1)
    assert (laid.middle, laid.late) == pytest.approx((spread.median, spread.late), abs=0.004)
    step, seen = laid.span / COLUMNS, laid.closed
    for i, count in enumerate(laid.columns[:-1]):
        seen += count
        assert seen == pytest.approx(COUNT * spread.at_most((i + 1) * step), abs=1.5)


def test_blades_and_cheeks_are_drawn_to_scale() -> None:
    picture = gap_picture(USUAL, rule=MM)
    # Blade and gap are both in millimetres of the same scale.
    assert picture.drawn.outline("blade 0.3").width == pytest.approx(0.3)
    edges = [line.points for line in picture.drawn.lines if line.pen == "knife"]
    wide = sorted(max(x for x, _ in line) - min(x for x, _ in line) for line in edges)
    scale = picture.drawn.scale
    assert wide == pytest.approx([b * scale for b in (0.05, 0.1, 0.15, 0.2, 0.3, 0.5)], rel=1e-6)
    for share, gap in ((50, USUAL.median), (95, USUAL.late)):
        points = picture.drawn.outline(f"gap, {share} of 100").points
        assert points[1][0] - points[0][0] == pytest.approx(gap, abs=0.004)
        assert (points[1][0] - points[2][0]) * 7 == pytest.approx(8)


def test_fit_is_said_for_feeler_gauges() -> None:
    said = words(gap_picture(USUAL, rule=MM))
    # 5.4 % and 49.7 %: the table that the spread itself is checked against.
    assert "5 within 0.1 mm" in said and "50 within 0.3 mm" in said
    assert "feeler 0.3 mm stays out of 50" in said
    assert "read at the inside of the joint" in said
    inches = words(gap_picture(USUAL, rule=Rule.inches()))
    assert " mm" not in inches and "0.012 in" in inches


def test_a_ghost_is_drawn_on_the_same_scale_or_not_at_all() -> None:
    half = gaps(USUAL.joint, hand=Hand().times(0.5))
    both = gap_picture(half, rule=MM, ghost=USUAL)
    assert both.drawn.scale == gap_picture(USUAL, rule=MM).drawn.scale
    assert both.drawn.named("ghost") and "dotted: before" in words(both)
    tiny = gaps(USUAL.joint, hand=Hand().times(0.1))
    alone = gap_picture(tiny, rule=MM, ghost=gaps(USUAL.joint, hand=Hand().times(4)))
    assert not alone.drawn.named("ghost")


@pytest.mark.parametrize("lead", [0.0, 0.5, 2.0])
@pytest.mark.parametrize("offset", [0.0, 0.1, 0.3])
@pytest.mark.parametrize("edition", [nullcontext, for_paper])
def test_words_about_the_fit_keep_off_lines(lead, offset, edition) -> None:
    for off in (0.0, 0.2, 0.4):
        spread = gaps(USUAL.joint, hand=Hand(lead, 0.5, offset), keep_off=off)
        for rule in (MM, Rule.inches()):
            with edition():
                drawn = gap_picture(spread, rule=rule, ghost=USUAL).drawn
            assert _faults(drawn) == []
            assert all(y <= drawn.height for _, line in drawn.strokes for _, y in line)
