"""What an experienced maker would say of the dovetails before anyone saws."""

from __future__ import annotations

from toolkit.box.corner import Corner
from toolkit.box.design import Design
from toolkit.box.saying import Said
from toolkit.results import Finding, above, below

_NO_PIN = "the tips of the tails leave no pin"


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
        if lap <= 0 or tail <= 0:
            found.say(
                "lap-and-tail",
                corner=corner.name,
                lap=lap,
                tail=tail,
                board=board,
                word="too thin" if lap <= 0 else "no tail left",
            )
        elif below(lap, least):
            found.say(
                "lap-thin", corner=corner.name, lap=lap, least=least, left=board - least, custom=key
            )
        elif above(lap, most):
            found.say(
                "lap-thick", corner=corner.name, lap=lap, most=most, tail=tail, left=board - most
            )
    if not found:
        laps = {show(row[2]) for row in corners(d)}
        found.say("good-lap", laps=" and ".join(sorted(laps)))
    return found


def _through_tails(d: Design) -> list[Finding]:
    found = Said(d)
    for corner, board, lap, tail in corners(d):
        if above(abs(lap), 0.0):
            word = "short of" if lap > 0 else "beyond"
            found.say(
                "tail-not-flush",
                corner=corner.name,
                tail=tail,
                lap=abs(lap),
                word=word,
                board=board,
            )
    return found


def check_tails(d: Design) -> list[Finding]:
    """Tails that do not fit at all, or whose tips leave no pin between them."""
    found = Said(d)
    for corner, _, _, tail in corners(d):
        if not corner.tails:
            found.say(
                "tails-dont-fit",
                corner=corner.name,
                asked=corner.asked,
                tail=max(tail, 0.0),
                height=corner.height,
            )
            continue
        if not above(corner.narrowest_pin, 0.0):
            found.say(
                "tail-tips-meet",
                corner=corner.name,
                overhang=corner.overhang,
                narrowest_pin=corner.narrowest_pin,
                wider=2 * corner.overhang,
            )
        # Measured on the tail board: at a low front the pin board's topmost pin goes on to the
        # rim, but the tail must not stand out over the front's own edge.
        if not above(min(corner.tails[0].tip_low, corner.height - corner.tails[-1].tip_high), 0.0):
            found.say("tail-tips-meet, outer tail", corner=corner.name, overhang=corner.overhang)
        widest = max(piece.width for piece in corner.tails)
        if above(widest, d.choices.customs.tail_widest):
            found.say(
                "tail-wide",
                corner=corner.name,
                widest=widest,
                tail_widest=d.choices.customs.tail_widest,
            )
    return found


CHECKS = (check_lap, check_tails)
