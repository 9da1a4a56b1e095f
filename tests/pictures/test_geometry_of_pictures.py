"""What is drawn has the plan's own sizes, in true proportion, and the sentence says them."""

import random

import pytest

from tests.pictures.designs import impossible, named, pictures, postcard_plan, some
from toolkit.box import Choices, Panel, Piece
from toolkit.pictures import Drawn, Outline, corner_picture, section_across, section_along
from toolkit.plan import Plan, plan

LOT = list(some(24, seed=3))
Which = str


def _inside(x: float, z: float, shape: Outline) -> bool:
    """Whether a point lies in a shape, by counting the sides it sees to its right."""
    odd = False
    points = shape.points
    for (x0, z0), (x1, z1) in zip(points, (*points[1:], points[0]), strict=True):
        if (z0 > z) != (z1 > z) and x < x0 + (z - z0) / (z1 - z0) * (x1 - x0):
            odd = not odd
    return odd


def _in_piece(piece: Piece, depth: float, z: float, length: float) -> bool:
    share = depth / length
    low = piece.low + share * (piece.tip_low - piece.low)
    high = piece.high + share * (piece.tip_high - piece.high)
    return low < z < high


def _corner(box: Plan, which: str) -> Drawn:
    return corner_picture(box, which=which).drawn  # type: ignore[arg-type]


@pytest.mark.parametrize("which", ["back", "front"])
@pytest.mark.parametrize("choices", LOT)
def test_tails_and_sockets_are_those_of_the_plan(choices: Choices, which: Which) -> None:
    box = plan(choices)
    corner = box.design.back if which == "back" else box.design.front
    drawn = _corner(box, which)
    if not corner.tails:
        assert not drawn.named("tail 1")
        return
    frame = box.design.frame
    length = (frame.tail_back if which == "back" else frame.tail_front).value
    board = box.design.pin_board_thickness[0 if which == "back" else 1]
    for i, tail in enumerate(corner.tails, 1):
        shape = drawn.outline(f"tail {i}")
        assert shape.width == pytest.approx(length)
        assert shape.height == pytest.approx(tail.tip_width)
        base = [z for x, z in shape.points if x == 0]
        assert base == pytest.approx([tail.low, tail.high])
        socket = drawn.outline(f"socket {i}")
        assert socket.width == pytest.approx(min(length, board))
        face = sorted(z for x, z in socket.points if x == 0)
        assert face == pytest.approx([tail.low, tail.high])
    assert drawn.outline("pin board").width == pytest.approx(board)


@pytest.mark.parametrize("which", ["back", "front"])
@pytest.mark.parametrize("choices", [*named().values(), *LOT[:15]])
def test_the_pin_board_is_wood_wherever_nothing_was_cut_away(
    choices: Choices, which: Which
) -> None:
    """Against what tails, grooves and holes say of points drawn by lot."""
    box = plan(choices)
    design, lot = box.design, random.Random(5)
    frame, depth = design.frame, design.choices.groove.depth
    assert depth is not None
    back = which == "back"
    corner = design.back if back else design.front
    length = (frame.tail_back if back else frame.tail_front).value
    on_ends = design.choices.corner.tails_on == "ends"
    if not corner.tails or min(pin.tip_width for pin in corner.pins) <= 0:
        pytest.skip("the tails cut into one another")
    if depth > length:
        pytest.skip("the groove cuts into the lap, which is drawn over the sockets in red")
    board = design.pin_board_thickness[0 if back else 1]
    height = (frame.wall_height if back or on_ends else frame.front_height).value
    spans = [
        (hole.low, hole.high)
        for hole in design.holes
        if hole.corner == which and hole.cause == "pin" and design.choices.groove.ends == "through"
    ]
    if not back and on_ends and frame.lid_groove is not None:
        spans.append((frame.lid_groove.low, frame.lid_groove.high))
    drawn = _corner(box, which)
    wood = drawn.named("pin board wood")
    # Within a hundredth of an edge a point may fall on either side of it.
    for _ in range(120):
        x, z = lot.uniform(0.02, board - 0.02), lot.uniform(0.02, height - 0.02)
        cut = x < length and any(_in_piece(tail, x, z, length) for tail in corner.tails)
        ploughed = x < depth and any(low < z < high for low, high in spans)
        near = any(abs(z - edge) < 0.02 for span in spans for edge in span)
        if near or abs(x - depth) < 0.02 or abs(x - length) < 0.02:
            continue
        assert any(_inside(x, z, shape) for shape in wood) == (not cut and not ploughed), (x, z)


@pytest.mark.parametrize("which", ["back", "front"])
@pytest.mark.parametrize("name", ["hole", "part hole", "through", "through ears"])
def test_a_hole_is_drawn_as_large_as_it_is(name: str, which: Which) -> None:
    box = plan(named()[name])
    drawn = _corner(box, which)
    holes = [hole for hole in box.design.holes if hole.corner == which]
    shapes = drawn.named("hole, ")
    assert len(shapes) == len(holes)
    for hole, shape in zip(holes, shapes, strict=True):
        assert shape.height == pytest.approx(hole.height)
        assert shape.width == pytest.approx(hole.depth)


