"""Drawings for paper: larger letters, no idle room, and nothing lost or overlapping by it."""

import re
from itertools import combinations

import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.explore import lesson1, lesson2, lesson3, lesson4, lesson5
from toolkit.files import read_boards
from toolkit.pictures import Picture, board_picture, box_apart, corner_picture, for_paper
from toolkit.pictures.kit.lettering import extent
from toolkit.pictures.kit.picture import PX_PER_PT
from toolkit.pictures.kit.sheet import PAPER_TEXT, Sheet
from toolkit.plan import plan
from toolkit.stock import BoxLayouts, blanks_of
from toolkit.study import lessons_folder

WIDE = 180 / 25.4 * 72  # of the room for text on a sheet of A4 [pt]
STILLS = {
    "year": lesson1.year_still,
    "log": lesson1.log_still,
    "board": lesson1.board_still,
    "face": lesson2.face_still,
    "crosscut": lesson2.crosscut_still,
    "planes": lesson2.planes_still,
    "back corner": lesson3.corner_still,
    "front corner": lesson3.front_still,
    "joint": lesson3.joint_still,
    "lines": lesson3.lines_still,
    "saw": lesson3.saw_still,
    "corner": lesson4.still,
    "sections": lesson4.sections,
    "lid through the year": lesson4.year_still,
    "lid": lesson4.lid_still,
    "light": lesson5.light_still,
    "edge": lesson5.edge_still,
}


def _frame(svg: str) -> tuple[float, ...]:
    found = re.search(r'viewBox="([^"]*)"', svg)
    assert found
    return tuple(map(float, found[1].split()))


def _words(svg: str) -> list[tuple[str, tuple[float, float, float, float]]]:
    """Each line of words and the room that it takes: left, top, right, foot. [pt]"""
    rows = []
    for size, group in re.findall(r'<g font-size="([\d.]+)"[^>]*>(.*?)</g>', svg, re.DOTALL):
        for x, y, more, text in re.findall(r'<text x="([^"]*)" y="([^"]*)"([^>]*)>([^<]*)<', group):
            wide = extent(text.replace("&#x27;", "'"), size=float(size))[0]
            left = float(x) - wide * (0.5 if "middle" in more else 1.0 if "end" in more else 0.0)
            # From the top of a capital to the foot of a p, as far as letters have ink.
            under = 0.2 if set(text) & set("gjpqy,;()") else 0.02
            top, foot = float(y) - 0.74 * float(size), float(y) + under * float(size)
            rows.append((text, (left, top, left + wide, foot)))
    return rows


def _meet(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return all(one[i] < other[i + 2] and other[i] < one[i + 2] for i in (0, 1))


@pytest.fixture(scope="module")
def stills() -> dict[str, tuple[Picture, Picture]]:
    """Each still of the lessons: for a screen, for paper."""
    rows = {}
    for name, still in STILLS.items():
        screen = still()
        with for_paper():
            rows[name] = (screen.picture, still().picture)
    return rows


@pytest.mark.parametrize("name", STILLS)
def test_letters_of_a_still_are_11_points_on_paper(
    name: str, stills: dict[str, tuple[Picture, Picture]]
) -> None:
    screen, paper = stills[name]
    assert screen.sentence == paper.sentence
    _, _, wide, _ = _frame(paper.svg)
    sizes = [float(size) for size in re.findall(r'font-size="([\d.]+)"', paper.svg)]
    assert min(sizes) * WIDE / wide >= 11.0


@pytest.mark.parametrize("name", STILLS)
def test_what_is_cut_off_is_empty(name: str, stills: dict[str, tuple[Picture, Picture]]) -> None:
    _, paper = stills[name]
    left, top, wide, tall = _frame(paper.svg)
    words = _words(paper.svg)
    assert words
    for text, (x0, y0, x1, y1) in words:
        assert x0 >= left and x1 <= left + wide + 1, text
        assert y0 >= top and y1 <= top + tall, text
    if "<clipPath" in paper.svg:
        return  # lines may run on where they are not shown
    for way in re.findall(r' d="([^"]*)"', paper.svg):
        for y in re.findall(r"-?[\d.]+ (-?[\d.]+)", way):
            assert top <= float(y) <= top + tall


@pytest.mark.parametrize("name", STILLS)
def test_no_words_meet(name: str, stills: dict[str, tuple[Picture, Picture]]) -> None:
    for (a, first), (b, second) in combinations(_words(stills[name][1].svg), 2):
        assert not _meet(first, second), (a, b)


@pytest.mark.parametrize("box", [postcard, inch_postcard, ears, lift_off])
def test_words_of_boards_drawn_nearer_keep_off_one_another(box) -> None:  # type: ignore[no-untyped-def]
    made = plan(box())
    laid = BoxLayouts(blanks_of(made.parts), read_boards(lessons_folder() / "boards.toml")).laid()
    with for_paper():
        drawings = [
            board_picture(row.board, row, rule=made.choices.rule) for row in laid.boards
        ] + [box_apart(made), corner_picture(made, which="back")]
    for drawing in drawings:
        for (a, first), (b, second) in combinations(_words(drawing.svg), 2):
            assert not _meet(first, second), (a, b)


def test_outside_nothing_changes() -> None:
    made = plan(postcard())
    before = corner_picture(made, which="back")
    with for_paper():
        paper = corner_picture(made, which="back")
    assert paper.svg != before.svg
    assert corner_picture(made, which="back").svg == before.svg
    with pytest.raises(RuntimeError), for_paper():
        raise RuntimeError
    assert corner_picture(made, which="back").svg == before.svg


def test_idle_room_goes() -> None:
    made = plan(postcard())
    with for_paper():
        paper = corner_picture(made, which="back").drawn
    assert paper.height < corner_picture(made, which="back").drawn.height - 10
    assert min(label.y0 for label in paper.labels) < 10 * PX_PER_PT


def test_every_sheet_is_lettered_for_its_edition() -> None:
    with for_paper():
        assert Sheet(scale=1.0).text == Sheet(scale=1.0, text=PAPER_TEXT).text == PAPER_TEXT
    assert Sheet(scale=1.0).text < PAPER_TEXT
