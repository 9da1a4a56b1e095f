"""How long something takes, turn after turn."""

from collections.abc import Callable
from statistics import median
from time import perf_counter


def timed(what: Callable[[], object], *, turns: int = 200) -> tuple[float, float]:
    """Median and longest, after one turn that does not count. [ms]"""
    what()
    took = []
    for _ in range(turns):
        start = perf_counter()
        what()
        took.append((perf_counter() - start) * 1000)
    return median(took), max(took)
