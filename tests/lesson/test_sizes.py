"""A size is one number wherever it stands: in the handout, the lessons and the class's pages."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from tests.boxes import inch_postcard, postcard
from tests.classroom.classes import write
from toolkit import explore
from toolkit.box import Choices, gauge_settings
from toolkit.classroom.contents import wall
from toolkit.classroom.wood_contents import pages
from toolkit.document import Block, Section, TableBlock
from toolkit.files import read_class
from toolkit.handout.page import on_paper
from toolkit.handout.sections import in_order_of_use
from toolkit.lesson import lesson
from toolkit.plan import Plan, plan
from toolkit.results import AXES, TaggedSize
from toolkit.stock import Board

BOARD = Board("own board", "black cherry", 2400.0, 160.0, 18.0)
# Student 3's side 1 is a side.
_ONE_OF_MANY = re.compile(r"^(student|spare) \d+: | \d+$")


def handout(box: Plan) -> Iterable[Section]:
    return in_order_of_use(box, words="british", lessons=(), boards=[BOARD], paper="a4")


def lessons(box: Plan) -> Iterator[Section]:
    found, _ = on_paper(box, numbers=None, told=lambda _: None)
    assert len(found) == 5
    yield from found
    scene = lesson(1).scenes["board"](lambda: (BOARD,))  # type: ignore[operator]
    yield Section.of("scene", "Board", "", TableBlock(scene.view(box.choices).numbers))


def class_folder(box: Plan, folder: Path) -> Iterator[Section]:
    """What the class's wood and wall say where three students and the spares make one box."""
    taught = replace(read_class(write(folder)), box=box.choices)
    plans = {student.number: box for student in taught.students}
    for _, sections in (*pages(taught, plans, spare=box), wall(taught, plans)):
        yield from sections


def tagged(pages: Iterable[Section]) -> dict[str, list[TaggedSize]]:
    """The sizes in some pages by what they measure."""
    found: dict[str, list[TaggedSize]] = {}
    blocks: Iterator[Block] = (block for page in pages for block in page.blocks)
    for size in (size for block in blocks for size in block.sizes):
        tag = f"{_ONE_OF_MANY.sub('', size.part)}, {size.kind}"
        found.setdefault(tag, []).append(size)
    return found


def asked(box: Plan) -> dict[str, float]:
    """Cut and rough sizes of every part, and what the tools are set to. [mm]

    The sides are cut longer than they are finished, and longer only.
    """
    sizes = {
        f"{part.name}, {kind} {axis}": size.value
        for part in box.parts
        for kind, three in (("finished", part.cut), ("rough", part.rough))
        for axis, size in zip(AXES, three, strict=True)
    }
    sizes["side, cut length"] = sizes.pop("side, finished length")
    frame, c, d = box.design.frame, box.design.choices, box.design
    assert c.groove.bottom_edge is not None and c.groove.top_edge is not None
    assert d.back.step is not None and d.front.step is not None
    return sizes | {
        "gauge 1, tail length, setting": frame.tail_back.value,
        "gauge 2, tail-board thickness, setting": gauge_settings(d).board_back.value,
        "front end, rip line, setting": frame.front_height.value,
        "plough, iron, setting": c.groove.width,
        "plough, depth, setting": c.groove.depth,
        "plough fence, bottom grooves, setting": c.groove.bottom_edge,
        "plough fence, lid grooves, setting": c.groove.top_edge,
        "dividers, back corners, setting": d.back.step,
        "dividers, front corners, setting": d.front.step,
        "lid, clearance across": d.upper_panel.across,
    }


@pytest.mark.parametrize("choices", [postcard(), inch_postcard()], ids=["mm", "in"])
def test_a_size_is_one_number_on_every_page(choices: Choices, tmp_path: Path) -> None:
    box, rule = plan(choices), choices.rule
    places = {
        "handout": tagged(handout(box)),
        "lessons": tagged(lessons(box)),
        "class": tagged(class_folder(box, tmp_path)),
    }
    wanted = asked(box)
    for tag in wanted.keys() - {"lid, clearance across"}:
        assert tag in places["handout"], tag
    rough = {f"{part.name}, rough {axis}" for part in box.parts for axis in AXES}
    assert rough <= places["lessons"].keys() and rough <= places["class"].keys()
    several = {
        (place, tag, str(size), size.value)
        for place, found in places.items()
        for tag, sizes in found.items()
        for size in sizes
        if tag in wanted and size.value != pytest.approx(wanted[tag], abs=1e-6)
    }
    assert not several
    written: dict[str, set[str]] = {}
    for found in places.values():
        for tag, sizes in found.items():
            written.setdefault(tag, set()).update(
                str(size).removesuffix(f" {rule.units}") for size in sizes
            )
    assert not {tag: texts for tag, texts in written.items() if len(texts) > 1}


@pytest.mark.parametrize("choices", [postcard(), inch_postcard()], ids=["mm", "in"])
def test_rough_sizes_and_saw_cuts_lie_on_marks(choices: Choices) -> None:
    """A saw follows marks: 5 mm and for thickness 1 mm, 1/8 in and 1/16 in; cuts half of that."""
    box, rule = plan(choices), choices.rule
    for part in box.parts:
        for axis, size in zip(AXES, part.rough, strict=True):
            assert size.value == rule.sawn(size.value, axis=axis), (part.name, axis)
            assert size.value >= dict(zip(AXES, part.finished, strict=True))[axis].value
    cuts = [
        size
        for tag, sizes in tagged(handout(box)).items()
        for size in sizes
        if tag.startswith("cut ")
    ]
    assert len(cuts) >= 8
    half = rule.mark("rough") / 2
    assert all(abs(cut.value / half - round(cut.value / half)) < 1e-6 for cut in cuts)


def test_a_size_is_written_as_it_measures() -> None:
    """A sentence holds each of its sizes as a piece of its own words."""
    with_sizes = [explore.lesson2.carry(), explore.lesson3.carry(), explore.lesson4.carry()]
    for said in with_sizes:
        assert said.sizes
        assert all(size in said.text for size in said.sizes)
