"""What an experienced maker would say of the dovetails before anyone saws."""

from __future__ import annotations

from toolkit.box.corner import Corner
from toolkit.box.customs import cite
from toolkit.box.design import Design
from toolkit.results import About, Finding, Place, above, below

_corner = About("corner")
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
    found, show = [], c.rule.exact
    for corner, board, lap, tail in corners(d):
        least = max(c.customs.lap_least, board * c.customs.lap_share_least)
        most = board * c.customs.lap_share_most
        by_share = board * c.customs.lap_share_least >= c.customs.lap_least
        key = "lap_share_least" if by_share else "lap_least"
        if lap <= 0 or tail <= 0:
            found.append(
                _corner(
                    "wont_work",
                    "lap-and-tail",
                    Place("lap", corner=corner.name),
                    f"a lap of {show(lap)} and a tail of {show(tail)} do not make up the "
                    f"{show(board)} pin board.",
                    "Choose a lap between nothing and the thickness of the board.",
                    brief="lap and tail do not make up the pin board",
                    note=f"lap {c.rule.show(lap)}:\n{'too thin' if lap <= 0 else 'no tail left'}",
                )
            )
        elif below(lap, least):
            found.append(
                _corner(
                    "care",
                    "lap-thin",
                    Place("lap", corner=corner.name),
                    f"the lap is {show(lap)}, under {show(least)}: tap it and it sounds drummy, "
                    "and a chisel can come through it.",
                    f"Shorten the tails to {show(board - least)} before they are gauged, or use "
                    "thicker wood for the pin board.",
                    cite(key),
                    brief="the lap is thin",
                    note=f"lap {c.rule.show(lap)}:\ntoo thin",
                )
            )
        elif above(lap, most):
            found.append(
                _corner(
                    "care",
                    "lap-thick",
                    Place("socket", corner=corner.name),
                    f"the lap is {show(lap)}, over {show(most)}: it leaves a shallow socket and "
                    f"a tail of only {show(tail)}.",
                    f"Lengthen the tails to {show(board - most)}.",
                    cite("lap_share_most"),
                    brief="the lap is thick",
                    note=f"lap {c.rule.show(lap)}:\nthick",
                )
            )
    if not found:
        laps = {show(row[2]) for row in corners(d)}
        found.append(_corner("good", "good-lap", "corners", f"lap {' and '.join(sorted(laps))}."))
    return found


def _through_tails(d: Design) -> list[Finding]:
    show, found = d.choices.rule.exact, []
    for corner, board, lap, tail in corners(d):
        if above(abs(lap), 0.0):
            word = "short of" if lap > 0 else "beyond"
            found.append(
                _corner(
                    "care",
                    "tail-not-flush",
                    Place(corner=corner.name),
                    f"the tails are gauged to {show(tail)} and end {show(abs(lap))} {word} the "
                    f"face of the {show(board)} pin board.",
                    "Plane the longer of the two back to the other.",
                )
            )
    return found


def check_tails(d: Design) -> list[Finding]:
    """Tails that do not fit at all, or whose tips leave no pin between them."""
    found, show = [], d.choices.rule.exact
    for corner, _, _, tail in corners(d):
        if not corner.tails:
            found.append(
                _corner(
                    "wont_work",
                    "tails-dont-fit",
                    Place(corner=corner.name),
                    f"{corner.asked} tails of {show(max(tail, 0.0))} length find no room in "
                    f"{show(corner.height)} of height.",
                    "Ask for fewer tails, or narrower pins and half pins.",
                )
            )
            continue
        if not above(corner.narrowest_pin, 0.0):
            found.append(
                _corner(
                    "wont_work",
                    "tail-tips-meet",
                    Place("tail tip", corner=corner.name),
                    f"the tails grow {show(corner.overhang)} on each side up to their tips, where "
                    f"the pin between them is {show(corner.narrowest_pin)} wide: no pin is left.",
                    f"Make the pins wider than {show(2 * corner.overhang)} at the baseline, or "
                    "take a slope with less flare.",
                    brief=_NO_PIN,
                )
            )
        # Measured on the tail board: at a low front the pin board's topmost pin goes on to the
        # rim, but the tail must not stand out over the front's own edge.
        if not above(min(corner.tails[0].tip_low, corner.height - corner.tails[-1].tip_high), 0.0):
            found.append(
                _corner(
                    "wont_work",
                    "tail-tips-meet",
                    Place("tail tip", corner=corner.name),
                    f"the outer tail grows {show(corner.overhang)} past its half pin and out "
                    "over the edge of the board.",
                    f"Make the half pins wider than {show(corner.overhang)} at the baseline.",
                    brief=_NO_PIN,
                    note="tail out over\nthe edge",
                )
            )
        widest = max(piece.width for piece in corner.tails)
        if above(widest, d.choices.customs.tail_widest):
            found.append(
                _corner(
                    "care",
                    "tail-wide",
                    Place("tail", corner=corner.name),
                    f"the widest tail is {show(widest)}, over "
                    f"{show(d.choices.customs.tail_widest)}: a wide tail swells against its pins "
                    "and holds with little glue.",
                    "Add a tail.",
                    cite("tail_widest"),
                    brief="a tail is very wide",
                )
            )
    return found


CHECKS = (check_lap, check_tails)
