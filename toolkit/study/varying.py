"""Other boxes like the student's own, to ask fresh questions about."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random

from toolkit.box import Choices, Size, Thickness
from toolkit.box.choices import CornerChoice, GrooveChoice
from toolkit.box.made import Made
from toolkit.measures import MM_PER_INCH, Rule
from toolkit.plan import Plan, plan as planned

# About one box in two works, so that this many tries fail only where the own box is hopeless.
_TRIES = 200
# Inside sizes are varied by up to a quarter either way. [share]
_SPREAD = 0.25
_WALLS = (0.8, 1.25)


def other_boxes(plan: Plan, chance: Random) -> Iterator[Plan]:
    """Boxes with other inside sizes, thicknesses and grooves; each of them works.

    Joint, lid, wood and rooms stay. What the student has set out or made is left out, so that
    it follows from the new sizes.
    """
    for _ in range(_TRIES):
        other = planned(_changed(plan, chance))
        if other.works and other.design.exists and _differs(other, plan):
            yield other


def _changed(plan: Plan, chance: Random) -> Choices:
    c, f = plan.design.choices, plan.design.frame
    step = _step(c.rule)

    def near(value: float, low: float = 1 - _SPREAD, high: float = 1 + _SPREAD) -> float:
        return max(1, round(value * chance.uniform(low, high) / step)) * step

    side = near(f.side_thickness.value, *_WALLS)
    end = side if chance.random() < 0.5 else near(side, *_WALLS)
    width = c.groove.width

    def panel(profile: str, play: float, *more: int) -> float:
        """A flat panel runs in the groove as it is; others are thicker and cut down at the edge."""
        return width - play if profile == "flat" else width + step * chance.randint(*more)

    return replace(
        plan.choices,
        size=Size(
            inside_length=near(f.inside_length.value),
            inside_width=near(f.inside_width.value),
            inside_height=near(f.inside_height.value),
        ),
        thickness=Thickness(
            side=side,
            end=end,
            bottom=panel(c.panels.bottom_profile, c.panels.bottom_tongue, 1, 3),
            lid=panel(c.panels.lid_profile, c.panels.lid_tongue, 2, 4)
            if plan.design.lids
            else None,
        ),
        groove=GrooveChoice(
            width=width, depth=_depth(min(side, end), c.rule, chance), ends=c.groove.ends
        ),
        corner=CornerChoice(joint=c.corner.joint, tails_on=c.corner.tails_on),
        panels=replace(plan.choices.panels, bottom_across=None, lid_across=None),
        made=Made(),
    )


def _step(rule: Rule) -> float:
    """What people would vary such sizes by: a millimetre, or a sixteenth of an inch. [mm]"""
    return 1.0 if rule.units == "mm" else MM_PER_INCH / 16


def _depth(thinnest: float, rule: Rule, chance: Random) -> float:
    """A groove between a quarter and a half of the thinnest wall, on the rule. [mm]"""
    return rule.round(thinnest * chance.uniform(0.25, 0.5), fineness="sizes")


def _differs(other: Plan, own: Plan) -> bool:
    """Whether no answer can be carried over from the student's own box."""
    a, b = other.design.frame, own.design.frame
    return all(
        getattr(a, name).value != getattr(b, name).value
        for name in ("inside_length", "inside_width", "inside_height")
    )
