"""What is wrong with a box built as solids, a short line for each fault; nothing if it is sound.

No fault is looked for by way of the workbook's own findings or drawings.
"""

from itertools import combinations
from math import isclose

from manifold3d import Manifold

from tests.oracle.accounts import corner_gaps, wood_in_walls
from tests.oracle.reading import Corner, Facts
from tests.oracle.shapes import block, bounds, overlap, together, without, wood
from tests.oracle.solids import Solids

VOLUME = 1e-3  # mm³; a hundredth of a millimetre over a corner of any box is far more
LENGTH = 1e-6  # mm


def near(one: float, other: float) -> bool:
    """Whether two lengths are one but for rounding noise. [mm]"""
    return isclose(one, other, rel_tol=0.0, abs_tol=LENGTH)


def _lists(name: str, corner: Corner) -> list[str]:
    """Tails and pins as lists: one pin more than tails, and every cheek at the bevel's angle."""
    found = []
    if len(corner.pins) != len(corner.tails) + 1:
        found.append(f"{name} corner: {len(corner.tails)} tails, {len(corner.pins)} pins")
    flare = corner.tail_length * corner.flare
    for row in corner.tails:
        if not near(row["low"] - row["tip_low"], flare) or not near(
            row["tip_high"] - row["high"], flare
        ):
            found.append(f"{name} corner: a tail does not flare by the bevel's angle")
    return found


def _sizes(s: Solids) -> list[str]:
    """No wall is larger than its part in the cut list; together they stand round the outside and
    leave the inside that the plan promises."""
    f, found = s.facts, []
    walls = {name: bounds(solid) for name, solid in s.walls.items()}
    for name, (length, wide, thick), along in (
        ("left side", f.side, "x"),
        ("back", f.back, "y"),
        ("front", f.front, "y"),
    ):
        at = walls[name]
        across = "y" if along == "x" else "x"
        for axis, size in ((along, length), (across, thick), ("z", wide)):
            low, high = getattr(at, axis)
            if not near(high - low, size):
                found.append(f"{name} measures {high - low:.4f} along {axis}; its part has {size}")
    for axis, size in zip("xyz", (f.length, f.width, f.height), strict=True):
        low = min(getattr(row, axis)[0] for row in walls.values())
        high = max(getattr(row, axis)[1] for row in walls.values())
        if not near(low, 0.0) or not near(high, size):
            found.append(f"outside along {axis} runs from {low:.4f} to {high:.4f}, not 0 to {size}")
    roof = f.grooves["bottom"][1]
    top = f.grooves["lid"][0] if f.sliding else min(row.z[1] for row in walls.values())
    clear = (
        walls["front"].x[0] - walls["back"].x[1],
        walls["right side"].y[0] - walls["left side"].y[1],
        top - roof,
    )
    for axis, have, want in zip("xyz", clear, f.inside, strict=True):
        if not near(have, want):
            found.append(f"inside along {axis} is {have:.4f}, not {want:.4f}")
    return found


def _sharing(s: Solids, walls: Manifold) -> list[str]:
    """Nothing shares its place with a panel."""
    rows = [(name, panel, "walls", walls) for name, panel in s.panels.items()]
    rows += [(*one, *other) for one, other in combinations(s.panels.items(), 2)]
    return [
        f"{name} and {second} share {shared:.4f} mm³"
        for name, one, second, other in rows
        if (shared := overlap(one, other)) > VOLUME
    ]


def _panels(s: Solids, walls: Manifold) -> list[str]:
    """The panels lie where they should."""
    f, found = s.facts, _sharing(s, walls)
    c, (long, wide, _) = f.choices, f.inside
    bottom, deep = f.panels["bottom"], f.depth
    if not near(bottom.length, long + 2 * deep - c.panels.along):
        found.append("bottom: its clearance along is not the one chosen")
    for name in f.grooves:
        chosen = c.panels.lid_across if name == "lid" else c.panels.bottom_across
        room = wide + 2 * deep - f.panels[name].width
        if (chosen is None and not 0 < room < 2 * deep) or (
            chosen is not None and not near(room, chosen)
        ):
            found.append(f"{name}: its clearance across is {room:.4f}, not the one chosen")
    if bounds(s.panels["bottom"]).z[0] < -LENGTH:
        found.append("bottom: it hangs below the walls")
    found += _lid(s)
    space = wood(
        block(
            (f.back[2], f.length - f.front[2]),
            (f.side[2], f.width - f.side[2]),
            (f.grooves["bottom"][1], f.height if not f.sliding else f.grooves["lid"][0]),
        )
    )
    blocked = [walls, s.panels["bottom"]] + ([s.panels["lid"]] if f.sliding else [])
    if any(overlap(space, solid) > VOLUME for solid in blocked):
        found.append("something stands in the space inside")
    return found


