"""One corner of a plan, gathered for drawing: the walls that meet in it, and its faults.

Nothing is worked out here but which of the plan's numbers belong to this corner.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box import Corner, Hole
from toolkit.plan import Plan
from toolkit.shape import JointedEnd, JointedWall, Outline, Which, end_grain, wall


@dataclass(frozen=True, slots=True)
class Joint:
    """What a drawing of one corner needs. Lengths in mm.

    ``grooves_end`` is ``through``, ``stopped`` or ``plugged``; ``front_lap`` is how far an ear runs
    on beyond the tips of the tails, None without an ear; ``pin_wood`` is what is left of the pin
    board's end grain.
    """

    which: Which
    corner: Corner
    tail_board: JointedWall
    pin_board: JointedWall
    lap: float
    through: bool
    on_ends: bool
    grooves_end: str
    front_lap: float | None
    holes: tuple[Hole, ...]
    pin_wood: tuple[Outline, ...]
    left_handed: bool

    @classmethod
    def of(cls, plan: Plan, which: Which, *, left_handed: bool = False) -> Joint:
        """Gather one corner."""
        if which not in ("back", "front"):
            raise ValueError(f'no corner is called {which!r}: type "back" or "front"')
        d, f, c = plan.design, plan.design.frame, plan.design.choices
        back, on_ends = which == "back", c.corner.tails_on == "ends"
        lap = (f.lap_back if back else f.lap_front).value
        tail_part, pin_part = (which, "side") if on_ends else ("side", which)
        has_ear = f.lid_groove is not None and not (back or on_ends)
        shown = [hole for hole in d.holes if hole.corner == which and c.groove.ends == "through"]
        return cls(
            which=which,
            corner=d.back if back else d.front,
            tail_board=wall(d, tail_part),
            pin_board=wall(d, pin_part),
            lap=lap,
            through=c.corner.joint == "through",
            on_ends=on_ends,
            grooves_end=c.groove.ends,
            front_lap=lap if has_ear else None,
            holes=tuple(shown),
            pin_wood=end_grain(d, part=pin_part, which=which),
            left_handed=left_handed,
        )

    @property
    def tail_end(self) -> JointedEnd:
        """The end of the tail board."""
        return self.tail_board.ends[self.which == "front"]

    @property
    def pin_end(self) -> JointedEnd:
        """The end of the pin board."""
        return self.pin_board.ends[self.which == "front"]

    @property
    def tail_length(self) -> float:
        """How long the tails are. [mm]"""
        return self.tail_end.tip

    @property
    def wall_height(self) -> float:
        """How high the side is, and with it the box. [mm]"""
        return (self.pin_board if self.on_ends else self.tail_board).height

    @property
    def reach(self) -> float:
        """How far tails, or the ear if it is longer, stand out from the baseline. [mm]"""
        return self.tail_length + (self.front_lap or 0.0)

    @property
    def socket_depth(self) -> float:
        """How deep the pin board is cut: no deeper than it is thick. [mm]"""
        return min(self.tail_length, self.pin_board.thickness)

    @property
    def turn(self) -> int:
        """1 with the tails to the left; -1 with them right: a side's front end, a left hand."""
        turn = -1 if self.which == "front" and not self.on_ends else 1
        return -turn if self.left_handed else turn
