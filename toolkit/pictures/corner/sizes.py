"""The figures of a corner: rows of dimensions and the words beside the grooves."""

from __future__ import annotations

from toolkit.pictures.corner.boards import BODY, Joint
from toolkit.pictures.kit import Anchor, PartView, Point, Slot, extent
from toolkit.pictures.kit.dimensions import BESIDE, Dimension, level, upright
from toolkit.pictures.kit.notes import figures
from toolkit.plan import Plan
from toolkit.results import above

WORDS = 64.0  # from the inside face to the words beside it [pt]


def groove_row(view: PartView, plan: Plan, j: Joint) -> None:
    """Where the grooves lie on the tail board's height, beside the broken end. [mm]"""
    show = figures(plan)
    top, turn = j.tail_board.height, view.turn
    stops, steps = [0.0], []
    for i, (_, span) in enumerate(j.tail_board.grooves):
        steps += [Dimension(show(span.low - stops[-1]), 5 if i else 1)]
        # One iron ploughs both grooves: its width is said once.
        steps += [Dimension(None if i else show(span.high - span.low), 2)]
        stops += [span.low, span.high]
    thin = bool(plan.wrong("rim")) and len(stops) == 5
    steps.append(Dimension(show(top - stops[-1]), 1 if thin else 6, thin))
    stops.append(top)
    start = view.across(BODY / view.scale) + turn * 3.5
    upright(view, stops, *steps, start=start, off=turn * 14.0, side=turn)
    size = view.sheet.text
    widest = max(extent(step.text, size=size)[0] for step in steps if step.text)
    farther = turn * (14.0 + max(3.5 * size, widest + 2 * BESIDE))
    upright(view, (0.0, top), Dimension(show(top), 1), start=start, off=farther, side=turn)


def tail_rows(view: PartView, plan: Plan, j: Joint) -> None:
    """The length of the tails, and the narrow face of a pin with the tail beside it. [mm]"""
    show, turn = figures(plan), view.turn
    length = Dimension(show(j.tail_length), 1)
    level(view, (-j.tail_length, 0.0), length, start=view.up(0.0), off=-24.0, side=-turn)
    if j.front_lap is not None:
        top = view.up(j.tail_board.height)
        level(view, (-j.reach, 0.0), Dimension(show(j.reach)), start=top, off=14.0, side=-turn)
    pin = next(iter(j.corner.whole_pins), None)
    if pin is None or not above(pin.tip_width, 0.0):
        return
    narrow = Dimension(f"pin {show(pin.tip_width)}", 1, bool(plan.wrong("pin", corner=j.which)))
    tip = view.across(-j.tail_length)
    upright(view, (pin.tip_low, pin.tip_high), narrow, start=tip, off=-turn * 15.0, side=-turn)


def pin_rows(view: PartView, plan: Plan, j: Joint) -> None:
    """Lap, thickness and depth of groove; half pin, tail and pin as marked at the baseline."""
    show = figures(plan)
    # Over a low front the ear of the side stands in the way.
    top = view.up(j.pin_board.height if j.front_lap is None else j.wall_height)
    turn = view.turn
    if not j.through and j.corner.tails:
        wrong = bool(plan.wrong("lap", "socket", corner=j.which))
        lap = Dimension(f"lap {show(j.lap)}", 1, wrong)
        ends = (j.socket_depth, j.pin_board.thickness)
        level(view, ends, lap, start=view.up(0.0), off=-24.0, side=turn)
    wall = "side" if j.on_ends else j.which
    deep = bool(plan.wrong("groove floor", "groove at lap", part=wall, corner=j.which))
    groove = Dimension(f"groove {show(j.tail_board.depth)}", 2, deep)
    level(view, (0.0, j.tail_board.depth), groove, start=top, off=13.0, side=-turn)
    level(
        view,
        (0.0, j.pin_board.thickness),
        Dimension(show(j.pin_board.thickness), 4),
        start=top,
        off=30.0,
        side=turn,
    )
    if not j.corner.tails:
        return
    tail, pins = j.corner.tails[0], j.corner.pins
    steps = [Dimension(f"half pin {show(tail.low)}", 2), Dimension(f"tail {show(tail.width)}", 1)]
    stops = [0.0, tail.low, tail.high]
    if len(pins) > 2:
        steps.append(Dimension(f"pin {show(pins[1].width)}", 3))
        stops.append(pins[1].high)
    upright(view, stops, *steps, start=view.across(0.0), off=-turn * 15.0, side=-turn)


