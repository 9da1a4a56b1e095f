"""A class's whole folder against one handout: ``python -m tests.benchmarks.classroom``.

One handout by itself, cold, in a process of its own, is the measure; compare within one run only.
Forty students, each with a box of their own size, against twelve tell whether it grows faster
than the class.
"""

import subprocess
import sys
from time import perf_counter

# Peak memory of the process is told by each, in MB as Linux counts it.
ONE = """
from resource import RUSAGE_SELF, getrusage
from pathlib import Path
from tempfile import TemporaryDirectory
from tests.boxes import postcard
from toolkit.handout import handout
from toolkit.plan import plan
with TemporaryDirectory() as folder:
    page = handout(plan(postcard()), lessons=None)
    (Path(folder) / "one.html").write_text(page, encoding="utf-8")
print(getrusage(RUSAGE_SELF).ru_maxrss / 1024)
"""
CLASS = """
import sys
from dataclasses import replace
from pathlib import Path
from resource import RUSAGE_SELF, getrusage
from tempfile import TemporaryDirectory
from time import perf_counter
from tests.classroom.classes import DEMO
from toolkit.classroom import make_class
from toolkit.files import Student, read_class
many, own = int(sys.argv[1]), sys.argv[2] == "own"
start = perf_counter()
taught = read_class(DEMO)
if own:
    widths = [106 + n / 4 for n in range(many)]
    boxes = [taught.box.having({"size.inside_width": width}) for width in widths]
    rows = tuple(Student(n, box) for n, box in enumerate(boxes, 1))
    taught = replace(taught, students=rows, boards=taught.boards * (many // 12))
    named = (replace(b, name=f"{n} {b.name}") for n, b in enumerate(taught.boards))
    taught = replace(taught, boards=tuple(named))
with TemporaryDirectory() as folder:
    place = Path(folder) / "out"
    made = make_class(taught, folder=place)
    took = perf_counter() - start
    start = perf_counter()
    make_class(taught, folder=place)
    size = sum(path.stat().st_size for path in place.rglob("*.html")) / 1e6
    print(took, perf_counter() - start, getrusage(RUSAGE_SELF).ru_maxrss / 1024, size)
assert not made.faults
"""


def _told(code: str, *arguments: str) -> tuple[float, list[float]]:
    """How long a process takes, and the numbers that it prints."""
    start = perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments], capture_output=True, text=True, check=True
    )
    return perf_counter() - start, [float(word) for word in done.stdout.split()]


def main() -> None:
    """Measure and print."""
    one, (memory,) = _told(ONE)
    print("one handout with all lessons, cold: everything below as multiples of it")
    print(f"its peak memory      {memory:.0f} MB")
    _, (first, again, peak, size) = _told(CLASS, "12", "demo")
    print(f"the demonstration's twelve: whole folder × {first / one:.2f}, {size:.1f} MB of pages")
    print(f"a second run         × {again / one:.2f}")
    print(f"its peak memory      {peak:.0f} MB, × {peak / memory:.2f}")
    _, (twelve, _, peak12, _) = _told(CLASS, "12", "own")
    _, (forty, _, peak40, _) = _told(CLASS, "40", "own")
    print(f"twelve boxes of their own sizes × {twelve / one:.2f}, {peak12:.0f} MB")
    print(f"forty                × {forty / one:.2f}, {peak40:.0f} MB")
    print(f"forty to twelve      {forty / twelve:.2f}   linear: {40 / 12:.2f}")


if __name__ == "__main__":
    main()
