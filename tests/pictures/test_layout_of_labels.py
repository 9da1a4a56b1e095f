"""No label meets another, lies on a line, or leaves the page; no size and no name is left out."""

import os
from collections import Counter
from collections.abc import Iterator
from functools import cache, partial
from itertools import pairwise

import numpy as np
import pytest
from matplotlib.font_manager import FontProperties
from matplotlib.textpath import TextPath
from numpy.typing import NDArray

from tests.pictures.designs import impossible, named, overlap, pictures, some
from toolkit.box import Panel
from toolkit.pictures import (
    Drawn,
    LabelBox,
    Picture,
    box_apart,
    for_paper,
    joint_apart,
    lid_picture,
    unfolded_end,
    usually_for_phones,
)
from toolkit.pictures.kit import lettering
from toolkit.pictures.kit.lettering import extent
from toolkit.pictures.kit.pens import PENS
from toolkit.pictures.kit.sheet import MOST_LABELS, TEXT
from toolkit.plan import Plan, plan
from toolkit.shape import Which

# WORKBOOK_MANY_BOXES=1 draws three hundred.
COUNT = 300 if os.environ.get("WORKBOOK_MANY_BOXES") else 20
LOTS = {f"lot {i}": c for i, c in enumerate(some(COUNT, seed=7))}
BOXES = {**named(), **impossible(), **LOTS}


def _inside_length(box: LabelBox, lines: NDArray[np.float64]) -> NDArray[np.float64]:
    """How much of each line lies inside a box, by cutting it at the edges in turn. [px]"""
    start, end = np.zeros(len(lines)), np.ones(len(lines))
    for p0, p1, low, high in (
        (lines[:, 0], lines[:, 2], box.x0, box.x1),
        (lines[:, 1], lines[:, 3], box.y0, box.y1),
    ):
        run = np.where(p0 == p1, 1.0, p1 - p0)
        cuts = np.sort(np.array([(low - p0) / run, (high - p0) / run]), axis=0)
        level, within = p0 == p1, (low < p0) & (p0 < high)
        start = np.maximum(start, np.where(level, np.where(within, 0.0, 2.0), cuts[0]))
        end = np.minimum(end, np.where(level, 1.0, cuts[1]))
    length = np.hypot(lines[:, 2] - lines[:, 0], lines[:, 3] - lines[:, 1])
    inside: NDArray[np.float64] = np.maximum(end - start, 0.0) * length
    return inside


def _faults(drawn: Drawn) -> list[str]:
    found = []
    labels = drawn.labels
    pieces = [
        (*a, *b) for line in drawn.lines if PENS[line.pen].blocks for a, b in pairwise(line.points)
    ]
    lines = np.array(pieces, dtype=np.float64)
    for i, label in enumerate(labels):
        if label.x0 < 0 or label.y0 < 0 or label.x1 > drawn.width or label.y1 > drawn.height:
            found.append(f"{label.text!r} leaves the page")
        for other in labels[i + 1 :]:
            if overlap(label, other):
                found.append(f"{label.text!r} lies on {other.text!r}")
        if len(lines) and _inside_length(label, lines).max() > 0.01:
            found.append(f"{label.text!r} lies on a line")
    return found


@cache
def _drawn(name: str) -> dict[str, Picture]:
    return dict(pictures(plan(BOXES[name])))


@pytest.mark.parametrize("name", list(BOXES))
def test_labels_keep_apart_off_lines_and_on_the_page(name: str) -> None:
    for what, picture in _drawn(name).items():
        assert _faults(picture.drawn) == [], what
        remarks = [label for label in picture.drawn.labels if label.kind == "remark"]
        assert not remarks or len(picture.drawn.labels) <= MOST_LABELS


