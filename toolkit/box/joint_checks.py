"""What an experienced maker would say of lap, tails, pins and half pins."""

from __future__ import annotations

from typing import Any

from toolkit.box.corner import Corner
from toolkit.box.customs import FAIRHAM, NOYES, cite
from toolkit.box.designing import Design
from toolkit.box.saying import Said
from toolkit.results import Finding, above, below


def corners(d: Design) -> tuple[tuple[Corner, float, float, float], ...]:
    """Each corner with its pin-board thickness, lap and tail length. [mm]"""
    thick = d.pin_board_thickness
    f = d.frame
    return (
        (d.back, thick[0], f.lap_back.value, f.tail_back.value),
        (d.front, thick[1], f.lap_front.value, f.tail_front.value),
    )


def check_lap(d: Design) -> list[Finding]:
    """Laps too thin to sound solid, or so thick that the tail is short."""
    c = d.choices
    if c.corner.joint == "through":
        return _through_tails(d)
    found, show = Said(d), c.rule.exact
    for corner, board, lap, tail in corners(d):
        least = max(c.customs.lap_least, board * c.customs.lap_share_least)
        most = board * c.customs.lap_share_most
        by_share = board * c.customs.lap_share_least >= c.customs.lap_least
        key = "lap_share_least" if by_share else "lap_least"
        sizes: dict[str, Any] = {"corner": corner.name, "lap": lap, "tail": tail, "board": board}
        if lap <= 0 or tail <= 0:
            word = "too thin" if lap <= 0 else "no tail left"
            found.say("lap-and-tail", **sizes, word=word)
        elif below(lap, least):
            found.say("lap-thin", **sizes, least=least, to_least=board - least, custom=key)
        elif above(lap, most):
            found.say("lap-thick", **sizes, most=most, to_most=board - most)
    if not found:
        laps = {show(row[2]) for row in corners(d)}
        found.say("good-lap", laps=" and ".join(sorted(laps)))
    return found


def _through_tails(d: Design) -> list[Finding]:
    found = Said(d)
    for corner, board, lap, tail in corners(d):
        gauged = tail + d.choices.corner.proud
        off = board - gauged
        # Gauged proud they are planed flush; set to the board itself they are so at once.
        if above(abs(lap), 0.0) and above(abs(off), 0.0):
            word = "short of" if off > 0 else "beyond"
            values: dict[str, Any] = {"tail": gauged, "off": abs(off), "board": board}
            found.say("tail-not-flush", corner=corner.name, word=word, **values)
    return found


def check_tails(d: Design) -> list[Finding]:
    """Tails that do not fit at all, or whose tips leave no pin between them."""
    found = Said(d)
    for corner, _, _, tail in corners(d):
        at: dict[str, Any] = {"corner": corner.name, "piece": corner}
        if not corner.tails:
            found.say("tails-dont-fit", **at, room=max(tail, 0.0))
            continue
        if not above(corner.narrowest_pin, 0.0):
            found.say("tail-tips-meet", **at, wider=2 * corner.overhang)
        # Measured on the tail board: at a low front the pin board's topmost pin goes on to the
        # rim, but the tail must not stand out over the front's own edge.
        if not above(min(corner.tails[0].tip_low, corner.height - corner.tails[-1].tip_high), 0.0):
            found.say("tail-tips-meet, outer tail", **at)
        widest = max(piece.width for piece in corner.tails)
        if above(widest, d.choices.customs.tail_widest):
            found.say("tail-wide", **at, widest=widest)
    return found


def check_slope(d: Design) -> list[Finding]:
    """More flare than the tail's corners can bear, or so little that it hardly holds."""
    c, found = d.choices, Said(d)
    slope, customs = d.back.slope, c.customs
    authorities = f"{FAIRHAM}, 1 in 8 to 1 in 6; {NOYES}, about 1 in 5 (authorities differ)"
    overhang = max(d.back.overhang, d.front.overhang)
    values: dict[str, Any] = {"slope": slope, "overhang": overhang, "angle": d.back.angle}
    name, key = "good-slope", ""
    if below(slope, customs.slope_least) or above(overhang, customs.overhang_most):
        key = "slope_least" if below(slope, customs.slope_least) else "overhang_most"
        name = "slope-short-grain"
    elif above(slope, customs.slope_most):
        name, key = "slope-shallow", "slope_most"
    source = f"{authorities}; {cite(key)}" if key else authorities
    found.say(name, source=source, **values)
    return found


def check_pins(d: Design) -> list[Finding]:
    """Pins that no chisel clears, half pins that split off."""
    c, found = d.choices, Said(d)
    customs, chisel = c.customs, c.tools.chisel
    need = chisel + customs.chisel_room
    for corner, board, _, _ in corners(d):
        if not corner.tails:
            continue
        narrow = corner.narrowest_pin
        if below(narrow, need):
            found.say(
                "pin-narrower-than-chisel",
                corner=corner.name,
                narrow=narrow,
                chisel=chisel,
                need=need,
                wider=need + 2 * corner.overhang,
                note=f"pin {c.rule.show(narrow)},\nchisel {c.rule.show(chisel)}"
                if above(narrow, 0.0)
                else "tips meet:\nno pin left",
            )
        least = max(customs.half_pin_least, board * customs.half_pin_share)
        half = min(pin.tip_width for pin in corner.half_pins)
        if below(half, least) and half > 0:
            wider = least + corner.overhang
            found.say("half-pin-thin", corner=corner.name, half=half, least=least, wider=wider)
        if corner.whole_pins:
            pin = max(piece.width for piece in corner.whole_pins)
            half_wide = min(piece.width for piece in corner.half_pins)
            if below(half_wide, pin * customs.half_pin_of_pin):
                values: dict[str, Any] = {
                    "half_wide": half_wide,
                    "pin": pin,
                    "left": pin - half_wide,
                }
                found.say("half-pin-under-pin", corner=corner.name, **values)
    if not any(row.code in ("pin-narrower-than-chisel", "half-pin-thin") for row in found):
        narrow = min(d.back.narrowest_pin, d.front.narrowest_pin)
        if d.back.tails and narrow < 1000:
            found.say("good-pins", narrow=narrow, chisel=chisel)
    return found


def check_direction(d: Design) -> list[Finding]:
    """Whether a swelling panel pulls the joint home or apart."""
    c = d.choices
    pushed = "sides" if c.panels.grain == "along" else "ends"
    if c.corner.tails_on == pushed:
        return Said(d).say(
            "joint-opens-when-panel-swells", at=f"tails on the {pushed}", pushed=pushed
        )
    return Said(d).say("good-direction", at=f"tails on the {c.corner.tails_on}", pushed=pushed)


CHECKS = (
    check_lap,
    check_tails,
    check_slope,
    check_pins,
    check_direction,
)
