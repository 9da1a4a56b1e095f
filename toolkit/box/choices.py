"""What a student chooses: one frozen record for each section of a box file, one field a key.

Lengths in mm, angles in degrees, moisture and humidity in percent, temperature in °C. ``None``
means *left out*: the rules in ``defaults`` then choose and say so.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, ClassVar, Literal, Self

from toolkit.box.closures import LidChoice
from toolkit.box.customs import Customs
from toolkit.box.made import Made
from toolkit.box.rooms import Rooms
from toolkit.measures import Key, Rule, declared, key, keys_of

Joint = Literal["half-blind", "through"]
TailsOn = Literal["ends", "sides"]
Profile = Literal["flat", "rebated", "bevelled"]
GrooveEnds = Literal["through", "stopped", "plugged"]
Handed = Literal["right", "left"]
Grain = Literal["along", "across"]
Tails = int | tuple[tuple[float, float], ...] | None

# A change to a box: other values for keys of its file, such as ``groove.depth``. Lengths in mm;
# None for a key that is left out.
Change = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Size:
    """Inside or outside for each of length, width and height, or contents with some ease."""

    inside_length: float | None = key("Between the ends.")
    inside_width: float | None = key("Between the sides.")
    inside_height: float | None = key("From the bottom panel to the lid, or to the rim.")
    outside_length: float | None = key("Over the ends.")
    outside_width: float | None = key("Over the sides.")
    outside_height: float | None = key("Of the back.")
    contents: str | None = key("Replaces inside length and width, or checks them.", kind="contents")
    ease: float | None = key("Room beside the contents.", least=0)


@dataclass(frozen=True, slots=True)
class Thickness:
    """Thickness of each kind of part as planned."""

    side: float = field(metadata=declared())
    end: float = field(metadata=declared())
    bottom: float = field(metadata=declared())
    lid: float | None = key("Needed where the box has a lid.")


_PLEASING = "tails of a pleasing width, every groove inside one"
_FLUSHED = "as much as flushing takes off, the fineness of a rule"


@dataclass(frozen=True, slots=True)
class CornerChoice:
    """The dovetails; pin, half pin and tails are measured at the baseline."""

    joint: Joint = key("With a lap, or right through.", default="half-blind")
    tails_on: TailsOn = key("The parts that carry the tails.", default="ends")
    lap: float | None = key("Wood left in front of a tail.", rule="a third of the pin board")
    tail_length: float | None = key("Instead of the lap.")
    slope: float | None = key(
        "Of the tails' sides.", kind="slope", rule="between the 1 in 6 and 1 in 8 of most makers"
    )
    half_pin: float | None = key("At the baseline.", rule="like the pins")
    pin: float | None = key(
        "At the baseline.",
        rule="the narrowest chisel clears its narrow face, and a half pin as wide will not split",
    )
    tails_back: Tails = key(kind="tails", rule=_PLEASING)
    tails_front: Tails = key(kind="tails", rule=_PLEASING)
    proud: float | None = key(
        "End grain left standing, to plane flush; negative: shy.", least=-1, most=2, rule=_FLUSHED
    )


_EDGE = "half the side and a little more, and a half pin's width with wood of the tail over it"


@dataclass(frozen=True, slots=True)
class GrooveChoice:
    """One plough setting for both panels."""

    width: float | None = key(
        "The plough iron.", rule="the widest plough iron not over half the thinnest wall"
    )
    depth: float | None = key("From the inside face.", rule="a third of the thinnest wall")
    bottom_edge: float | None = key(
        "From the wall's bottom edge to the bottom groove.", least=0, rule=_EDGE
    )
    top_edge: float | None = key("From the wall's top edge to the lid groove.", least=0, rule=_EDGE)
    ends: GrooveEnds | None = key(
        "How a groove ends at a corner.",
        rule="right through where nothing shows, stopped where a tail would show it",
    )


SWELLS = "swelling from bench to damp room, and room over"


@dataclass(frozen=True, slots=True)
class Panels:
    """Clearances and edges of lid and bottom."""

    across: ClassVar[Key] = Key(
        "Across the grain, both sides together, both panels.", of=("bottom_across", "lid_across")
    )
    bottom_across: float | None = key("The same of the bottom alone.", least=0, rule=SWELLS)
    lid_across: float | None = key("The same of the lid alone.", least=0, rule=SWELLS)
    along: float = key("Of the bottom along the grain, both ends together.", least=0, default=1.0)
    bottom_tongue: float = key("Groove width less tongue thickness.", least=0, default=0.2)
    lid_tongue: float = key("Groove width less tongue thickness.", least=0, default=0.3)
    bottom_profile: Profile = key(default="rebated")
    lid_profile: Profile = key(default="rebated")
    bevel_width: float | None = key("Of a bevelled edge, from its rim to where it ends.")
    under_lid: float | None = key(
        "Clearance: the front end below the floor of the lid groove.",
        least=0,
        rule="more in high walls, for a front may rise more than its sides",
    )
    grain: Grain = key("Of lid and bottom, to the length of the box.", default="along")


@dataclass(frozen=True, slots=True)
class Tools:
    """What is on the bench."""

    chisel: float | None = key("The narrowest.", rule="the usual narrowest chisel")
    plough_irons: tuple[float, ...] | None = key(kind="irons")
    hand: Handed = key(
        "The maker's: left turns what shows how a board lies before you.", default="right"
    )
    plough_hand: Handed = key(
        "The plough's, whoever pushes it: right has its fence at the left.", default="right"
    )


_USUAL_WOOD = "black cherry"


@dataclass(frozen=True, slots=True)
class Wood:
    """Woods by name, and the ring angle of lid and bottom: 0 flat-sawn, 90 quartered."""

    walls: ClassVar[Key] = Key("Sides and ends.", of=("sides", "ends"), both=True)
    sides: str = key(kind="species", default=_USUAL_WOOD)
    ends: str = key(kind="species", default=_USUAL_WOOD)
    panels: ClassVar[Key] = Key("Bottom and lid.", of=("bottom", "lid"), both=True)
    bottom: str = key(kind="species", default=_USUAL_WOOD)
    lid: str = key(kind="species", default=_USUAL_WOOD)
    rings: float | None = key(
        "Of lid and bottom.",
        kind="rings",
        rule="flat-sawn, or nearer to quarter-sawn where its year is too much for the grooves",
    )


@dataclass(frozen=True, slots=True)
class Allowance:
    """Rough over finished, of one part; what is left out is as for all parts."""

    length: float | None = key(least=0)
    width: float | None = key(least=0)
    thickness: float | None = key(least=0)


_AS_ALL = Allowance()


@dataclass(frozen=True, slots=True)
class Allowances:
    """Rough over finished, of all parts and of each part that has its own."""

    length: float = key(least=0, default=10.0)
    width: float = key(least=0, default=6.0)
    thickness: float = key(least=0, default=4.0)
    side: Allowance = key(default=_AS_ALL)
    back: Allowance = key(default=_AS_ALL)
    front: Allowance = key(default=_AS_ALL)
    bottom: Allowance = key(default=_AS_ALL)
    lid: Allowance = key(default=_AS_ALL)
    batten: Allowance = key(default=_AS_ALL)

    def of(self, part: str) -> tuple[float, float, float]:
        """Allowance on length, width and thickness of one part. [mm]"""
        own: Allowance = getattr(self, part)
        return (
            self.length if own.length is None else own.length,
            self.width if own.width is None else own.width,
            self.thickness if own.thickness is None else own.thickness,
        )


@dataclass(frozen=True, slots=True)
class Choices:
    """A box for the hand-tool class workbook: all that its file says."""

    title: str = field(default="Box", kw_only=True, metadata=declared(kind="title"))
    rule: Rule = field(default_factory=Rule.millimetres, kw_only=True, metadata=declared())
    size: Size = field(metadata=declared())
    thickness: Thickness = field(metadata=declared())
    corner: CornerChoice = key(default=CornerChoice())
    groove: GrooveChoice = key(default=GrooveChoice())
    panels: Panels = key(default=Panels())
    lid: LidChoice = key(default=LidChoice())
    tools: Tools = key(default=Tools())
    wood: Wood = key(default=Wood())
    rooms: Rooms = key(default=Rooms())
    allowances: Allowances = key(default=Allowances())
    customs: Customs = key(default=Customs())
    made: Made = key(default=Made())

    def value(self, path: str) -> Any:
        """What they say for a key of the box file, such as ``groove.depth``. [mm]"""
        section, _, name = path.partition(".")
        record = getattr(self, section)
        values = {getattr(record, each) for each in _named(section, name)} if name else {record}
        return values.pop() if len(values) == 1 else None

    def having(self, change: Change) -> Self:
        """These choices with some keys changed, named as in a box file; None for a key left out.

        >>> box = Choices(Size(inside_length=152), Thickness(12, 12, 8, 9))
        >>> box.having({"thickness.side": 11.0}).value("thickness.side")
        11.0
        """
        whole: dict[str, Any] = {}
        sections: dict[str, dict[str, Any]] = {}
        for path, value in change.items():
            section, _, name = path.partition(".")
            if name:
                new = dict.fromkeys(_named(section, name), value)
                sections.setdefault(section, {}).update(new)
            else:
                whole[section] = value
        for section, values in sections.items():
            whole[section] = replace(getattr(self, section), **values)
        return replace(self, **whole)


def _named(section: str, name: str) -> tuple[str, ...]:
    """The fields of a section that a key names: of one that stands for two, both."""
    key = keys_of(keys_of(Choices)[section].type).get(name)
    return key.of if key and key.of else (name,)