def _corner_sizes(box: Plan, which: Which) -> Iterator[str]:
    """Every size that a corner must show: of its joint, of its boards, of the grooves in them."""
    f, c, show = box.design.frame, box.design.choices, partial(box.choices.rule.show, unit=False)
    back, on_ends = which == "back", c.corner.tails_on == "ends"
    corner = box.design.back if back else box.design.front
    low_front = not back and f.lid_groove is not None
    tails, pins = corner.tails, corner.pins
    yield show(f.tail_back.value if back else f.tail_front.value)
    yield f"half pin {show(tails[0].low)}"
    yield f"tail {show(tails[0].width)}"
    if len(pins) > 2:
        yield f"pin {show(pins[1].width)}"
    if c.corner.joint != "through":
        yield f"lap {show(f.lap_back.value if back else f.lap_front.value)}"
    yield f"groove {show(c.groove.depth)}"
    yield show(box.design.pin_board_thickness[0 if back else 1])
    high = (f.front_height if low_front and on_ends else f.wall_height).value
    yield show(high)
    stops = [0.0, f.bottom_groove.low, f.bottom_groove.high]
    if f.lid_groove is not None and not (low_front and on_ends):
        yield show(f.lid_groove.low - f.bottom_groove.high)
        stops += [f.lid_groove.high]
    yield show(stops[1])
    yield show(f.bottom_groove.high - f.bottom_groove.low)
    yield show(high - stops[-1])


def _section_sizes(box: Plan, way: str) -> Iterator[str]:
    """Every size that a section must show: inside and out, walls, panels, the groove magnified."""
    d, show = box.design, partial(box.choices.rule.show, unit=False)
    f, panels = d.frame, [row for row in (d.bottom, d.lid) if isinstance(row, Panel)]
    if way == "along":
        yield from (f"inside {show(f.inside_length.value)}", show(f.outside_length.value))
        yield from (show(f.back_thickness.value), show(f.front_thickness.value))
        yield from (show(f.wall_height.value), show(f.front_height.value))
        yield f"bottom {show(d.bottom.length.value)} × {show(d.bottom.thickness.value)}"
        if len(panels) == 2:
            yield f"lid {show(d.lid.length.value)}"
        return
    yield from (f"inside {show(f.inside_width.value)}", show(f.outside_width.value))
    yield from (show(f.side_thickness.value), show(f.inside_height.value))
    for panel in panels:
        yield f"{panel.name} {show(panel.width.value)} × {show(panel.thickness.value)}"
    yield f"depth {show(d.choices.groove.depth)}"
    yield f"wall {show(f.side_thickness.value - d.choices.groove.depth)}"
    if f.lid_groove is not None:
        yield f"rim {show(f.wall_height.value - f.lid_groove.high)}"


@pytest.mark.parametrize("name", [*named(), *LOTS])
def test_no_size_and_no_name_is_ever_missing(name: str) -> None:
    box = plan(BOXES[name])
    drawings = _drawn(name)
    for what, names in NAMES.items():
        labels = drawings[what].drawn.labels
        if not box.design.exists:
            continue
        which: Which = "back" if what == "back corner" else "front"
        sizes = _corner_sizes(box, which) if "corner" in what else _section_sizes(box, what)
        there = Counter(label.text for label in labels)
        assert not Counter(sizes) - there, what
        words = {label.text.replace("\n", " ") for label in labels}
        assert not {part for part in names if not any(part in word for word in words)}, what


@pytest.mark.parametrize("name", [*named(), *LOTS])
def test_every_other_drawing_names_all_that_it_means_to(name: str) -> None:
    box = plan(BOXES[name])
    if not box.design.exists:
        return
    lid = box.design.lid
    drawn = [box_apart(box), box_apart(box, open=0.0), joint_apart(box), unfolded_end(box)]
    drawn.append(unfolded_end(box, board="tail board", which="front"))
    if isinstance(lid, Panel):
        drawn += [lid_picture(box, out=lid.length.value * share) for share in (0.0, 0.6)]
    for picture in drawn:
        assert not picture.drawn.dropped, picture.sentence
        assert not [row for row in _faults(picture.drawn) if "a line" not in row]


@pytest.mark.parametrize("name", list(named()))
def test_large_letters_and_a_ghost_keep_the_same_rules(name: str) -> None:
    box, before = plan(BOXES[name]), plan(BOXES["postcard"])
    with for_paper():
        for what, picture in pictures(box, ghost=before):
            assert _faults(picture.drawn) == [], what


