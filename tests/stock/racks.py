"""Boards and parts that the tests of laying out begin from."""

import random
from typing import Any

from toolkit.stock import Blank, Board, BoxLaid, BoxLayouts, Defect, Laid, Point
from toolkit.stock.layout import BoardLayouts

POSTCARD = (
    Blank("side 1", 186, 70, 16, "black cherry", 12),
    Blank("side 2", 186, 70, 16, "black cherry", 12),
    Blank("back", 136, 70, 16, "black cherry", 12),
    Blank("front", 136, 70, 16, "black cherry", 12),
    Blank("bottom", 169, 122, 12, "black cherry", 8),
    Blank("lid", 178, 122, 13, "black cherry", 9),
)

SHORT = Board("short", "black cherry", 1200, 180, 16)
PANEL = Board("panel", "black cherry", 900, 140, 13)
THICK = Board("thick", "black cherry", 2200, 225, 25)


def random_board(
    rng: random.Random,
    *,
    name: str = "board",
    length: tuple[float, float] = (500, 2200),
    width: tuple[float, float] = (90, 240),
    thickness: tuple[float, ...] = (16.0,),
    defects: int = 8,
) -> Board:
    """A board as it comes: odd sizes, knots, checks at an end, a heart line now and then."""
    long, wide = rng.uniform(*length), rng.uniform(*width)
    found = []
    for _ in range(rng.randint(0, defects)):
        x, y = rng.uniform(0, long * 0.97), rng.uniform(0, wide * 0.9)
        kind = rng.choice(["knot", "loose knot", "gum pocket", "split", "end check"])
        across = 0.0 if kind == "split" and rng.random() < 0.5 else rng.uniform(3, 40)
        found.append(Defect(kind, x, y, min(long, x + rng.uniform(5, 70)), min(wide, y + across)))
    heart = ()
    if rng.random() < 0.5:
        heart = ((0.0, wide * rng.uniform(0.3, 1)), (long, wide * rng.uniform(0.3, 1)))
    return Board(name, "black cherry", long, wide, rng.choice(thickness), tuple(found), heart)


def lay_out_box(blanks, boards, *, looks: float = 0.0, **more: Any) -> BoxLaid:
    """A box on a rack, the most sparing layout unless told otherwise."""
    return BoxLayouts(blanks, boards, **more).laid(looks)


def lay_out(board: Board, blanks, **more: Any) -> Laid:
    """The same for one board."""
    return lay_out_box(blanks, [board], **more).boards[0]


def curve(layouts: BoardLayouts) -> tuple[Point, ...]:
    """The trade-off of all the parts."""
    return layouts.curve_of(layouts.tables.all)


def rack(seed: int, *, count: int = 20) -> list[Board]:
    """Boards for a class."""
    rng = random.Random(seed)
    return [
        random_board(
            rng,
            name=f"board {number}",
            length=(800, 2200),
            width=(130, 225),
            thickness=(16.0, 16.0, 20.0, 25.0),
        )
        for number in range(count)
    ]


def class_of(boxes: int, *, larger: float = 0.0, sizes: int = 1) -> tuple[Blank, ...]:
    """Parts of a class in which boxes come in so many sizes, each larger by so much. [mm]"""
    parts = []
    for box in range(boxes):
        extra = larger * (box % sizes)
        parts += [
            Blank(
                f"box {box + 1}: {part.name}",
                part.length + extra,
                part.width + extra / 2,
                part.thickness,
                part.wood,
                part.finished,
            )
            for part in POSTCARD
        ]
    return tuple(parts)