def groove_words(view: PartView, plan: Plan, j: Joint) -> None:
    """What becomes of each groove at this corner, level with it. [mm]"""
    show = plan.choices.rule.show
    shown = {hole.groove for hole in j.holes}
    where = {"stopped": "stopped before", "plugged": "plugged at"}
    inside = {
        fit.groove: min(fit.margins)
        for fit in plan.design.fits
        if fit.corner == j.which and fit.margins is not None
    }
    for name, span in j.pin_board.grooves:
        if name in shown:
            continue
        if name in j.pin_end.stopped | j.tail_end.stopped:
            text = f"{name} groove\n{where[j.grooves_end]}\nthe corner"
        elif name in inside:
            text = f"{name} groove:\n{show(inside[name])} inside\nits tail"
        elif name == "lid":
            text = "lid groove, open\nover the low front"
        else:
            continue
        beside(view, j, text, height=(span.low + span.high) / 2, rank=3)


def beside(
    view: PartView, j: Joint, text: str, *, height: float, rank: int, red_at: Point | None = None
) -> None:
    """Words to the right of the pin board, level with a height or as near as there is room.

    What is wrong at a point of the page [pt] is said in red, at the end of a leader, and in any
    case. The height is above the bottom edge. [mm]
    """
    sheet = view.sheet
    x = view.across(0.0) + WORDS if view.turn < 0 else view.across(j.pin_board.thickness) + 13.0
    lines = text.count("\n")
    first = view.up(height) + lines * sheet.text * 0.61 - 0.36 * sheet.text
    shifts = [0.0]
    for i in range(1, 15):
        shifts += [i * 6.0, -i * 6.0]
    if red_at is None:
        spots = [Slot(x, first + shift) for shift in shifts]
        sheet.write(text, spots, rank=rank, kind="remark")
        return
    level = view.up(height)
    led = [Slot(x, first + shift, leader=(red_at, (x - 2.5, level + shift))) for shift in shifts]
    sheet.write(text, led, rank=rank, red=True, at=red_at)


def titles(tail_view: PartView, pin_view: PartView, j: Joint) -> None:
    """Which part each view shows, and from which side."""
    sheet = tail_view.sheet
    under = tail_view.up(0.0) - 48.0
    left = sorted((tail_view.across(-j.reach), tail_view.across(BODY / tail_view.scale)))
    sides = sorted((pin_view.across(0.0), pin_view.across(j.pin_board.thickness)))
    size = sheet.text + 0.7
    boards = (f"{j.which} end", "side")[:: 1 if j.on_ends else -1]
    for text, (x0, x1), nudge in (
        (f"{boards[0]} (tail board), inside face", left, 0.0),
        (f"{boards[1]} (pin board), end grain", sides, 30.0),
    ):
        middle = (x0 + x1) / 2
        places = [
            Slot(middle + shift, under, "center")
            for shift in (nudge, 0.0, 20.0, -20.0, 40.0, 60.0, -40.0, 80.0)
        ]
        sheet.write(text, places, rank=-1, size=size)


def line_words(view: PartView, j: Joint) -> None:
    """What the red line is, and what the hatching means."""
    sheet = view.sheet
    x, top, low = view.across(0.0), view.up(j.tail_board.height), view.up(0.0)
    inner = x + view.turn * 4.0
    side: Anchor = "left" if view.turn > 0 else "right"
    crown = view.up(j.corner.height)
    places = [Slot(x, top + 12.0, "center")]
    if j.front_lap is not None:
        places = [Slot(inner, crown - 26.0, side)]
    places += [Slot(inner, crown - 14.0, side), Slot(inner, (low + top) / 2, side)]
    sheet.write("baseline", places, rank=2, red=True)
    wood = j.corner.pins[-1] if j.corner.pins else None
    if wood is not None:
        tip = view.across(-j.tail_length) - view.turn * 5.0
        level = view.up((wood.tip_low + min(wood.tip_high, j.corner.height)) / 2)
        anchor: Anchor = "right" if view.turn > 0 else "left"
        spots = [Slot(tip, level - 3.4 + shift, anchor) for shift in (0.0, 3.0, -3.0, 6.0)]
        at = view.at(-j.tail_length, (wood.tip_low + min(wood.tip_high, j.corner.height)) / 2)
        sheet.write("waste", spots, rank=7, at=at)
