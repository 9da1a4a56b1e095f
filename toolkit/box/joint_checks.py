"""What an experienced maker would say of lap, tails, pins and half pins."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil
from typing import Any

from toolkit.box.choices import Change
from toolkit.box.corner import Corner
from toolkit.box.customs import FAIRHAM, NOYES, cite
from toolkit.box.designing import Design
from toolkit.box.saying import Said
from toolkit.results import TOLERANCE, Finding, above, below

_USUAL_SLOPE = 8.0  # the least flare that most makers give: 1 across in this many along


def corners(d: Design) -> tuple[tuple[Corner, float, float, float], ...]:
    """Each corner with its pin-board thickness, lap and tail length. [mm]"""
    thick = d.pin_board_thickness
    f = d.frame
    return (
        (d.back, thick[0], f.lap_back.value, f.tail_back.value),
        (d.front, thick[1], f.lap_front.value, f.tail_front.value),
    )


def _pin_board(d: Design) -> str:
    """The key of the thickness that carries the laps."""
    return "thickness.side" if d.choices.corner.tails_on == "ends" else "thickness.end"


def with_lap(d: Design, lap: float, *, board: float) -> Change:
    """Another lap, by the key that the file gives: the lap, or the tails that leave it. [mm]"""
    if d.choices.corner.tail_length is None:
        return {"corner.lap": lap}
    return {"corner.tail_length": board - lap}


def _with_pins(d: Design, corner: Corner, changes: Change) -> Iterator[Change]:
    """Other pins, with as many tails as they leave room for; equal ones, if set out singly."""
    key, count = f"corner.tails_{corner.name}", len(corner.tails)
    if not isinstance(getattr(d.choices.corner, f"tails_{corner.name}"), tuple):
        yield changes
        count -= 1
    for fewer in range(count, 0, -1):
        yield {**changes, key: fewer}


def check_lap(d: Design) -> list[Finding]:
    """Laps too thin to sound solid, or so thick that the tail is short."""
    c = d.choices
    if c.corner.joint == "through":
        return _through_tails(d)
    found, show = Said(d), c.rule.exact
    # The thinnest board in which a lap that is thick enough is not too thick.
    stout = found.up(c.customs.lap_least / c.customs.lap_share_most, fineness="sizes")
    lap_of_it = with_lap(d, found.up(c.customs.lap_least), board=stout)
    stout_lap: Change = {_pin_board(d): stout, **lap_of_it}
    for corner, board, lap, tail in corners(d):
        least = max(c.customs.lap_least, board * c.customs.lap_share_least)
        most = board * c.customs.lap_share_most
        thinnest = with_lap(d, found.up(least), board=board)
        thickest = with_lap(d, found.down(most), board=board)
        by_share = board * c.customs.lap_share_least >= c.customs.lap_least
        key = "lap_share_least" if by_share else "lap_least"
        sizes: dict[str, Any] = {"corner": corner.name, "lap": lap, "tail": tail, "board": board}
        if lap <= 0 or tail <= 0:
            word = "too thin" if lap <= 0 else "no tail left"
            found.say("lap-and-tail", **sizes, word=word, cures=(thickest,))
        elif below(lap, least):
            ways = (thinnest, stout_lap)
            found.say("lap-thin", **sizes, least=least, custom=key, cures=ways)
        elif above(lap, most):
            found.say("lap-thick", **sizes, most=most, cures=(thickest, stout_lap))
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
            which = "side" if d.choices.corner.tails_on == "ends" else corner.name
            flush = {f"made.{which}_thickness": gauged} if off > 0 else {"made.tail_length": board}
            found.say("tail-not-flush", corner=corner.name, word=word, cures=(flush,), **values)
    return found


def check_tails(d: Design) -> list[Finding]:
    """Tails that do not fit at all, or whose tips leave no pin between them."""
    found, customs = Said(d), d.choices.customs
    half, pin = d.choices.corner.half_pin, d.choices.corner.pin
    for corner, board, _, tail in corners(d):
        at: dict[str, Any] = {"corner": corner.name, "piece": corner}
        key, room = f"corner.tails_{corner.name}", corner.height - 2 * half + pin
        if not corner.tails:
            few = max(1, int(room / (customs.tail_least + pin)))
            slim = {"corner.half_pin": found.down(corner.height / 4), key: 1}
            lap = with_lap(d, found.down(board * customs.lap_share_most), board=board)
            found.say(
                "tails-dont-fit",
                **at,
                room=max(tail, 0.0),
                cures=({key: few}, slim, lap) if tail > 0 else (lap,),
            )
            continue
        if not above(corner.narrowest_pin, 0.0):
            least = d.choices.tools.chisel + customs.chisel_room + 2 * corner.overhang
            ways = tuple(_with_pins(d, corner, {"corner.pin": found.up(least)}))
            found.say("tail-tips-meet", **at, wider=2 * corner.overhang, cures=ways)
        # Measured on the tail board: at a low front the pin board's topmost pin goes on to the
        # rim, but the tail must not stand out over the front's own edge.
        if not above(min(corner.tails[0].tip_low, corner.height - corner.tails[-1].tip_high), 0.0):
            holds = found.up(_half_pin_least(d, board) + corner.overhang)
            ways = tuple(_with_pins(d, corner, {"corner.half_pin": holds}))
            found.say("tail-tips-meet, outer tail", **at, cures=ways)
        widest = max(piece.width for piece in corner.tails)
        if above(widest, customs.tail_widest):
            many = ceil(room / (customs.tail_widest + pin))
            more: list[Change] = [{key: max(many, 1) + extra} for extra in range(3)]
            found.say("tail-wide", **at, widest=widest, cures=more)
    return found


def check_slope(d: Design) -> list[Finding]:
    """More flare than the tail's corners can bear, or so little that it hardly holds."""
    c, found = d.choices, Said(d)
    slope, customs = d.back.slope, c.customs
    ways: tuple[Change, ...] = ()
    authorities = f"{FAIRHAM}, 1 in 8 to 1 in 6; {NOYES}, about 1 in 5 (authorities differ)"
    overhang = max(d.back.overhang, d.front.overhang)
    values: dict[str, Any] = {"slope": slope, "overhang": overhang, "angle": d.back.angle}
    name, key = "good-slope", ""
    if below(slope, customs.slope_least) or above(overhang, customs.overhang_most):
        key = "slope_least" if below(slope, customs.slope_least) else "overhang_most"
        name, ways = "slope-short-grain", tuple(_with_less_flare(d, found))
    elif above(slope, customs.slope_most):
        name, key = "slope-shallow", "slope_most"
        ways = ({"corner.slope": _USUAL_SLOPE}, {"corner.slope": customs.slope_most})
    source = f"{authorities}; {cite(key)}" if key else authorities
    found.say(name, source=source, cures=ways, **values)
    return found


