"""Full-size sheets: true to scale as read back from the file, every line where the plan has it."""

import hashlib
import os
import re
import shutil
import subprocess
import sys
import warnings
from datetime import date
from functools import cache
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree as ET

import matplotlib as mpl
import numpy as np
import pytest

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from tests.pictures.designs import impossible, named, some
from tests.pictures.pdf_reading import Read, ReadPage, read_pdf
from toolkit.box import Choices
from toolkit.pictures import SheetPage, sheet_pages, sheets_pdf
from toolkit.pictures.sheets.marks import wrapped
from toolkit.plan import Plan, as_data, plan

ROOT = Path(__file__).parents[2]
DAY = date(2026, 11, 25)
SVG = "{http://www.w3.org/2000/svg}"
# Half a thousandth of a point is what the file rounds to; the promise is a tenth of a millimetre.
NEAR = 0.01
THROUGH = {"corner.joint": "through", "corner.lap": None}
BOXES: dict[str, Choices] = {
    "mm": postcard(),
    "in": inch_postcard(),
    "ears": ears(),
    "lift-off": lift_off(),
    "through": postcard().having(THROUGH),
    "through ears": ears().having(THROUGH),
    "unequal": postcard().having({"corner.tails_back": ((5.0, 21.0), (27.0, 35.0), (41.0, 59.0))}),
    "flush pins": postcard().having({"corner.proud": 0.0}),
    **{f"lot {i}": c for i, c in enumerate(some(12, seed=11))},
}
LONG = postcard().having({"size.inside_length": 420.0, "size.inside_width": 330.0})
Segment = tuple[float, float, float, float]


@cache
def _pages(name: str, paper: str = "a4") -> tuple[SheetPage, ...]:
    return sheet_pages(_plan(name), paper=paper, day=DAY)


@cache
def _plan(name: str) -> Plan:
    return plan(BOXES[name])


@cache
def _read(name: str, paper: str = "a4") -> list[ReadPage]:
    return read_pdf(sheets_pdf(_pages(name, paper)))


POSSIBLE = [name for name in BOXES if plan(BOXES[name]).design.exists]


# The paper and its bars.


@pytest.mark.parametrize(
    ("paper", "width", "height"), [("a4", 297.0, 210.0), ("letter", 279.4, 215.9)]
)
def test_pages_have_the_size_of_the_paper(paper: str, width: float, height: float) -> None:
    for page, read in zip(_pages("mm", paper), _read("mm", paper), strict=True):
        assert (page.width, page.height) == pytest.approx((width, height))
        assert (read.width, read.height) == pytest.approx((width, height), abs=NEAR)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(("name", "own"), [("mm", 100.0), ("in", 101.6), ("ears", 100.0)])
def test_check_bars_measure_what_they_say(name: str, own: float, paper: str) -> None:
    for read in _read(name, paper):
        foot = [line for line in read.lines if line.level and line.y0 < 16.0 and not line.dashed]
        bars = sorted((line for line in foot if line.long > 50.0), key=lambda line: line.long)
        assert [bar.long for bar in bars] == pytest.approx([100.0, 101.6], abs=NEAR)
        for bar, step in zip(bars, (10.0, 25.4), strict=True):
            ticks = {
                round(line.x0 - bar.x0, 3)
                for line in read.lines
                if line.upright and abs(min(line.y0, line.y1) - bar.y0) < NEAR
                if -NEAR < line.x0 - bar.x0 < bar.long + NEAR
            }
            wanted = [step * i for i in range(round(bar.long / step) + 1)]
            assert sorted(ticks) == pytest.approx(wanted, abs=NEAR)
        up = [line for line in read.lines if line.upright and line.x0 > read.width - 25.0]
        assert max(line.long for line in up) == pytest.approx(own, abs=NEAR)


