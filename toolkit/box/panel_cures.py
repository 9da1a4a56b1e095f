"""What to change when a panel swells tight or drops out, the least trouble first, each tried."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Literal

from toolkit.box.choices import Change, Choices
from toolkit.box.clearances import Window, panel_of, widest_span, window
from toolkit.box.designing import Design, design
from toolkit.box.groove_checks import check_depth, check_exits
from toolkit.box.panel_checks import check_seasons, check_space, check_thickness
from toolkit.results import Place, below
from toolkit.wood import all_species, species, strain


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that makes a panel right, reckoned through the same seasons.

    ``changes`` are the box's own values by key of its file: lengths in mm, rings in degrees,
    moisture in percent. ``least``, ``has``, ``most`` are the clearance afterwards. ``minds``
    tells what else the change makes worth care.
    """

    rank: int
    kind: Kind
    sentence: str
    changes: Change
    after: Window
    minds: tuple[str, ...] = ()


def _faults(d: Design) -> tuple[frozenset[tuple[str, str]], tuple[str, ...]]:
    """What won't work, by code and place; and what is worth care, as sentences."""
    checks = (check_space, check_depth, check_exits, check_thickness, check_seasons)
    rows = [row for check in checks for row in check(d)]
    wrong = frozenset(
        (row.code, row.where)
        for row in rows
        if row.level == "wont_work" or (row.level == "care" and row.topic == "season")
    )
    care = (row for row in rows if row.level == "care" and row.topic != "season")
    return wrong, tuple(f"{row.where}: {row.message}" for row in care)


def _words(start: str, changes: Change, d: Design, *, made: str) -> str:
    """The change, and the widths that the panels must then have."""
    show = d.choices.rule.exact
    parts = []
    for name in (panel.name for panel in reversed(d.grooved)):
        keys = {f"panels.{name}_across", f"made.{name}_width"}
        if keys & set(changes):
            row = panel_of(d, name)
            width, clear = show(round(row.width.value, 2)), show(round(row.across, 2))
            parts.append(f"the {name} {width} wide, {clear} clear")
    if not start:
        return f"{made} {' and '.join(parts)}."
    return f"{start}; {' and '.join(parts)}." if parts else f"{start}."


def remedies(
    choices: Choices, *, panel: str, woods: Sequence[str] | None = None
) -> tuple[Remedy, ...]:
    """What to change when a panel swells tight or drops out, the least trouble first.

    Each is proved: the box is worked out anew with it, and offered only if no panel then bursts
    the box or drops out and nothing else that worked is made impossible. ``woods`` are those to be
    had, in the order of trust; all of the table if left out.
    """
    d = design(choices)
    row, at = panel_of(d, panel), window(d, panel=panel)
    if row.grain_across or right(at):
        return ()
    listed = tuple(one.name for one in all_species()) if woods is None else tuple(woods)
    year = {"moisture_from": row.season.dry, "moisture_to": row.season.damp}
    moves = {
        name: strain(species=name, rings=d.choices.wood.rings, **year)
        for name in dict.fromkeys(species(name).name for name in listed)
    }
    before, cared = _faults(d)
    # Where a shaving does it, another board that needs the shaving too is no remedy.
    own = {f"panels.{panel}_across", f"made.{panel}_width"}
    found: list[Remedy] = []
    for kind, start, changes in ways_out(choices, d, panel, sorted(moves, key=lambda n: moves[n])):
        if changes is None or (kind != "clearance" and at.open and own & set(changes)):
            continue
        there = design(choices.having(changes))
        wrong, care = _faults(there)
        after = window(there, panel=panel)
        if wrong - before or not right(after):
            continue
        words = _words(start, changes, there, made="Plane" if at.tight else "Make")
        minds = tuple(said for said in care if said not in cared)
        found.append(Remedy(len(found) + 1, kind, words, changes, after, minds))
    return tuple(found)


def refits(choices: Choices, place: Place) -> Iterator[Change]:
    """Changes that may cure a panel's clearance or hold, the least trouble first."""
    if place.spot in ("clearance", "grip"):
        ways = ways_out(choices, design(choices), place.part, ())
        narrower = []  # another box, and so the last of all
        for kind, _, changes in ways:
            if changes is not None and kind == "narrower box":
                narrower.append(changes)
            elif changes is not None:
                yield changes
        yield from narrower


Kind = Literal["clearance", "deeper groove", "narrower box", "rings", "species", "moisture"]
_RINGS = ((45.0, "rift-sawn"), (90.0, "quarter-sawn"))
_SPECIES_OFFERED = 2


def right(at: Window) -> bool:
    """Whether a panel suits both the damp and the dry as it is."""
    return not (at.tight or at.loose)


