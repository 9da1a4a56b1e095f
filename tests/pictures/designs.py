"""Many different boxes, the same ones at every run, and every picture of a box."""

import random
from collections.abc import Iterator

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.box import Choices
from toolkit.measures import Rule
from toolkit.pictures import LabelBox, Picture, corner_picture, section_across, section_along
from toolkit.plan import Plan, plan


def overlap(one: LabelBox, other: LabelBox) -> bool:
    """Whether two labels share some of the page."""
    return one.x0 < other.x1 and other.x0 < one.x1 and one.y0 < other.y1 and other.y0 < one.y1


def named() -> dict[str, Choices]:
    """Boxes that a class meets, right and wrong."""
    box = postcard()
    through = {"corner.joint": "through", "corner.lap": None, "groove.ends": "through"}
    return {
        "postcard": box,
        "inches": inch_postcard(),
        "ears": ears(),
        "inch ears": inch_postcard().having({"corner.tails_on": "sides"}),
        "lift-off": lift_off(),
        "battens": lift_off().having({"lid.seat": "battens"}),
        "through": box.having(through),
        "through ears": ears().having(through),
        "stopped": box.having(through | {"groove.ends": "stopped"}),
        "plugged": box.having({"corner.tails_back": 5, "groove.ends": "plugged"}),
        "hole": box.having({"groove.bottom_edge": 21.0}),
        "part hole": box.having({"corner.tails_back": 5}),
        "thin lap": box.having({"corner.lap": 2.0}),
        "thick lap": box.having({"thickness.side": 20.0, "corner.lap": 9.0}),
        "tips meet": box.having({"corner.pin": 2.0, "corner.half_pin": 1.0}),
        "short grain": box.having({"corner.slope": 3.0}),
        "sliver": box.having({"groove.bottom_edge": 15.0}),
        "one tail": box.having({"corner.tails_back": 1, "corner.tails_front": 1}),
        "unequal": box.having({"corner.tails_back": ((5.0, 21.0), (27.0, 35.0), (41.0, 59.0))}),
        "tall": box.having(
            {"size.inside_height": 108.0, "corner.tails_back": 6, "corner.tails_front": 5}
        ),
        "deep groove": box.having({"groove.depth": 9.0}),
        "thin rim": box.having({"groove.top_edge": 3.0}),
        "tight": box.having({"panels.lid_across": 0.5, "panels.bottom_across": 0.5}),
        "drops out": box.having({"groove.depth": 2.0}),
        "proud": box.having({"thickness.lid": 16.0, "thickness.bottom": 16.0}),
        "bevelled": box.having({"panels.lid_profile": "bevelled", "wood.rings": 90.0}),
        "flat": box.having({"panels.lid_profile": "flat"}),
        "front too high": box.having({"made.front_width": 53.0}),
        "front too low": box.having({"made.front_width": 45.0}),
        "lid short": box.having({"made.lid_length": 163.0}),
        "skimmed": box.having({"made.side_thickness": 11.4, "made.tail_length": 8.0}),
    }


def impossible() -> dict[str, Choices]:
    """Boxes that cannot exist."""
    box = postcard()
    return {
        "no length": box.having({"size.inside_length": None, "size.outside_length": 10.0}),
        "no width": box.having({"size.inside_width": None, "size.outside_width": 10.0}),
        "no height": box.having({"size.inside_height": None, "size.outside_height": 10.0}),
        "no tails": box.having({"corner.tails_back": 24, "corner.tails_front": 24}),
        "all lap": box.having({"corner.lap": 14.0}),
        "no lap": box.having({"corner.lap": -1.0}),
        "groove right through": box.having({"groove.depth": 13.0}),
    }


def some(count: int, *, seed: int) -> Iterator[Choices]:
    """Boxes of any proportion, drawn by lot.

    Parameters
    ----------
    count, seed : int
        How many, and which ones.
    """
    lot = random.Random(seed)
    for _ in range(count):
        side = lot.uniform(8.0, 22.0)
        through = lot.random() < 0.25
        choices = postcard().having(
            {
                "rule": lot.choice([Rule.millimetres(), Rule.inches()]),
                "size.inside_length": lot.uniform(60.0, 420.0),
                "size.inside_width": lot.uniform(50.0, 300.0),
                "size.inside_height": lot.uniform(16.0, 150.0),
                "thickness.side": side,
                "thickness.end": lot.uniform(8.0, 22.0),
                "thickness.bottom": lot.uniform(5.0, 14.0),
                "thickness.lid": lot.uniform(5.0, 16.0),
                "corner.tails_on": lot.choice(["ends", "sides"]),
                "corner.joint": "through" if through else "half-blind",
                "corner.lap": None if through else lot.uniform(1.5, side * 0.6),
                "corner.slope": lot.uniform(4.0, 10.0),
                "corner.half_pin": lot.uniform(2.0, 9.0),
                "corner.pin": lot.uniform(2.0, 10.0),
                "corner.tails_back": lot.choice([None, 1, 2, 3, 4, 6, 9]),
                "corner.tails_front": lot.choice([None, 1, 2, 3, 5]),
                "groove.width": lot.uniform(3.0, 9.0),
                "groove.depth": lot.uniform(2.0, 8.0),
                "groove.bottom_edge": lot.uniform(3.0, 20.0),
                "groove.top_edge": lot.uniform(3.0, 14.0),
                "groove.ends": lot.choice(["through", "through", "stopped", "plugged"]),
                "panels.lid_across": lot.uniform(0.2, 5.0),
                "panels.bottom_across": lot.uniform(0.2, 5.0),
                "panels.lid_profile": lot.choice(["flat", "rebated", "bevelled"]),
                "panels.bottom_profile": lot.choice(["flat", "rebated", "bevelled"]),
                "lid.kind": lot.choice(["sliding", "sliding", "lift-off"]),
                "lid.seat": lot.choice(["rebate", "battens"]),
                "wood.rings": lot.choice([0.0, 45.0, 90.0]),
            }
        )
        yield choices


def pictures(
    box: Plan, *, ghost: Plan | None = None, but: str = ""
) -> Iterator[tuple[str, Picture]]:
    """Every bench drawing of a box but one, with its name."""
    yield "back corner", corner_picture(box, which="back", ghost=ghost)
    yield "front corner", corner_picture(box, which="front", ghost=ghost)
    if but != "across":
        yield "across", section_across(box, ghost=ghost)
    if but != "along":
        yield "along", section_along(box, ghost=ghost)


def postcard_plan() -> Plan:
    """The workbook's example, worked out."""
    return plan(postcard())