@pytest.mark.parametrize("name", ["mm", "in"])
def test_each_bar_has_its_length_beside_it(name: str) -> None:
    for page in _pages(name):
        words = [word for word in page.words if word.text in ("100 mm", "4 in")]
        own = {"mm": "100 mm", "in": "4 in"}[name]
        assert sorted(word.text for word in words if not word.upright) == ["100 mm", "4 in"]
        assert [word.text for word in words if word.upright] == [own]
        for word in words:
            long = 100.0 if word.text == "100 mm" else 101.6
            if not word.upright:
                ends = [m.points for m in page.marks if m.pen == "bar" and len(m.points) == 2]
                bar = [p for p in ends if p[1][0] - p[0][0] == pytest.approx(long)]
                assert 0 < word.x - bar[0][1][0] < 5, word.text


# The walls, from the plan's own numbers.


# Which corner lies at a wall's left and at its right, seen from inside the box.
ENDS = {
    "left side": ("front", "back"),
    "right side": ("back", "front"),
    "back end": ("back", "back"),
    "front end": ("front", "front"),
}


def _cheeks(box: Plan, wall: str, corner: str) -> list[tuple[Segment, str]]:
    """Where cheeks of one end must be: u from the arris into the inside face, z up. [mm]

    From the plan as data alone: tails are narrow at the baseline and wide at the tip; on a pin
    board they leave sockets whose narrow side lies on the inside face.
    """
    data = as_data(box)
    parts = {part["name"]: part["finished"] for part in data["parts"]}
    part = {"left side": "side", "right side": "side"}.get(wall, wall.split()[0])
    thick = parts[part]["thickness"]
    on_ends = box.choices.corner.tails_on == "ends"
    rows = data["corners"][corner]["tails"]
    long = data["corners"][corner]["tail_length"]
    proud = box.design.choices.corner.proud
    found: list[tuple[Segment, str]] = []
    if on_ends != (part == "side"):
        # Tails that come out are sawn longer, and grow wider on their slope, to be planed flush.
        more = proud if box.choices.corner.joint == "through" else 0.0
        # The end of a side runs past the tails where it has an ear.
        lap = parts[corner]["thickness"] - long if part == "side" else 0.0
        ear = lap if corner == "front" and box.choices.lid.kind == "sliding" else 0.0
        for tail in rows:
            for edge in ("low", "high"):
                base, tip = tail[edge], tail[f"tip_{edge}"]
                tip += (tip - base) * more / long
                far = ear + long + more
                found.append(((far, base, ear, tip), "inside face"))
                found.append(((-thick - far, base, -thick - ear, tip), "outside face"))
                if ear == 0.0:
                    found.append(((0.0, tip, -thick, tip), "end grain"))
        return found
    board = parts["side" if not on_ends else corner]["thickness"] + proud
    for tail in rows:
        for edge in ("low", "high"):
            base, tip = tail[edge], tail[f"tip_{edge}"]
            found.append(((0.0, base, board, base), "inside face"))
            found.append(((0.0, base, -long, tip), "end grain"))
            if box.choices.corner.joint == "through":
                found.append(((-thick, tip, -thick - board, tip), "outside face"))
    return found


def _near(line: Read, wanted: Segment) -> bool:
    own = (line.x0, line.y0, line.x1, line.y1)
    back = (line.x1, line.y1, line.x0, line.y0)
    return any(
        all(abs(a - b) < NEAR for a, b in zip(one, wanted, strict=True)) for one in (own, back)
    )


def _solid(name: str) -> list[list[Read]]:
    """Lines without dashes: from the file, for boxes drawn by lot as they go into it."""
    if not name.startswith("lot"):
        return [[line for line in read.lines if not line.dashed] for read in _read(name)]
    return [
        [
            Read(*a, *b, 0.25, False)
            for mark in page.marks
            if mark.pen == "edge"
            for a, b in pairwise(mark.points)
        ]
        for page in _pages(name)
    ]


def _sound(box: Plan) -> bool:
    """Whether tails and pins have their full length, and the pin board is thicker than that."""
    corners = as_data(box)["corners"].values()
    d = box.design
    return all(
        piece["tip_high"] > piece["tip_low"]
        for corner in corners
        for piece in corner["tails"] + corner["pins"]
    ) and all(
        corner["tail_length"] <= board + 1e-9
        for corner, board in zip(corners, d.pin_board_thickness, strict=True)
    )


SOUND = [name for name in POSSIBLE if _sound(_plan(name))]


