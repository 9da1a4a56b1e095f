"""One dovetailed corner: tails and pins along the height of the boards.

Heights are measured up from the bottom edge. ``low`` and ``high`` are taken at the baseline,
where a tail is narrowest; ``tip_low`` and ``tip_high`` at the tail's tip, where it is widest.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import atan, cos, degrees, inf, pi

from toolkit.box.choices import Tails
from toolkit.box.walls import Span
from toolkit.results import above, below


@dataclass(frozen=True, slots=True)
class Piece:
    """A tail or a pin: its two edges at the baseline and at the tail's tip. [mm]"""

    low: float
    high: float
    tip_low: float
    tip_high: float

    @property
    def width(self) -> float:
        """Width at the baseline. [mm]"""
        return self.high - self.low

    @property
    def tip_width(self) -> float:
        """Width at the tail's tip. [mm]"""
        return self.tip_high - self.tip_low


@dataclass(frozen=True, slots=True)
class Corner:
    """A set-out corner. Without tails, the tails asked for do not fit. [mm, slope 1 in r]"""

    name: str
    height: float
    rim: float
    tail_length: float
    slope: float
    tails: tuple[Piece, ...]
    pins: tuple[Piece, ...]
    step: float | None
    asked: int

    @property
    def overhang(self) -> float:
        """How far a tail's corner stands out beyond its baseline. [mm]"""
        return self.tail_length / self.slope

    @property
    def angle(self) -> float:
        """Slope of the tail's cheek from square. [deg]"""
        return degrees(atan(1 / self.slope))

    @property
    def whole_pins(self) -> tuple[Piece, ...]:
        """The pins that slope on both sides."""
        return self.pins[1:-1]

    @property
    def half_pins(self) -> tuple[Piece, ...]:
        """The two end pins, which slope on one side only."""
        return (self.pins[0], self.pins[-1]) if self.pins else ()

    @property
    def narrowest_pin(self) -> float:
        """Narrow face of the narrowest whole pin; endless where there is none. [mm]"""
        return min((pin.tip_width for pin in self.whole_pins), default=inf)

    def glue_area(self, tail_board_thickness: float) -> float:
        """Long-grain glue area of the cheeks of one corner. [mm²]"""
        cheek = self.tail_length / cos(self.angle * pi / 180)
        return 2 * len(self.tails) * tail_board_thickness * cheek


def equal_tails(
    height: float, *, count: int, half_pin: float, pin: float
) -> tuple[tuple[tuple[float, float], ...], float]:
    """Equal tails between two half pins, and the divider step that walks them.

    Parameters
    ----------
    height : float
        Width of the tail board. [mm]
    count : int
        Number of tails.
    half_pin, pin : float
        Widths at the baseline. [mm]

    Returns
    -------
    tuple
        Edges of each tail at the baseline, and the step. [mm]

    Source
    ------
    step = (height − 2 half pins + pin) / count: geometry.

    >>> equal_tails(64, count=3, half_pin=5, pin=6)
    (((5.0, 19.0), (25.0, 39.0), (45.0, 59.0)), 20.0)
    """
    step = (height - 2 * half_pin + pin) / count
    edges = tuple((half_pin + i * step, half_pin + i * step + step - pin) for i in range(count))
    return edges, step


def _fits(edges: tuple[tuple[float, float], ...], height: float) -> bool:
    flat = [0.0, *(edge for tail in edges for edge in tail), height]
    return all(low <= high for low, high in pairwise(flat)) and all(
        high - low > 0 for low, high in edges
    )


def lay_out(
    name: str,
    *,
    height: float,
    rim: float,
    tail_length: float,
    slope: float,
    half_pin: float,
    pin: float,
    tails: int | tuple[tuple[float, float], ...],
) -> Corner:
    """Set a corner out: a cheek stands out by tail length / slope. [mm]"""
    step: float | None
    if isinstance(tails, int):
        edges, step = equal_tails(height, count=tails, half_pin=half_pin, pin=pin)
    else:
        edges, step = tails, None
    out = tail_length / slope
    if not _fits(edges, height) or tail_length <= 0:
        return Corner(name, height, rim, tail_length, slope, (), (), None, len(edges))
    laid = tuple(Piece(low, high, low - out, high + out) for low, high in edges)
    pins = [Piece(0.0, laid[0].low, 0.0, laid[0].tip_low)]
    for under, over in pairwise(laid):
        pins.append(Piece(under.high, over.low, under.tip_high, over.tip_low))
    pins.append(Piece(laid[-1].high, rim, laid[-1].tip_high, rim))
    return Corner(name, height, rim, tail_length, slope, laid, tuple(pins), step, len(laid))


def margins(tails: tuple[Piece, ...], groove: Span) -> tuple[float, float] | None:
    """Wood between a groove and the two edges of the tail that holds it, at the baseline. [mm]

    None where no tail holds the whole groove.
    """
    for tail in tails:
        under, over = groove.low - tail.low, tail.high - groove.high
        if not below(under, 0) and not below(over, 0):
            return under, over
    return None


def choose_count(
    height: float,
    *,
    half_pin: float,
    pin: float,
    grooves: tuple[Span, ...],
    least: float,
    most: float,
    margin_least: float,
    margin: float,
) -> int:
    """How many equal tails, of 1 to 24: hidden grooves weigh most, then a pleasing width.

    Common practice, no source.
    """

    def badness(count: int) -> tuple[float, float]:
        edges, step = equal_tails(height, count=count, half_pin=half_pin, pin=pin)
        width = step - pin
        if not above(width, 0):
            return inf, inf
        tails = tuple(Piece(low, high, low, high) for low, high in edges)
        # In millimetres of ungainly tail: a hole is worth a tail forty too wide, a sliver beside
        # a groove one thirty too wide, and a groove with no wood beside it ten more.
        cost = max(0.0, least - width, width - most)
        for groove in grooves:
            room = min(margins(tails, groove) or (-inf,))
            bare = max(0.0, margin - room) / margin if margin else 0.0
            sliver = 30.0 if below(room, margin_least) else 0.0
            cost += min(40.0, sliver + 10.0 * bare)
        return cost, abs(width - (least + most) / 2)

    return min(range(1, 25), key=badness)


def settled_tails(
    tails: Tails,
    *,
    height: float,
    half_pin: float,
    pin: float,
    grooves: tuple[Span, ...],
    least: float,
    most: float,
    margin_least: float,
    margin: float,
) -> int | tuple[tuple[float, float], ...]:
    """The tails asked for, or the chosen number where none were. Lengths in mm."""
    if tails is not None:
        return tails
    return choose_count(
        height,
        half_pin=half_pin,
        pin=pin,
        grooves=grooves,
        least=least,
        most=most,
        margin_least=margin_least,
        margin=margin,
    )
