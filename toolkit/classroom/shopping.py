"""What to buy for a class, stick by stick."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.measures import Rule
from toolkit.results import Table
from toolkit.stock import END_WASTE, GAP, Blank, Purchase, to_buy


def sticks(missing: Sequence[Blank], *, longest: float) -> tuple[Purchase, ...]:
    """The sticks to buy, none longer than can be carried unless a part is."""
    found: list[Purchase] = []
    for whole in to_buy(missing):
        loads: list[list[Blank]] = []
        room: list[float] = []
        for part in sorted(whole.parts, key=lambda blank: -blank.length):
            for at, left in enumerate(room):
                if left >= part.length + GAP:
                    loads[at].append(part)
                    room[at] -= part.length + GAP
                    break
            else:
                loads.append([part])
                room.append(longest - END_WASTE - part.length)
        for load in loads:
            found += to_buy(load)
    return tuple(found)


def rough_size(rule: Rule, *, length: float, width: float, thickness: float) -> str:
    """A rough size on somebody's rule, rounded up to what a saw can follow."""
    long, wide = (
        rule.show(value, fineness="rough", direction="up", unit=False) for value in (length, width)
    )
    # Rounded first: how much it lies over is of no use to whoever saws.
    thick = rule.round(thickness, fineness="sizes", direction="up")
    return f"{long} × {wide} × {rule.show(thick, fineness='sizes')}"


def stick_table(bought: Sequence[Purchase], *, rule: Rule) -> Table:
    """The sticks one by one."""

    rows = tuple(
        (
            str(number),
            one.wood or "wood",
            rough_size(rule, length=one.length, width=one.width, thickness=one.thickness),
            _short(one.parts),
            f"{one.board_feet:.2f}",
            one.size.inches if one.size else "",
        )
        for number, one in enumerate(bought, 1)
    )
    return Table(
        "To buy, stick by stick",
        ("no.", "wood", "length × width × thickness", "for", "board feet", "a yard's thickness"),
        rows,
        note="Clear wood, allowances and cuts in it, waste not. Board feet as a yard counts.",
        numeric=(0, 4),
    )


def _by_number(part: Blank) -> tuple[str, int]:
    """Students in their order, spares before them: ``student 10`` comes after ``student 9``."""
    who, _, number = part.name.partition(":")[0].partition(" ")
    return who, int(number) if number.isdigit() else 0


def _short(parts: Sequence[Blank]) -> str:
    """Parts by whose they are: ``student 3: lid, bottom; spare 1: lid``."""
    whose: dict[str, list[str]] = {}
    for part in sorted(parts, key=_by_number):
        owner, _, name = part.name.partition(": ")
        whose.setdefault(owner, []).append(name)
    return "; ".join(f"{owner}: {', '.join(sorted(names))}" for owner, names in whose.items())