def _with_less_flare(d: Design, found: Said) -> Iterator[Change]:
    """A slope whose tails have sound corners, with shorter tails where no custom slope has them."""
    customs = d.choices.customs
    tail = max(d.back.tail_length, d.front.tail_length)
    slope = float(max(ceil(tail / customs.overhang_most - TOLERANCE), ceil(customs.slope_least)))
    if not above(slope, customs.slope_most):
        yield {"corner.slope": slope}
        return
    flat: Change = {"corner.slope": customs.slope_most}
    longest = found.down(customs.overhang_most * customs.slope_most)
    board = max(d.pin_board_thickness)
    if d.choices.corner.joint == "through":
        yield {**flat, _pin_board(d): longest}
        lap = found.down(board * customs.lap_share_most)
        yield {**flat, "corner.joint": "half-blind", "corner.lap": lap}
    else:
        yield {**flat, **with_lap(d, found.up(board - longest), board=board)}


def _half_pin_least(d: Design, board: float) -> float:
    """The thinnest half pin that does not split off, at its narrow face. [mm]"""
    customs = d.choices.customs
    return max(customs.half_pin_least, board * customs.half_pin_share)


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
            wider = found.up(need + 2 * max(d.back.overhang, d.front.overhang))
            found.say(
                "pin-narrower-than-chisel",
                corner=corner.name,
                narrow=narrow,
                chisel=chisel,
                need=need,
                cures=tuple(_with_pins(d, corner, {"corner.pin": wider})),
                note=f"pin {c.rule.show(narrow)},\nchisel {c.rule.show(chisel)}"
                if above(narrow, 0.0)
                else "tips meet:\nno pin left",
            )
        least = _half_pin_least(d, board)
        half = min(pin.tip_width for pin in corner.half_pins)
        if below(half, least) and half > 0:
            wider = found.up(least + max(d.back.overhang, d.front.overhang))
            ways = tuple(_with_pins(d, corner, {"corner.half_pin": wider}))
            found.say("half-pin-thin", corner=corner.name, half=half, least=least, cures=ways)
        if corner.whole_pins:
            pin = max(piece.width for piece in corner.whole_pins)
            half_wide = min(piece.width for piece in corner.half_pins)
            if below(half_wide, pin * customs.half_pin_of_pin):
                values: dict[str, Any] = {
                    "half_wide": half_wide,
                    "pin": pin,
                    "left": pin - half_wide,
                }
                wider = found.up(c.corner.pin * customs.half_pin_of_pin)
                ways = tuple(_with_pins(d, corner, {"corner.half_pin": wider}))
                found.say("half-pin-under-pin", corner=corner.name, cures=ways, **values)
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
        other: Change = {"corner.tails_on": "ends" if pushed == "sides" else "sides"}
        return Said(d).say(
            "joint-opens-when-panel-swells",
            at=f"tails on the {pushed}",
            pushed=pushed,
            cures=(other,),
        )
    return Said(d).say("good-direction", at=f"tails on the {c.corner.tails_on}", pushed=pushed)


CHECKS = (
    check_lap,
    check_tails,
    check_slope,
    check_pins,
    check_direction,
)
