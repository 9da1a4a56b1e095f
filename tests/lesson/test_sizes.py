"""Sizes know their part and kind wherever they stand, in the handout and in the lessons."""

from collections.abc import Iterable, Iterator
from math import isclose

from tests.boxes import postcard
from toolkit import explore
from toolkit.box import gauge_settings
from toolkit.document import Block, Section
from toolkit.handout.page import on_paper
from toolkit.handout.sections import in_order_of_use
from toolkit.plan import Plan, plan
from toolkit.results import AXES, TaggedSize


def tagged(blocks: Iterable[Block]) -> dict[str, list[TaggedSize]]:
    """The sizes in some blocks by what they measure."""
    found: dict[str, list[TaggedSize]] = {}
    for block in blocks:
        for size in block.sizes:
            found.setdefault(size.tag, []).append(size)
    return found


def blocks_of(pages: Iterable[Section]) -> Iterator[Block]:
    for page in pages:
        yield from page.blocks


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
    frame, groove = box.design.frame, box.design.choices.groove
    assert groove.bottom_edge is not None and box.design.back.step is not None
    return sizes | {
        "gauge 1, tail length, setting": frame.tail_back.value,
        "gauge 2, tail-board thickness, setting": gauge_settings(box.design).board_back.value,
        "front end, rip line, setting": frame.front_height.value,
        "plough fence, bottom grooves, setting": groove.bottom_edge,
        "dividers, back corners, setting": box.design.back.step,
    }


def test_every_size_of_the_box_stands_in_the_handout_by_its_tag() -> None:
    box = plan(postcard())
    pages = in_order_of_use(box, words="british", lessons=(), boards=(), paper="a4")
    found = tagged(blocks_of(pages))
    for tag, value in asked(box).items():
        assert tag in found, tag
        assert all(isclose(size.value, value, abs_tol=1e-6) for size in found[tag]), tag


def test_the_lessons_say_the_same_sizes_by_the_same_tags() -> None:
    box = plan(postcard())
    lessons, _ = on_paper(box, numbers=None, told=lambda _: None)
    assert len(lessons) == 5
    found = tagged(block for lesson in lessons for block in lesson.blocks)
    wanted = asked(box)
    for tag in (
        "lid, finished width",
        "side, finished thickness",
        "side, rough width",
        "gauge 1, tail length, setting",
        "gauge 2, tail-board thickness, setting",
        "plough fence, bottom grooves, setting",
        "dividers, back corners, setting",
    ):
        assert tag in found, tag
    # Both blanks of "lid and bottom by stage" are as large as the larger one asks for.
    other = {f"{panel}, rough {axis}" for panel in ("lid", "bottom") for axis in AXES}
    for tag in (found.keys() & wanted.keys()) - other:
        assert all(isclose(size.value, wanted[tag], abs_tol=1e-6) for size in found[tag]), tag


def test_a_size_is_written_as_it_measures() -> None:
    """A sentence holds each of its sizes as a piece of its own words."""
    with_sizes = [explore.lesson2.carry(), explore.lesson3.carry(), explore.lesson4.carry()]
    for said in with_sizes:
        assert said.sizes
        assert all(size in said.text for size in said.sizes)
