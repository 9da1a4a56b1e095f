"""How much wood has to be missing from a box, worked out with pencil and paper.

Nothing here asks a solid. The walls of a box fill its outline but for the space inside, the
grooves and the opening that the lid leaves by; a corner is filled but for its grooves.
"""

from collections.abc import Callable
from itertools import pairwise

from tests.oracle.reading import Corner, Facts, Rows
from tests.oracle.shapes import Pair

Line = Callable[[float], float]


def _line(u0: float, v0: float, u1: float, v1: float) -> Line:
    return lambda u: v0 + (v1 - v0) * (u - u0) / (u1 - u0)


def _meeting(one: Line, other: Line, run: Pair) -> list[float]:
    """Where two lines cross inside a run."""
    start, end = (one(u) - other(u) for u in run)
    if start * end >= 0:
        return []
    return [run[0] + (run[1] - run[0]) * start / (start - end)]


def shared_area(rows: Rows, tail_length: float, groove: Pair, run: Pair) -> float:
    """Area of a groove's track over tails or pins, seen square to the face. [mm²]

    ``run`` is measured from the tips towards the baseline. The height that track and tail share
    changes in straight lines, so that the trapezium rule between the bends is exact.
    """
    if run[1] <= run[0]:
        return 0.0
    floor, roof = _line(0, groove[0], 1, groove[0]), _line(0, groove[1], 1, groove[1])
    total = 0.0
    for row in rows:
        low = _line(0.0, row["tip_low"], tail_length, row["low"])
        high = _line(0.0, row["tip_high"], tail_length, row["high"])
        edges = (floor, roof, low, high)
        bends = {*run}
        for i, one in enumerate(edges):
            for other in edges[i + 1 :]:
                bends.update(_meeting(one, other, run))
        stops = sorted(bends)

        def height(u: float, low: Line = low, high: Line = high) -> float:
            return max(0.0, min(high(u), roof(u)) - max(low(u), floor(u)))

        for u, v in pairwise(stops):
            total += (v - u) * (height(u) + height(v)) / 2
    return total


def corner_gap(f: Facts, corner: Corner, *, groove: Pair, tail_board: float) -> float:
    """Volume missing from one corner where one groove runs into it. [mm³]

    In a tail the groove keeps to the inside of the tail board; in a pin it comes as near to the
    inside of the pin board, through the whole thickness of the tail board.
    """
    length, deep = corner.tail_length, f.depth
    inner = (max(0.0, length - deep), length)
    in_tails = inner if not f.ploughed_through else (0.0, length)
    through_pins = deep if not f.ploughed_through else tail_board
    return deep * shared_area(corner.tails, length, groove, in_tails) + through_pins * shared_area(
        corner.pins, length, groove, inner
    )


def corner_gaps(f: Facts) -> tuple[float, float]:
    """Volume missing from one back corner, and from one front corner. [mm³]"""
    side, back, front = f.planned
    boards = (back, front) if f.tails_on == "ends" else (side, side)
    gap_back = sum(
        corner_gap(f, f.back_corner, groove=span, tail_board=boards[0])
        for span in f.grooves.values()
    )
    gap_front = corner_gap(f, f.front_corner, groove=f.grooves["bottom"], tail_board=boards[1])
    if f.sliding:
        low, high = f.grooves["lid"]
        gap_front += f.depth * (high - low) * front
    return gap_back, gap_front


def wood_in_walls(f: Facts) -> float:
    """Volume of the four walls together. [mm³]"""
    side, back, front = f.planned
    long, wide = f.length - back - front, f.width - 2 * side
    total = (f.length * f.width - long * wide) * f.height
    total -= 2 * sum(corner_gaps(f))
    low, high = f.grooves["bottom"]
    total -= f.depth * (high - low) * 2 * (long + wide)
    if f.sliding:
        low, high = f.grooves["lid"]
        total -= f.depth * (high - low) * (2 * long + wide)
        total -= front * wide * (f.height - f.low_front)
    return total
