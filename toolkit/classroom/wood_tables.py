"""The wood of a class as tables: lengths to buy, boards on hand, volumes in both measures, kits."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from toolkit.classroom.wood import ClassWood, Owned
from toolkit.measures import Rule
from toolkit.plan import Plan
from toolkit.results import Table, capital
from toolkit.stock import (
    LOST,
    Blank,
    Board,
    Laid,
    Purchase,
    board_feet_by_volume,
    board_feet_of_sticks,
    cubic_metres,
    tally,
    to_buy,
)

TO_BUY = "to buy"
_VOLUMES = ("board feet by volume", "as a yard counts")
_FEET_NOTE = (
    "By volume, 1 board foot is 144 cubic inches; a hardwood yard counts wood under an inch as an "
    "inch thick (NHLA rules), so it counts more."
)


def sticks(missing: Sequence[Blank], *, longest: float, rule: Rule) -> tuple[Purchase, ...]:
    """The lengths to buy, none longer than can be carried unless a part is."""
    found: list[Purchase] = []
    lost, longest = LOST[rule.units], rule.round(longest, fineness="rough", direction="down")
    for whole in to_buy(missing, rule=rule):
        loads: list[list[Blank]] = []
        room: list[float] = []
        for part in sorted(whole.parts, key=lambda blank: -blank.length):
            for at, left in enumerate(room):
                if left >= part.length + lost["cut"]:
                    loads[at].append(part)
                    room[at] -= part.length + lost["cut"]
                    break
            else:
                loads.append([part])
                room.append(longest - lost["ends"] - part.length)
        for load in loads:
            found += to_buy(load, rule=rule)
    return tuple(found)


def stick_table(bought: Sequence[Purchase], *, owners: Mapping[str, Owned], rule: Rule) -> Table:
    """The lengths one by one."""
    rows = tuple(
        (
            str(number),
            one.wood or "wood",
            one.by(rule),
            _by_owner(owners[part.name] for part in one.parts),
            f"{one.board_feet:.2f}",
            one.size.inches if one.size else "",
        )
        for number, one in enumerate(bought, 1)
    )
    return Table(
        "To buy, length by length",
        ("no.", "wood", "length × width × thickness", "for", "board feet", "a yard's thickness"),
        rows,
        note="Clear wood, allowances and cuts in it, waste not. Board feet as a yard counts.",
        numeric=(0, 4),
    )


def _by_owner(parts: Iterable[Owned]) -> str:
    """Parts by whose they are: ``spare 1: lid; student 3: bottom, lid``."""
    names: dict[str, list[str]] = {}
    for one in sorted(parts):
        names.setdefault(one.called, []).append(one.part)
    return "; ".join(f"{owner}: {', '.join(mine)}" for owner, mine in names.items())


def board_table(boards: Sequence[Board], *, laid: Sequence[Laid], rule: Rule) -> Table:
    """The boards on hand, with what the class takes of each."""
    used = {one.board.name: one for one in laid}
    rows = []
    for board, counted in zip(boards, tally(boards), strict=True):
        size = " × ".join(
            rule.show(value, fineness="sizes", direction="down", unit=False)
            for value in (board.length, board.width, board.thickness)
        )
        both = [used[n] for n in (board.name, f"rest of {board.name}") if n in used]
        left = both[-1].left if both else board.length
        volume = cubic_metres(board.length, width=board.width, thickness=board.thickness)
        rest = rule.show(left, fineness="sizes", direction="down")
        feet = (f"{board_feet_by_volume(volume):.2f}", f"{counted.board_feet:g}")
        pieces = str(sum(len(one.pieces) for one in both))
        what = (board.name, board.species, f"{size} {rule.units}")
        rows.append((*what, pieces, rest, f"{volume:.4f} m³", *feet))
    return Table(
        "Boards on hand",
        ("board", "wood", "size", "parts", "offcut", "volume", *_VOLUMES),
        tuple(rows),
        note=_FEET_NOTE,
        numeric=(3, 4, 5, 6, 7),
    )


def amounts(blanks: Iterable[Blank]) -> tuple[float, float]:
    """How much wood blanks are: net volume [m³], and board feet as a yard counts them."""
    net = yard = 0.0
    for one in blanks:
        net += cubic_metres(one.length, width=one.width, thickness=one.thickness)
        yard += board_feet_of_sticks(one.length, width=one.width, thickness=one.thickness)
    return net, yard


def volume_table(blanks: Sequence[Blank], *, title: str, waste: float, rule: Rule) -> Table:
    """Wood by kind and thickness, net and with what is lost."""
    if not 0 <= waste < 1:
        raise ValueError(f"waste was given as {waste:g}; give a share from 0 to under 1")
    kinds: dict[tuple[str, float], list[Blank]] = {}
    for blank in blanks:
        thick = rule.sawn(blank.thickness, axis="thickness")
        kinds.setdefault((blank.wood.casefold(), thick), []).append(blank)

    def row(wood: str, thickness: str, some: Sequence[Blank]) -> tuple[str, ...]:
        net, yard = amounts(some)
        whole = net / (1 - waste)
        feet = (f"{board_feet_by_volume(whole):.1f}", f"{yard / (1 - waste):.1f}")
        return (wood, thickness, str(len(some)), f"{net:.4f} m³", f"{whole:.4f} m³", *feet)

    rows = [
        row(group[0].wood or "wood", rule.show(thickness), group)
        for (_, thickness), group in sorted(kinds.items())
    ]
    return Table(
        title,
        ("wood", "rough thickness", "parts", "net", "with waste", *_VOLUMES),
        (*rows, row("all", "", blanks)),
        note=f"{waste:.0%} of what is bought is reckoned as waste: a custom, no source. "
        f"{_FEET_NOTE}",
        numeric=(1, 2, 3, 4, 5, 6),
    )


def kit(plan: Plan, *, wood: ClassWood, whose: str, remark: str = "") -> Table:
    """What is packed for one student or spare set: rough parts on the student's own rule."""
    rule = plan.choices.rule
    rows = tuple(
        (owner.part, one.by(rule), one.wood, wood.places.get(one.name, TO_BUY), "")
        for one in wood.needed
        if (owner := wood.owners[one.name]).called == whose
    )
    columns = ("part", "rough length × width × thickness", "wood", "from", "packed")
    note = f"Issue {plan.fingerprint}. {remark}".strip()
    return Table(capital(whose), columns, rows, note=note)