def test_enough_boxes_are_looked_at() -> None:
    assert len(SOUND) >= 14
    assert {"mm", "in", "ears", "through", "through ears"} <= set(SOUND)


@pytest.mark.parametrize("name", SOUND)
def test_tails_and_sockets_lie_where_the_plan_has_them(name: str) -> None:
    box = _plan(name)
    lengths = {row["name"]: row["cut"]["length"] for row in as_data(box)["parts"]}
    seen = set()
    for page, drawn in zip(_pages(name), _solid(name), strict=True):
        for piece in page.pieces:
            if piece.name not in ENDS:
                continue
            seen.add(piece.name)
            part = "side" if "side" in piece.name else piece.name.split()[0]
            for corner, right in zip(ENDS[piece.name], (False, True), strict=True):
                for (u0, z0, u1, z1), face in _cheeks(box, piece.name, corner):
                    x0, x1 = (lengths[part] - u0, lengths[part] - u1) if right else (u0, u1)
                    wanted = (piece.x + x0, piece.y + z0, piece.x + x1, piece.y + z1)
                    assert any(_near(line, wanted) for line in drawn), (piece.name, corner, face)
    if name in ("mm", "in", "ears"):
        assert seen == {"left side", "right side", "back end", "front end"}


@pytest.mark.parametrize("name", ["mm", "in", "ears", "through"])
def test_folds_lie_on_the_arrises_and_baselines_where_they_are_gauged(name: str) -> None:
    box = _plan(name)
    f = box.design.frame
    for page, read in zip(_pages(name), _read(name), strict=True):
        for piece in page.pieces:
            if piece.name not in ("left side", "right side"):
                continue
            dashed = {
                round(line.x0 - piece.x, 2)
                for line in read.lines
                if line.dashed and line.upright and piece.y - 1 < line.y0 < piece.y + 80
            }
            long, thick = f.side_cut.value, f.side_thickness.value
            folds = [0.0, long]
            if name in ("ears", "through"):
                folds += [-thick, long + thick]
            # Tail length on a tail board, the tail board's thickness and what stands proud on a
            # pin board.
            base = f.tail_back.value if name == "ears" else f.back_thickness.value + 0.2
            if name == "in":
                base = f.back_thickness.value + box.design.choices.corner.proud
            back = base if piece.name == "right side" else long - base
            for wanted in (*folds, back):
                assert any(abs(x - wanted) < 0.011 for x in dashed), (piece.name, wanted)


@pytest.mark.parametrize("name", ["mm", "ears"])
def test_grooves_lie_at_their_height_in_every_wall(name: str) -> None:
    f = _plan(name).design.frame
    assert f.lid_groove is not None
    for page, read in zip(_pages(name), _read(name), strict=True):
        for piece in page.pieces:
            if piece.name.startswith("section"):
                continue
            spans = [f.bottom_groove]
            if piece.name != "front end":
                spans.append(f.lid_groove)
            heights = sorted(
                round(line.y0 - piece.y, 2)
                for line in read.lines
                if line.level
                and not line.dashed
                and line.long > 100.0
                and -1.0 < line.y0 - piece.y < piece.window.high + 1.0
                and line.y0 > 20.0
            )
            edges = [0.0, piece.window.high]
            wanted = sorted([*edges, *(z for span in spans for z in (span.low, span.high))])
            assert heights == pytest.approx(wanted, abs=0.011)


def _of_piece(page: SheetPage, name: str, *, hatch: bool = False) -> list[tuple[str, Segment]]:
    """The lines of one piece in its own millimetres."""
    piece = next(row for row in page.pieces if row.name == name)
    w, found = piece.window, []
    for mark in page.marks:
        if mark.pen == "bar" or (mark.pen == "hatch") != hatch:
            continue
        for (x0, y0), (x1, y1) in pairwise(mark.points):
            a, b, c, d = x0 - piece.x, y0 - piece.y, x1 - piece.x, y1 - piece.y
            mid = (a + c) / 2, (b + d) / 2
            if w.left - 1e-6 <= mid[0] <= w.right + 1e-6 and -1e-6 <= mid[1] <= w.high + 4.0:
                found.append((mark.pen, (a, b, c, d)))
    return found


