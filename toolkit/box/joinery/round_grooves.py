"""Set out round my grooves: layouts in which every groove lies wholly inside a tail."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from toolkit.box.choices import Change, Choices
from toolkit.box.corner import Corner, equal_tails
from toolkit.box.customs import Customs
from toolkit.box.designing import Design, design
from toolkit.box.joinery.offers import (
    Needs,
    Offer,
    Positions,
    RoundGrooves,
    needs,
    pins_cost,
    reasons,
    room_now,
    tails_cost,
)
from toolkit.measures import Rule
from toolkit.results import above, below

MOST_TAILS = 10
TRIED = 8  # widths of pin, and of half pin, that are tried from the least upwards
WORSE = 1.0  # an offer so much further from pleasing than the best is not made
OFFERS = 3

_Way = tuple[int | Positions, Positions]


@dataclass(frozen=True, slots=True)
class _Laid:
    """One corner laid out in one way."""

    cost: float
    tails: int | Positions
    mean: float


@dataclass(frozen=True, slots=True)
class _Layout:
    """All corners laid out in one way."""

    cost: float
    counts: tuple[int, int]
    changes: Change


def _pins(rule: Rule, least: float) -> list[float]:
    """Pins to try, from the least up, on the coarser marks of a rule. [mm]"""
    first, mark = rule.round(least, fineness="sizes", direction="up"), rule.mark("sizes")
    return [rule.round(first + i * mark, fineness="sizes") for i in range(TRIED)]


def _half_pins(rule: Rule, least: float, most: float) -> list[float]:
    """Half pins to try: the least on the finer marks, since room is scarce, then as pins. [mm]"""
    widths = {rule.round(least, fineness="joints", direction="up"), *_pins(rule, least)}
    return sorted(width for width in widths if not above(width, most))


def _uneven(height: float, half_pin: float, pin: float, count: int, outer: float) -> Positions:
    """Outer tails of one width, the rest sharing what is left; of two, the lower is given."""
    room = height - 2 * half_pin - (count - 1) * pin
    rest = (room - outer) if count == 2 else (room - 2 * outer) / (count - 2)
    widths = [outer, rest] if count == 2 else [outer, *[rest] * (count - 2), outer]
    at, edges = half_pin, []
    for width in widths:
        edges.append((round(at, 9), round(at + width, 9)))
        at += width + pin
    return tuple(edges)


def _ways(need: Needs, rule: Rule, half_pin: float, pin: float, beside: float) -> Iterator[_Way]:
    """Even tails of every number; and tails whose outer ones just hold their grooves."""
    outer = {g.high + beside - half_pin for _, g in need.grooves}
    outer |= {need.height - g.low + beside - half_pin for _, g in need.grooves}
    marks = sorted({rule.round(width, fineness="sizes", direction="up") for width in outer})
    for count in range(1, MOST_TAILS + 1):
        edges, step = equal_tails(need.height, count=count, half_pin=half_pin, pin=pin)
        if not above(step - pin, 0.0):
            return
        yield count, edges
        for width in marks if count > 1 else ():
            edges = _uneven(need.height, half_pin, pin, count, width)
            yield edges, edges


def _best(d: Design, need: Needs, half_pin: float, pin: float) -> dict[int, _Laid]:
    """The best-looking layout of a corner for each number of tails that hides its grooves."""
    customs, best = d.choices.customs, dict[int, _Laid]()
    beside = customs.groove_margin_wanted
    for tails, edges in _ways(need, d.choices.rule, half_pin, pin, beside):
        widths = tuple(high - low for low, high in edges)
        if not above(min(widths), 0.0):
            continue
        room = need.room(edges)
        if room is None or below(room, customs.groove_margin_least):
            continue
        cost = tails_cost(widths, pin=pin, room=room, customs=customs)
        known = best.get(len(edges))
        if known is None or cost < known.cost - 1e-9:
            best[len(edges)] = _Laid(cost, tails, sum(widths) / len(widths))
    return best


def _same(one: Corner, other: Corner) -> bool:
    """Whether two corners have their tails at the same places, but for rounding."""
    edges = [[(t.low, t.high) for t in corner.tails] for corner in (one, other)]
    return len(edges[0]) == len(edges[1]) and all(
        abs(a - b) < 1e-6
        for first, second in zip(*edges, strict=True)
        for a, b in zip(first, second, strict=True)
    )


def _room_for_half_pins(need: tuple[Needs, Needs], customs: Customs) -> float:
    """The widest half pin that leaves every groove the least wood beside it. [mm]"""
    return min(
        min(groove.low, one.height - groove.high) - customs.groove_margin_least
        for one in need
        for _, groove in one.grooves
    )


def _layouts(d: Design, need: tuple[Needs, Needs]) -> list[_Layout]:
    """Every layout that hides the grooves, the best-looking first."""
    rule, least = d.choices.rule, max(one.pin for one in need)
    half = max(one.half_pin for one in need)
    half_pins = _half_pins(rule, half, _room_for_half_pins(need, d.choices.customs))
    found = []
    for half_pin, pin in product(half_pins, _pins(rule, least)):
        back, front = (_best(d, one, half_pin, pin) for one in need)
        own = pins_cost(pin, half_pin, needs=need)
        for (n, one), (m, other) in product(back.items(), front.items()):
            kin = abs(one.mean - other.mean) / max(one.mean, other.mean)
            changes = {
                "corner.tails_back": one.tails,
                "corner.tails_front": other.tails,
                "corner.pin": pin,
                "corner.half_pin": half_pin,
            }
            found.append(_Layout(one.cost + other.cost + kin + own, (n, m), changes))
    return sorted(found, key=lambda row: row.cost)


def _picked(layouts: list[_Layout]) -> list[_Layout]:
    """The best, then the next best that really differ: in the number of tails, else in pins."""
    picked: list[_Layout] = []
    for differs in ("counts", "pins"):
        for row in layouts:
            if len(picked) == OFFERS or row.cost > layouts[0].cost + WORSE:
                break
            alike = [one for one in picked if one.counts == row.counts]
            if differs == "pins" and len(picked) < 2 and alike:
                pin = row.changes["corner.pin"]
                alike = [one for one in alike if abs(one.changes["corner.pin"] - pin) < 1]
            if not alike:
                picked.append(row)
    return sorted(picked, key=lambda row: row.cost)


def _problem(d: Design, need: tuple[Needs, Needs]) -> str:
    """Why no layout hides the grooves: which one lies too near which edge."""
    show, customs = d.choices.rule.exact, d.choices.customs
    half = d.choices.rule.round(max(one.half_pin for one in need), direction="up")
    wanted = half + customs.groove_margin_least
    near: dict[str, None] = {}
    for one in need:
        for name, groove in one.grooves:
            upper = "make the box deeper" if name == "bottom" else "raise groove.top_edge"
            for side, has, do in (
                ("bottom", groove.low, "raise groove.bottom_edge"),
                ("top", one.height - groove.high, upper),
            ):
                if below(has, wanted):
                    board = "low front" if one.name == "front" and side == "top" else "wall"
                    words = f"{show(has)} from the {side} edge of the {board} ({do})"
                    near[f"the {name} groove lies {words}"] = None
    return (
        f"No layout hides every groove: the thinnest half pin that will not split, {show(half)}, "
        f"and {show(customs.groove_margin_least)} of tail beside the groove need {show(wanted)}, "
        f"but {'; '.join(near)}."
    )


def set_out_round_grooves(choices: Choices) -> RoundGrooves:
    """Layouts in which every groove lies wholly inside a tail, the best-looking two or three.

    The tails, pins and half pins that the box has now are not kept. A tail must hold a groove at
    the baseline, where it is narrowest; what looks well is this workbook's own judgement.
    Where a groove lies too near an edge there is no offer, and the reason.
    """
    d = design(choices)
    if min(d.back.tail_length, d.front.tail_length) <= 0:
        return RoundGrooves(
            (), "There is no tail to set out: the lap takes the whole board.", False
        )
    need, room = needs(d), room_now(d)
    customs = d.choices.customs
    hidden = room is not None and not below(room, customs.groove_margin_least)
    offers = []
    for row in _picked(_layouts(d, need)):
        changed_box = choices.having(row.changes)
        laid = design(changed_box)
        beside = room_now(laid)
        if beside is None:
            continue
        why, but = reasons(laid, beside)
        now = _same(laid.back, d.back) and _same(laid.front, d.front)
        offers.append(Offer(laid.back, laid.front, beside, why, but, row.changes, changed_box, now))
    return RoundGrooves(tuple(offers), "" if offers else _problem(d, need), hidden)