@pytest.mark.parametrize("name", list(named()))
def test_a_phone_has_larger_letters_by_the_same_rules(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(lettering, "_usual", lettering.SCREEN)
    usually_for_phones()
    for what, picture in pictures(plan(BOXES[name])):
        assert _faults(picture.drawn) == [], what
        assert picture.drawn.text * 390 >= 11 * picture.drawn.width


def test_the_check_itself_sees_a_label_on_a_line() -> None:
    label = LabelBox("12", 10.0, 10.0, 30.0, 20.0)
    through, beside, corner, upright = (
        (0.0, 15.0, 40.0, 15.0),
        (0.0, 25.0, 40.0, 25.0),
        (0.0, 5.0, 20.0, 15.0),
        (12.0, 0.0, 12.0, 40.0),
    )
    inside = _inside_length(label, np.array([through, beside, corner, upright]))
    assert inside == pytest.approx([20.0, 0.0, 125**0.5, 10.0])


NAMES = {
    "back corner": ("back end", "side", "baseline", "waste"),
    "front corner": ("front end", "side", "baseline", "waste"),
    "across": ("back end", "bottom", "lid"),
    "along": ("back end", "front end", "side", "bottom", "lid"),
}
SAID = {
    "hole": ("back corner", "hole outside"),
    "part hole": ("back corner", "hole outside"),
    "through": ("back corner", "groove shows"),
    "through ears": ("front corner", "groove shows"),
    "thin lap": ("back corner", "too thin"),
    "thick lap": ("back corner", "thick"),
    "tips meet": ("back corner", "tips meet"),
    "short grain": ("back corner", "short grain"),
    "sliver": ("back corner", "sliver"),
    "deep groove": ("back corner", "cuts into"),
    "no tails": ("back corner", "find\nno room"),
    "tight": ("across", "lid swells"),
    "drops out": ("across", "lid, dry"),
    "proud": ("across", "above the rim"),
    "flat": ("across", "does not enter"),
    "front too high": ("along", "cannot pass"),
    "front too low": ("along", "a gap of"),
    "lid short": ("along", "in the back groove"),
}


@pytest.mark.parametrize("name", list(SAID))
def test_what_is_wrong_is_said_and_marked_where_it_is(name: str) -> None:
    what, words = SAID[name]
    picture = _drawn(name)[what]
    assert any(words in label.text for label in picture.drawn.labels)
    if name != "no tails":
        assert any(line.pen == "wrong" for line in picture.drawn.lines)


@pytest.mark.parametrize("name", list(BOXES))
def test_words_about_holes_always_find_a_place(name: str) -> None:
    design = plan(BOXES[name]).design
    for which in ("back", "front"):
        holes = [hole for hole in design.holes if hole.corner == which]
        if design.choices.groove.ends != "through":
            holes = []
        words = [label.text for label in _drawn(name)[f"{which} corner"].drawn.labels]
        said = [text for text in words if text.startswith(("hole outside", "groove shows"))]
        assert len(said) == len(holes)


def test_the_right_box_has_nothing_red_but_its_baseline() -> None:
    for picture in _drawn("postcard").values():
        assert not any(line.pen.startswith("wrong") for line in picture.drawn.lines)


@pytest.mark.parametrize("text", ["3 21/32", "half pin 5", "back end (tail board), inside face"])
def test_the_room_words_take_is_that_of_their_letters(text: str) -> None:
    # Against the outlines that another part of the drawing library makes; these leave out the
    # white before the first letter and after the last, at most a seventh of the size.
    outline = TextPath((0, 0), text, size=TEXT, prop=FontProperties(family=["DejaVu Sans"]))
    ink = outline.get_extents()
    width, low, high = extent(text, size=TEXT)
    assert ink.width <= width <= ink.width + 2 * TEXT / 7
    assert high == pytest.approx(ink.y1, abs=0.05)
    assert low == pytest.approx(ink.y0, abs=0.05)
