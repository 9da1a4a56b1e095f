"""Lesson 4, worked backwards: from what goes in, to the inside, the walls and the rough list."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from toolkit.box import Choices, contents
from toolkit.box.contents import all_contents
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import section_across
from toolkit.plan import Plan
from toolkit.results import Table

# Room over a stack so that a finger gets under the last one: common practice, no source. [mm]
OVER = 2.0
TEN_CARDS = 3.6  # of stout card, as measured at the bench: common practice, no source [mm]
FLAT = tuple(name for name, row in all_contents().items() if row.thickness is None)


def _cards_now(choices: Choices) -> float:
    """How many cards the box takes as it is, in tens."""
    inside = worked_out(choices).design.frame.inside_height.value
    return float(min(max(round((inside - OVER) / TEN_CARDS), 1) * 10, 300))


CONTROLS = (
    NumberControl(("try.cards",), "how many", 10, 300, 10, "", _cards_now),
    LengthControl(("try.ten",), "ten of them stacked", 2.0, 8.0, start=lambda _: TEN_CARDS),
    ChoiceControl(
        ("try.what",),
        "of what",
        tuple((name, name) for name in FLAT),
        start=lambda _: "A6 cards",
        slider=True,
    ),
    LengthControl(("try.ease",), "room at each end", 0.5, 10.0, "sizes", start=lambda _: 2.0),
)


def inside_of(tried: dict[str, Any]) -> tuple[float, float, float]:
    """Length, width and height inside for what is to go in. [mm]"""
    thing, ease = contents(tried["try.what"]), tried["try.ease"]
    stack = tried["try.cards"] / 10 * tried["try.ten"]
    return thing.length + 2 * ease, thing.width + 2 * ease, stack + OVER


def box_for(choices: Choices, tried: dict[str, Any]) -> Choices:
    """The same box round other contents. [mm]"""
    length, width, height = inside_of(tried)
    return choices.having(
        {
            "size.inside_length": length,
            "size.inside_width": width,
            "size.inside_height": height,
            "size.outside_length": None,
            "size.outside_width": None,
            "size.outside_height": None,
            "size.contents": None,
            "size.ease": None,
        }
    )


def _by(sizes: Iterable[str]) -> str:
    return " × ".join(sizes)


def numbers(made: Plan, tried: dict[str, Any]) -> Table:
    """From contents to inside, from inside to walls, from walls to the rough list."""
    rule, f, thing = made.choices.rule, made.design.frame, contents(tried["try.what"])
    ease, ten, many = tried["try.ease"], tried["try.ten"], tried["try.cards"]
    length, width, height = inside_of(tried)
    show = rule.exact
    rows = [
        (
            f"{axis} inside",
            rule.show(size),
            f"{show(own)} {thing.name} + 2 × {show(ease)} room",
        )
        for axis, size, own in (("length", length, thing.length), ("width", width, thing.width))
    ]
    rows.append(
        (
            "height inside",
            rule.show(height),
            f"{many:g} ÷ 10 × {show(ten)} stack + {show(OVER)} to get a finger under",
        )
    )
    for size in (f.wall_height, f.side_length, f.back_length, f.front_height):
        name, _, working = size.sentence(rule).partition(" = ")
        rows.append((name, rule.show(size.value), working))
    for part in made.parts:
        saw = _by(
            rule.show(size.value, fineness="rough", direction="up", unit=False)
            for size in part.rough
        )
        cut = _by(rule.show(size.value, unit=False) for size in part.finished)
        words = f"finished {cut} {rule.units}, and what planing takes"
        rows.append((f"{part.count} {part.name}, rough", f"{saw} {rule.units}", words))
    return Table(
        "From the cards to the rough list",
        ("what", "size", "where it comes from"),
        tuple(rows),
        numeric=(1,),
    )


def _view(at: Moment) -> View:
    tried, before = dict(at.tried), dict(at.before)
    made = possible(box_for(at.choices, tried))
    ghost = None
    if at.moved:
        kept = worked_out(box_for(at.kept, before))
        ghost = kept if kept.design.exists else None
    found = tuple(row for row in made.findings if row.level != "good")
    return View(section_across(made, ghost=ghost), numbers(made, tried), found)


def _more(at: Moment) -> dict[str, Any]:
    """The inside sizes, which replace whatever the box file said of its size."""
    if dict(at.tried) == dict(at.before):
        return {}
    rule = at.choices.rule
    sizes = zip(("length", "width", "height"), inside_of(dict(at.tried)), strict=True)
    gone = ("outside_length", "outside_width", "outside_height", "contents", "ease")
    return {f"size.{key}": None for key in gone} | {
        f"size.inside_{axis}": rule.exact(size) for axis, size in sizes
    }


CONTENTS = Scene("contents", CONTROLS, _view, height=440, more=_more)
