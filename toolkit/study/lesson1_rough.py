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
    return ask.question(
        "lesson1.wall-stick",
        f"These walls are sawn end to end from one stick, each with its allowance: {listed}. "
        f"Each saw cut between two of them takes {say(lost['cut'])} "
        f"with its cleaning up, and {say(lost['ends'])} is lost at the two ends of the stick "
        "together. How long must it be?",
        sum_,
        (once(sum_, "rough side"), "A box has two sides; you have one of them."),
        (
            sum_.value - allowances,
            "Those are finished lengths. Nothing would be left to plane the ends: add the "
            "allowance of each piece.",
        ),
        (
            sum_.value - allowances + _allowance(side),
            "You added the allowance once. Each piece has its own.",
        ),
        (without(sum_, "saw cut"), "The saw takes its part too: add the cuts."),
        (
            sum_.value + lost["cut"],
            f"{pieces} pieces have {pieces - 1} cut{'s' if pieces > 2 else ''} between them.",
        ),
        (
            without(sum_, "end waste"),
            "Ends of a stick are checked and dirty: add what is lost there.",
        ),
        (
            sum_.value + lost["ends"],
            "What is lost at the ends is told for both together: add it once.",
        ),
        (
            without(sum_, "saw cut", "end waste"),
            "Those are the pieces alone; add the cuts between them and the two ends.",
        ),
        fineness="rough",
        direction="up",
        nudge="Go along the stick: end, piece, cut, piece, and so on to the other end.",
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
    lost, say = LOST[rule.units], rule.exact
    sum_ = Working.of(
        "board",
        (f"{name} thickness", thick[name], 2),
        ("wander", lost["wander"], 2),
        ("planed off", lost["truing"], 2),
        ("saw cut", lost["kerf"]),
    )
    return ask.question(
        "lesson1.resawn",
        "Lid and bottom are to be resawn from one board, down its middle, each leaf as thick "
        f"as the thicker of them needs: lid {say(thick['lid'])}, bottom "
        f"{say(thick['bottom'])}, planed. The saw takes {say(lost['kerf'])}; its wander costs "
        f"each leaf {say(lost['wander'])}, and planing both faces true another "
        f"{say(lost['truing'])}. How thick must the board be at least?",
        sum_,
        (without(sum_, "saw cut"), "You forgot the wood that the saw turns to dust."),
        (sum_.value + lost["kerf"], "Two leaves come of one cut: take what the saw takes once."),
        (
            once(sum_, "wander"),
            "The saw wanders for both leaves, and both are planed: count each loss twice.",
        ),
        (
            without(sum_, "wander"),
            "Nobody saws dead straight, and sawn faces are not true: allow for wander and for "
            "planing, of each leaf.",
        ),
        (
            2 * thick[name] + lost["kerf"],
            "Those leaves are as thick as planed panels with the saw marks on. Add wander and "
            "planing.",
        ),
        (2 * thick[name], "That is the two leaves alone; saw and plane take their part."),
        (sum_.value - thick[name], "That makes one leaf; there are two."),
        direction="up",
        senses=("too thick", "too thin"),
        nudge="Go through the board: leaf, wander, planing, saw cut, planing, wander, leaf.",
    )
