"""How the parts of a box move: what comes away, which way, and what is held. Lengths in mm."""

from collections.abc import Iterable

from manifold3d import Manifold

from tests.oracle.faults import VOLUME
from tests.oracle.shapes import overlap, swept
from tests.oracle.solids import Solids

HAIR = 0.01  # mm
Way = tuple[float, float, float]
WAYS: dict[str, Way] = {
    "-x": (-1, 0, 0),
    "+x": (1, 0, 0),
    "-y": (0, -1, 0),
    "+y": (0, 1, 0),
    "-z": (0, 0, -1),
    "+z": (0, 0, 1),
}
OUTWARD = {"left side": "-y", "right side": "+y", "back": "-x", "front": "+x"}
SIDES, ENDS = ("left side", "right side"), ("back", "front")


def _pushed(solid: Manifold, way: str, by: float) -> Manifold:
    return solid.translate([axis * by for axis in WAYS[way]])


def _hits(solid: Manifold, others: Iterable[Manifold]) -> bool:
    return any(overlap(solid, other) > VOLUME for other in others)


def joints(s: Solids) -> list[str]:
    """A tail board comes off outwards and no other way; a pin board is held by its tails."""
    found = []
    on_ends = s.facts.tails_on == "ends"
    tail_boards, pin_boards = (ENDS, SIDES) if on_ends else (SIDES, ENDS)
    thickness = dict(
        zip(SIDES + ENDS, (s.facts.side[2],) * 2 + (s.facts.back[2], s.facts.front[2]), strict=True)
    )
    for name in tail_boards:
        board, out = s.walls[name], OUTWARD[name]
        pins = [s.walls[other] for other in pin_boards]
        for way in WAYS:
            if way != out and not _hits(_pushed(board, way, HAIR), pins):
                found.append(f"{name}: its tails let it move {way}")
        for share in (0.0, 0.3, 0.6, 1.0):
            if _hits(_pushed(board, out, HAIR + share * thickness[name]), pins):
                found.append(f"{name}: it does not come away {out}")
                break
    for name in pin_boards:
        tails = [s.walls[other] for other in tail_boards]
        if not _hits(_pushed(s.walls[name], OUTWARD[name], HAIR), tails):
            found.append(f"{name}: no tail keeps it from being pulled off {OUTWARD[name]}")
    return found


def _room(s: Solids, name: str) -> tuple[float, float, float]:
    """How far a panel can be moved along and across in all, and up, as the plan means it."""
    f = s.facts
    panel, (long, wide, _) = f.panels[name], f.inside
    low, high = f.grooves[name]
    along = 0.0 if name == "lid" else long + 2 * f.depth - panel.length
    return along, wide + 2 * f.depth - panel.width, high - low - panel.tongue


def held(s: Solids, name: str) -> list[str]:
    """A grooved panel moves as far as its clearance and never leaves its grooves."""
    f, found, panel = s.facts, [], s.panels[name]
    along, across, play = _room(s, name)
    # A bevel is thinner than the groove all the way to its edge, and tilts and lifts further.
    bevelled = f.panels[name].profile == "bevelled"
    tall = f.grooves[name][1] - f.grooves[name][0]
    lift, fall = (tall, tall) if bevelled else (play + HAIR, HAIR)
    places = [("-y", across, "left side", "right side"), ("+y", across, "right side", "left side")]
    if name == "bottom":
        places += [("-x", along, "back", "front"), ("+x", along, "front", "back")]
    elif not _hits(_pushed(panel, "-x", HAIR), [s.walls["back"]]):
        found.append(f"{name}: shut, it does not reach the bottom of the back groove")
    if play > HAIR and _hits(_pushed(panel, "+z", play - HAIR / 10), s.walls.values()):
        found.append(f"{name}: it jams in the height of its grooves")
    for way, room, wall, other in places:
        aside = _pushed(panel, way, room / 2 - HAIR / 10)
        if _hits(aside, s.walls.values()):
            found.append(f"{name}: it can't use its clearance {way}")
        if not _hits(_pushed(panel, way, room / 2 + HAIR), [s.walls[wall]]):
            found.append(f"{name}: pushed {way} it has more than its clearance")
        for turn, by in (("+z", lift), ("-z", fall)):
            if not _hits(_pushed(aside, turn, by), [s.walls[other]]):
                found.append(f"{name}: pushed {way} it comes {turn} out of the {other}'s groove")
    return found


def sliding_lid(s: Solids) -> list[str]:
    """The lid slides out through the front, past everything, and only so."""
    found = held(s, "lid")
    track = swept(s.pieces["lid"], x=s.facts.length + 10.0)
    if _hits(track, [*s.walls.values(), s.panels["bottom"]]):
        found.append("lid: something is in its way out")
    half_out = _pushed(s.panels["lid"], "+x", s.facts.length / 2)
    if not _hits(_pushed(half_out, "+z", s.facts.panels["lid"].thickness / 2), s.walls.values()):
        found.append("lid: half drawn, it lifts out of its grooves")
    return found


def lift_off_lid(s: Solids) -> list[str]:
    """The lid lifts straight off, rests on the rim and is kept from sliding about on it."""
    found = []
    names = [name for name in s.panels if name != "bottom"]
    walls = list(s.walls.values())
    if any(_hits(swept(s.pieces[name], z=s.facts.height), walls) for name in names):
        found.append("lid: it does not lift off")
    if not _hits(_pushed(s.panels["lid"], "-z", HAIR), walls):
        found.append("lid: it does not rest on the rim")
    for way in ("-x", "+x", "-y", "+y"):
        if not any(_hits(_pushed(s.panels[name], way, 0.5 + HAIR), walls) for name in names):
            found.append(f"lid: nothing keeps it from sliding {way}")
    return found


def moving(s: Solids) -> list[str]:
    """Every fault of a box whose parts are pushed about."""
    found = joints(s) + held(s, "bottom")
    if "lid" not in s.panels:
        return found
    return found + (sliding_lid(s) if s.facts.sliding else lift_off_lid(s))
