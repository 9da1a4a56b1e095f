"""One box, from choices to JSON: ``python -m tests.benchmarks.plan``.

Compare within one run only; the last column is against writing the same JSON and nothing else.
"""

import json
from collections.abc import Callable
from statistics import median
from time import perf_counter

from toolkit.files import read_box
from toolkit.lesson.lesson4_corner import CORNER, GroovedCorner
from toolkit.pictures import corner_picture
from toolkit.plan import as_data, plan
from toolkit.study import example_path

TURNS = 300


def timed(what: Callable[[], object]) -> tuple[float, float]:
    """Median and 95 % point. [ms]"""
    for _ in range(20):
        what()
    took = []
    for _ in range(TURNS):
        start = perf_counter()
        what()
        took.append((perf_counter() - start) * 1000)
    return median(took), sorted(took)[int(0.95 * TURNS)]


def main() -> None:
    """Measure and print."""
    box = read_box(example_path())
    made = plan(box)
    data = as_data(made)
    moved = box.having({"groove.depth": 4.3})
    seen = CORNER.view(box, {"groove.depth": 4.3})
    turn = iter(range(10**9))

    def fresh() -> object:
        # Each slider step is another box: the same one twice would come out of a cache.
        return CORNER.view(box, {"groove.depth": 3.0 + next(turn) % 40 / 10 + 0.01})

    rows: list[tuple[str, Callable[[], object]]] = [
        ("write the JSON alone", lambda: json.dumps(data)),
        ("geometry and findings", lambda: plan(moved)),
        ("geometry, findings and JSON", lambda: json.dumps(as_data(plan(moved)))),
        ("read the file", lambda: read_box(example_path())),
        ("corner picture", lambda: corner_picture(made, which="back", ghost=made)),
        ("numbers of the lesson", GroovedCorner(box, {}).values),
        ("picture and words as HTML", lambda: seen.figure("corner") + seen.words("corner")),
        ("one slider step of lesson 4", fresh),
    ]
    base = timed(rows[0][1])[0]
    for name, what in rows:
        middle, late = timed(what)
        print(f"{name:30} median {middle:7.3f} ms   95 % {late:7.3f} ms   × {middle / base:6.1f}")


if __name__ == "__main__":
    main()