def _page_of(name: str, piece: str) -> SheetPage:
    return next(page for page in _pages(name) if piece in [row.name for row in page.pieces])


@pytest.mark.parametrize("name", ["mm", "in", "ears", "through"])
def test_the_left_side_is_the_right_side_mirrored(name: str) -> None:
    long = _plan(name).design.frame.side_cut.value

    def lines(piece: str, turned: bool) -> set[tuple[str, tuple[tuple[float, float], ...]]]:
        found = set()
        for pen, (x0, y0, x1, y1) in _of_piece(_page_of(name, piece), piece):
            xs = (long - x0, long - x1) if turned else (x0, x1)
            ends = sorted(
                (round(x, 3) + 0.0, round(y, 3)) for x, y in zip(xs, (y0, y1), strict=True)
            )
            found.add((pen, tuple(ends)))
        return found

    left, right = lines("left side", False), lines("right side", True)
    assert len(left) > 20
    assert left == right
    assert left != lines("right side", False)


@pytest.mark.parametrize("name", ["mm", "in", "ears", "through"])
def test_only_waste_is_hatched(name: str) -> None:
    """At the height of no tail, across the ends of every board, on whichever face."""
    box = _plan(name)
    for wall, corner in (("right side", "back"), ("back end", "back"), ("front end", "front")):
        tails = as_data(box)["corners"][corner]["tails"]
        page = _page_of(name, wall)
        thick = next(row for row in page.pieces if row.name == wall).window.left
        is_tails = (box.choices.corner.tails_on == "ends") != (wall == "right side")
        checked = 0
        for _, (x0, y0, x1, y1) in _of_piece(page, wall, hatch=True):
            for share in (0.25, 0.5, 0.75):
                x, z = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
                if not thick <= x <= 60.0:
                    continue
                checked += 1
                sure = [
                    t
                    for t in tails
                    if max(t["low"], t["tip_low"]) < z < min(t["high"], t["tip_high"])
                ]
                far = [
                    t
                    for t in tails
                    if min(t["low"], t["tip_low"]) < z < max(t["high"], t["tip_high"])
                ]
                if is_tails:
                    assert not sure, (wall, x, z)
                else:
                    assert far, (wall, x, z)
        assert checked > 20


# What is longer than the paper.


def test_a_long_wall_goes_over_pages_and_adds_up() -> None:
    pages = sheet_pages(plan(LONG), day=DAY)
    parts = [
        (page, piece)
        for page in pages
        for piece in page.pieces
        if piece.name.startswith("left side")
    ]
    assert [piece.name for _, piece in parts] == [
        "left side, part 1 of 2",
        "left side, part 2 of 2",
    ]
    (page, one), (other_page, two) = parts
    assert page is not other_page
    # 420 inside, two ends of 12, pins 0.2 proud at either end; the end grain of a side of 12 folds
    # over either end.
    assert one.window.left == pytest.approx(-12.0)
    assert two.window.right == pytest.approx(420.0 + 24.0 + 0.4 + 12.0)
    assert one.window.right - two.window.left == pytest.approx(20.0)
    matched = []
    for here, piece in parts:
        lines = [m.points for m in here.marks if m.pen == "match"]
        upright = [p for p in lines if p[0][0] == p[1][0] and p[0][1] < piece.y]
        matched.append({round(points[0][0] - piece.x, 6) for points in upright})
        assert [word.text for word in here.words].count("A") == 1
    assert matched[0] == matched[1] == {round((one.window.right + two.window.left) / 2, 6)}
    for z in (0.0, 7.0, 13.0, 51.0, 57.0, 64.0):
        reach = [
            (min(x0, x1), max(x0, x1))
            for here, piece in parts
            for pen, (x0, y0, x1, y1) in _of_piece(here, piece.name)
            if pen == "edge" and y0 == pytest.approx(z) and y1 == pytest.approx(z)
        ]
        far = max(reach, key=lambda row: row[1])[1] - min(reach)[0]
        ends = 468.4 if z in (0.0, 64.0) else 444.4
        # A groove comes out at the end grain, 4 mm deep, at either end.
        assert far == pytest.approx(ends if z in (0.0, 64.0) else ends + 8.0)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_wall_too_high_for_the_paper_goes_over_pages_both_ways(paper: str) -> None:
    box = plan(postcard().having({"size.inside_height": 210.0, "size.inside_length": 310.0}))
    pages = sheet_pages(box, paper=paper, day=DAY)
    windows = [p.window for page in pages for p in page.pieces if p.name.startswith("right side")]
    assert len(windows) == 4
    assert min(w.low for w in windows) == 0.0
    assert max(w.high for w in windows) == pytest.approx(box.design.frame.wall_height.value)
    assert max(w.right for w in windows) == pytest.approx(310.0 + 24.0 + 0.4 + 12.0)
    area = sum(w.width * w.height for w in windows)
    whole = (310.0 + 48.4) * box.design.frame.wall_height.value
    overlaps = 20.0 * ((310.0 + 48.4) + box.design.frame.wall_height.value) + 20.0 * 20.0
    assert area == pytest.approx(whole + overlaps)


