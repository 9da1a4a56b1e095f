"""What a student chooses: one frozen record for each section of a box file.

Lengths in mm, angles in degrees, moisture and humidity in percent, temperature in °C. ``None``
means *left out*: the rules in ``defaults`` then choose and say so.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any, Literal, Self

from toolkit.box.change import Change
from toolkit.box.customs import Customs
from toolkit.measures import Rule

Joint = Literal["half-blind", "through"]
TailsOn = Literal["ends", "sides"]
LidKind = Literal["sliding", "lift-off"]
Seat = Literal["rebate", "battens"]
Profile = Literal["flat", "rebated", "bevelled"]
GrooveEnds = Literal["through", "stopped", "plugged"]
Grain = Literal["along", "across"]
Tails = int | tuple[tuple[float, float], ...] | None


@dataclass(frozen=True, slots=True)
class Size:
    """Inside or outside, for each of length, width and height; or named contents plus ease."""

    inside_length: float | None = None
    inside_width: float | None = None
    inside_height: float | None = None
    outside_length: float | None = None
    outside_width: float | None = None
    outside_height: float | None = None
    contents: str | None = None
    ease: float | None = None


@dataclass(frozen=True, slots=True)
class Thickness:
    """Thickness of each kind of part as planned. [mm]"""

    side: float
    end: float
    bottom: float
    lid: float


@dataclass(frozen=True, slots=True)
class CornerChoice:
    """The dovetails: pin and half pin are measured at the baseline. [mm]"""

    joint: Joint = "half-blind"
    tails_on: TailsOn = "ends"
    lap: float | None = None
    tail_length: float | None = None
    slope: float | None = None
    half_pin: float | None = None
    pin: float | None = None
    tails_back: Tails = None
    tails_front: Tails = None


@dataclass(frozen=True, slots=True)
class GrooveChoice:
    """One plough setting for both panels, and how the groove ends at a corner. [mm]"""

    width: float | None = None
    depth: float | None = None
    bottom_edge: float | None = None
    top_edge: float | None = None
    ends: GrooveEnds = "through"


@dataclass(frozen=True, slots=True)
class Panels:
    """Clearances and edges of lid and bottom. [mm]"""

    bottom_across: float | None = None
    lid_across: float | None = None
    along: float = 1.0
    bottom_tongue: float = 0.2
    lid_tongue: float = 0.3
    bottom_profile: Profile = "rebated"
    lid_profile: Profile = "rebated"
    front_drop: float = 0.3
    grain: Grain = "along"
    bevel_width: float | None = None


@dataclass(frozen=True, slots=True)
class LidChoice:
    """How the box is closed. The last four belong to a lift-off lid. [mm]"""

    kind: LidKind = "sliding"
    seat: Seat = "rebate"
    overhang: float = 2.0
    rebate_depth: float = 4.0
    batten_width: float = 20.0
    batten_thickness: float = 8.0


@dataclass(frozen=True, slots=True)
class Tools:
    """The narrowest chisel and the plough irons on the bench; ``None``: the usual ones. [mm]"""

    chisel: float | None = None
    plough_irons: tuple[float, ...] | None = None


@dataclass(frozen=True, slots=True)
class Wood:
    """Species by name, and the ring angle of lid and bottom (0 flat-sawn, 90 quartered). [deg]"""

    sides: str = "black cherry"
    ends: str = "black cherry"
    bottom: str = "black cherry"
    lid: str = "black cherry"
    rings: float = 0.0


@dataclass(frozen=True, slots=True)
class Room:
    """The air that wood settles to: temperature [°C] and relative humidity [%]."""

    temperature: float
    humidity: float


@dataclass(frozen=True, slots=True)
class Rooms:
    """Where the box is made, and the dampest and driest room it will live in."""

    make: Room = Room(20.0, 50.0)
    damp: Room = Room(22.0, 75.0)
    dry: Room = Room(20.0, 30.0)


@dataclass(frozen=True, slots=True)
class Allowance:
    """Rough over finished. ``None``: as for all parts. [mm]"""

    length: float | None = None
    width: float | None = None
    thickness: float | None = None


@dataclass(frozen=True, slots=True)
class Allowances:
    """Rough over finished for all parts, and by the name of a part where it has its own. [mm]"""

    length: float = 10.0
    width: float = 6.0
    thickness: float = 4.0
    parts: tuple[tuple[str, Allowance], ...] = ()

    def of(self, part: str) -> tuple[float, float, float]:
        """Allowance on length, width and thickness of one part. [mm]"""
        own = dict(self.parts).get(part, Allowance())
        return (
            self.length if own.length is None else own.length,
            self.width if own.width is None else own.width,
            self.thickness if own.thickness is None else own.thickness,
        )


@dataclass(frozen=True, slots=True)
class Made:
    """What exists already, measured. It no longer moves; the rest is reckoned from it. [mm]

    The last eleven are gaps under the blade of a square, the worst of all pieces and ends: at an
    end over the part's width (``end_out``) or its thickness (``end_lean``), at the edge that the
    plough's fence runs on over its thickness (``edge_out``).
    """

    side_length: float | None = None
    side_width: float | None = None
    side_thickness: float | None = None
    back_length: float | None = None
    back_width: float | None = None
    back_thickness: float | None = None
    front_length: float | None = None
    front_width: float | None = None
    front_thickness: float | None = None
    bottom_length: float | None = None
    bottom_width: float | None = None
    bottom_thickness: float | None = None
    lid_length: float | None = None
    lid_width: float | None = None
    lid_thickness: float | None = None
    tail_length: float | None = None
    groove_width: float | None = None
    groove_depth: float | None = None
    bottom_edge: float | None = None
    top_edge: float | None = None
    wall_board_thickness: float | None = None
    panel_board_thickness: float | None = None
    side_end_out: float | None = None
    side_end_lean: float | None = None
    side_edge_out: float | None = None
    back_end_out: float | None = None
    back_end_lean: float | None = None
    back_edge_out: float | None = None
    front_end_out: float | None = None
    front_end_lean: float | None = None
    front_edge_out: float | None = None
    bottom_end_out: float | None = None
    lid_end_out: float | None = None


@dataclass(frozen=True, slots=True)
class Choices:
    """A whole box as chosen: what a box file says, in millimetres."""

    size: Size
    thickness: Thickness
    title: str = "Box"
    rule: Rule = field(default_factory=Rule.millimetres)
    corner: CornerChoice = CornerChoice()
    groove: GrooveChoice = GrooveChoice()
    panels: Panels = Panels()
    lid: LidChoice = LidChoice()
    tools: Tools = Tools()
    wood: Wood = Wood()
    rooms: Rooms = Rooms()
    allowances: Allowances = Allowances()
    customs: Customs = field(default_factory=Customs)
    made: Made = Made()

    def value(self, key: str) -> Any:
        """What they say for a key of the box file, such as ``groove.depth``. [mm]"""
        section, _, name = key.partition(".")
        return getattr(getattr(self, section), name) if name else getattr(self, section)

    def having(self, change: Change) -> Self:
        """These choices with some keys changed, named as in a box file; None for a key left out.

        >>> box = Choices(Size(inside_length=152), Thickness(12, 12, 8, 9))
        >>> box.having({"thickness.side": 11.0}).value("thickness.side")
        11.0
        """
        whole: dict[str, Any] = {}
        sections: dict[str, dict[str, Any]] = {}
        for key, value in change.items():
            section, _, name = key.partition(".")
            if name:
                sections.setdefault(section, {})[name] = value
            else:
                whole[section] = value
        for section, values in sections.items():
            whole[section] = replace(getattr(self, section), **values)
        return replace(self, **whole)
