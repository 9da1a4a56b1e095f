"""How much wood that is: boards on hand, and parts by wood and thickness, in both measures."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.measures import Rule
from toolkit.results import Table
from toolkit.stock import (
    Blank,
    Board,
    Laid,
    board_feet_by_volume,
    board_feet_of_sticks,
    cubic_metres,
    tally,
)

_FEET_NOTE = (
    "By volume, 1 board foot is 144 cubic inches; a hardwood yard counts wood under an inch as an "
    "inch thick (NHLA rules), so it counts more."
)


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
        rows.append(
            (
                board.name,
                board.species,
                f"{size} {rule.units}",
                str(sum(len(one.pieces) for one in both)),
                rule.show(left, fineness="sizes", direction="down"),
                f"{volume:.4f} m³",
                f"{board_feet_by_volume(volume):.2f}",
                f"{counted.board_feet:g}",
            )
        )
    return Table(
        "Boards on hand",
        (
            "board",
            "wood",
            "size",
            "parts",
            "stays whole",
            "volume",
            "board feet by volume",
            "as a yard counts",
        ),
        tuple(rows),
        note=_FEET_NOTE,
        numeric=(3, 4, 5, 6, 7),
    )


def volume_table(blanks: Sequence[Blank], *, title: str, waste: float, rule: Rule) -> Table:
    """Wood by kind and thickness, net and with what is lost."""
    if not 0 <= waste < 1:
        raise ValueError(f"waste was given as {waste:g}; give a share from 0 to under 1")
    kinds: dict[tuple[str, float], list[Blank]] = {}
    for blank in blanks:
        thick = rule.round(blank.thickness, fineness="sizes", direction="up")
        kinds.setdefault((blank.wood.casefold(), thick), []).append(blank)
    rows, sums = [], [0.0, 0.0, 0.0]
    for (_, thickness), group in sorted(kinds.items()):
        net = sum(cubic_metres(b.length, width=b.width, thickness=b.thickness) for b in group)
        yard = sum(
            board_feet_of_sticks(b.length, width=b.width, thickness=b.thickness) for b in group
        )
        found = (net, net / (1 - waste), yard / (1 - waste))
        sums = [total + value for total, value in zip(sums, found, strict=True)]
        shown = rule.show(thickness, fineness="sizes")
        rows.append((group[0].wood or "wood", shown, str(len(group)), *_volumes(*found)))
    rows.append(("all", "", str(len(blanks)), *_volumes(*sums)))
    return Table(
        title,
        (
            "wood",
            "rough thickness",
            "parts",
            "net",
            "with waste",
            "board feet by volume",
            "as a yard counts",
        ),
        tuple(rows),
        note=f"{waste:.0%} of what is bought is reckoned as waste: a custom, no source. "
        f"{_FEET_NOTE}",
        numeric=(1, 2, 3, 4, 5, 6),
    )


def _volumes(net: float, whole: float, yard: float) -> tuple[str, str, str, str]:
    feet = board_feet_by_volume(whole)
    return f"{net:.4f} m³", f"{whole:.4f} m³", f"{feet:.1f}", f"{yard:.1f}"