def _lid(s: Solids) -> list[str]:
    """A lid lies where its kind should, and a tray has none."""
    f = s.facts
    if f.choices.lid.kind == "none":
        return ["lid: there is one"] if "lid" in s.panels or "lid" in f.grooves else []
    lid = bounds(s.panels["lid"])
    if f.sliding and not (near(lid.x[1], f.length) and near(lid.x[0], f.back[2] - f.depth)):
        return ["lid: flush with the front it does not meet the back of its groove"]
    if not f.sliding and (lid.x[0] > LENGTH or lid.y[0] > LENGTH or lid.z[1] <= f.height):
        return ["lid: it does not cover the rim"]
    return []


def _corner_blocks(f: Facts) -> dict[str, Manifold]:
    side, back, front = f.planned
    places = {}
    for end, x in (("back", (0.0, back)), ("front", (f.length - front, f.length))):
        for hand, y in (("left", (0.0, side)), ("right", (f.width - side, f.width))):
            places[f"{end} {hand}"] = wood(block(x, y, (0.0, f.height)))
    return places


def _gaps(s: Solids, walls: Manifold) -> list[str]:
    """Each corner is filled but for its grooves."""
    f, found = s.facts, []
    back, front = corner_gaps(f)
    blocks = _corner_blocks(f)
    holes = without(Manifold.compose(list(blocks.values())), walls)
    missing = dict.fromkeys(blocks, 0.0)
    for hole in holes.decompose():
        at = bounds(hole)
        end = "back" if sum(at.x) < f.length else "front"
        hand = "left" if sum(at.y) < f.width else "right"
        missing[f"{end} {hand}"] += hole.volume()
    for name, have in missing.items():
        want = back if name.startswith("back") else front
        if abs(have - want) > VOLUME:
            found.append(f"{name} corner lacks {have:.4f} mm³; its grooves take {want:.4f}")
    outline = ((0.0, f.length), (0.0, f.width))
    beyond = without(holes, *(wood(block(*outline, span)) for span in f.grooves.values())).volume()
    if beyond > VOLUME:
        found.append(f"{beyond:.4f} mm³ are missing from the corners where no groove runs")
    return found


def overlapping_walls(s: Solids) -> list[str]:
    """Each pair of walls that share wood, asked pair by pair."""
    return [
        f"{one} and {other}"
        for one, other in combinations(s.walls, 2)
        if overlap(s.walls[one], s.walls[other]) > VOLUME
    ]


def standing(s: Solids) -> list[str]:
    """Every fault of a box that stands still."""
    f = s.facts
    found = [*_lists("back", f.back_corner), *_lists("front", f.front_corner)]
    walls = together(s.walls.values())
    separate = sum(solid.volume() for solid in s.walls.values())
    # What two walls both claim is counted twice in the sum of them, and once in the union.
    if abs(separate - walls.volume()) > VOLUME:
        found.append(f"walls share {separate - walls.volume():.4f} mm³: {overlapping_walls(s)}")
    if abs(walls.volume() - wood_in_walls(f)) > VOLUME:
        found.append(f"the walls hold {walls.volume():.4f} mm³; {wood_in_walls(f):.4f} are due")
    # A lap is there if the choices ask for one: the outside of a pin board is closed.
    thickness = (f.side, f.side) if f.tails_on == "ends" else (f.back, f.front)
    for board, corner in zip(thickness, (f.back_corner, f.front_corner), strict=True):
        lap = board[2] - corner.tail_length
        if not f.through and lap <= LENGTH:
            found.append("a lapped joint without a lap")
    return found + _sizes(s) + _gaps(s, walls) + _panels(s, walls)