def _refitted(d: Design, name: str) -> Change | None:
    """The clearance, on a mark of the rule, that suits damp and dry; None where there is none."""
    at, made = window(d, panel=name), getattr(d.choices.made, f"{name}_width")
    wanted = d.choices.rule.round(at.least, fineness="joints", direction="up")
    if below(at.most, wanted):
        return None
    if made is None:
        return {f"panels.{name}_across": wanted}
    width = at.span - wanted
    # What is made can be planed narrower, and no wider.
    return {f"made.{name}_width": width} if below(width, made) else None


def _settled(choices: Choices, change: Change) -> Change | None:
    """The changes with clearances put right where they leave one wrong; None if that can't be."""
    changes, d = dict(change), design(choices.having(change))
    for name in (panel.name for panel in reversed(d.grooved)):
        at = window(d, panel=name)
        if not right(at):
            more = _refitted(d, name)
            if more is None:
                return None
            changes |= more
    return changes


def _deeper(choices: Choices, d: Design, name: str) -> Change | None:
    """The shallowest groove, on a mark of the rule, in which some clearance does for both."""
    rule, depth, at = choices.rule, d.choices.groove.depth, window(d, panel=name)
    if at.open and at.tight and getattr(choices.made, f"{name}_width") is None:
        return None  # a panel still to be made would be wider by both grooves, and as tight
    key = "made.groove_depth" if choices.made.groove_depth is not None else "groove.depth"
    step, walls = rule.mark("joints"), min(d.pin_board_thickness)
    tried = rule.round(depth, fineness="joints", direction="down")
    while below(tried + step, walls):
        tried = round(tried + step, 9)
        span = panel_of(d, name).widest + 2 * (tried - depth)
        if not below(depth, tried) or below(widest_span(d, panel=name, reach=tried), span):
            continue
        # Where its clearance is to blame, a groove that asks for another one too is no way out.
        changes: Change | None = {key: tried}
        if not at.open:
            changes = _settled(choices, {key: tried})
        elif not right(window(design(choices.having({key: tried})), panel=name)):
            changes = None
        if changes is not None:
            return changes
    return None


def _narrower(choices: Choices, d: Design, name: str) -> Change | None:
    """A box so narrow that the groove it has is deep enough."""
    rule, depth = choices.rule, d.choices.groove.depth
    place = "outside" if choices.size.outside_width is not None else "inside"
    walls = d.frame.outside_width.value - d.frame.inside_width.value if place == "outside" else 0
    # Clearances lie on marks of the rule: where the limits meet between two, a mark more does.
    for spare in (0.0, rule.mark("joints")):
        span = widest_span(d, panel=name, reach=depth, spare=spare)
        size = rule.round(span - 2 * depth + walls, fineness="sizes", direction="down")
        if not below(walls, size) or not below(size, getattr(d.frame, f"{place}_width").value):
            return None
        changes = _settled(choices, {f"size.{place}_width": size})
        if changes is not None:
            return changes
    return None


def ways_out(
    choices: Choices, d: Design, name: str, woods: Sequence[str]
) -> Iterator[tuple[Kind, str, Change | None]]:
    """Every way out with its words and changes, the least trouble first, before it is proved."""
    rule, at = choices.rule, window(d, panel=name)
    yield "clearance", "", _refitted(d, name) if at.open else None
    deeper = _deeper(choices, d, name)
    if deeper is not None:
        cut = rule.exact(next(value for key, value in deeper.items() if "depth" in key))
        was = rule.exact(d.choices.groove.depth or 0.0)
        yield "deeper groove", f"Plough every groove {cut} deep instead of {was}", deeper
    narrower = _narrower(choices, d, name)
    if narrower is not None:
        size, wide = next((k, v) for k, v in narrower.items() if k.startswith("size."))
        place = size.removeprefix("size.").partition("_")[0]
        yield "narrower box", f"Make the box {rule.exact(wide)} wide {place}", narrower
    for turn, words in _RINGS:
        if turn > d.choices.wood.rings:
            yield "rings", f"Use {words} wood", _settled(choices, {"wood.rings": turn})
    names = [panel.name for panel in reversed(d.grooved)]
    ill = [one for one in names if one == name or not right(window(d, panel=one))]
    offered = 0
    for wood in woods:
        if offered == _SPECIES_OFFERED or wood == species(getattr(choices.wood, name)).name:
            continue
        changes = _settled(choices, {f"wood.{one}": wood for one in ill})
        if changes is not None:
            offered += 1
            yield "species", f"Make the {' and the '.join(ill)} of {wood}", changes
    for moisture in _moistures(d, name):
        words = f"Let its wood come to {moisture:g} % before you fit it"
        yield "moisture", words, {"rooms.make_moisture": moisture}


def _moistures(d: Design, name: str) -> Iterator[float]:
    """The whole percent, nearest to the bench's, at which the panel as it is would do."""
    year = panel_of(d, name).season
    whole = range(ceil(year.dry), int(year.damp) + 1)
    for moisture in sorted(whole, key=lambda percent: abs(percent - year.make)):
        there = design(d.choices.having({"rooms.make_moisture": float(moisture)}))
        if right(window(there, panel=name)):
            yield float(moisture)
            return
