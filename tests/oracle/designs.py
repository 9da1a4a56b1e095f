"""Random boxes, the same ones every time. Lengths in mm."""

from itertools import product
from random import Random
from typing import Any, NamedTuple

from toolkit.box import Choices, Size, Thickness
from toolkit.measures import Rule

WOODS = ("black cherry", "black walnut", "sugar maple", "basswood", "northern red oak")


class Arrangement(NamedTuple):
    """Which boards carry the tails, the joint, and how the box is closed."""

    tails_on: str
    joint: str
    lid: str

    def __str__(self) -> str:
        """As a test's name."""
        return f"tails on {self.tails_on}, {self.joint}, {self.lid} lid"


ARRANGEMENTS = tuple(
    Arrangement(*row)
    for row in product(
        ("ends", "sides"), ("half-blind", "through"), ("sliding", "lift-off", "none")
    )
)


def _length(rng: Random, low: float, high: float) -> float:
    """Any length, or one on a half-millimetre mark: limits are met exactly only there."""
    value = rng.uniform(low, high)
    return round(value * 2) / 2 if rng.random() < 0.4 else value


def _size(rng: Random) -> Size:
    spans = {"length": (70.0, 320.0), "width": (50.0, 170.0), "height": (18.0, 95.0)}
    sizes: dict[str, Any] = {}
    for axis, (low, high) in spans.items():
        value = _length(rng, low, high)
        if rng.random() < 0.3:
            sizes[f"outside_{axis}"] = value + {"length": 24, "width": 24, "height": 26}[axis]
        else:
            sizes[f"inside_{axis}"] = value
    return Size(**sizes)


def _own_tails(rng: Random, height: float) -> tuple[tuple[float, float], ...]:
    """Tails set out by eye: each as wide as it happens to be."""
    tails: list[tuple[float, float]] = []
    at = _length(rng, 4.0, 9.0)
    while True:
        wide = _length(rng, 8.0, 26.0)
        if at + wide > height - 4.0:
            return tuple(tails) or ((4.0, height - 4.0),)
        tails.append((at, at + wide))
        at += wide + _length(rng, 4.5, 11.0)


def _corner(rng: Random, joint: str, pin_board: float) -> dict[str, Any]:
    keys: dict[str, Any] = {}
    if joint == "half-blind":
        way = rng.random()
        if way < 0.5:
            keys["corner.lap"] = pin_board * rng.uniform(0.22, 0.42)
        elif way < 0.8:
            keys["corner.tail_length"] = pin_board * rng.uniform(0.58, 0.78)
    if rng.random() < 0.7:
        keys["corner.slope"] = rng.choice((4.8, 5.0, 6.0, 7.0, 8.0, rng.uniform(4.5, 11.0)))
    if rng.random() < 0.6:
        keys["corner.pin"] = _length(rng, 4.0, 11.0)
    if rng.random() < 0.6:
        keys["corner.half_pin"] = _length(rng, 3.0, 11.0)
    for end in ("back", "front"):
        way = rng.random()
        if way < 0.35:
            keys[f"corner.tails_{end}"] = rng.randint(1, 5)
        elif way < 0.5:
            # As tall as the lowest front of the sizes above, so that it may not fit elsewhere.
            keys[f"corner.tails_{end}"] = _own_tails(rng, rng.uniform(35.0, 100.0))
    return keys


def _groove(rng: Random, thin: float) -> dict[str, Any]:
    keys: dict[str, Any] = {"groove.ends": rng.choice(("through",) * 6 + ("stopped", "plugged"))}
    if rng.random() < 0.8:
        keys["groove.width"] = rng.choice((3.0, 4.0, 5.0, 6.0, 25.4 / 4, _length(rng, 3.0, 8.0)))
    if rng.random() < 0.8:
        keys["groove.depth"] = _length(rng, 0.25 * thin, 0.5 * thin)
    for edge in ("bottom_edge", "top_edge"):
        if rng.random() < 0.8:
            keys[f"groove.{edge}"] = _length(rng, 2.5, 14.0)
    return keys


def _panels(rng: Random) -> dict[str, Any]:
    keys: dict[str, Any] = {
        "panels.along": _length(rng, 0.5, 1.5),
        "panels.under_lid": rng.choice((0.0, 0.3, rng.uniform(0.0, 0.5))),
        "lid.seat": rng.choice(("rebate", "battens")),
        "wood.bottom": rng.choice(WOODS),
        "wood.lid": rng.choice(WOODS),
        "wood.rings": rng.choice((0.0, 45.0, 90.0, 90.0)),
    }
    for panel in ("bottom", "lid"):
        keys[f"panels.{panel}_profile"] = rng.choice(
            ("rebated", "rebated", "rebated", "bevelled", "flat")
        )
        keys[f"panels.{panel}_tongue"] = rng.uniform(0.1, 0.4)
        if rng.random() < 0.3:
            keys[f"panels.{panel}_across"] = rng.uniform(1.2, 3.0)
    if rng.random() < 0.4:
        keys["panels.bevel_width"] = _length(rng, 6.0, 30.0)
    return keys


def _made(rng: Random, joint: str, thickness: Thickness, tail_length: float) -> dict[str, Any]:
    """Some boxes are half made: a thinner board, a gauge line that is already there."""
    keys: dict[str, Any] = {}
    for part, planned in (
        ("side", thickness.side),
        ("back", thickness.end),
        ("front", thickness.end),
    ):
        if rng.random() < 0.4:
            keys[f"made.{part}_thickness"] = planned - rng.uniform(0.1, 0.8)
    for size, low, high in (
        ("side_length", 120.0, 260.0),
        ("back_length", 80.0, 160.0),
        ("side_width", 45.0, 100.0),
    ):
        if rng.random() < 0.25:
            keys[f"made.{size}"] = rng.uniform(low, high)
    if joint == "half-blind" and rng.random() < 0.4:
        keys["made.tail_length"] = tail_length
    return keys


def random_box(arrangement: Arrangement, seed: int) -> Choices:
    """One box of an arrangement; many of them can't be built, as with any first idea."""
    rng = Random(f"{arrangement}/{seed}")
    side, end = _length(rng, 8.0, 18.0), _length(rng, 8.0, 18.0)
    if rng.random() < 0.3:
        end = side
    thickness = Thickness(side, end, _length(rng, 4.0, 9.0), _length(rng, 5.0, 11.0))
    pin_board = side if arrangement.tails_on == "ends" else end
    keys: dict[str, Any] = {
        "corner.tails_on": arrangement.tails_on,
        "corner.joint": arrangement.joint,
        "lid.kind": arrangement.lid,
        **_corner(rng, arrangement.joint, pin_board),
        **_groove(rng, min(side, end)),
        **_panels(rng),
    }
    if rng.random() < 0.2:
        keys |= _made(rng, arrangement.joint, thickness, pin_board * rng.uniform(0.6, 0.75))
    if rng.random() < 0.2:
        keys["rule"] = Rule.inches()
    return Choices(_size(rng), thickness).having(keys)