# What is written.


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", ["mm", "in", "ears", "lift-off"])
def test_every_page_says_what_it_belongs_to(name: str, paper: str) -> None:
    box, pages = _plan(name), _pages(name, paper)
    for number, page in enumerate(pages, 1):
        text = " ".join(word.text for word in page.words)
        assert box.choices.title in text
        assert f"issue {box.fingerprint} of 2026-11-25 · page {number} of {len(pages)}" in text
        assert "Print at 100 %, “actual size”" in text
        assert "before you trust the print" in text
        for piece in page.pieces:
            assert piece.name in text
    cut_out = [w.text for page in pages for w in page.words if w.text.endswith("inside face")]
    assert len(cut_out) == 4


@pytest.mark.parametrize(
    ("piece", "left", "right"),
    [
        # Seen from inside, with the front of the box before one, its right-hand side lies left.
        ("front end", "← right side", "left side →"),
        ("back end", "← left side", "right side →"),
        ("right side", "← back end", "front end →"),
        ("left side", "← front end", "back end →"),
    ],
)
def test_each_wall_says_what_lies_at_its_ends(piece: str, left: str, right: str) -> None:
    page = _page_of("mm", piece)
    laid = next(row for row in page.pieces if row.name == piece)
    middle = laid.x + (laid.window.left + laid.window.right) / 2
    here = [w for w in page.words if laid.y < w.y < laid.y + laid.window.high and laid.x < w.x]
    assert [w.text for w in here if w.text[0] == "←" and w.x < middle] == [left]
    assert [w.text for w in here if w.text[-1] == "→" and w.x > middle] == [right]


def test_plugs_are_crossed_and_said() -> None:
    box = plan(postcard().having({"corner.tails_back": 5, "groove.ends": "plugged"}))
    said = [w.text for page in sheet_pages(box, day=DAY) for w in page.words]
    assert sum("Crossed: plugs." in text for text in said) == 2, "both sides, at the back"
    assert not any("Crossed" in w.text for page in _pages("mm") for w in page.words)


def test_no_measure_is_torn_in_two() -> None:
    for width in range(20, 90):
        lines = wrapped("lid 2 25/64 to 2 37/64 in up, 12.5 mm deep", width=float(width))
        assert " ".join(lines) == "lid 2 25/64 to 2 37/64 in up, 12.5 mm deep"
        for line in lines:
            assert not line.startswith(("25/64", "37/64", "in", "mm"))


def test_what_each_line_means_is_said_where_it_is_drawn() -> None:
    for name in ("mm", "ears"):
        for page in _pages(name):
            text = {word.text for word in page.words}
            pens = {mark.pen for mark in page.marks}
            assert ("waste" in text) == ("hatch" in pens)
            assert ("fold on the arris" in text) == ("fold" in pens)
            assert "match line" not in text
    text = {word.text for page in sheet_pages(plan(LONG), day=DAY) for word in page.words}
    assert "match line" in text


