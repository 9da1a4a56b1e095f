"""What is wrong with a corner, drawn where it is wrong: a red outline and a few words."""

from __future__ import annotations

from toolkit.pictures.corner.boards import BODY, Joint, tail_shape, tail_wastes
from toolkit.pictures.corner.sizes import beside
from toolkit.pictures.kit import Anchor, PartView, Slot, band, rectangle
from toolkit.pictures.kit.notes import note_of, say, wrong
from toolkit.plan import Plan
from toolkit.results import above


def draw_faults(tail_view: PartView, pin_view: PartView, plan: Plan, j: Joint) -> None:
    """Everything that the plan's findings say of this corner. [mm]"""
    if not j.corner.tails:
        middle = tail_view.at(BODY / tail_view.scale / 2, j.tail_board.height / 2)
        asked = f"{j.corner.asked} tails find\nno room here"
        say(tail_view.sheet, asked, middle, [Slot(*middle, "center")])
        return
    _holes(tail_view, pin_view, plan, j)
    _laps(pin_view, plan, j)
    _pins(tail_view, plan, j)
    _slivers(tail_view, plan, j)
    found = plan.wrong("tail corners", corner=j.which)
    if found:
        for tail in j.corner.tails:
            for low, tip in ((tail.high, tail.tip_high), (tail.low, tail.tip_low)):
                wrong(tail_view, [(0.0, low), (-j.tail_length, tip), (-j.tail_length, low)])
        # One finding speaks of both corners, and each corner has its own size.
        out = plan.choices.rule.show(j.corner.overhang)
        words = f"corners of {out}:\n{note_of(found)}".strip(":\n")
        _left(tail_view, j, words, j.corner.tails[-1].tip_high)


def _left(view: PartView, j: Joint, text: str, height: float) -> None:
    """Words beyond the tips of the tails, level with a height or near it."""
    sheet, lines = view.sheet, text.count("\n")
    x = view.across(-j.reach) - view.turn * 8.0
    first = view.up(height) + lines * sheet.text * 0.61 - 0.36 * sheet.text
    anchor: Anchor = "right" if view.turn > 0 else "left"
    places = []
    for out in (0.0, 26.0):
        for i in range(12):
            for way in (1, -1):
                places.append(Slot(x - view.turn * out, first + way * i * 7.0, anchor))
    say(sheet, text, view.at(-j.tail_length, height), places)


def _holes(tail_view: PartView, pin_view: PartView, plan: Plan, j: Joint) -> None:
    show = plan.choices.rule.show
    for hole in j.holes:
        size = f"{show(hole.height, unit=False)} × {show(hole.depth)}"
        middle = (hole.low + hole.high) / 2
        if hole.cause == "pin":
            wrong(pin_view, rectangle((0.0, hole.depth), (hole.low, hole.high)))
            wrong(tail_view, rectangle((-j.tail_length, 0.0), (hole.low, hole.high)))
            at = pin_view.at(0.0, middle)
            words = f"hole outside:\n{size}\nin the {hole.face.split(',')[0]}"
        else:
            for view, x, way in (
                (tail_view, -j.tail_length, 1),
                (pin_view, j.pin_board.thickness, -1),
            ):
                wrong(view, rectangle((x, x + way * 2.5 / view.scale), (hole.low, hole.high)))
            at = pin_view.at(j.pin_board.thickness, middle)
            words = f"groove shows:\n{size}\nin its tail's tip"
        pin_view.sheet.name(
            f"hole, {hole.groove} groove", rectangle((0.0, hole.depth), (hole.low, hole.high))
        )
        beside(pin_view, j, words, height=middle, rank=0, red_at=at)


def _laps(view: PartView, plan: Plan, j: Joint) -> None:
    lap = plan.wrong("lap", corner=j.which)
    floor = plan.wrong("groove at lap", corner=j.which)
    if lap:
        wrong(view, rectangle((j.socket_depth, j.pin_board.thickness), (0.0, j.pin_board.height)))
    for _, span in j.pin_board.grooves if floor else ():
        wrong(view, rectangle((j.socket_depth, j.pin_board.depth), (span.low, span.high)))
    words = note_of((*floor, *lap, *plan.wrong("socket", corner=j.which)))
    if words:
        beyond = view.across(j.pin_board.thickness)
        gap = -6.0 if view.turn < 0 else 6.0
        anchor: Anchor = "right" if view.turn < 0 else "left"
        heights = [j.pin_board.height * share for share in (0.5, 0.35, 0.65, 0.2, 0.8)]
        places = [Slot(beyond + gap, view.up(z), anchor) for z in heights]
        places += [Slot(beyond, view.up(0.0) - 40.0, "center")]
        middle = view.at((j.socket_depth + j.pin_board.thickness) / 2, j.pin_board.height / 2)
        say(view.sheet, words, middle, places)


def _pins(view: PartView, plan: Plan, j: Joint) -> None:
    wastes, pins = tail_wastes(j), j.corner.pins
    whole, halves = pins[1:-1], (pins[0], pins[-1])
    found = plan.wrong("pin", corner=j.which)
    if found and whole:
        narrow = j.corner.narrowest_pin
        worst = [i for i, pin in enumerate(whole, 1) if not above(pin.tip_width, narrow)]
        for i in worst:
            wrong(view, wastes[i])
        pin = whole[worst[0] - 1]
        _left(view, j, note_of(found), (pin.tip_low + pin.tip_high) / 2)
    thin = min(half.tip_width for half in halves)
    found = plan.wrong("half pin", corner=j.which)
    if found:
        for i, half in ((0, halves[0]), (len(wastes) - 1, halves[1])):
            if not above(half.tip_width, thin):
                wrong(view, wastes[i])
        half = halves[0] if not above(halves[0].tip_width, thin) else halves[1]
        _left(view, j, note_of(found), half.tip_low)
    _left(view, j, note_of(plan.wrong("tail tip", corner=j.which)), 0.0)


def _slivers(view: PartView, plan: Plan, j: Joint) -> None:
    inside = [
        (fit, *fit.margins) for fit in plan.design.fits if fit.corner == j.which and fit.margins
    ]
    least = min((min(under, over) for _, under, over in inside), default=0.0)
    for fit, under, over in inside:
        found = plan.wrong("groove side", part=f"{fit.groove} groove", corner=j.which)
        if not found or above(min(under, over), least):
            continue
        for tail in j.corner.tails:
            shape = tail_shape(tail, length=j.tail_length)
            if tail.low <= fit.span.low + 1e-6 and fit.span.high <= tail.high + 1e-6:
                low, high = (
                    (tail.tip_low, fit.span.low)
                    if under <= over
                    else (fit.span.high, tail.tip_high)
                )
                sliver = band(shape, low=low, high=high)
                if len(sliver) > 2:
                    wrong(view, sliver)
                _left(view, j, note_of(found), (low + high) / 2)
