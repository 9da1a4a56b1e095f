"""Is this board ready to cut? What a look, a scale and a moisture meter say before the first saw
cut.

Only what was looked at is judged. The limits are customs, common practice without a source, and
each of them can be given another value.
"""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.results import Finding, sorted_findings
from toolkit.wood._checks import moisture_in_range
from toolkit.wood._ready_checks import Show, grain, lids, moisture, pith, settled, together, weights
from toolkit.wood.board_seen import BoardSeen
from toolkit.wood.weight import WET_WOOD_SPREAD

MOISTURE_OFF_MOST = 2.0  # custom, no source: above or below what the room brings wood to [%]
MOISTURE_SPREAD_MOST = 2.0  # custom, no source: between the wettest and the driest of a set [%]
RINGS_LEAST = 30.0  # custom, no source: of a lid, in a wood that moves much [degrees]
MOVES_MUCH = 0.3  # custom, no source: along the rings, of the width for 1 % of moisture [%]
GRAIN_LEAST = 12.0  # custom, no source: grain may leave the surface 1 in this many, not sooner


def ready_to_cut(
    boards: Sequence[BoardSeen],
    *,
    room_moisture: float,
    scale_step: float = 1.0,
    show: Show = "{:g} mm".format,
    moisture_off_most: float = MOISTURE_OFF_MOST,
    moisture_spread_most: float = MOISTURE_SPREAD_MOST,
    weight_spread_most: float = WET_WOOD_SPREAD,
    rings_least: float = RINGS_LEAST,
    moves_much: float = MOVES_MUCH,
    grain_least: float = GRAIN_LEAST,
) -> tuple[Finding, ...]:
    """What an experienced maker would say of some boards before cutting them.

    Parameters
    ----------
    boards : sequence of BoardSeen
        The boards of one box, each with a name of its own.
    room_moisture : float
        Moisture that the room brings wood to, by ``equilibrium_moisture``. [%]
    scale_step : float
        The least difference that the scale shows. [g]
    show : callable
        Writes a length of so many millimetres as the reader's rule does.
    moisture_off_most : float
        Custom: a board's moisture may differ from the room's by so much. [%]
    moisture_spread_most : float
        Custom: and the boards' from one another. [%]
    weight_spread_most : float
        Custom: pieces of one size may outweigh the lightest by so much. [%]
    rings_least : float
        Custom: least angle of the rings to the width of a lid that moves much. [degrees]
    moves_much : float
        Custom: a wood moves much above this, along its rings for 1 % of moisture, of its
        width. [%]
    grain_least : float
        Custom: the grain may run out 1 in this many, not sooner.

    Returns
    -------
    tuple of Finding
        What won't work first, then what needs care, then what is good. Nothing is said of what
        was not looked at, except that a board's moisture is not known.

    Raises
    ------
    ValueError
        Two boards have one name, a moisture is impossible, or a log is not in order.
    UnknownSpecies
        No wood of the table has the name given for a lid.

    Source
    ------
    The limits are customs: common practice, no source. Movement by the handbook (FPL-GTR-190),
    Eq. 13-2 and 13-3; the first-order settling of the log has no source.

    >>> wet = BoardSeen("board A", moisture=12.5)
    >>> [finding.code for finding in ready_to_cut([wet], room_moisture=9.3)]
    ['moisture-above-room']
    """
    moisture_in_range(room_moisture, name="room_moisture")
    names = [board.name for board in boards]
    for name in names:
        if names.count(name) > 1:
            raise ValueError(f"Two boards are called '{name}': chalk a name of its own on each.")
    found = [
        *moisture(boards, room_moisture, moisture_off_most),
        *together(boards, moisture_spread_most),
        *settled(boards, scale_step),
        *weights(boards, weight_spread_most),
        *pith(boards),
        *grain(boards, grain_least, show),
        *lids(boards, rings_least, moves_much),
    ]
    return sorted_findings(found)
