"""Questions of lesson 1 about rough wood: a stick for the walls, and a board to resaw."""

from __future__ import annotations

from toolkit.measures import MM_PER_INCH
from toolkit.results import Part, Working
from toolkit.stock import END_WASTE, GAP, KERF, TRUING, WANDER
from toolkit.study.asking import Asking, once, without
from toolkit.study.marking import Question

# What saws take: the rough list's own customs, and the same in marks of an inch rule. Lost at a
# cut between two parts, at both ends of a stick, in a cut along a board; to the saw's wander and
# to planing true, of each leaf. Common practice, no source. [mm]
LOST = {
    "mm": {"cut": GAP, "ends": END_WASTE, "kerf": KERF, "wander": WANDER, "truing": TRUING},
    "in": {
        "cut": MM_PER_INCH * 3 / 16,
        "ends": MM_PER_INCH * 5 / 4,
        "kerf": MM_PER_INCH / 16,
        "wander": MM_PER_INCH / 32,
        "truing": MM_PER_INCH / 32,
    },
}


def _walls(ask: Asking) -> list[Part]:
    """The walls that can come from one stick with the sides, unless one is made already."""
    side = ask.part("side")
    if side is None:
        return []
    alike = [
        part
        for part in (side, ask.part("back"), ask.part("front"))
        if part is not None
        and part.wood == side.wood
        and part.rough_thickness.value == side.rough_thickness.value
    ]
    made = ask.plan.choices.made
    lengths = (made.side_length, made.back_length, made.front_length)
    return alike if lengths == (None, None, None) else []


def _stick(ask: Asking, walls: list[Part]) -> Working:
    """Rough length of the stick that the walls are sawn from. [mm]"""
    lost, pieces = LOST[ask.rule.units], sum(part.count for part in walls)
    return Working.of(
        "stick",
        *((f"rough {part.name}", part.rough_length.value, part.count) for part in walls),
        ("saw cut", lost["cut"], pieces - 1),
        ("end waste", lost["ends"]),
    )


def wall_stick(ask: Asking) -> Question | None:
    """How long a stick is from which the walls are sawn end to end."""
    walls, rule = _walls(ask), ask.rule
    if not walls:
        return None
    sum_, lost, say = _stick(ask, walls), LOST[rule.units], rule.exact
    listed = ", ".join(
        f"{'two sides' if part.count == 2 else f'the {part.name}'} "
        f"{say(part.length.value, unit=False)} + {say(_allowance(part))}"
        for part in walls
    )
    allowances = sum(_allowance(part) * part.count for part in walls)
    pieces, side = sum(part.count for part in walls), walls[0]
    slips = {
        "one-side": once(sum_, "rough side"),
        "finished": sum_.value - allowances,
        "one-allowance": sum_.value - allowances + _allowance(side),
        "no-cuts": without(sum_, "saw cut"),
        "cut-too-many": sum_.value + lost["cut"],
        "no-ends": without(sum_, "end waste"),
        "ends-twice": sum_.value + lost["ends"],
        "pieces-only": without(sum_, "saw cut", "end waste"),
    }
    return ask.question(
        "lesson1.wall-stick",
        sum_,
        slips,
        listed=listed,
        lost=lost,
        pieces=pieces,
        cuts=f"{pieces - 1} cut{'s' if pieces > 2 else ''}",
    )


def _allowance(part: Part) -> float:
    return part.rough_length.value - part.length.value


def resawn(ask: Asking) -> Question | None:
    """How thick a board must be to be resawn into lid and bottom."""
    lid, bottom, rule = ask.part("lid"), ask.part("bottom"), ask.rule
    if lid is None or bottom is None or lid.wood != bottom.wood:
        return None
    thick = {part.name: part.thickness.value for part in (lid, bottom)}
    name = max(thick, key=lambda part: thick[part])
    lost = LOST[rule.units]
    sum_ = Working.of(
        "board",
        (f"{name} thickness", thick[name], 2),
        ("wander", lost["wander"], 2),
        ("planed off", lost["truing"], 2),
        ("saw cut", lost["kerf"]),
    )
    slips = {
        "no-cut": without(sum_, "saw cut"),
        "two-cuts": sum_.value + lost["kerf"],
        "losses-once": once(sum_, "wander"),
        "no-wander": without(sum_, "wander"),
        "no-losses": 2 * thick[name] + lost["kerf"],
        "leaves-only": 2 * thick[name],
        "one-leaf": sum_.value - thick[name],
    }
    return ask.question("lesson1.resawn", sum_, slips, thick=thick, lost=lost)
