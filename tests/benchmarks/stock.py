"""Laying out, from one board to a class: ``python -m tests.benchmarks.stock``.

Compare within one run only; the last column is against one pass of arithmetic over the cells of
the long board at 1 mm, made right before.
"""

from collections.abc import Callable
from dataclasses import replace
from statistics import median
from time import perf_counter

import numpy as np

from tests.stock.racks import POSTCARD, class_of, rack
from toolkit.files import read_boards
from toolkit.stock import BoxLayouts, lay_out_class, saw_cuts
from toolkit.stock.layout import BoardLayouts
from toolkit.study import lessons_folder


def timed(what: Callable[[], object], *, turns: int) -> tuple[float, float]:
    """Median and longest, after one turn that does not count. [ms]"""
    what()
    took = []
    for _ in range(turns):
        start = perf_counter()
        what()
        took.append((perf_counter() - start) * 1000)
    return median(took), max(took)


def main() -> None:
    """Measure and print."""
    boards = read_boards(lessons_folder() / "boards.toml")
    long = boards[0]
    # Six sizes, of which no two can change places: the most work that six parts can be.
    unlike = [replace(part, length=part.length + n) for n, part in enumerate(POSTCARD)]
    cells = np.random.default_rng(1).random((225, 2200), dtype=np.float32)
    made = BoxLayouts(POSTCARD, [long], cell=1)
    turn = iter(range(10**9))

    def step() -> object:
        return saw_cuts(made.laid(next(turn) % 11 / 10).boards[0])

    rows: list[tuple[str, Callable[[], object], int]] = [
        ("one pass over the cells", lambda: cells * 0.5 + cells, 200),
        ("six parts, curve, 2 mm", lambda: BoardLayouts(long, POSTCARD, cell=2), 15),
        ("six parts, curve, 1 mm", lambda: BoardLayouts(long, POSTCARD, cell=1), 15),
        ("six unlike parts, curve, 2 mm", lambda: BoardLayouts(long, unlike, cell=2), 15),
        ("six unlike parts, curve, 1 mm", lambda: BoardLayouts(long, unlike, cell=1), 15),
        ("slider step with its cuts", step, 100),
        ("one box on the three boards", lambda: BoxLayouts(POSTCARD, boards, cell=1), 9),
        ("one box on twenty boards, 2 mm", lambda: BoxLayouts(POSTCARD, rack(1), cell=2), 5),
    ]
    for boxes, count in ((3, 5), (6, 10), (12, 20), (24, 40)):
        blanks, stock = class_of(boxes), rack(1, count=count)
        rows.append(
            (
                f"{6 * boxes} parts, {count} boards, to proof or 10 s",
                lambda blanks=blanks, stock=stock: list(lay_out_class(blanks, stock)),
                3,
            )
        )
    base = 0.0
    for name, what, turns in rows:
        middle, most = timed(what, turns=turns)
        base = base or middle
        print(f"{name:40} median {middle:8.2f} ms   most {most:8.2f} ms   × {middle / base:8.1f}")
    firsts, ends, proved = [], [], 0
    for seed in range(12):
        start = perf_counter()
        answers = lay_out_class(class_of(12), rack(seed))
        last = next(answers)
        firsts.append((perf_counter() - start) * 1000)
        for better in answers:
            last = better
        ends.append((perf_counter() - start) * 1000)
        proved += last.proved
    print(f"72 parts on twelve racks of 20 boards: {proved} proved")
    for name, took in (("first answer", firsts), ("proof", ends)):
        print(f"  {name:12} median {median(took):.0f} ms   most {max(took):.0f} ms")


if __name__ == "__main__":
    main()
