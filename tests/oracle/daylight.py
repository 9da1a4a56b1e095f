"""Holes in the outside of a box, found by looking at the solids from outside. Lengths in mm."""

from typing import NamedTuple

from manifold3d import CrossSection, JoinType, OpType

from tests.oracle.reading import Facts
from tests.oracle.shapes import Pair
from tests.oracle.solids import Solids

SKIN = 1e-4  # mm under the surface where the walls are cut to look at them
SPECK = 1e-3  # mm; the seam between two boards that touch is far thinner
HAIR = 0.01  # mm; a lower opening than this is a hair


class Opening(NamedTuple):
    """A hole in an outer face: whose corner, where from and to, how wide the other way. [mm]"""

    face: str
    corner: str
    groove: str
    low: float
    high: float
    wide: float


def _rectangle(across: Pair, z: Pair) -> CrossSection:
    (left, right), (low, high) = across, z
    return CrossSection([[(left, low), (right, low), (right, high), (left, high)]])


def _wood(s: Solids, axis: str, at: float) -> CrossSection:
    """The walls cut square to an axis: across from the left, height upwards."""
    # Turned so that the axis looks up, which is the only way that a solid can be sliced.
    turn = (0.0, -90.0, 0.0) if axis == "x" else (90.0, 0.0, 0.0)
    cuts = [solid.rotate(turn).slice(at) for solid in s.walls.values()]
    # Turned so, z points to the left where y pointed up, or down where x points to the right.
    upright = [[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0]] if axis == "x" else [[1.0, 0, 0], [0, -1.0, 0]]
    return CrossSection.batch_boolean(cuts, OpType.Add).transform(upright)


def _meant(f: Facts) -> list[CrossSection]:
    """What the lid is meant to leave open in the front."""
    if not f.sliding:
        return []
    side, lid = f.planned[0], f.grooves["lid"]
    return [
        _rectangle((side, f.width - side), (f.low_front, f.height)),
        _rectangle((side - f.depth, side), lid),
        _rectangle((f.width - side, f.width - side + f.depth), lid),
    ]


def _seen(s: Solids, axis: str, at: float, meant: list[CrossSection]) -> list[tuple[Pair, Pair]]:
    """Openings in one face, as (across, height)."""
    f = s.facts
    face = _rectangle((0.0, f.width if axis == "x" else f.length), (0.0, f.height))
    light = CrossSection.batch_boolean([face, _wood(s, axis, at), *meant], OpType.Subtract)
    found = []
    for part in light.decompose():
        # Seams first by their area: a seam alone is too thin to be drawn in and out again, by
        # which an opening loses the seams that run into it.
        if part.area() < SPECK**2 * 10:
            continue
        clear = part.offset(-SPECK, JoinType.Miter).offset(SPECK, JoinType.Miter)
        if not clear.is_empty():
            found += [piece.bounds() for piece in clear.decompose()]
    return [((left, right), (low, high)) for left, low, right, high in found]


def _groove(f: Facts, z: Pair) -> str:
    """The groove in whose height an opening lies; none, if it lies in no groove's."""
    for name, (low, high) in f.grooves.items():
        if low - SPECK < z[0] and z[1] < high + SPECK:
            return name
    return ""


def openings(s: Solids) -> list[Opening]:
    """Each opening of the left half of the walls, and of the right half too if it differs."""
    f = s.facts
    found: dict[str, list[Opening]] = {"left": [], "right": []}
    for corner, at in (("back", SKIN), ("front", f.length - SKIN)):
        for across, z in _seen(s, "x", at, _meant(f) if corner == "front" else []):
            hand = "left" if sum(across) < f.width else "right"
            wide = across[1] - across[0]
            found[hand].append(
                Opening(f"{corner} end, outside face", corner, _groove(f, z), *z, wide)
            )
    for hand, at in (("left", SKIN), ("right", f.width - SKIN)):
        for across, z in _seen(s, "y", at, []):
            corner = "back" if sum(across) < f.length else "front"
            wide = across[1] - across[0]
            found[hand].append(Opening("sides, outside face", corner, _groove(f, z), *z, wide))
    left, right = sorted(found["left"]), sorted(found["right"])
    return left if alike(left, right) else [*left, *right]


def alike(one: list[Opening], other: list[Opening], *, within: float = 1e-4) -> bool:
    """Whether two lists hold the same openings, as high and as low; hairs do not count. [mm]"""
    rows, others = (
        sorted(row for row in rows if row.high - row.low > HAIR) for rows in (one, other)
    )
    return len(rows) == len(others) and all(
        a[:3] == b[:3] and abs(a.low - b.low) < within and abs(a.high - b.high) < within
        for a, b in zip(rows, others, strict=True)
    )


def findings_due(f: Facts, seen: list[Opening]) -> list[tuple[str, str]]:
    """What a plan has to say of these openings, as (code, face): a hole shows on the tail board
    where a pin was cut through, on the pin board where a tail was."""
    tail_board = "end" if f.tails_on == "ends" else "sides"
    return sorted(
        (
            "groove-outside-tail" if tail_board in row.face else "groove-shows-through-joint",
            row.face,
        )
        for row in seen
    )
