"""Which count of parts to take from each board so that a class has all it needs from least wood.

A linear program puts prices on parts and rents on boards (``toolkit.stock.class_program``). With
them every choice shows what it loses against the floor: a pattern that is worth less than its
wood and the rent, a board left idle though it would earn a rent, a part more than is wanted. The
loss of a layout is the sum of those losses, and none is negative. So boards are taken one by one,
and of all that may have been supplied so far only what has lost no more than a budget is kept. If
a layout is found within the budget, the one that loses least is the best there is; if not, none
exists within it, and the budget is raised.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from time import monotonic
from typing import TYPE_CHECKING

import numpy as np

from toolkit.stock.class_program import Market, Shared, pick

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Cells = NDArray[np.int32]

FIRST_BUDGET = 0.0005  # of the floor
RAISED = 1.5  # the work grows so fast with the budget that all the smaller ones cost little
KEPT = (20_000, 100_000)  # supplies followed up after each board, at first and in the end
TRIED = 60  # and so many times as many are tried
OF_EACH = (60, 300)  # patterns of each board where not all are known, at first and in the end
PATIENCE = 0.4  # how long a person waits for a first answer before a quicker way is tried [s]
FIRST_SECONDS = 2.0  # that this quicker way may take


def search(on: Market, *, time_limit: float) -> Iterator[Shared]:
    """Ever better choices of one pattern for each board; the last is proved best if time allows."""
    end, best = monotonic() + time_limit, None
    whole = all(one.whole for one in on.patterns)
    for found in (_raised if whole else _picked)(on, end):
        if best is None or found.proved or found.cost < best.cost - 1e-6:
            best = found
            yield best
    if whole and best is not None and not best.proved and monotonic() < end:
        last, _ = _within(on, best.cost - on.floor + 1e-6, KEPT[1], end=end)
        if last is not None and (last.proved or last.cost < best.cost - 1e-6):
            yield last


def _raised(on: Market, end: float) -> Iterator[Shared]:
    """A choice within a budget that is raised until there is one, and a quick one before it."""
    begun, best, budget = monotonic(), None, FIRST_BUDGET * on.floor + 1e-6
    while True:
        found, complete = _within(on, budget, KEPT[0], end=end)
        if found is not None or monotonic() > end:
            break
        budget *= RAISED
        if best is None and monotonic() - begun > PATIENCE:
            best = pick(on, of_each=OF_EACH[0], time_limit=FIRST_SECONDS)
            if best is not None:
                yield best
        if best is not None:
            if budget >= best.cost - on.floor and not complete:
                break
            budget = min(budget, best.cost - on.floor + 1e-6)
    if best is None and found is None:
        found, _ = _within(on, float("inf"), KEPT[0] // 10)
    if found is not None:
        yield found


def _picked(on: Market, end: float) -> Iterator[Shared]:
    """Choices among the most promising patterns only, since not all are known."""
    seconds = min(FIRST_SECONDS, max(0.0, end - monotonic()))
    first = pick(on, of_each=OF_EACH[0], time_limit=seconds)
    if first is None:
        # A machine that is slow, or busy with other work, gives an answer all the same.
        found, _ = _within(on, float("inf"), KEPT[0] // 10)
        first = found and replace(found, proved=False)
    if first is not None:
        yield first
    if (left := end - monotonic()) > FIRST_SECONDS:
        second = pick(on, of_each=OF_EACH[1], time_limit=left)
        if second is not None and (first is None or second.cost < first.cost - 1e-6):
            yield second


def _within(
    on: Market, budget: float, most: int, *, end: float = float("inf")
) -> tuple[Shared | None, bool]:
    """The layout that loses least within a budget, and whether nothing was passed over."""
    radix = np.concatenate(([1], np.cumprod(on.wanted[:-1].astype(np.int64) + 1)))
    supply = np.zeros((1, len(on.wanted)), np.int32)
    loss = np.zeros(1)
    trail: list[tuple[Cells, Cells]] = []
    complete = True
    for index, (one, rent) in enumerate(zip(on.patterns, on.rents, strict=True)):
        worse = on.losses(index)
        rows = np.flatnonzero(worse <= budget - loss.min())
        if len(loss) * len(rows) > TRIED * most:
            complete = False
            few = np.argpartition(loss, room := max(1, TRIED * most // len(rows)))[:room]
            supply, loss = supply[few], loss[few]
        else:
            few = np.arange(len(loss))
        parts = [(supply, loss + rent, np.full(len(loss), -1), np.arange(len(loss)))]
        for row in rows:
            if monotonic() > end:
                return None, False
            more = supply + one.counts[row]
            kept = np.minimum(more, on.wanted)
            lost = loss + worse[row] + (more - kept) @ on.prices
            good = np.flatnonzero(lost <= budget)
            parts.append((kept[good], lost[good], np.full(len(good), row), good))
        supply, loss, chosen, before = (np.concatenate(rows) for rows in zip(*parts, strict=True))
        order = np.lexsort((loss, code := supply @ radix))
        ahead = code[order]
        first = order[np.append(True, ahead[1:] != ahead[:-1])]
        first = first[loss[first] <= budget]
        if len(first) > most:
            complete = False
            first = first[np.argpartition(loss[first], most)[:most]]
        supply, loss = supply[first], loss[first]
        trail.append((chosen[first].astype(np.int32), few[before[first]].astype(np.int32)))
        if not len(loss):
            return None, complete
    loss = loss + (on.wanted - supply) @ (on.short - on.prices)
    at = int(np.argmin(loss))
    if loss[at] > budget:
        return None, complete
    found, patterns = float(loss[at]), []
    for chosen, before in reversed(trail):
        patterns.append(int(chosen[at]))
        at = int(before[at])
    return Shared(tuple(patterns[::-1]), on.floor + found, complete), complete
