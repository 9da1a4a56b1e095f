"""What the rules choose for a box of which only its sizes and thicknesses are given."""

import os
import random
from collections.abc import Iterator

from toolkit.box import Choices, Size, Thickness
from toolkit.box.choices import Change
from toolkit.measures import Rule
from toolkit.plan import plan

MANY = 2000 if os.environ.get("WORKBOOK_MANY_BOXES") == "1" else 200


def boxes() -> Iterator[Choices]:
    """Boxes small and large, of thin walls and thick, joined and closed in every way."""
    chance = random.Random(14)
    for _ in range(MANY):
        rule = chance.choice((Rule.millimetres(), Rule.inches()))

        def some(low: float, high: float, rule: Rule = rule) -> float:
            return rule.round(chance.uniform(low, high), fineness="sizes")

        side = some(9, 20)
        size = Size(
            inside_length=some(100, 360), inside_width=some(60, 240), inside_height=some(25, 140)
        )
        end = chance.choice((side, some(9, 20)))
        thick = Thickness(side=side, end=end, bottom=some(6, 10), lid=some(7, 11))
        yield Choices(size, thick, rule=rule).having(
            {
                "corner.tails_on": chance.choice(("ends", "sides")),
                "corner.joint": chance.choice(("half-blind", "through")),
                "lid.kind": chance.choice(("sliding", "lift-off", "none")),
            }
        )


def faults(box: Choices) -> set[str]:
    """What a plan finds fault with, but for what the tails' own walls are told, which are given."""
    given = {"joint-opens-when-panel-swells"} if box.corner.tails_on == "sides" else set()
    return {row.code for row in plan(box).found if row.level != "good"} - given


def marks(rule: Rule, low: float, high: float) -> Iterator[float]:
    """Every mark of a rule from low to high. [mm]"""
    mark = rule.mark("joints")
    count = int(low / mark)
    while count * mark <= high + 1e-9:
        yield count * mark
        count += 1


def held_through_the_year(box: Choices) -> Iterator[Change]:
    """Every ring angle, and grooves to a third of the thinnest wall, which is the custom.

    The clearance is left to its rule: a greater one only takes away from the hold.
    """
    thin = min(box.thickness.side, box.thickness.end)
    for depth in marks(box.rule, 0.25 * thin, thin / 3):
        for rings in range(0, 91, 15):
            yield {"groove.depth": depth, "wood.rings": float(rings)}


def laps(box: Choices) -> Iterator[Change]:
    """Every lap from a quarter to a third of the pin board."""
    thick = box.thickness.side if box.corner.tails_on == "ends" else box.thickness.end
    return ({"corner.lap": lap} for lap in marks(box.rule, thick / 4, thick / 3))


def slopes(box: Choices) -> Iterator[Change]:
    """Every slope of the customs, with every lap."""
    for slope in range(10, 19):
        for lap in laps(box) if box.corner.joint == "half-blind" else ({},):
            yield {"corner.slope": slope / 2, **lap}


# What a box may be warned of for its sizes alone, and the search for values that cure it, through
# the keys that bear on it. A wood is what the student has, and not searched.
SEARCHED = {"drops-out": held_through_the_year, "lap-thin": laps, "slope-short-grain": slopes}


GIVEN = ("size.", "thickness.", "corner.joint", "rooms.")


def test_no_rule_chooses_a_size_that_sets_off_a_finding() -> None:
    clean = 0
    for box in boxes():
        found = faults(box)
        clean += not found
        for code in found:
            assert code in SEARCHED, (code, box)
            for change in SEARCHED[code](box):
                there = faults(box.having(change))
                assert code in there or there - found, (code, change, box)
        if found:
            made = plan(box)
            # What is left is for the sizes that were given: no remedy cures it without one of
            # those, or without another finding in its place.
            for change in (
                each for row in made.findings if row.code in found for each in row.cures
            ):
                given = any(key.startswith(GIVEN) for key in change)
                assert given or faults(box.having(change)) - found, change
            assert "drops-out" not in found or made.design.choices.wood.rings == 90.0
    assert clean > 0.75 * MANY