def _crossing(box: tuple[float, float, float, float], lines: np.ndarray) -> bool:  # type: ignore[type-arg]
    """Whether any line has a point inside a box, by cutting it at the box's edges."""
    start, end = np.zeros(len(lines)), np.ones(len(lines))
    for p, q, low, high in (
        (lines[:, 0], lines[:, 2], box[0], box[2]),
        (lines[:, 1], lines[:, 3], box[1], box[3]),
    ):
        run = np.where(p == q, 1.0, q - p)
        cuts = np.sort(np.array([(low - p) / run, (high - p) / run]), axis=0)
        level, within = p == q, (low < p) & (p < high)
        start = np.maximum(start, np.where(level, np.where(within, 0.0, 2.0), cuts[0]))
        end = np.minimum(end, np.where(level, 1.0, cuts[1]))
    return bool((end - start > 1e-6).any())


LETTERED = {**named(), **{f"lot {i}": c for i, c in enumerate(some(14, seed=5))}}


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_no_word_meets_another_or_a_line_or_leaves_the_page(paper: str) -> None:
    count = 0
    for name, choices in LETTERED.items():
        box = plan(choices)
        if not box.design.exists:
            continue
        for page in sheet_pages(box, paper=paper, day=DAY):
            count += 1
            boxes = [word.box for word in page.words]
            edges = np.array([(*a, *b) for mark in page.marks for a, b in pairwise(mark.points)])
            assert edges.min() > 5.0 and (edges[:, ::2] < page.width - 5.0).all(), name
            assert (edges[:, 1::2] < page.height - 5.0).all(), name
            for i, (x0, y0, x1, y1) in enumerate(boxes):
                what = (name, page.number, page.words[i].text)
                assert x0 > 5.0 and y0 > 5.0 - 0.3, what
                assert x1 < page.width - 5.0 and y1 < page.height - 5.0, what
                assert not _crossing(boxes[i], edges), what
                for other in boxes[i + 1 :]:
                    apart = x0 >= other[2] or other[0] >= x1 or y0 >= other[3] or other[1] >= y1
                    assert apart, what
    assert count > 90


def test_the_faces_are_named_whatever_the_box() -> None:
    for choices in LETTERED.values():
        box = plan(choices)
        if box.design.exists:
            assert not [text for page in sheet_pages(box, day=DAY) for text in page.dropped]


def test_a_box_that_wont_work_says_so_on_every_page() -> None:
    box = plan(postcard().having({"groove.depth": 12.0}))
    assert not box.works
    for page in sheet_pages(box, day=DAY):
        assert any("won't work as it is: don't cut" in word.text for word in page.words)
    for page in _pages("mm"):
        assert not any("won't work" in word.text for word in page.words)


@pytest.mark.parametrize("name", impossible())
def test_a_box_that_cannot_be_has_no_sheets(name: str) -> None:
    box = plan(impossible()[name])
    if box.design.exists:
        assert sheet_pages(box, day=DAY)
        return
    with pytest.raises(ValueError, match="no such box"):
        sheet_pages(box, day=DAY)


def test_paper() -> None:
    with pytest.raises(ValueError, match='type "a4" or "letter"'):
        sheet_pages(_plan("mm"), paper="a3")


# Sections.


def test_the_section_at_a_side_has_its_grooves_and_tongues() -> None:
    box = _plan("mm")
    page = _page_of("mm", "section at a side")
    lines = _of_piece(page, "section at a side")
    upright = {
        (round(x0, 3), *sorted((round(y0, 3), round(y1, 3))))
        for _, (x0, y0, x1, y1) in lines
        if abs(x0 - x1) < 1e-6
    }
    assert (8.0, 7.0, 13.0) in upright  # floor of the bottom groove: 12 less 4 deep
    assert (8.0, 51.0, 57.0) in upright
    # The bottom's edge stands 1 mm clear of that, its tongue resting on the groove's lower wall.
    assert box.design.bottom.tongue == pytest.approx(5.8)
    assert (9.0, 7.0, 12.8) in upright


# The files.


