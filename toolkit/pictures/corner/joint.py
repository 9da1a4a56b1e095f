"""One corner of a plan, gathered for drawing: its two boards, what they are called, their grooves.

Nothing is worked out here but which of the plan's numbers belong to this corner.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box import Corner, Hole, Span
from toolkit.plan import Plan
from toolkit.shape import JointedEnd, Outline, Which, end_grain, end_of


@dataclass(frozen=True, slots=True)
class Run:
    """A groove as it comes to this corner: in which of the two boards, and where it ends early.

    ``ends`` is ``through``, ``stopped`` or ``plugged``; which of the two boards needs that is
    told by the last two.
    """

    name: str
    span: Span
    in_tail_board: bool
    in_pin_board: bool
    ends: str
    tail_board_stopped: bool
    pin_board_stopped: bool


@dataclass(frozen=True, slots=True)
class Joint:
    """What a drawing of one corner needs. Lengths in mm.

    ``front_lap`` is how far an ear runs on beyond the tips of the tails, None without an ear;
    ``pin_wood`` is what is left of the pin board's end grain.
    """

    which: Which
    corner: Corner
    tail_title: str
    pin_title: str
    tail_length: float
    lap: float
    pin_board: float
    groove_depth: float
    tail_board_height: float
    pin_board_height: float
    wall_height: float
    through: bool
    on_ends: bool
    front_lap: float | None
    runs: tuple[Run, ...]
    holes: tuple[Hole, ...]
    tail_end: JointedEnd
    pin_end: JointedEnd
    pin_wood: tuple[Outline, ...]
    left_handed: bool = False

    @property
    def reach(self) -> float:
        """How far tails, or the ear if it is longer, stand out from the baseline. [mm]"""
        return self.tail_length + (self.front_lap or 0.0)

    @property
    def socket_depth(self) -> float:
        """How deep the pin board is cut: no deeper than it is thick. [mm]"""
        return min(self.tail_length, self.pin_board)

    @property
    def turn(self) -> int:
        """1 with the tails to the left; -1 where the front end of a side lies to the right.

        For a left-handed maker, who has the other end of the board at hand, all is changed about.
        """
        turn = -1 if self.which == "front" and not self.on_ends else 1
        return -turn if self.left_handed else turn


def joint(plan: Plan, which: Which, *, left_handed: bool = False) -> Joint:
    """Gather one corner."""
    if which not in ("back", "front"):
        raise ValueError(f'no corner is called {which!r}: type "back" or "front"')
    d, f = plan.design, plan.design.frame
    c = d.choices
    back, on_ends = which == "back", c.corner.tails_on == "ends"
    corner = d.back if back else d.front
    lap = f.lap_back.value if back else f.lap_front.value
    low_front = not back and f.lid_groove is not None
    end_height = f.wall_height.value if back else f.front_height.value
    heights = (end_height, f.wall_height.value)
    tail_part, pin_part = (which, "side") if on_ends else ("side", which)
    end = f"{which} end"
    if on_ends:
        tail_title, pin_title = f"{end} (tail board), inside face", "side (pin board), end grain"
    else:
        tail_title, pin_title = "side (tail board), inside face", f"{end} (pin board), end grain"
        heights = heights[::-1]
    shown = tuple(hole for hole in d.holes if hole.corner == which)
    return Joint(
        which=which,
        corner=corner,
        tail_title=tail_title,
        pin_title=pin_title,
        tail_length=f.tail_back.value if back else f.tail_front.value,
        lap=lap,
        pin_board=d.pin_board_thickness[0 if back else 1],
        groove_depth=c.groove.depth,
        tail_board_height=heights[0],
        pin_board_height=heights[1],
        wall_height=f.wall_height.value,
        through=c.corner.joint == "through",
        on_ends=on_ends,
        front_lap=lap if low_front and not on_ends else None,
        runs=_runs(plan, which, shown),
        holes=shown if c.groove.ends == "through" else (),
        tail_end=end_of(d, part=tail_part, which=which),
        pin_end=end_of(d, part=pin_part, which=which),
        pin_wood=end_grain(d, part=pin_part, which=which),
        left_handed=left_handed,
    )


def _runs(plan: Plan, which: Which, holes: tuple[Hole, ...]) -> tuple[Run, ...]:
    f, c = plan.design.frame, plan.design.choices
    rows = [("bottom", f.bottom_groove, True, True)]
    if f.lid_groove is not None:
        # The front is low and has no lid groove: the lid passes over it.
        on_ends = c.corner.tails_on == "ends"
        back = which == "back"
        rows.append(("lid", f.lid_groove, back or not on_ends, back or on_ends))
    early = c.groove.ends != "through"
    return tuple(
        Run(
            name,
            span,
            in_tails,
            in_pins,
            c.groove.ends,
            early and any(hole.groove == name and hole.cause == "tip" for hole in holes),
            early and any(hole.groove == name and hole.cause == "pin" for hole in holes),
        )
        for name, span, in_tails, in_pins in rows
    )
