"""A layout offered to a student: how it looks, each fault as a number, and what speaks for it.

The weights are this workbook's own judgement, no source; what they weigh are customs.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.choices import Change, Choices
from toolkit.box.corner import Corner, margins
from toolkit.box.customs import NOYES, Customs
from toolkit.box.designing import Design
from toolkit.box.grooves import runs
from toolkit.box.walls import Span
from toolkit.measures import Rule
from toolkit.results import Table, above, below

EYE = f"Equal tails and pins are strongest; tails up to four times as wide look well ({NOYES})."


def tails_words(corner: Corner, rule: Rule) -> str:
    """``3 even tails of 14 mm``, or the width of each. Lengths in mm."""
    widths = [tail.width for tail in corner.tails]
    if len(widths) == 1:
        return f"one tail of {rule.exact(widths[0])}"
    if not below(min(widths), max(widths)):
        return f"{len(widths)} even tails of {rule.exact(widths[0])}"
    figures = [rule.exact(width, unit=False) for width in widths]
    return f"tails of {', '.join(figures[:-1])} and {rule.exact(widths[-1])}"


@dataclass(frozen=True, slots=True)
class Offer:
    """One layout of all four corners. ``room`` is the least wood beside any groove [mm]; ``why``
    says what makes it good, ``but`` what speaks against it; ``changes`` are for the box file, its
    lengths as numbers [mm], and ``choices`` the box with them."""

    back: Corner
    front: Corner
    room: float
    why: tuple[str, ...]
    but: tuple[str, ...]
    changes: Change
    choices: Choices
    is_now: bool

    @property
    def name(self) -> str:
        """``3 tails at the back, 2 at the front``."""
        back, front = len(self.back.tails), len(self.front.tails)
        return f"{back} {'tail' if back == 1 else 'tails'} at the back, {front} at the front"

    @property
    def sentence(self) -> str:
        """The offer and its reasons as prose."""
        words = f"{self.name}: {'; '.join(self.why)}."
        return words + (f" But {'; '.join(self.but)}." if self.but else "")


@dataclass(frozen=True, slots=True)
class RoundGrooves:
    """What setting out round the grooves found: offers, the best first, or why there is none."""

    offers: tuple[Offer, ...]
    problem: str
    hidden_now: bool

    @property
    def sentence(self) -> str:
        """The finding as prose."""
        now = (
            "As set out now, every groove lies inside a tail."
            if self.hidden_now
            else "As set out now, a groove shows."
        )
        if not self.offers:
            return f"{now} {self.problem}"
        count = len(self.offers)
        said = " ".join(offer.sentence for offer in self.offers)
        return f"{now} {count} {'layout' if count == 1 else 'layouts'} to choose from: {said} {EYE}"

    def table(self, rule: Rule) -> Table:
        """The offers side by side."""
        rows = tuple(
            (
                offer.name,
                tails_words(offer.back, rule),
                tails_words(offer.front, rule),
                rule.exact(offer.room),
                "; ".join(offer.why),
                "; ".join(offer.but),
            )
            for offer in self.offers
        )
        return Table(
            "Set out round the grooves",
            ("layout", "back", "front", "beside the grooves", "for it", "against it"),
            rows,
            note=self.problem or EYE,
            numeric=(3,),
        )


def symmetrical(corner: Corner) -> bool:
    """Whether the tails look the same from both edges of their board."""
    mirrored = [corner.height - tail.high for tail in reversed(corner.tails)]
    return all(abs(m - tail.low) < 1e-6 for m, tail in zip(mirrored, corner.tails, strict=True))


def reasons(d: Design, room: float) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What speaks for a layout and what against it. ``room`` beside the grooves. [mm]"""
    c, customs, corners = d.choices, d.choices.customs, (d.back, d.front)
    show = c.rule.exact
    widths = [tail.width for corner in corners for tail in corner.tails]
    why = [f"{tails_words(corner, c.rule)} at the {corner.name}" for corner in corners]
    but = []
    span = f"{c.rule.show(customs.tail_least, unit=False)} to {c.rule.show(customs.tail_most)}"
    if below(min(widths), customs.tail_least):
        but.append(f"the narrowest tail, {show(min(widths))}, is outside {span}")
    if above(max(widths), customs.tail_most):
        but.append(f"the widest tail, {show(max(widths))}, is outside {span}")
    if not but:
        why.append(f"each within {span}")
    if all(symmetrical(corner) for corner in corners):
        why.append("the same from both edges")
    whole = [corner for corner in corners if corner.whole_pins]
    if whole:
        ratios = [sum(t.width for t in x.tails) / len(x.tails) / c.corner.pin for x in whole]
        low, high = f"{min(ratios):.1f}", f"{max(ratios):.1f}"
        times = low if low == high else f"{low} to {high}"
        most = customs.tail_per_pin_most
        words = f"tails {times} times as wide as pins"
        (why if not above(max(ratios), most) and min(ratios) >= 1 else but).append(words)
        narrow = min(corner.narrowest_pin for corner in whole)
        why.append(
            f"pins of {show(narrow)} at their narrow face let the {show(c.tools.chisel)} chisel in"
        )
    beside = f"at least {show(room)} of tail beside every groove"
    if below(room, customs.groove_margin_wanted):
        but.append(f"only {show(room)} of tail beside a groove")
    else:
        why.append(beside)
    if whole and below(c.corner.half_pin, c.corner.pin):
        off = c.corner.pin - c.corner.half_pin
        but.append(f"the last divider mark falls {show(off)} off the edge, on a scrap")
    elif whole:
        why.append("half pins as wide as pins")
    if c.corner.joint == "through":
        but.append("in a through joint each groove comes out at a tail's tip: stop it or plug it")
    return tuple(why), tuple(but)


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
