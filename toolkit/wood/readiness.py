"""Is this board ready to cut? What a meter, a scale and an eye say before the first saw cut.

Only what was looked at is judged. The limits are customs: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from toolkit.results import (
    CUSTOM,
    Finding,
    Findings,
    above,
    above_zero,
    below,
    listed,
    sorted_findings,
)
from toolkit.wood._checks import moisture_in_range

MOISTURE_OFF_MOST = 2.0  # custom: above or below what the room brings wood to [%]
MOISTURE_SPREAD_MOST = 2.0  # custom: between the wettest and the driest of a set [%]
WEIGHT_SPREAD_MOST = 15.0  # custom: pieces of one size that differ by more may be wet [%]
GRAIN_LEAST = 12.0  # custom: grain may leave the surface 1 in this many, not sooner
WEEKS_IN_STICK = 2  # custom: until thin boards have come to their room


@dataclass(frozen=True, slots=True)
class BoardSeen:
    """What was seen and measured of a board or a rough part; None for what was not looked at.

    ``moisture`` by a meter [%]; ``weight`` of pieces cut to one size [g]; the ``grain`` runs out of
    the surface 1 in so many, infinite for straight grain.
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

    ``room_moisture`` is what the room brings wood to. [%] Nothing is said of what was not looked
    at, except that a board's moisture is not known.
    """
    moisture_in_range(room_moisture, name="room_moisture")
    names = [board.name for board in boards]
    for name in names:
        if names.count(name) > 1:
            raise ValueError(f"Two boards are called '{name}': chalk a name of its own on each.")
    found = Findings("wood/findings.csv", cite=lambda words: f"{CUSTOM} ({words})")
    _moisture(found, boards, room_moisture)
    _together(found, boards)
    _weights(found, boards)
    _grain(found, boards)
    return sorted_findings(found)


def _listed(boards: Sequence[BoardSeen]) -> str:
    return listed(board.name for board in boards)


def _span(values: Sequence[float], unit: str) -> str:
    low, high = (f"{value:.1f}" for value in (min(values), max(values)))
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def _moisture(found: Findings, boards: Sequence[BoardSeen], room: float) -> None:
    """Each board against the room."""
    most, weeks = MOISTURE_OFF_MOST, WEEKS_IN_STICK
    custom = f"{most:g} points of moisture, {weeks} weeks in stick"
    fine: dict[str, float] = {}
    for board in boards:
        off = 0.0 if board.moisture is None else board.moisture - room
        if above(abs(off), most):
            name = "moisture-above-room" if off > 0 else "moisture-below-room"
            found.say(
                name,
                where=board.name,
                custom=custom,
                board=board,
                off=abs(off),
                room=room,
                weeks=str(weeks),
            )
        elif board.moisture is not None:
            fine[board.name] = board.moisture
    if fine:
        span, where = _span([*fine.values()], "%"), listed(fine)
        found.say("good-moisture", where=where, custom=custom, span=span, most=most, room=room)
    if unknown := [board for board in boards if board.moisture is None]:
        found.say("moisture-unknown", where=_listed(unknown))


def _together(found: Findings, boards: Sequence[BoardSeen]) -> None:
    """The wettest board of a set against the driest."""
    metered = [(board.moisture, board) for board in boards if board.moisture is not None]
    if len(metered) < 2:
        return
    (low, dry), (high, wet) = (find(metered, key=lambda row: row[0]) for find in (min, max))
    most, apart = MOISTURE_SPREAD_MOST, high - low
    name, named = "good-set", [board for _, board in metered]
    if above(apart, most):
        name, named = "boards-disagree", [dry, wet]
    values: dict[str, Any] = {"low": low, "high": high, "apart": apart, "most": most}
    found.say(name, where=_listed(named), custom=f"{most:g} points of moisture", **values)


def _weights(found: Findings, boards: Sequence[BoardSeen]) -> None:
    """Pieces of one size against the lightest of them."""
    weighed = [(board.weight, board.name) for board in boards if board.weight is not None]
    if len(weighed) < 2:
        return
    custom = f"{WEIGHT_SPREAD_MOST:g} % of weight"
    light = min(weight for weight, _ in weighed)
    more = [100 * (weight / light - 1) for weight, _ in weighed]
    if not above(max(more), WEIGHT_SPREAD_MOST):
        found.say("good-weights", custom=custom, count=str(len(weighed)), more=max(more))
        return
    for (weight, name), over in zip(weighed, more, strict=True):
        if above(over, WEIGHT_SPREAD_MOST):
            found.say(
                "heavy-piece", where=name, custom=custom, weight=weight, more=over, light=light
            )


def _grain(found: Findings, boards: Sequence[BoardSeen]) -> None:
    """Grain that leaves the wood too soon."""
    custom, fine = f"1 in {GRAIN_LEAST:g}", {}
    for board in boards:
        if board.grain is None:
            continue
        if below(board.grain, GRAIN_LEAST):
            found.say(
                "grain-runs-out", where=board.name, custom=custom, board=board, least=GRAIN_LEAST
            )
        else:
            fine[board.name] = board.grain
    if fine:
        worst = min(fine.values())
        name = "good-grain, straight" if worst == math.inf else "good-grain"
        found.say(name, where=listed(fine), custom=custom, worst=worst, least=GRAIN_LEAST)
