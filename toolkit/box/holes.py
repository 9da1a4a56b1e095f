"""Where a groove comes out into daylight, and what cures it, the least trouble first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from toolkit.box import groove_checks, joint_checks
from toolkit.box.choices import Change, Choices
from toolkit.box.designing import Design, design
from toolkit.box.grooves import Hole
from toolkit.box.panel_checks import check_space, check_thickness
from toolkit.box.ploughing import grooves_to_plough
from toolkit.measures import Rule
from toolkit.results import Finding, Table, below

CureKind = Literal["move the groove", "shift the tails", "more or fewer tails", "lap", "stop",
                   "plug"]  # fmt: skip
_FARTHEST = 8.0  # that a groove or a half pin is moved to save a corner [mm]
_MOST_TAILS = 8


@dataclass(frozen=True, slots=True)
class Cure:
    """One change that closes a hole, tried on the whole box.

    ``changes`` are the box's own values by key of its file, lengths in mm; ``minds`` what else
    the change makes worth care.
    """

    rank: int
    kind: CureKind
    sentence: str
    changes: Change
    minds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Exit:
    """A hole and its cures, in rank."""

    hole: Hole
    cures: tuple[Cure, ...]

    def sentence(self, rule: Rule) -> str:
        """Which hole it is: groove, corner, face, position and size."""
        show, hole = rule.exact, self.hole
        why = (
            "it meets a pin there instead of a tail"
            if hole.cause == "pin"
            else "it comes out of the tip of a through tail"
        )
        return (
            f"{hole.groove} groove at the {hole.corner} corners, {hole.face}: "
            f"{show(round(hole.height, 2))} × {show(hole.depth)}, from {show(round(hole.low, 2))} "
            f"to {show(round(hole.high, 2))} above the bottom edge; {why}"
        )


def _findings(d: Design) -> list[Finding]:
    checks = (check_space, check_thickness, *groove_checks.CHECKS, *joint_checks.CHECKS)
    return [row for check in checks for row in check(d)]


def _key(hole: Hole) -> tuple[str, str, str]:
    return hole.groove, hole.corner, hole.cause


def _steps(rule: Rule) -> Iterator[float]:
    """Marks of the rule, nearest first, either way. [mm]"""
    mark = rule.mark("sizes")
    for count in range(1, int(_FARTHEST / mark) + 1):
        yield count * mark
        yield -count * mark


def _moves(d: Design, hole: Hole) -> Iterator[tuple[str, Change]]:
    """The groove nearer to its edge or farther off; both alike where one fence does for both."""
    g, rule = d.choices.groove, d.choices.rule
    own = "bottom_edge" if hole.groove == "bottom" else "top_edge"
    edges = {"bottom_edge": g.bottom_edge or 0.0, "top_edge": g.top_edge or 0.0}
    alike = d.frame.lid_groove is not None and edges["bottom_edge"] == edges["top_edge"]
    for by in _steps(rule):
        new = round(edges[own] + by, 9)
        if new < 0:
            continue
        far = "farther from" if by > 0 else "nearer to"
        if alike:
            words = f"Plough both grooves {rule.exact(abs(by))} {far} their edges, at"
            yield f"{words} {rule.exact(new)}", {f"groove.{key}": new for key in edges}
        else:
            edge = own.removesuffix("_edge")
            words = f"Plough the {hole.groove} groove {rule.exact(abs(by))} {far} the {edge} edge"
            yield f"{words}, at {rule.exact(new)}", {f"groove.{own}": new}


def _half_pins(d: Design) -> Iterator[tuple[str, Change]]:
    was, rule = d.choices.corner.half_pin, d.choices.rule
    for by in _steps(rule):
        new = round(was + by, 9)
        if not below(new, d.choices.customs.half_pin_least):
            words = f"Make the half pins {rule.exact(new)} at the baseline instead of"
            yield f"{words} {rule.exact(was)}", {"corner.half_pin": new}


def _counts(d: Design, hole: Hole) -> Iterator[tuple[str, Change]]:
    was = len((d.back if hole.corner == "back" else d.front).tails)
    for count in sorted(range(1, _MOST_TAILS + 1), key=lambda one: (abs(one - was), one)):
        if count != was:
            words = f"Set out {count} tail{'s' if count > 1 else ''} at the {hole.corner}"
            yield f"{words} instead of {was}", {f"corner.tails_{hole.corner}": count}


def _stop_words(d: Design, hole: Hole) -> str:
    """Where a stopped groove ends, in the boards that would show it."""
    walls: dict[str, float] = {}
    stopped = design(d.choices.having({"groove.ends": "stopped"}))
    tip_on_end = (hole.cause == "tip") == (d.choices.corner.tails_on == "ends")
    for row in grooves_to_plough(stopped):
        wall_is_end = row.wall.endswith("end")
        if row.groove != hole.groove or wall_is_end != tip_on_end:
            continue
        for place, left in row.stops:
            if hole.corner in (place, row.wall.removesuffix(" end")):
                walls[row.wall] = left
    if not walls:
        return f"Stop the {hole.groove} groove short of the corner"
    boards = "sides" if len(walls) > 1 else next(iter(walls))
    left = next(iter(walls.values()))
    return (
        f"Stop the {hole.groove} groove {d.choices.rule.exact(round(left, 2))} short of the end "
        f"of the {boards} and chop its end out"
    )


def _ways(d: Design, hole: Hole) -> Iterator[tuple[CureKind, Iterator[tuple[str, Change]]]]:
    if hole.cause == "pin":
        yield "move the groove", _moves(d, hole)
        yield "shift the tails", _half_pins(d)
        yield "more or fewer tails", _counts(d, hole)
    else:
        lapped = {"corner.joint": "half-blind", "corner.lap": None, "corner.tail_length": None}
        yield "lap", iter([("Lap the joints: lapped tails end behind the lap", lapped)])
    yield "stop", iter([(_stop_words(d, hole), {"groove.ends": "stopped"})])
    # Pins and tails show end grain where a groove comes out of them.
    plug = f"Glue a plug into the end of the {hole.groove} groove, its end grain outwards"
    yield "plug", iter([(plug, {"groove.ends": "plugged"})])


def _cures(choices: Choices, d: Design, hole: Hole) -> Iterator[Cure]:
    before = _findings(d)
    wrong = {(row.code, row.where) for row in before if row.level == "wont_work"}
    cared = {(row.code, row.where) for row in before if row.level == "care"}
    rank = 0
    for kind, tries in _ways(d, hole):
        for words, changes in tries:
            there = design(choices.having(changes))
            open_now = there.choices.groove.ends == "through"
            if not there.exists or (open_now and len(there.holes) >= len(d.holes)):
                continue
            if open_now and any(_key(one) == _key(hole) for one in there.holes):
                continue
            rows = _findings(there)
            new = {(row.code, row.where) for row in rows if row.level == "wont_work"}
            slivers = {row.where for row in rows if row.place.spot == "groove side"}
            if new - wrong or (kind in ("move the groove", "shift the tails") and slivers):
                continue
            minds = tuple(
                f"{row.where}: {row.message}"
                for row in rows
                if row.level == "care" and (row.code, row.where) not in cared
            )
            rank += 1
            yield Cure(rank, kind, f"{words}.", changes, minds)
            break


@lru_cache(maxsize=64)
def exits(choices: Choices) -> tuple[Exit, ...]:
    """Every hole that a groove ploughed right through leaves, each with its cures.

    A cure is offered only if the box, worked out anew with it, has that hole no longer, has fewer
    holes than before or has them stopped or plugged, and nothing that worked is made impossible.
    Walls that are made already are not reckoned with: what is ploughed can be plugged only.
    """
    d = design(choices)
    if not d.exists:
        return ()
    return tuple(Exit(hole, tuple(_cures(choices, d, hole))) for hole in d.holes)


def exit_table(choices: Choices) -> Table:
    """Every hole and its cures as rows for the bench."""
    rule, rows = choices.rule, []
    for one in exits(choices):
        for cure in one.cures:
            place = one.sentence(rule) if cure.rank == 1 else ""
            rows.append((place, str(cure.rank), cure.sentence, cure.minds[0] if cure.minds else ""))
    ends = design(choices).choices.groove.ends
    note = "Each change is tried on the whole box."
    if not rows:
        note = "Every groove lies inside a tail: nothing shows outside."
    elif ends != "through":
        note = f"The grooves of this box are {ends} already; so it would be without."
    return Table(
        "Where grooves would come out", ("hole", "rank", "cure", "take care"), tuple(rows),
        note=note, numeric=(1,),
    )  # fmt: skip
