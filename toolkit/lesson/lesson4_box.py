"""Lesson 4, the box: worked backwards from what goes in, and its corner with the grooves."""

from __future__ import annotations

from typing import Any, Self

from toolkit.box import Choices, all_contents, contents
from toolkit.lesson.controls import ChoiceControl, CountControl, LengthControl, NumberControl
from toolkit.lesson.scene import Scene, Shown, SliderState, Tried, numbers, size_row, worked_out
from toolkit.pictures import Picture, corner_picture, section_across
from toolkit.plan import Plan
from toolkit.results import Finding, SizedText, Table

# Room over a stack so that a finger gets under the last one: common practice, no source. [mm]
OVER = 2.0
TEN_CARDS = 3.6  # of stout card, as measured at the bench: common practice, no source [mm]
_GONE = dict.fromkeys(
    f"size.{key}"
    for key in ("outside_length", "outside_width", "outside_height", "contents", "ease")
)
FLAT = tuple(name for name, row in all_contents().items() if row.thickness is None)


def _cards_now(choices: Choices) -> float:
    """How many cards the box takes as it is, in tens."""
    inside = worked_out(choices).design.frame.inside_height.value
    return float(min(max(round((inside - OVER) / TEN_CARDS), 1) * 10, 300))


CONTENTS_CONTROLS = (
    NumberControl(("try.cards",), "how many", 10, 300, 10, start=_cards_now),
    LengthControl(("try.ten",), "ten of them stacked", 2.0, 8.0, start=TEN_CARDS),
    ChoiceControl(("try.what",), "of what", FLAT, start="A6 cards", slider=True),
    LengthControl(("try.ease",), "room at each end", 0.5, 10.0, "sizes", start=2.0),
)


def inside_of(tried: Tried) -> tuple[float, float, float]:
    """Length, width and height inside for what is to go in. [mm]"""
    thing, ease = contents(tried["try.what"]), tried["try.ease"]
    stack = tried["try.cards"] / 10 * tried["try.ten"]
    return thing.length + 2 * ease, thing.width + 2 * ease, stack + OVER


def box_for(choices: Choices, tried: Tried) -> Choices:
    """The same box round other contents. [mm]"""
    length, width, height = inside_of(tried)
    return choices.having(
        {
            "size.inside_length": length,
            "size.inside_width": width,
            "size.inside_height": height,
            **_GONE,
        }
    )


class Filled(Shown):
    """The box round what goes in."""

    def box(self) -> Choices:
        return box_for(self.choices, self.tried)

    def picture(self, before: Self | None) -> Picture:
        return section_across(self.plan, ghost=before.plan if before else None)

    def values(self) -> Table:
        """From contents to inside, from inside to walls, from walls to the rough list."""
        columns = ("what", "size", "where it comes from")
        rows = _rows(self.plan, self.tried)
        return numbers(rows, title="From the cards to the rough list", columns=columns)

    def verdict(self) -> tuple[Finding, ...]:
        return tuple(row for row in self.plan.findings if row.level != "good")


def _rows(plan: Plan, tried: Tried) -> list[tuple[str, str, str]]:
    rule, f, thing = plan.choices.rule, plan.design.frame, contents(tried["try.what"])
    ease, ten, many = tried["try.ease"], tried["try.ten"], tried["try.cards"]
    length, width, height = inside_of(tried)
    show = rule.exact
    rows = [
        (f"{axis} inside", rule.show(size), f"{show(own)} {thing.name} + 2 × {show(ease)} room")
        for axis, size, own in (("length", length, thing.length), ("width", width, thing.width))
    ]
    rows.append(
        (
            "height inside",
            rule.show(height),
            f"{many:g} ÷ 10 × {show(ten)} stack + {show(OVER)} to get a finger under",
        )
    )
    walls = (f.wall_height, f.side_length, f.back_length, f.front_height)
    rows += [size_row(size, rule) for size in walls]
    for part in plan.parts:
        saw, cut = part.by("rough", rule), part.by("cut", rule)
        words = SizedText.of("cut to ", cut, ", and what planing takes")
        rows.append((f"{part.count} {part.name}, rough", saw, words))
    return rows


def _more(at: SliderState) -> dict[str, Any]:
    """The inside sizes, which replace whatever the box file said of its size."""
    if at.tried == at.before:
        return {}
    rule = at.choices.rule
    sizes = zip(("length", "width", "height"), inside_of(at.tried), strict=True)
    return _GONE | {f"size.inside_{axis}": rule.exact(size) for axis, size in sizes}


CONTENTS = Scene("contents", CONTENTS_CONTROLS, Filled, height=440, more=_more)


CORNER_CONTROLS = (
    LengthControl(("groove.depth",), "groove depth", 1.0, 9.0),
    LengthControl(("groove.bottom_edge", "groove.top_edge"), "groove from the edge", 2.0, 20.0),
    LengthControl(("thickness.side", "thickness.end"), "wall thickness", 8.0, 20.0, "sizes"),
    CountControl(("corner.tails_back",), "tails at the back", 1, 6),
)


class GroovedCorner(Shown):
    """The back corner with its grooves."""

    def picture(self, before: Self | None) -> Picture:
        return corner_picture(self.plan, which="back", ghost=before.plan if before else None)

    def values(self) -> Table:
        rule, f, d = self.rule, self.plan.design.frame, self.plan.design
        lids = [size for lid in d.lids for size in (lid.length, lid.width)]
        sizes = (f.wall_height, f.front_height, *lids, d.bottom.length)
        rows = [size_row(size, rule) for size in (*sizes, f.back_length, f.tail_back)]
        depth = d.choices.groove.depth or 0.0
        behind = min(f.side_thickness.value, f.back_thickness.value) - depth
        rows.append(
            ("wood behind the groove", rule.show(behind), "thinnest wall less groove depth")
        )
        return numbers(rows, columns=("size", "value", "where it comes from"))

    def verdict(self) -> tuple[Finding, ...]:
        return self.plan.findings


CORNER = Scene("corner", CORNER_CONTROLS, GroovedCorner)