def test_svg_pages_are_in_millimetres_and_the_same_lines() -> None:
    for page in _pages("mm", "letter"):
        root = ET.fromstring(page.svg)
        assert root.get("width") == "279.4mm" and root.get("height") == "215.9mm"
        assert root.get("viewBox") == "0 0 279.4 215.9"
        assert root.get("role") == "img" and root.get("aria-label") == page.sentence
        read = [
            [tuple(map(float, corner.split())) for corner in line.split("L")]
            for path in root.iter(f"{SVG}path")
            for line in str(path.get("d")).split("M")[1:]
        ]
        # Rounded before they are put in order: two lines may begin within a hair of one another.
        drawn = sorted(
            [(round(x, 3), round(page.height - y, 3)) for x, y in mark.points]
            for mark in page.marks
        )
        assert len(read) == len(drawn)
        for one, other in zip(sorted(read), drawn, strict=True):
            assert np.allclose(one, other, atol=0.002)
        words = [text.text for text in root.iter(f"{SVG}text")]
        assert words == [word.text for word in page.words]


SHA = """
import hashlib
from datetime import date
from tests.boxes import first_postcard as postcard
from toolkit.pictures import sheet_pages, sheets_pdf
from toolkit.plan import plan
pages = sheet_pages(plan(postcard()), day=date(2026, 11, 25))
words = sheets_pdf(pages) + "".join(page.svg for page in pages).encode()
print(hashlib.sha256(words).hexdigest())
"""


def test_another_run_on_another_day_gives_the_same_bytes() -> None:
    elsewhere = subprocess.run(
        [sys.executable, "-c", SHA],
        capture_output=True,
        text=True,
        check=True,
        cwd=ROOT,
        env={
            **os.environ,
            "PYTHONHASHSEED": "2",
            "TZ": "Pacific/Auckland",
            "SOURCE_DATE_EPOCH": "1800000000",
        },
    ).stdout.strip()
    words = sheets_pdf(_pages("mm")) + "".join(page.svg for page in _pages("mm")).encode()
    assert hashlib.sha256(words).hexdigest() == elsewhere


def test_somebodys_own_settings_change_nothing_and_stay() -> None:
    first = sheets_pdf(_pages("mm"))
    theirs = {
        "savefig.bbox": "tight",
        "pdf.fonttype": 42,
        "pdf.compression": 0,
        "figure.dpi": 200.0,
        "savefig.dpi": 300.0,
        "font.family": ["serif"],
        "text.parse_math": True,
        "savefig.facecolor": "black",
        "lines.linewidth": 9.0,
        "path.sketch": (1, 100, 2),
    }
    with mpl.rc_context(theirs):
        assert sheets_pdf(_pages("mm")) == first
        assert mpl.rcParams["pdf.compression"] == 0


def test_the_file_asks_for_no_scaling() -> None:
    data = sheets_pdf(_pages("mm"))
    place = int(data[data.rindex(b"startxref") :].split()[1])
    table = data[place:].split(b"\n")
    root = re.search(rb"/Root (\d+) 0 R", data)
    assert root
    # The table of places decides which object counts.
    first = int(table[1].split()[0])
    offset = int(table[2 + int(root[1]) - first].split()[0])
    catalogue = data[offset : data.index(b"endobj", offset)]
    assert b"/PrintScaling /None" in catalogue
    assert b"/Pages" in catalogue


@pytest.mark.parametrize(
    "title", ["$x^2$ box", "шкатулка 🧰", "<b>&", "a\nb\tc", "תיבה", "x" * 300, ""]
)
def test_any_title_can_be_printed(title: str) -> None:
    box = plan(postcard().having({"title": title}))
    pages = sheet_pages(box, day=DAY)
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert len(read_pdf(sheets_pdf(pages))) == len(pages)
    for page in pages:
        assert ET.fromstring(page.svg) is not None
        assert max(word.box[2] for word in page.words) < page.width - 5.0


def test_the_words_can_be_searched(tmp_path: Path) -> None:
    if shutil.which("pdftotext") is None:
        pytest.skip("needs poppler-utils")
    file = tmp_path / "sheets.pdf"
    file.write_bytes(sheets_pdf(_pages("ears")))
    said = subprocess.run(
        ["pdftotext", "-layout", file, "-"], capture_output=True, text=True, check=True
    ).stdout
    pages = said.split("\f")[:-1]
    assert len(pages) == len(_pages("ears"))
    assert all(_plan("ears").fingerprint in page for page in pages)
