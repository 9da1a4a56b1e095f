"""Handouts for a class against one bare kernel: ``python -m tests.benchmarks.handout``.

A kernel that starts, imports what the lessons import and does nothing more is the measure: that
is what every handout would cost if each of its lessons were run in a kernel of its own. Compare
within one run only.
"""

import subprocess
import sys
from time import perf_counter

BARE = """
from jupyter_client.manager import start_new_kernel
manager, client = start_new_kernel(kernel_name="python3")
code = "from toolkit.explore import lesson1, lesson2, lesson3, lesson4, lesson5"
client.execute_interactive(code, timeout=120)
client.stop_channels()
manager.shutdown_kernel(now=True)
"""
TWELVE = """
import sys
from time import perf_counter
start = perf_counter()
from tests.boxes import postcard
from toolkit.handout import handout
from toolkit.plan import plan
sizes = []
for n in range(12):
    made = plan(postcard().having({"size.inside_width": 106.0 + n}))
    page = handout(made, lessons=None, name=str(n + 1))
    print(perf_counter() - start, len(page.encode()), page.count('src="http'), flush=True)
"""


def _timed(code: str) -> tuple[float, str]:
    start = perf_counter()
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return perf_counter() - start, done.stdout


def main() -> None:
    """Measure and print."""
    bare = min(_timed(BARE)[0] for _ in range(2))
    _, told = _timed(TWELVE)
    rows = [line.split() for line in told.splitlines()]
    ends = [float(row[0]) for row in rows]
    further = (ends[-1] - ends[0]) / (len(ends) - 1)
    print(f"a bare kernel with the same imports: {bare:.2f} s; everything below as multiples of it")
    print(f"one handout, cold    × {ends[0] / bare:.2f}   aim ≤ 4")
    print(f"each further of 12   × {further / bare:.2f}   aim ≤ 1")
    print(
        f"size at most {max(int(row[1]) for row in rows) / 1e6:.2f} MB; "
        f"requests {sum(int(row[2]) for row in rows)}"
    )


if __name__ == "__main__":
    main()
