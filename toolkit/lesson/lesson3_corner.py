"""Lesson 3, the corner: number, slope and pins of the tails, the lap, and layouts round grooves."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from toolkit.box import Choices, Corner, written
from toolkit.box.joinery import (
    RoundGrooves,
    holds,
    set_out_round_grooves,
    walk,
)
from toolkit.lesson.controls import ChoiceControl, CountControl, LengthControl, Start
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import ImpossibleError, View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import corner_picture
from toolkit.plan import Plan
from toolkit.results import Finding, Table

SLOPES = (3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0)


def before(at: Moment) -> Plan | None:
    """The kept box, to be drawn thinly behind; None where nothing moved or it can't be drawn."""
    if at.choices == at.kept or not worked_out(at.kept).design.exists:
        return None
    return worked_out(at.kept)


def of_joint(made: Plan) -> tuple[Finding, ...]:
    """What a maker would say of the joints alone."""
    return made.about("corner", "marking out")


def settled(key: str) -> Start:
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


CORNER_CONTROLS = (
    CountControl(("corner.tails_back",), "tails at the back", 1, 6, settled("corner.tails_back")),
    ChoiceControl(
        ("corner.slope",),
        "slope of the tails",
        tuple((f"1 in {slope:g}", slope) for slope in SLOPES),
        start=settled("corner.slope"),
        slider=True,
    ),
    LengthControl(
        ("corner.pin",), "pins at the baseline", 2.0, 12.0, "sizes", settled("corner.pin")
    ),
    LengthControl(("corner.lap",), "lap", 1.0, 9.0, "joints", settled("corner.lap")),
)


def corner_numbers(made: Plan, corner: Corner) -> Table:
    """What the sliders of a corner move, each with its working. [mm]"""
    rule, d = made.choices.rule, made.design
    show, back = rule.show, corner.name == "back"
    tail = d.frame.tail_back if back else d.frame.tail_front
    out = rule.exact(round(corner.overhang, 3))
    rows = [(tail.name, show(tail.value), tail.sentence(rule).partition(" = ")[2])]
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
    hold = holds(d)[0 if back else -1]
    flanks = (
        f"{2 * hold.tails} flanks × {rule.exact(round(hold.flank, 2))} × {show(hold.thickness)}"
    )
    rows.append(("long grain glued", f"{hold.glue_area:.0f} mm²", flanks))
    if hold.socket is not None:
        share = f"{hold.socket.share * 100:.0f} %"
        rows.append(("socket that a saw reaches", share, "held at 45°; the chisel does the rest"))
    return Table("Numbers", ("what", "value", "where it comes from"), tuple(rows), numeric=(1,))


def _corner(at: Moment) -> View:
    if at.choices.corner.joint == "through" and at.choices.corner.lap != at.kept.corner.lap:
        raise ImpossibleError(
            "A through joint has none: its tails are as long as the pin board is thick. Make it "
            "half-blind first.",
            there_is="No lap.",
        )
    made = possible(at.choices)
    picture = corner_picture(made, ghost=before(at))
    return View(picture, corner_numbers(made, made.design.back), of_joint(made))


CORNER = Scene("corner", CORNER_CONTROLS, _corner, height=560)

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
        settled("groove.bottom_edge"),
    ),
    CountControl(("corner.tails_back",), "tails at the back", 1, 6, settled("corner.tails_back")),
    ChoiceControl(("try.offer",), "layout", OFFERS, start=lambda _: 0),
)


def chosen(at: Moment) -> tuple[RoundGrooves, int]:
    """What was found, and which of the offers is looked at; 0 for none."""
    found = found_round(at.choices)
    return found, min(int(at.tried["try.offer"]), len(found.offers))


def _round(at: Moment) -> View:
    now = possible(at.choices)
    found, number = chosen(at)
    made = worked_out(found.offers[number - 1].choices) if number else now
    ghost = now if number else before(at)
    picture = corner_picture(made, ghost=ghost)
    front = corner_picture(made, which="front", ghost=ghost)
    return View(picture, found.table(at.choices.rule), _said(at, found, made), (front,))


def _said(at: Moment, found: RoundGrooves, made: Plan) -> tuple[Finding, ...]:
    rows = [row for row in of_joint(made) if row.level != "good"]
    asked = int(at.tried["try.offer"])
    if found.problem:
        rows.append(
            Finding("care", "no-layout", "tails", found.problem, "", "geometry and customs")
        )
    elif asked > len(found.offers):
        words = f"only {len(found.offers)} layouts hide every groove and look well."
        rows.append(
            Finding("care", "fewer-offers", "tails", words, "", "this workbook's judgement")
        )
    return tuple(rows)


def kept_too(at: Moment) -> dict[str, Any]:
    """The layout that is looked at, as the box file says it; nothing where it is the box's own."""
    found, number = chosen(at)
    if not number or found.offers[number - 1].is_now:
        return {}
    return written(found.offers[number - 1].changes, rule=at.choices.rule)


ROUND = Scene("round", ROUND_CONTROLS, _round, height=560, more=kept_too)
