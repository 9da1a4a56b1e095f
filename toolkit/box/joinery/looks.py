"""How a layout looks: what a maker's eye weighs, each as a number.

The weights are this workbook's own judgement, no source; what they weigh are customs.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.corner import margins
from toolkit.box.customs import Customs
from toolkit.box.design import Design
from toolkit.box.frame import Span
from toolkit.box.grooves import runs
from toolkit.results import above, below

Positions = tuple[tuple[float, float], ...]  # low and high edge of each tail [mm]
MUCH = 8.0  # a tail so much too wide or too narrow is a clear fault [mm]


@dataclass(frozen=True, slots=True)
class Needs:
    """What a corner asks of its tails; the least widths at the narrow face. [mm]"""

    name: str
    height: float
    overhang: float
    grooves: tuple[tuple[str, Span], ...]
    pin_narrow: float
    half_narrow: float

    @property
    def pin(self) -> float:
        """Least pin at the baseline. [mm]"""
        return self.pin_narrow + 2 * self.overhang

    @property
    def half_pin(self) -> float:
        """Least half pin at the baseline. [mm]"""
        return self.half_narrow + self.overhang

    def room(self, tails: Positions) -> float | None:
        """The least wood beside any groove in its tail; None where a groove has no tail. [mm]"""
        rooms = []
        for _, groove in self.grooves:
            held = [
                min(groove.low - low, high - groove.high)
                for low, high in tails
                if not (above(low, groove.low) or below(high, groove.high))
            ]
            if not held:
                return None
            rooms.append(held[0])
        return min(rooms)


def needs(d: Design) -> tuple[Needs, Needs]:
    """What back and front corners of a box ask of their tails. [mm]"""
    customs, chisel = d.choices.customs, d.choices.tools.chisel
    rows = []
    for corner, board in zip((d.back, d.front), d.pin_board_thickness, strict=True):
        rows.append(
            Needs(
                name=corner.name,
                height=corner.height,
                overhang=corner.overhang,
                grooves=tuple(
                    (name, span)
                    for name, span, at in runs(d.frame, d.back, d.front)
                    if at is corner
                ),
                pin_narrow=chisel + customs.chisel_room,
                half_narrow=max(customs.half_pin_least, customs.half_pin_share * board),
            )
        )
    return rows[0], rows[1]


def room_now(d: Design) -> float | None:
    """The least wood beside any groove as the box is set out now; None with a hole. [mm]"""
    rooms = []
    for _, span, corner in runs(d.frame, d.back, d.front):
        beside = margins(corner.tails, span)
        if beside is None:
            return None
        rooms.append(min(beside))
    return min(rooms)


def tails_cost(widths: tuple[float, ...], *, pin: float, room: float, customs: Customs) -> float:
    """How far tails are from pleasing: 0 is best, 1 a clear fault. Lengths in mm."""
    least, most = customs.tail_least, customs.tail_most
    mean = sum(widths) / len(widths)
    off = sum(max(0.0, least - w, w - most) for w in widths) / len(widths) / MUCH
    cost = off + 2 * (max(widths) - min(widths)) / mean
    if len(widths) == 1:
        cost += 0.5
    else:
        cost += max(0.0, 1 - mean / pin, mean / pin - customs.tail_per_pin_most)
    if above(max(widths), customs.tail_widest):
        cost += 2
    wanted = customs.groove_margin_wanted
    return cost + (max(0.0, wanted - room) / wanted if wanted else 0.0)


def pins_cost(pin: float, half_pin: float, *, needs: tuple[Needs, Needs]) -> float:
    """How far pins are from slim, and half pins from sound: 0 is best. Lengths in mm."""
    least = max(one.pin for one in needs)
    return 0.5 * (pin - least) / least + max(0.0, pin - half_pin) / pin
