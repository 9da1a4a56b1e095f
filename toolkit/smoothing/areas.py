"""How much surface a box has to finish: outside, inside, lid."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from toolkit.measures import convert
from toolkit.planes import above_zero, between, not_negative, one_of

Group = Literal["outside", "inside", "lid"]
GROUPS: tuple[Group, ...] = ("outside", "inside", "lid")
LidKind = Literal["sliding", "lift-off"]
LIDS: tuple[LidKind, ...] = ("sliding", "lift-off")


@dataclass(frozen=True, slots=True)
class Area:
    """One surface to finish: its name, the group it belongs to, its size. [mm²]"""

    name: str
    group: Group
    size: float


@dataclass(frozen=True, slots=True)
class Areas:
    """The surfaces of a box, of which each group is the sum of its own."""

    rows: tuple[Area, ...]

    @classmethod
    def of(cls, rows: Iterable[tuple[str, Group, float]]) -> Areas:
        """Surfaces from ``(name, group, size [mm²])`` rows."""
        return cls(tuple(Area(*row) for row in rows))

    def group(self, name: Group) -> float:
        """All of one group. [mm²]"""
        one_of(name, name="group", allowed=GROUPS)
        return sum(row.size for row in self.rows if row.group == name)

    @property
    def outside(self) -> float:
        """Outside of the walls, their rims, and the bottom from below. [mm²]"""
        return self.group("outside")

    @property
    def inside(self) -> float:
        """Inside of the walls, and the bottom from above. [mm²]"""
        return self.group("inside")

    @property
    def lid(self) -> float:
        """Both faces of the lid and its edges that show. [mm²]"""
        return self.group("lid")

    @property
    def total(self) -> float:
        """Everything that can be finished. [mm²]"""
        return sum(row.size for row in self.rows)

    def sentence(self) -> str:
        """The groups in square metres and square feet."""
        said = ", ".join(f"{name} {area_words(self.group(name))}" for name in GROUPS)
        return f"To finish: {said}; together {area_words(self.total)}."


def area_words(size: float) -> str:
    """An area in square metres and square feet. [mm²]"""
    feet = convert(size, unit="mm**2", to="ft**2")
    return f"{size / 1e6:.3f} m² ({feet:.2f} sq ft)"


def box_areas(
    outside_length: float,
    *,
    outside_width: float,
    wall_height: float,
    side_thickness: float,
    end_thickness: float,
    inside_height: float,
    lid_thickness: float,
    front_thickness: float | None = None,
    front_height: float | None = None,
    open_groove: float = 0.0,
    lid_size: tuple[float, float] | None = None,
    recess: float = 0.0,
    lid: LidKind = "sliding",
) -> Areas:
    """The surfaces of a box that can be finished, from plain sizes.

    Grooves, tongues and joints take no finish and are left out, and so are a lid's underside
    where it lies on a rim, and the flanks of what reaches down from it into the box.

    Parameters
    ----------
    outside_length, outside_width : float
        Outside of the walls. [mm]
    wall_height : float
        Height of sides and back. [mm]
    side_thickness, end_thickness : float
        Thickness of the walls. [mm]
    front_thickness : float, optional
        Thickness of the front end where it is not the back's. [mm]
    inside_height : float
        From the bottom panel to the lid. [mm]
    lid_thickness : float
        Thickness of the edge of the lid that shows. [mm]
    front_height : float, optional
        Height of a front lowered under a sliding lid; without it as high as the sides. [mm]
    open_groove : float
        Section of the lid groove, which comes out of each side's end at the front. [mm²]
    lid_size : tuple of float, optional
        Length and width of a lift-off lid where it is not the box's own outside. [mm]
    recess : float
        How far the underside of the bottom panel lies above the bottom edges. [mm]
    lid : str
        ``"sliding"`` between the sides, or ``"lift-off"`` on top of all four walls.

    Returns
    -------
    Areas
        Each surface with its group. [mm²]

    Raises
    ------
    ValueError
        A size is out of range, or the walls leave no inside.

    Source
    ------
    Geometry.

    >>> box = box_areas(176, outside_width=134, wall_height=64, side_thickness=12,
    ...                 end_thickness=12, inside_height=38, lid_thickness=9, front_height=51)
    >>> round(box.inside / 1e6, 3)
    0.037
    """
    given = {
        "outside length": outside_length,
        "outside width": outside_width,
        "wall height": wall_height,
        "side thickness": side_thickness,
        "end thickness": end_thickness,
        "inside height": inside_height,
        "lid thickness": lid_thickness,
    }
    for name, value in given.items():
        above_zero(value, name=name, example="12")
    not_negative(recess, name="recess", example="5")
    not_negative(open_groove, name="open groove", unit="mm²", example="24")
    long, wide = lid_size or (outside_length, outside_width)
    for name, value in (("lid length", long), ("lid width", wide)):
        above_zero(value, name=name, example="180")
    one_of(lid, name="lid", allowed=LIDS)
    low = end_thickness if front_thickness is None else front_thickness
    above_zero(low, name="front thickness", example="12")
    length, width = outside_length - end_thickness - low, outside_width - 2 * side_thickness
    if min(length, width) <= 0:
        raise ValueError(
            f"walls of {end_thickness:g} and {side_thickness:g} mm leave {length:g} by {width:g} "
            "mm inside; give a larger outside or thinner walls"
        )
    front = wall_height if front_height is None else front_height
    between(front, low=0, high=wall_height, name="front height", unit="mm", example="51")
    around = 2 * (length + width)
    rims = 2 * outside_length * side_thickness + width * (end_thickness + low)
    rows: list[tuple[str, Group, float]] = [
        ("sides", "outside", 2 * outside_length * wall_height),
        ("back end", "outside", outside_width * wall_height),
        # A lowered front still has the sides' ends, or their ears, standing beside it.
        (
            "front end",
            "outside",
            outside_width * front + 2 * (side_thickness * (wall_height - front) - open_groove),
        ),
        ("bottom edges", "outside", rims),
        ("top edges", "outside", rims),
        ("underside of the bottom", "outside", length * width),
        ("walls below the bottom", "outside", around * recess),
        ("walls inside", "inside", around * inside_height),
        ("bottom inside", "inside", length * width),
        ("underside of the lid", "lid", length * width),
    ]
    if lid == "sliding":
        rows += [
            ("top of the lid", "lid", (length + low) * width),
            ("front edge of the lid", "lid", width * lid_thickness),
        ]
    else:
        rows += [
            ("top of the lid", "lid", long * wide),
            ("edges of the lid", "lid", 2 * (long + wide) * lid_thickness),
        ]
    return Areas.of(rows)
