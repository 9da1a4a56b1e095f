"""The checks behind "is this board ready to cut?", one for each thing that was looked at."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from toolkit.results import CUSTOM, GEOMETRY, Finding, above, below
from toolkit.wood import _names
from toolkit.wood.board_seen import BoardSeen
from toolkit.wood.coefficients import coefficient_from_shrinkage
from toolkit.wood.settling import settling
from toolkit.wood.species import Species
from toolkit.wood.species import species as find_species
from toolkit.wood.weight import weight_spread

WEEKS_IN_STICK = 2  # custom, no source: until thin boards have come to their room

Show = Callable[[float], str]


def _listed(boards: Sequence[BoardSeen]) -> str:
    return _names.listed((board.name for board in boards), last_word="and")


def _span(values: Sequence[float], unit: str) -> str:
    low, high = (f"{value:.1f}" for value in (min(values), max(values)))
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def _custom(words: str) -> str:
    return f"{CUSTOM} ({words})"


def moisture(boards: Sequence[BoardSeen], room: float, most: float) -> Iterator[Finding]:
    """Each board against the room."""
    fine: list[BoardSeen] = []
    unknown = [board for board in boards if board.moisture is None and not board.log]
    source = _custom(f"{most:g} points of moisture, {WEEKS_IN_STICK} weeks in stick")
    for board in boards:
        if board.moisture is None:
            continue
        off = board.moisture - room
        if not above(abs(off), most):
            fine.append(board)
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
        values = [board.moisture for board in fine if board.moisture is not None]
        message = (
            f"{_span(values, '%')} moisture, within {most:g} points of the {room:.1f} % that "
            "this room brings wood to."
        )
        yield Finding("good", "good-moisture", _listed(fine), message, "", source)
    if unknown:
        yield Finding(
            "care",
            "moisture-unknown",
            _listed(unknown),
            "how wet it is has not been measured.",
            "Hold a moisture meter to it, or weigh it every few days until the weight stays.",
            CUSTOM,
        )


def together(boards: Sequence[BoardSeen], most: float) -> Iterator[Finding]:
    """The wettest board of a set against the driest."""
    metered = [(board.moisture, board) for board in boards if board.moisture is not None]
    if len(metered) < 2:
        return
    (low, dry), (high, wet) = (find(metered, key=lambda row: row[0]) for find in (min, max))
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


def settled(boards: Sequence[BoardSeen], scale_step: float) -> Iterator[Finding]:
    """Each log of weights, by whether it is level yet."""
    codes = {True: "good-settled", False: "not-settled", None: "settling-unknown"}
    words = {True: "settled", False: "not settled yet", None: "too early to say"}
    for board in boards:
        if not board.log:
            continue
        told = settling(board.log, scale_step=scale_step)
        yield Finding(
            "good" if told.settled else "care",
            codes[told.settled],
            board.name,
            f"{words[told.settled]}: {told.reason}.",
            "" if told.settled else "Leave it in stick and weigh it again in a few days.",
            "first-order settling, no source; its limits are customs",
        )


def weights(boards: Sequence[BoardSeen], most: float) -> Iterator[Finding]:
    """Pieces of one size against the lightest of them."""
    source = _custom(f"{most:g} % of weight")
    for size in dict.fromkeys(board.size for board in boards if board.size):
        alike = [(b.weight, b) for b in boards if b.size == size and b.weight is not None]
        if len(alike) < 2:
            continue
        light = min(weight for weight, _ in alike)
        spread = weight_spread([weight for weight, _ in alike], limit=most)
        for weight, board in (alike[place] for place in spread.suspects):
            yield Finding(
                "care",
                "heavy-piece",
                board.name,
                f"it weighs {weight:g} g, {100 * (weight / light - 1):.3g} % more than the "
                f"lightest {size} ({light:g} g): perhaps wet rather than dense.",
                "Let it settle and weigh it again: a weight that stays is dense wood.",
                source,
            )
        if not spread.suspects:
            message = f"{len(alike)} pieces of one size agree within {spread.spread:.2g} %."
            yield Finding("good", "good-weights", size, message, "", source)


def pith(boards: Sequence[BoardSeen]) -> Iterator[Finding]:
    """Rings closed round the pith cannot shrink without splitting."""
    for board in boards:
        if board.pith:
            yield Finding(
                "wont_work",
                "pith-in-piece",
                board.name,
                "the pith is inside it. Wood shrinks more round the rings than towards the pith, "
                "and a closed ring can only do so by splitting.",
                "Saw it so that the pith falls into the waste, or take another piece.",
                f"{GEOMETRY}, with the shrinkages of Wood Handbook GTR-190, Table 4-3",
            )
    free = [board for board in boards if board.pith is False]
    if free:
        yield Finding("good", "good-pith", _listed(free), "no pith inside.", "", GEOMETRY)


def grain(boards: Sequence[BoardSeen], least: float, show: Show) -> Iterator[Finding]:
    """Grain that leaves the wood too soon."""
    source, fine = _custom(f"1 in {least:g}"), []
    for board in boards:
        if board.grain is None:
            continue
        if not below(board.grain, least):
            fine.append(board)
            continue
        after = ""
        if board.thickness is not None:
            after = (
                f": a fibre goes right through {show(board.thickness)} of wood in "
                f"{show(board.grain * board.thickness)}"
            )
        yield Finding(
            "care",
            "grain-runs-out",
            board.name,
            f"its grain runs out 1 in {board.grain:g}{after}. It tears out from one end and "
            "breaks sooner.",
            f"Take walls from straighter wood, 1 in {least:g} or less steep, or saw them along "
            "the grain instead of along the edge.",
            source,
        )
    if fine:
        worst = min(board.grain for board in fine if board.grain is not None)
        message = f"the grain runs out 1 in {worst:g} at worst; 1 in {least:g} will do."
        if worst == math.inf:
            message = "straight grain."
        yield Finding("good", "good-grain", _listed(fine), message, "", source)


def lids(boards: Sequence[BoardSeen], least: float, much: float) -> Iterator[Finding]:
    """Flat-sawn lids of a wood that moves much."""
    return (_lid(board, least, much) for board in boards if board.lid_rings is not None)


def _lid(board: BoardSeen, least: float, much: float) -> Finding:
    wood, rings = find_species(board.species), board.lid_rings
    assert rings is not None
    moves = _along_the_rings(wood)
    source = _custom(f"{least:g}° in a wood that moves over {much:g} %")
    where = f"lid from {board.name}"
    told = (
        f"rings at {rings:g}° to the width; along its rings {wood.name} moves {moves:.2f} % of "
        "its width for each point of moisture"
    )
    if not below(rings, least):
        told += f"; {least:g}° or more is good for a lid."
        return Finding("good", "good-lid-rings", where, told, "", source)
    if not above(moves, much):
        told += ", little enough for a lid with flat rings."
        return Finding("good", "good-lid-rings", where, told, "", source)
    return Finding(
        "care",
        "lid-rings-flat",
        where,
        f"{told}, which is much for a lid that has to slide in every season.",
        f"Ask for rift or quarter-sawn wood, rings at {least:g}° or more, or raise the clearance.",
        source,
    )


def _along_the_rings(wood: Species) -> float:
    """Movement along the rings for 1 % of moisture, about 10 % of it. [% of the width]"""
    shrinkage = wood.shrinkage_tangential
    if shrinkage is None:
        raise ValueError(f"The table has no shrinkage for {wood.name}: choose another wood.")
    return 100 * coefficient_from_shrinkage(shrinkage, fibre_saturation=wood.fibre_saturation)
