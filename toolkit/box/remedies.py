"""What to change when a panel swells tight or drops out, the least trouble first, each tried."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.box.choices import Change, Choices
from toolkit.box.design import Design, design
from toolkit.box.groove_checks import check_depth, check_exits
from toolkit.box.panel_checks import check_space, check_thickness
from toolkit.box.season_checks import check_seasons
from toolkit.box.ways_out import Kind, right, ways_out
from toolkit.box.window import Window, panel_of, window
from toolkit.wood import all_species, species, strain


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that makes a panel right, reckoned through the same seasons.

    ``changes`` are the box's own values by key of its file: lengths in mm, rings in degrees, a
    room in °C and percent. ``least``, ``has``, ``most`` are the clearance afterwards. ``minds``
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
    wrong = frozenset((row.code, row.where) for row in rows if row.level == "wont_work")
    return wrong, tuple(row.sentence for row in rows if row.level == "care")


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
        name: strain(species=name, rings=choices.wood.rings, **year)
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
