"""Ploughing: fence and passes, which way every groove is cut, and where it has to end short."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil
from typing import Literal

from toolkit.box.choices import Handed
from toolkit.box.designing import Design
from toolkit.measures import Rule
from toolkit.results import SizedText, Table, TaggedSize, above

FencedFrom = Literal["each its own edge", "the bottom edge"]
# What lies to the left and to the right of a wall's inside face, bottom edge down, in a box that
# is seen from its front.
_SEEN = {
    "left side": ("front", "back"),
    "right side": ("back", "front"),
    "back end": ("left", "right"),
    "front end": ("right", "left"),
}
_OTHER = {"left side": "right side", "right side": "left side"}
SHAVING = 0.25  # of a sharp plough iron in dry hardwood: common practice, no source [mm]


@dataclass(frozen=True, slots=True)
class Fence:
    """How the fence is set: from which edges, at what distance for each groove, and why. [mm]"""

    fenced_from: FencedFrom
    bottom: float
    lid: float | None
    why: str

    @property
    def settings(self) -> int:
        """How often the fence is set."""
        return 1 if self.lid is None or not _differ(self.bottom, self.lid) else 2


@dataclass(frozen=True, slots=True)
class Groove:
    """One groove to plough, inside face up. [mm]

    ``towards`` is where in the box the plough travels to. ``against`` tells whether it goes
    against the grain's run-out, None where that isn't known. ``stops`` are the ends at which it
    ends short, each with the length left uncut from the end of the board.
    """

    wall: str
    groove: str
    edge: str
    fence: float
    towards: str
    passes: int
    against: bool | None
    stops: tuple[tuple[str, float], ...]


def _differ(one: float, other: float) -> bool:
    return above(one, other) or above(other, one)


def fence(design: Design) -> Fence:
    """One fence setting for all grooves where box and planing allow it, else why not."""
    g, f, show = design.choices.groove, design.frame, design.choices.rule.exact
    if f.lid_groove is None:
        why = "the box has four grooves: one setting does them all."
        return Fence("the bottom edge", g.bottom_edge, None, why)
    low, made = f.lid_groove.low, design.choices.made
    widths = [wide for wide in (made.side_width, made.back_width) if wide is not None]
    if len(widths) == 2 and _differ(*widths):
        off = show(round(abs(widths[0] - widths[1]), 2))
        why = (
            f"sides and back differ by {off} in width: fenced from the top edges, the lid grooves "
            "would miss one another by as much."
        )
        return Fence("the bottom edge", g.bottom_edge, low, why)
    if _differ(g.bottom_edge, g.top_edge):
        why = (
            "the two grooves lie at unlike distances from their edges, so the fence is set twice "
            "anyway; from one edge the width of the walls doesn't matter."
        )
        return Fence("the bottom edge", g.bottom_edge, low, why)
    why = (
        "both grooves lie alike from their edges: one setting does all, if every wall is one width."
    )
    return Fence("each its own edge", g.bottom_edge, g.top_edge, why)


def _towards(wall: str, *, top: bool, hand: Handed) -> str:
    """Where the plough travels with its fence against an edge of the wall, inside face up.

    The fence of a right-handed plough is at its left: with the bottom edge at its left it goes
    from right to left over the face as seen with that edge down.
    """
    return _SEEN[wall][1 if top == (hand == "right") else 0]


def _stops(d: Design, wall: str, groove: str) -> tuple[tuple[str, float], ...]:
    """Where this groove would show and so ends short, and how much is left uncut. [mm]"""
    c = d.choices
    if c.groove.ends != "stopped":
        return ()
    is_end = wall.endswith("end")
    corners = (wall.removesuffix(" end"),) if is_end else ("back", "front")
    cause = "tip" if is_end == (c.corner.tails_on == "ends") else "pin"
    rows = []
    for corner in corners:
        if all((h.groove, h.corner, h.cause) != (groove, corner, cause) for h in d.holes):
            continue
        at_back = corner == "back"
        tail = (d.frame.tail_back if at_back else d.frame.tail_front).value
        # The corner of the panel stands in both grooves, so each runs its own depth past the
        # inside face of the board that it meets.
        past = tail if cause == "tip" else d.tail_board_thickness[0 if at_back else 1]
        left = past - c.groove.depth
        places = ("left", "right") if is_end else (corner,)
        rows += [(place, left) for place in places]
    return tuple(rows)


def grooves_to_plough(
    design: Design,
    *,
    hand: Handed | None = None,
    shaving: float = SHAVING,
    rises: Mapping[str, str] | None = None,
) -> tuple[Groove, ...]:
    """Every groove of the box in the order in which it is ploughed, a pass taking one ``shaving``.

    ``hand`` is right for a plough with its fence at the left, None for the box's own plough; one
    for the other hand is the mirror image in all. ``rises`` names, for a wall in a box
    seen from its front (``left side``, ``right side``, ``back end``, ``front end``), the place
    towards which the grain comes up through its inside face (``front``, ``back``, ``left``,
    ``right``): a plough that travels towards it goes with the grain. [mm]
    """
    if not above(shaving, 0.0):
        raise ValueError(f"the shaving was given as {shaving:g} mm: give more than 0, such as 0.25")
    for wall, place in (rises or {}).items():
        if wall not in _SEEN:
            raise ValueError(f'"{wall}" is no wall of this box: type one of {", ".join(_SEEN)}')
        if place not in _SEEN[wall]:
            ends = " or ".join(_SEEN[wall])
            raise ValueError(f'the grain of the {wall} was said to rise to "{place}": type {ends}')
    depth, set_to = design.choices.groove.depth, fence(design)
    passes = max(ceil(depth / shaving - 1e-6), 1)
    hand = hand or design.choices.tools.plough_hand
    walls = list(_SEEN) if hand == "right" else [_OTHER.get(wall, wall) for wall in _SEEN]
    found = []
    for groove in ("bottom", "lid"):
        distance = set_to.bottom if groove == "bottom" else set_to.lid
        top = groove == "lid" and set_to.fenced_from == "each its own edge"
        for wall in walls:
            if distance is None or (groove == "lid" and wall == "front end"):
                continue  # the front is ripped below the lid groove's floor
            towards = _towards(wall, top=top, hand=hand)
            up = (rises or {}).get(wall)
            found.append(
                Groove(
                    wall,
                    groove,
                    "top edge" if top else "bottom edge",
                    distance,
                    towards,
                    passes,
                    None if up is None else up != towards,
                    _stops(design, wall, groove),
                )
            )
    return tuple(found)


def _fenced(row: Groove, rule: Rule) -> SizedText:
    """The fence for one groove; from the edge that it is measured from, a setting of the box."""
    own = (row.groove == "lid") == (row.edge == "top edge")
    tool = f"plough fence, {row.groove} grooves" + ("" if own else ", from the other edge")
    size = TaggedSize(rule.show(row.fence), tool, "setting", row.fence)
    return SizedText.of(size, f" from the {row.edge}")


def plough_table(
    design: Design, *, hand: Handed | None = None, rises: Mapping[str, str] | None = None
) -> Table:
    """Every groove as a row for the bench; ``rises`` as for ``grooves_to_plough``."""
    rule, set_to = design.choices.rule, fence(design)
    rows, grooves = [], grooves_to_plough(design, hand=hand, rises=rises)
    words = {None: "not known: look at the edge", False: "with the grain", True: "against it"}
    for row in grooves:
        stops = ", ".join(f"{rule.show(left)} from the {end} end" for end, left in row.stops)
        rows.append(
            (
                f"{row.groove}, {row.wall}",
                _fenced(row, rule),
                f"towards the {row.towards}, begun at that end",
                words[row.against],
                stops or "runs through",
            )
        )
    return Table(
        f"Ploughing, {hand or design.choices.tools.plough_hand}-handed plough",
        ("groove", "fence", "cut, inside face up", "run-out", "ends"),
        tuple(rows),
        note=_note(set_to, grooves[0].passes, rule, shown=design),
    )


def _note(set_to: Fence, passes: int, rule: Rule, *, shown: Design) -> str:
    depth = shown.choices.groove.depth or 0.0
    own = set_to.fenced_from == "each its own edge"
    start = f"Fence {'each groove from its own edge' if own else 'from the bottom edge'}"
    end = (
        f"{rule.show(depth)} deep is {passes} passes of {rule.fine(SHAVING)}. Knife both walls "
        "of a groove that goes against the grain, start at the far end and work back."
    )
    if own:
        end = f"A wall's two grooves run opposite ways: one meets any run-out the wrong way. {end}"
    return f"{start}: {set_to.why} {end}"
