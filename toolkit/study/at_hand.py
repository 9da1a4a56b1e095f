"""How much a length is, in things that lie on the bench.

Half a millimetre says little to somebody who began this morning; five sheets of paper do.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from toolkit.measures import Units
from toolkit.results import Source, read_table

# A thing counts as "about" a length when it is this near to it, as a share of the length.
_NEAR = 0.15
# Of the thinnest thing, half of one can still be felt; less is said to be less.
_LEAST_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class BenchThing:
    """A thing at hand with a size that everybody knows by touch. [mm]

    ``most`` is how many of them can still be pictured together; ``read_in`` the unit of the rule
    of those who have it in their pocket, or ``both``.
    """

    name: str
    plural: str
    thickness: float
    most: int
    read_in: str
    source: Source


@cache
def bench_things() -> tuple[BenchThing, ...]:
    """Every thing of the table, thinnest first."""
    things = [
        BenchThing(
            name=row["name"],
            plural=row["plural"],
            thickness=float(row["thickness_mm"]),
            most=int(row["most"]),
            read_in=row["read_in"],
            source=Source.of(row),
        )
        for row in read_table("study/bench_things.csv")
    ]
    return tuple(sorted(things, key=lambda thing: thing.thickness))


def about(amount: float, *, units: Units = "mm") -> str:
    """A length in things on the bench, to stand behind the number."""
    size = abs(amount)
    things = [thing for thing in bench_things() if thing.read_in in ("both", units)]
    thinnest, largest = things[0], things[-1]
    if size < _LEAST_SHARE * thinnest.thickness:
        return f"less than {thinnest.name}"
    if size > (1 + _NEAR) * largest.most * largest.thickness:
        return f"more than {largest.most} {largest.plural}"

    def badness(row: tuple[int, BenchThing]) -> tuple[int, float]:
        count, thing = row
        miss = abs(count * thing.thickness - size) / size
        # Few things are easier to picture than many, so that any that is near enough will do.
        return (count, miss) if miss <= _NEAR else (1000, miss)

    rows = [(count, thing) for thing in things for count in range(1, thing.most + 1)]
    count, thing = min(rows, key=badness)
    return f"about {thing.name}" if count == 1 else f"about {count} {thing.plural}"
