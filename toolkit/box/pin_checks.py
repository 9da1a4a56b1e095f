"""What an experienced maker would say of slope, pins and the way the joint locks."""

from __future__ import annotations

from toolkit.box.customs import FAIRHAM, NOYES, cite
from toolkit.box.design import Design
from toolkit.box.joint_checks import corners
from toolkit.results import About, Finding, Place, above, below

_corner = About("corner")
_marking_out = About("marking out")


def check_slope(d: Design) -> list[Finding]:
    """More flare than the tail's corners can bear, or so little that it hardly holds."""
    c, found = d.choices, []
    show, slope, customs = c.rule.exact, d.back.slope, c.customs
    authorities = f"{FAIRHAM}, 1 in 8 to 1 in 6; {NOYES}, about 1 in 5 (authorities differ)"
    overhang = max(d.back.overhang, d.front.overhang)
    if below(slope, customs.slope_least) or above(overhang, customs.overhang_most):
        key = "slope_least" if below(slope, customs.slope_least) else "overhang_most"
        found.append(
            _corner(
                "care",
                "slope-short-grain",
                Place("tail corners", name="tails"),
                f"at 1 in {slope:g} the corners of the tails stand out {show(overhang)}: they "
                "are short grain and crumble.",
                "Take a slope with less flare, 1 in 6 to 1 in 8.",
                f"{authorities}; {cite(key)}",
                brief="the corners of the tails are short grain",
                note="short grain",
            )
        )
    elif above(slope, customs.slope_most):
        found.append(
            _corner(
                "care",
                "slope-shallow",
                "tails",
                f"at 1 in {slope:g} ({d.back.angle:.1f}°) the joint is nearly a straight finger "
                "and holds by its glue alone.",
                "Take a slope with more flare, 1 in 6 to 1 in 8.",
                f"{authorities}; {cite('slope_most')}",
            )
        )
    else:
        message = f"1 in {slope:g} is {d.back.angle:.2f}°; tail corners stand out {show(overhang)}."
        found.append(_corner("good", "good-slope", "tails", message, "", authorities))
    return found


def check_pins(d: Design) -> list[Finding]:
    """Pins that no chisel clears, half pins that split off."""
    c, found = d.choices, []
    show, customs, chisel = c.rule.exact, c.customs, c.tools.chisel
    need = chisel + customs.chisel_room
    for corner, board, _, _ in corners(d):
        if not corner.tails:
            continue
        narrow = corner.narrowest_pin
        if below(narrow, need):
            found.append(
                _corner(
                    "care",
                    "pin-narrower-than-chisel",
                    Place("pin", corner=corner.name),
                    f"the narrow face of a pin is {show(narrow)}; your {show(chisel)} chisel "
                    f"wants {show(need)} to clear the waste between the tails.",
                    f"Drop a tail, or widen the pins to {show(need + 2 * corner.overhang)}.",
                    cite("chisel_room"),
                    brief="a pin is narrower than the chisel needs",
                    note=f"pin {c.rule.show(narrow)},\nchisel {c.rule.show(chisel)}"
                    if above(narrow, 0.0)
                    else "tips meet:\nno pin left",
                )
            )
        least = max(customs.half_pin_least, board * customs.half_pin_share)
        half = min(pin.tip_width for pin in corner.half_pins)
        if below(half, least) and half > 0:
            found.append(
                _corner(
                    "care",
                    "half-pin-thin",
                    Place("half pin", corner=corner.name),
                    f"a half pin is only {show(half)} at its narrow face, under {show(least)}: "
                    "it will split off when the joint is tapped home.",
                    f"Make the half pins {show(least + corner.overhang)} at the baseline.",
                    cite("half_pin_least"),
                    brief="a half pin is thin",
                    note=f"half pin {c.rule.show(half)}:\nthin",
                )
            )
        if corner.whole_pins:
            pin = max(piece.width for piece in corner.whole_pins)
            half_wide = min(piece.width for piece in corner.half_pins)
            if below(half_wide, pin * customs.half_pin_of_pin):
                found.append(
                    _marking_out(
                        "care",
                        "half-pin-under-pin",
                        Place(corner=corner.name),
                        f"the half pin is {show(half_wide)} and the pin {show(pin)}: stepping "
                        f"with dividers, the last mark falls {show(pin - half_wide)} off the edge.",
                        "Clamp a scrap flush at that edge to take the mark, or make the half pin "
                        "as wide as a pin.",
                        cite("half_pin_of_pin"),
                    )
                )
    if not any(row.code in ("pin-narrower-than-chisel", "half-pin-thin") for row in found):
        narrow = min(d.back.narrowest_pin, d.front.narrowest_pin)
        if d.back.tails and narrow < 1000:
            message = f"the narrowest pin, {show(narrow)}, lets your {show(chisel)} chisel in."
            found.append(_corner("good", "good-pins", "corners", message))
    return found


def check_direction(d: Design) -> list[Finding]:
    """Whether a swelling panel pulls the joint home or apart."""
    c = d.choices
    pushed = "sides" if c.panels.grain == "along" else "ends"
    if c.corner.tails_on == pushed:
        return [
            _corner(
                "care",
                "joint-opens-when-panel-swells",
                f"tails on the {pushed}",
                f"a panel that swells pushes the {pushed} apart, which is the one way these "
                "tails slide out; only the glue holds them.",
                "Put the tails on the other pair of walls, or keep the clearance of the panels "
                "generous.",
                "geometry: a tail resists every pull but the one along itself",
            )
        ]
    return [
        _corner(
            "good",
            "good-direction",
            f"tails on the {c.corner.tails_on}",
            f"a swelling panel pushes the {pushed} apart, and the tails lock against that.",
        )
    ]


CHECKS = (check_slope, check_pins, check_direction)