@pytest.mark.parametrize("choices", [*named().values(), *LOT[:20]])
def test_sections_have_the_plans_sizes_and_clearances(choices: Choices) -> None:
    box = plan(choices)
    design = box.design
    frame, depth = design.frame, design.choices.groove.depth
    assert depth is not None
    drawn = section_across(box).drawn
    left = drawn.outline("left side")
    assert left.width == pytest.approx(frame.side_thickness.value)
    assert left.height == pytest.approx(frame.wall_height.value)
    floor, thick = frame.side_thickness.value - depth, frame.side_thickness.value
    ploughed = sorted({round(x, 6) for x, _ in left.points} - {0.0, round(thick, 6)})
    assert ploughed == pytest.approx([floor] if depth < thick else [])
    panels = [design.bottom, *([design.lid] if isinstance(design.lid, Panel) else [])]
    along = section_along(box).drawn
    for panel in panels:
        shape = drawn.outline(panel.name)
        assert shape.width == pytest.approx(panel.width.value)
        assert shape.height == pytest.approx(panel.thickness.value)
        assert along.outline(panel.name).width == pytest.approx(panel.length.value)
        # Between the edge of the panel and the floor of the groove, on the left as on the right.
        assert shape.bounds[0] - floor == pytest.approx(panel.across / 2)
        assert min(z for _, z in shape.points) == pytest.approx(panel.low)
    front = along.outline("front end")
    assert front.height == pytest.approx(frame.front_height.value)
    assert front.width == pytest.approx(frame.front_thickness.value)
    if isinstance(design.lid, Panel):
        assert along.outline("lid").bounds[1] == pytest.approx(frame.outside_length.value)


@pytest.mark.parametrize("choices", LOT[:12])
def test_both_directions_have_one_scale(choices: Choices) -> None:
    box = plan(choices)
    for what, picture in pictures(box):
        drawn = picture.drawn
        # The heavy outline of a part that is drawn whole, on the page against its millimetres.
        name = {"across": "left side", "along": "back end"}.get(what, "pin board wood 1")
        shape = drawn.outline(name)
        size = (shape.width * drawn.scale, shape.height * drawn.scale)
        pages = [
            Outline("", line.points)
            for line in drawn.lines
            if line.pen == "visible" and len(line.points) == len(shape.points) + 1
        ]
        assert any((page.width, page.height) == pytest.approx(size) for page in pages), what


@pytest.mark.parametrize("choices", [*named().values(), *LOT[:10]])
def test_the_sentence_says_the_numbers_that_are_shown(choices: Choices) -> None:
    box = plan(choices)
    show = box.choices.rule.show
    for which, corner in (("back", box.design.back), ("front", box.design.front)):
        picture = corner_picture(box, which=which)  # type: ignore[arg-type]
        if not corner.tails:
            assert f"{corner.asked} tails find no room" in picture.sentence
            continue
        words = picture.sentence
        assert f"{len(corner.tails)} tail" in words
        assert f"{show(corner.tail_length)} long" in words
        if corner.whole_pins:
            assert f"pins {show(max(corner.narrowest_pin, 0.0))}" in words
        for label in picture.drawn.labels:
            if label.text.startswith("lap ") and "\n" not in label.text:
                assert f"{label.text} {box.choices.rule.units}" in words
        for hole in box.design.holes:
            if hole.corner == which and box.design.choices.groove.ends == "through":
                size = f"{show(hole.height, unit=False)} × {show(hole.depth)}"
                assert f"hole of {size} in the {hole.face}" in words
    frame = box.design.frame
    across, along = section_across(box).sentence, section_along(box).sentence
    assert f"{show(frame.inside_width.value)} inside" in across
    assert f"{show(box.design.bottom.across / 2)} clear" in across
    assert f"{show(frame.inside_length.value)} inside" in along


@pytest.mark.parametrize("name", list(impossible()))
def test_a_box_that_cannot_be_is_a_sentence_not_a_traceback(name: str) -> None:
    for _, picture in pictures(plan(impossible()[name]), ghost=postcard_plan()):
        assert picture.sentence
        assert picture.svg.startswith("<svg")


def test_there_are_two_corners_to_draw() -> None:
    with pytest.raises(ValueError, match='no corner is called \'middle\': type "back" or "front"'):
        corner_picture(postcard_plan(), which="middle")  # type: ignore[arg-type]


def test_the_magnified_groove_says_by_how_much_and_is_that_much_larger() -> None:
    drawn = section_across(postcard_plan()).drawn
    words = next(label.text for label in drawn.labels if label.text.startswith("A: "))
    assert words == "A: lid groove × 3"
    edge = drawn.outline("detail lid").bounds[1]
    heavy = [line for line in drawn.lines if line.pen == "visible"]
    # The right-hand end of the lid's tongue, as tall on the page as 5.7 mm three times over.
    tall = [
        abs(line.points[1][1] - line.points[0][1])
        for line in heavy
        if len(line.points) == 2 and line.points[0][0] == line.points[1][0]
    ]
    assert any(size == pytest.approx(5.7 * drawn.scale * 3) for size in tall)
    assert edge == pytest.approx(125.0)
