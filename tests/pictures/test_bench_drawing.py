"""Habits of the drawings: still frame, ghost, tints, hatching, lettering, dimension lines."""

import re
from contextlib import nullcontext

import pytest

from tests.boxes import ears, lift_off, postcard
from tests.pictures.designs import named, pictures, postcard_plan
from toolkit.pictures import (
    Drawn,
    Outline,
    corner_picture,
    for_paper,
    section_across,
    section_along,
)
from toolkit.pictures.kit.dimensions import Dimension, row
from toolkit.pictures.kit.lettering import Slot
from toolkit.pictures.kit.pens import (
    END,
    END_RING,
    FACE,
    FACE_GRAIN,
    FAR,
    FLOOR,
    GHOST,
    HEAVY,
    INK,
    PAPER,
    PENS,
    RED,
    THIN,
)
from toolkit.pictures.kit.picture import PX_PER_PT
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.strokes import ARROW, hatch
from toolkit.plan import plan


def _light(colour: str) -> float:
    """Relative luminance of a colour, W3C WCAG 2.2."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _contrast(one: str, other: str) -> float:
    high, low = sorted((_light(one), _light(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize(
    ("one", "other", "least"),
    [
        # Tints that lie side by side stay apart when printed in black and white.
        (PAPER, FACE, 1.2),
        (FACE, FLOOR, 1.2),
        (FLOOR, END, 1.2),
        (FACE, END, 1.5),
        (FAR, FACE, 1.12),
        (FAR, END, 1.7),
        (PAPER, FAR, 1.05),
        # Grain is faint, and yet there.
        (FACE, FACE_GRAIN, 1.15),
        (END, END_RING, 1.3),
        # Words and lines: 4.5 is WCAG's least for text.
        (INK, END, 4.5),
        (INK, FLOOR, 4.5),
        (RED, PAPER, 4.5),
        (RED, FACE, 4.5),
        (RED, FAR, 4.5),
        (GHOST, PAPER, 3.0),
    ],
)
def test_tints_differ_without_their_colour(one: str, other: str, least: float) -> None:
    assert _contrast(one, other) >= least


def test_two_line_weights_and_one_red() -> None:
    assert (HEAVY, THIN) == (1.4, 0.6)
    used = set(re.findall(r"#[0-9a-f]{6}", " ".join(p.svg for _, p in pictures(postcard_plan()))))
    known = {pen.colour for pen in PENS.values()} | {INK, PAPER, RED}
    assert used <= known
    # Red alone is far from grey; the others are wood, ink and paper.
    reds = [c for c in used if int(c[1:3], 16) > 2 * int(c[3:5], 16)]
    assert reds == [RED]


def _base(drawn: Drawn) -> tuple[float, float]:
    line = next(line for line in drawn.lines if line.pen == "baseline")
    return line.points[0]


@pytest.mark.parametrize("choices", [postcard(), ears(), lift_off()])
def test_the_frame_keeps_still_while_a_slider_moves(choices) -> None:  # type: ignore[no-untyped-def]
    moves = (
        [{"size.inside_height": 36.0 + 1.0 * i} for i in range(4)]
        + [{"corner.lap": 3.0 + 0.5 * i} for i in range(4)]
        + [{"thickness.side": 11.0 + 0.5 * i} for i in range(4)]
    )
    seen: dict[str, set[object]] = {}
    for move in moves:
        box = plan(choices.having(move))
        for name, picture in pictures(box):
            drawn = picture.drawn
            seen.setdefault(name, set()).add((drawn.width, drawn.height, drawn.scale))
            if "corner" in name:
                seen.setdefault(f"{name} baseline", set()).add(_base(drawn))
    assert {name: len(frames) for name, frames in seen.items()} == dict.fromkeys(seen, 1)


def test_a_ghost_keeps_its_frame_for_as_long_as_the_drawing_fits() -> None:
    start = postcard_plan()
    ghost = corner_picture(start).drawn
    alone = corner_picture(plan(postcard().having({"size.inside_height": 20.0}))).drawn
    over = corner_picture(plan(postcard().having({"size.inside_height": 20.0})), ghost=start).drawn
    assert alone.scale > ghost.scale == over.scale
    tall = corner_picture(plan(postcard().having({"size.inside_height": 120.0})), ghost=start).drawn
    assert tall.scale < ghost.scale


@pytest.mark.parametrize("draw", [corner_picture, section_across, section_along])
def test_the_ghost_is_the_earlier_state_thin_and_dotted(draw) -> None:  # type: ignore[no-untyped-def]
    before, now = postcard_plan(), plan(postcard().having({"thickness.side": 14.0}))
    alone, both = draw(now).drawn, draw(now, ghost=before).drawn
    assert not [line for line in alone.lines if line.pen == "ghost"]
    assert [line for line in both.lines if line.pen == "ghost"]
    assert PENS["ghost"].width == THIN and PENS["ghost"].dash
    assert any("dotted: before" in label.text for label in both.labels)
    of_before = draw(before).drawn
    pairs = {
        "ghost left side": "left side",
        "ghost back end": "back end",
        "ghost pin board 1": "pin board wood 1",
    }
    there = [name for name in pairs if both.named(name)]
    assert there
    for name in there:
        assert both.outline(name).points == of_before.outline(pairs[name]).points


def test_a_ghost_of_the_other_arrangement_is_left_out() -> None:
    drawn = corner_picture(plan(ears()), ghost=postcard_plan()).drawn
    assert not [line for line in drawn.lines if line.pen == "ghost"]


@pytest.mark.parametrize("name", list(named()))
def test_waste_is_hatched_and_only_waste(name: str) -> None:
    box = plan(named()[name])
    for what, picture in pictures(box, but="along"):
        lines = picture.drawn.lines
        cut_away = [Outline("", line.points) for line in lines if line.pen == "waste edge"]
        hatching = [line.points for line in lines if line.pen == "hatch"]
        assert bool(hatching) == bool(cut_away) == ("corner" in what), what
        for (x0, y0), (x1, y1) in hatching:
            x, y = (x0 + x1) / 2, (y0 + y1) / 2
            assert any(
                a - 0.1 <= x <= b + 0.1 and c - 0.1 <= y <= d + 0.1
                for a, b, c, d in (shape.bounds for shape in cut_away)
            )


def test_hatching_stays_within_a_slanted_shape() -> None:
    sheet = Sheet(scale=1.0)
    hatch(sheet, [(0.0, 0.0), (40.0, 10.0), (40.0, 30.0), (0.0, 40.0)])
    lines = sheet.picture("hatched").drawn.strokes
    assert len(lines) > 5
    for _, ((x0, y0), (x1, y1)) in lines:
        assert x1 - x0 == pytest.approx(y1 - y0)
        for x, y in ((x0, y0), (x1, y1)):
            assert -1e-6 <= x <= 40 + 1e-6
            assert x / 4 - 1e-6 <= y <= 40 - x / 4 + 1e-6


def _row(stops: tuple[float, ...], texts: tuple[str | None, ...]) -> Drawn:
    sheet = Sheet(scale=1.0)
    steps = [Dimension(text) for text in texts]
    row(sheet, stops, steps, at=120.0, starts=100.0, axis="up")
    return sheet.picture("a row").drawn


def test_arrows_stand_inside_where_there_is_room_and_outside_where_there_is_none() -> None:
    wide, narrow = _row((100.0, 150.0), ("50",)), _row((100.0, 106.0), ("6",))
    for drawn, inside in ((wide, True), (narrow, False)):
        heads = [points for pen, points in drawn.strokes if pen == "arrow"]
        assert len(heads) == 2
        for head in heads:
            tip, back = head[0][1], head[1][1]
            assert abs(back - tip) == pytest.approx(ARROW)
            stops = (100.0, 150.0 if inside else 106.0)
            assert tip in stops
            assert (min(stops) < back < max(stops)) is inside


def test_small_steps_in_a_row_are_parted_by_a_dot() -> None:
    drawn = _row((100.0, 105.0, 110.0), ("5", "5"))
    centres = [
        sum(y for _, y in points[:-1]) / (len(points) - 1)
        for pen, points in drawn.strokes
        if pen == "arrow" and len(points) > 4
    ]
    assert centres == pytest.approx([105.0, 105.0])


def test_extension_lines_begin_off_the_part_and_pass_the_dimension_line() -> None:
    drawn = _row((100.0, 150.0), ("50",))
    level = [p for pen, p in drawn.strokes if pen == "dimension" and p[0][1] == p[1][1]]
    assert len(level) == 2
    for (x0, _), (x1, _) in level:
        assert 100.0 < x0 < 103.0
        assert 120.0 < x1 < 124.0


def test_a_dimension_line_without_its_figure_is_not_drawn() -> None:
    sheet = Sheet(scale=1.0)
    kept = sheet.write("here", [Slot(50.0, 50.0)])
    lost = sheet.write("there", [Slot(-500.0, 50.0)], kind="remark")
    sheet.line("dimension", [(0.0, 0.0), (10.0, 0.0)], owners=(kept,))
    sheet.line("dimension", [(0.0, 5.0), (10.0, 5.0)], owners=(lost,))
    sheet.line("dimension", [(0.0, 9.0), (10.0, 9.0)], owners=(kept, lost))
    drawn = sheet.picture("two labels").drawn
    assert drawn.dropped == ("there",)
    assert [points[0][1] for _, points in drawn.strokes] == [0.0, 9.0]


@pytest.mark.parametrize("height", [8.0, 60.0])
def test_a_page_without_room_for_a_size_grows_above_or_below(height: float) -> None:
    sheet = Sheet(scale=1.0, height=70.0)
    for level in range(0, 70, 8):
        sheet.line("thin", [(0.0, float(level)), (sheet.width, float(level))])
    sheet.write("12", [Slot(200.0, height)], at=(200.0, height), kind="size")
    drawn = sheet.picture("a full page").drawn
    (label,) = drawn.labels
    lines = [points[0][1] for _, points in drawn.strokes if points[0][0] == 0.0]
    assert drawn.height > 70.0 * 4 / 3
    assert (label.y1 * 0.75 < min(lines)) is (height < 35.0)
    assert (label.y0 * 0.75 > max(lines)) is (height > 35.0)
    assert min(lines) >= 0.0 and label.y0 > 0.0 and label.y1 < drawn.height


# 540 units are 720 px on a screen; on paper the page is 508 pt wide.
@pytest.mark.parametrize(("edition", "least"), [(nullcontext, 9.0), (for_paper, 11 * 540 / 508)])
def test_letters_are_large_enough_and_upright(edition, least) -> None:  # type: ignore[no-untyped-def]
    with edition():
        words = [word for _, picture in pictures(postcard_plan()) for word in picture.marks.words]
    assert min(word.size for word in words) >= least
    assert not any(word.upright for word in words)


def test_tails_point_left_but_at_the_front_of_a_side() -> None:
    for choices, which, left in (
        (postcard(), "back", True),
        (postcard(), "front", True),
        (ears(), "back", True),
        (ears(), "front", False),
    ):
        drawn = corner_picture(plan(choices), which=which).drawn  # type: ignore[arg-type]
        base = _base(drawn)[0]
        wastes = [line for line in drawn.lines if line.pen == "waste edge"]
        tip = min(wastes[0].points, key=lambda p: abs(p[0] - base) < 1e-6)[0]
        assert (tip < base) is left


def test_words_keep_off_rooms_that_are_shut_to_their_rank() -> None:
    sheet, room = Sheet(scale=1.0, height=200.0), (100.0, 100.0, 200.0, 140.0)
    sheet.keep_off(1, room)
    sheet.write("part", [Slot(110.0, 115.0)], rank=0)
    sheet.write("flaw", [Slot(160.0, 115.0)], rank=1)
    part, flaw = sheet.picture("").drawn.labels
    left, low, right, high = (edge * PX_PER_PT for edge in room)
    assert left < part.x0 < part.x1 < right
    assert flaw.x0 > right or flaw.x1 < left or flaw.y0 > high or flaw.y1 < low
