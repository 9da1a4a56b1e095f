"""Is this board ready to cut? What a meter, a scale and an eye say before the first saw cut.

Only what was looked at is judged. The limits are customs: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from toolkit.results import CUSTOM, Finding, above, above_zero, below, listed, sorted_findings
from toolkit.wood._checks import moisture_in_range

MOISTURE_OFF_MOST = 2.0  # custom: above or below what the room brings wood to [%]
MOISTURE_SPREAD_MOST = 2.0  # custom: between the wettest and the driest of a set [%]
WEIGHT_SPREAD_MOST = 15.0  # custom: pieces of one size that differ by more may be wet [%]
GRAIN_LEAST = 12.0  # custom: grain may leave the surface 1 in this many, not sooner
WEEKS_IN_STICK = 2  # custom: until thin boards have come to their room


@dataclass(frozen=True, slots=True)
class BoardSeen:
    """What was seen and measured of a board or a rough part; None for what was not looked at.

    Attributes
    ----------
    name : str
        What is chalked on it.
    moisture : float or None
        By a moisture meter. [%]
    weight : float or None
        On the scale, of pieces cut to one size. [g]
    grain : float or None
        The grain runs out of the face or edge 1 in this many; infinite for straight grain.
    """

    name: str
    moisture: float | None = None
    weight: float | None = None
    grain: float | None = None

    def __post_init__(self) -> None:
        """Refuse what cannot have been measured, naming the board."""
        if self.moisture is not None:
            moisture_in_range(self.moisture, name=f"{self.name}: its moisture")
        if self.weight is not None:
            above_zero(self.weight, name=f"{self.name}: its weight", unit="g", example="440")
        if self.grain is not None and not self.grain > 0:
            raise ValueError(
                f"{self.name}: its grain was given as 1 in {self.grain:g}; count how many "
                "millimetres along it rises by one, for example 15."
            )


def ready_to_cut(boards: Sequence[BoardSeen], *, room_moisture: float) -> tuple[Finding, ...]:
    """What an experienced maker would say of some boards before cutting them, the worst first.

    Nothing is said of what was not looked at, except that a board's moisture is not known.

    Parameters
    ----------
    boards : sequence of BoardSeen
        The boards of one box, each with a name of its own.
    room_moisture : float
        Moisture that the room brings wood to, by ``equilibrium_moisture``. [%]

    Raises
    ------
    ValueError
        Two boards have one name, or a moisture is impossible.

    Source
    ------
    The limits are customs: common practice, no source.

    >>> wet = BoardSeen("board A", moisture=12.5)
    >>> [finding.code for finding in ready_to_cut([wet], room_moisture=9.3)]
    ['moisture-above-room']
    """
    moisture_in_range(room_moisture, name="room_moisture")
    names = [board.name for board in boards]
    for name in names:
        if names.count(name) > 1:
            raise ValueError(f"Two boards are called '{name}': chalk a name of its own on each.")
    return sorted_findings(
        [
            *_moisture(boards, room_moisture),
            *_together(boards),
            *_weights(boards),
            *_grain(boards),
        ]
    )


def _listed(boards: Sequence[BoardSeen]) -> str:
    return listed(board.name for board in boards)


def _span(values: Sequence[float], unit: str) -> str:
    low, high = (f"{value:.1f}" for value in (min(values), max(values)))
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def _custom(words: str) -> str:
    return f"{CUSTOM} ({words})"


def _moisture(boards: Sequence[BoardSeen], room: float) -> Iterator[Finding]:
    """Each board against the room."""
    fine: list[float] = []
    names: list[str] = []
    most = MOISTURE_OFF_MOST
    source = _custom(f"{most:g} points of moisture, {WEEKS_IN_STICK} weeks in stick")
    for board in boards:
        if board.moisture is None:
            continue
        off = board.moisture - room
        if not above(abs(off), most):
            fine.append(board.moisture)
            names.append(board.name)
            continue
        wet = off > 0
        yield Finding(
            "care",
            "moisture-above-room" if wet else "moisture-below-room",
            board.name,
            f"it holds {board.moisture:.1f} % moisture, {abs(off):.3g} points "
            f"{'more' if wet else 'less'} than the {room:.1f} % that this room brings wood to: "
            f"what is cut now will {'shrink' if wet else 'swell'} later.",
            f"Let it settle: about {WEEKS_IN_STICK} weeks in stick, air all round, then measure "
            "it again.",
            source,
        )
    if fine:
        message = (
            f"{_span(fine, '%')} moisture, within {most:g} points of the {room:.1f} % that "
            "this room brings wood to."
        )
        yield Finding("good", "good-moisture", listed(names), message, "", source)
    if unknown := [board for board in boards if board.moisture is None]:
        yield Finding(
            "care",
            "moisture-unknown",
            _listed(unknown),
            "how wet it is has not been measured.",
            "Hold a moisture meter to it, or weigh it every few days until the weight stays.",
            CUSTOM,
        )


def _together(boards: Sequence[BoardSeen]) -> Iterator[Finding]:
    """The wettest board of a set against the driest."""
    metered = [(board.moisture, board) for board in boards if board.moisture is not None]
    if len(metered) < 2:
        return
    (low, dry), (high, wet) = (find(metered, key=lambda row: row[0]) for find in (min, max))
    most = MOISTURE_SPREAD_MOST
    source = _custom(f"{most:g} points of moisture")
    if above(high - low, most):
        yield Finding(
            "care",
            "boards-disagree",
            _listed([dry, wet]),
            f"{low:.1f} % and {high:.1f} % moisture, {high - low:.3g} points apart: these will "
            "disagree by spring.",
            f"Let all of them settle in one stack until they agree within {most:g} points.",
            source,
        )
        return
    message = f"at most {high - low:.2g} points of moisture apart: they will move alike."
    yield Finding("good", "good-set", _listed([board for _, board in metered]), message, "", source)


def _weights(boards: Sequence[BoardSeen]) -> Iterator[Finding]:
    """Pieces of one size against the lightest of them."""
    weighed = [(board.weight, board.name) for board in boards if board.weight is not None]
    if len(weighed) < 2:
        return
    source = _custom(f"{WEIGHT_SPREAD_MOST:g} % of weight")
    light = min(weight for weight, _ in weighed)
    more = {name: 100 * (weight / light - 1) for weight, name in weighed}
    heavy = [row for row in weighed if above(more[row[1]], WEIGHT_SPREAD_MOST)]
    for weight, name in heavy:
        yield Finding(
            "care",
            "heavy-piece",
            name,
            f"it weighs {weight:g} g, {more[name]:.3g} % more than the "
            f"lightest alike ({light:g} g): perhaps wet rather than dense.",
            "Let it settle and weigh it again: a weight that stays is dense wood.",
            source,
        )
    if not heavy:
        message = f"{len(weighed)} pieces of one size agree within {max(more.values()):.2g} %."
        yield Finding("good", "good-weights", "alike", message, "", source)


def _grain(boards: Sequence[BoardSeen]) -> Iterator[Finding]:
    """Grain that leaves the wood too soon."""
    source, fine = _custom(f"1 in {GRAIN_LEAST:g}"), []
    for board in boards:
        if board.grain is None:
            continue
        if not below(board.grain, GRAIN_LEAST):
            fine.append((board.grain, board.name))
            continue
        yield Finding(
            "care",
            "grain-runs-out",
            board.name,
            f"its grain runs out 1 in {board.grain:g}. It tears out from one end and "
            "breaks sooner.",
            f"Take walls from straighter wood, 1 in {GRAIN_LEAST:g} or less steep, or saw them "
            "along the grain instead of along the edge.",
            source,
        )
    if fine:
        worst = min(grain for grain, _ in fine)
        message = f"the grain runs out 1 in {worst:g} at worst; 1 in {GRAIN_LEAST:g} will do."
        if worst == math.inf:
            message = "straight grain."
        yield Finding("good", "good-grain", listed(name for _, name in fine), message, "", source)
