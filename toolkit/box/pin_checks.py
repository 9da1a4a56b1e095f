"""What an experienced maker would say of slope, pins and the way the joint locks."""

from __future__ import annotations

from toolkit.box.customs import FAIRHAM, NOYES, cite
from toolkit.box.design import Design
from toolkit.box.joint_checks import corners
from toolkit.box.saying import Said
from toolkit.results import Finding, above, below


def check_slope(d: Design) -> list[Finding]:
    """More flare than the tail's corners can bear, or so little that it hardly holds."""
    c, found = d.choices, Said(d)
    slope, customs = d.back.slope, c.customs
    authorities = f"{FAIRHAM}, 1 in 8 to 1 in 6; {NOYES}, about 1 in 5 (authorities differ)"
    overhang = max(d.back.overhang, d.front.overhang)
    if below(slope, customs.slope_least) or above(overhang, customs.overhang_most):
        key = "slope_least" if below(slope, customs.slope_least) else "overhang_most"
        found.say(
            "slope-short-grain",
            slope=slope,
            overhang=overhang,
            source=f"{authorities}; {cite(key)}",
        )
    elif above(slope, customs.slope_most):
        found.say(
            "slope-shallow",
            slope=slope,
            angle=d.back.angle,
            source=f"{authorities}; {cite('slope_most')}",
        )
    else:
        found.say(
            "good-slope", slope=slope, angle=d.back.angle, overhang=overhang, source=authorities
        )
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
            found.say(
                "half-pin-thin",
                corner=corner.name,
                half=half,
                least=least,
                wider=least + corner.overhang,
            )
        if corner.whole_pins:
            pin = max(piece.width for piece in corner.whole_pins)
            half_wide = min(piece.width for piece in corner.half_pins)
            if below(half_wide, pin * customs.half_pin_of_pin):
                found.say(
                    "half-pin-under-pin",
                    corner=corner.name,
                    half_wide=half_wide,
                    pin=pin,
                    left=pin - half_wide,
                )
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


CHECKS = (check_slope, check_pins, check_direction)
