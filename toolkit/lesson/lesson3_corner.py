"""Lesson 3, the corner: number, slope and pins of the tails, the lap, and layouts round grooves."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any, Self

from toolkit.box import Choices, holds, set_out_round_grooves, walk, written
from toolkit.lesson.controls import ChoiceControl, CountControl, LengthControl
from toolkit.lesson.scene import (
    ImpossibleError,
    Scene,
    Shown,
    SliderState,
    Tried,
    numbers,
    size_row,
    worked_out,
)
from toolkit.pictures import Picture, corner_picture
from toolkit.plan import Plan
from toolkit.results import Finding, Table, Topic
from toolkit.shape import Which

SLOPES = (3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0)


OF_JOINT: tuple[Topic, ...] = ("corner", "marking out")  # what belongs to the joints alone


def settled(key: str) -> Callable[[Choices], Any]:
    """Where a slider stands when the box file leaves its key out: where the rule puts it."""

    def start(choices: Choices) -> Any:
        said = choices.value(key)
        if said is not None:
            return said
        design = worked_out(choices).design
        if key.startswith("corner.tails_"):
            return (design.back if key.endswith("back") else design.front).asked
        if key == "corner.lap":
            return design.frame.lap_back.value
        return design.choices.value(key)

    return start


TAILS_BACK = CountControl(
    ("corner.tails_back",), "tails at the back", 1, 6, start=settled("corner.tails_back")
)
CORNER_CONTROLS = (
    TAILS_BACK,
    ChoiceControl(
        ("corner.slope",),
        "slope of the tails",
        tuple((f"1 in {slope:g}", slope) for slope in SLOPES),
        start=settled("corner.slope"),
        slider=True,
    ),
    LengthControl(
        ("corner.pin",), "pins at the baseline", 2.0, 12.0, "sizes", start=settled("corner.pin")
    ),
    LengthControl(("corner.lap",), "lap", 1.0, 9.0, start=settled("corner.lap")),
)


class BackCorner(Shown):
    """The back corner of the box as the sliders have it."""

    topics = OF_JOINT

    def picture(self, before: Self | None) -> Picture:
        return corner_picture(self.plan, ghost=before.plan if before else None)

    def values(self) -> Table:
        return numbers(_back_rows(self.plan))


def _back_rows(plan: Plan) -> list[tuple[str, str, str]]:
    rule, d = plan.choices.rule, plan.design
    show, corner, tail = rule.show, d.back, d.frame.tail_back
    out = rule.exact(round(corner.overhang, 3))
    rows = [size_row(tail, rule)]
    rows.append(("corners stand out", out, f"{show(tail.value)} ÷ {corner.slope:g}, on each side"))
    rows.append(("angle", f"{corner.angle:.1f}°", f"from square: 1 across, {corner.slope:g} along"))
    whole = corner.whole_pins
    if whole:
        narrow = corner.narrowest_pin
        rows.append(
            ("pin, narrow face", show(narrow), f"{show(whole[0].width)} less {out} on each side")
        )
    half = min(corner.half_pins, key=lambda piece: piece.tip_width)
    rows.append(
        ("half pin, narrow face", show(half.tip_width), f"{show(half.width)} less {out} once")
    )
    walked = walk(corner)
    if walked is not None:
        worked = (
            f"({show(corner.height)} − 2 × {show(walked.half_pin, unit=False)} + "
            f"{show(walked.pin, unit=False)}) ÷ {walked.steps}"
        )
        rows.append(("divider step", show(walked.step), worked))
        rows.append(("tail", show(walked.tail_width), "step less one pin"))
    hold = holds(d)[0]
    cheeks = (
        f"{2 * hold.tails} cheeks × {rule.exact(round(hold.cheek, 2))} × {show(hold.thickness)}"
    )
    rows.append(("long grain glued", rule.area(hold.glue_area), cheeks))
    if hold.socket is not None:
        share = f"{hold.socket.share * 100:.0f} %"
        rows.append(("socket that a saw reaches", share, "held at 45°; the chisel does the rest"))
    return rows


def _lap_checked(at: SliderState) -> None:
    if at.choices.corner.joint == "through" and at.choices.corner.lap != at.kept.corner.lap:
        raise ImpossibleError(
            "A through joint has none: its tails are as long as the pin board is thick. Make it "
            "lapped first.",
            there_is="No lap.",
        )


CORNER = Scene("corner", CORNER_CONTROLS, BackCorner, height=560, check=_lap_checked)

# Layouts round the grooves

found_round = lru_cache(maxsize=32)(set_out_round_grooves)
OFFERS = (("as it is now", 0), ("first", 1), ("second", 2), ("third", 3))

ROUND_CONTROLS = (
    LengthControl(
        ("groove.bottom_edge", "groove.top_edge"),
        "groove from the edge",
        3.0,
        20.0,
        "sizes",
        start=settled("groove.bottom_edge"),
    ),
    TAILS_BACK,
    ChoiceControl(("try.offer",), "layout", OFFERS, start=0),
)


class RoundTheGrooves(Shown):
    """An offer to set the tails out round the grooves; none is the box as it is."""

    def set_up(self, tried: Tried) -> None:
        self.found, self.asked = found_round(self.choices), int(tried["try.offer"])
        number = min(self.asked, len(self.found.offers))
        self.offer = self.found.offers[number - 1] if number else None

    def _corner(self, which: Which, before: Self | None) -> Picture:
        """A corner; behind an offer stands the box as it is now, else the kept one."""
        if self.offer:
            return corner_picture(worked_out(self.offer.choices), which=which, ghost=self.plan)
        kept = before.plan if before and before.choices != self.choices else None
        return corner_picture(self.plan, which=which, ghost=kept)

    def picture(self, before: Self | None) -> Picture:
        return self._corner("back", before)

    def beside(self, before: Self | None) -> tuple[Picture, ...]:
        return (self._corner("front", before),)

    def values(self) -> Table:
        return self.found.table(self.rule)

    def verdict(self) -> tuple[Finding, ...]:
        plan = worked_out(self.offer.choices) if self.offer else self.plan
        rows = [row for row in plan.about(*OF_JOINT) if row.level != "good"]
        offers, problem = len(self.found.offers), self.found.problem
        if problem:
            rows.append(Finding("care", "no-layout", "tails", problem, "", "geometry and customs"))
        elif self.asked > offers:
            words = f"only {offers} layouts hide every groove and look well."
            source = "this workbook's judgement"
            rows.append(Finding("care", "fewer-offers", "tails", words, "", source))
        return tuple(rows)


def kept_too(at: SliderState) -> dict[str, Any]:
    """The layout that is looked at, as the box file says it; nothing where it is the box's own."""
    offer = RoundTheGrooves(at.choices, at.tried).offer
    return {} if offer is None or offer.is_now else written(offer.changes, rule=at.choices.rule)


ROUND = Scene("round", ROUND_CONTROLS, RoundTheGrooves, height=560, more=kept_too)
