"""Words in a column beside a drawing: near what they speak of, in its order, none on another."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.pictures.kit import Place, Point, extent
from toolkit.pictures.kit.lettering import LEADING

BETWEEN = 5.0  # between two blocks of words [pt]
SHIFTS = [0.0, *(way * 3.0 * i for i in range(1, 50) for way in (1, -1))]  # [pt]


def first_line(text: str, *, size: float) -> float:
    """How far the first line of a block stands above the block's middle. [pt]"""
    return text.count("\n") * LEADING * size / 2 - 0.36 * size


def levels(wanted: Sequence[float], *, rooms: Sequence[float]) -> list[float]:
    """The middle of each block of words, as near the height it wants as order and room allow.

    >>> levels([100.0, 98.0, 40.0], rooms=[20.0, 20.0, 20.0])
    [109.0, 89.0, 40.0]

    Source: Isotonic regression by pooling neighbours: from memory.
    """
    order = sorted(range(len(wanted)), key=lambda i: -wanted[i])

    def top(block: Sequence[int]) -> float:
        middle = sum(wanted[i] for i in block) / len(block)
        return middle + sum(rooms[i] for i in block) / 2

    blocks: list[list[int]] = []
    for i in order:
        blocks.append([i])
        while len(blocks) > 1 and top(blocks[-2]) - sum(rooms[k] for k in blocks[-2]) < top(
            blocks[-1]
        ):
            last = blocks.pop()
            blocks[-1] += last
    found = [0.0] * len(wanted)
    for block in blocks:
        down = top(block)
        for i in block:
            found[i] = down - rooms[i] / 2
            down -= rooms[i]
    return found


def column(
    rows: Sequence[tuple[str, Point]], *, edge: float, right: bool, size: float
) -> list[tuple[Place, ...]]:
    """Places for words beside a drawing, at its left or right, on leaders to their points. [pt]"""
    rooms = [(text.count("\n") + 1) * LEADING * size + BETWEEN for text, _ in rows]
    heights = levels([spot[1] for _, spot in rows], rooms=rooms)
    begin = edge + (-3.0 if right else 3.0)
    return [
        tuple(
            Place(
                edge,
                height + by + first_line(text, size=size),
                "left" if right else "right",
                (spot, (begin, height + by)),
            )
            for by in SHIFTS
        )
        for (text, spot), height in zip(rows, heights, strict=True)
    ]


def wrapped(parts: Sequence[str], *, width: float, size: float) -> str:
    """Parts of a note, each on lines of its own no wider than a column [pt]; broken at spaces."""
    lines: list[str] = []
    for part in parts:
        line = ""
        for word in part.split(" "):
            longer = f"{line} {word}".strip()
            if line and extent(longer, size=size)[0] > width:
                lines.append(line)
                longer = word
            line = longer
        lines.append(line)
    return "\n".join(lines)
