"""What the solids are built from: the plan's plain data beside the choices. Lengths in mm."""

from dataclasses import dataclass
from math import radians, tan
from typing import Any

from tests.oracle.shapes import Pair
from toolkit.box import Choices

Rows = list[dict[str, float]]


@dataclass(frozen=True)
class Corner:
    """A corner as given: ``socket`` is how deep the pin board is cut for the tails. [mm]"""

    tail_length: float
    tails: Rows
    pins: Rows
    socket: float
    flare: float


@dataclass(frozen=True)
class PanelSize:
    """Lid or bottom: sizes as given, profile and tongue as chosen. [mm]"""

    length: float
    width: float
    thickness: float
    profile: str
    tongue: float


@dataclass(frozen=True)
class Facts:
    """Everything that is known of a box; boards as (length, height, thickness). [mm]

    ``planned`` holds the thickness of side, back and front as chosen or as made: what the boards
    ought to be, which is not read from the plan.
    """

    length: float
    width: float
    height: float
    inside: tuple[float, float, float]
    side: tuple[float, float, float]
    back: tuple[float, float, float]
    front: tuple[float, float, float]
    panels: dict[str, PanelSize]
    batten: tuple[float, float, float] | None
    back_corner: Corner
    front_corner: Corner
    grooves: dict[str, Pair]
    depth: float
    planned: tuple[float, float, float]
    tails_on: str
    through: bool
    sliding: bool
    seat: str
    rebate_depth: float
    ploughed_through: bool
    choices: Choices

    @property
    def low_front(self) -> float:
        """Height of the front end as it ought to be. [mm]"""
        if not self.sliding:
            return self.height
        return self.grooves["lid"][0] - self.choices.panels.under_lid


def _size(part: dict[str, Any]) -> tuple[float, float, float]:
    finished = part["finished"]
    return finished["length"], finished["width"], finished["thickness"]


def _socket(c: Choices, thickness: float, tail_length: float) -> float:
    """Depth to which the pin board is cut, from what its maker knows first. [mm]"""
    if c.corner.joint == "through":
        return thickness
    if c.made.tail_length is not None:
        return c.made.tail_length
    if c.corner.lap is not None:
        return thickness - c.corner.lap
    return tail_length if c.corner.tail_length is None else c.corner.tail_length


def _corner(c: Choices, data: dict[str, Any], thickness: float) -> Corner:
    return Corner(
        data["tail_length"],
        data["tails"],
        data["pins"],
        _socket(c, thickness, data["tail_length"]),
        tan(radians(data["angle_deg"])),
    )


def read(data: dict[str, Any], choices: Choices) -> Facts:
    """Gather what a box is built from.

    Parameters
    ----------
    data : dict
        The plan's plain data. [mm]
    choices : Choices
        As the box file gives them. [mm]
    """
    c, made = choices, choices.made
    parts = {part["name"]: part for part in data["parts"]}
    side, back, front = (_size(parts[name]) for name in ("side", "back", "front"))
    pin_boards = (side, side) if c.corner.tails_on == "ends" else (back, front)
    grooves = {name: row for name, row in data["grooves"].items() if row is not None}
    sliding = c.lid.kind == "sliding"
    panels = {}
    for name in ("bottom", "lid"):
        if name not in parts:
            continue
        length, width, thickness = _size(parts[name])
        profile = c.panels.lid_profile if name == "lid" else c.panels.bottom_profile
        tongue = thickness
        if name in grooves and profile != "flat":
            play = c.panels.lid_tongue if name == "lid" else c.panels.bottom_tongue
            tongue = min(thickness, grooves[name]["high"] - grooves[name]["low"] - play)
        panels[name] = PanelSize(length, width, thickness, profile, tongue)
    outside, inside = data["outside"], data["inside"]
    return Facts(
        length=outside["length"],
        width=outside["width"],
        height=outside["height"],
        inside=(inside["length"], inside["width"], inside["height"]),
        side=side,
        back=back,
        front=front,
        panels=panels,
        batten=_size(parts["batten"]) if "batten" in parts else None,
        back_corner=_corner(c, data["corners"]["back"], pin_boards[0][2]),
        front_corner=_corner(c, data["corners"]["front"], pin_boards[1][2]),
        grooves={name: (row["low"], row["high"]) for name, row in grooves.items()},
        depth=data["grooves"]["bottom"]["depth"],
        planned=(
            made.side_thickness or c.thickness.side,
            made.back_thickness or c.thickness.end,
            made.front_thickness or c.thickness.end,
        ),
        tails_on=c.corner.tails_on,
        through=c.corner.joint == "through",
        sliding=sliding,
        seat=c.lid.seat,
        rebate_depth=c.lid.rebate_depth,
        ploughed_through=c.groove.ends == "through",
        choices=c,
    )
