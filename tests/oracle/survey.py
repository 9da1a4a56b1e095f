"""Many random boxes built as solids, every one examined once, on all cores.

The environment variable ``ORACLE_BOXES`` raises the number of boxes from a quick 480; the full
examination takes 2000, which is under a minute on two cores.
"""

import os
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from functools import cache
from itertools import count
from multiprocessing import get_context

from tests.oracle.daylight import HAIR, Opening, alike, findings_due, openings
from tests.oracle.designs import ARRANGEMENTS, Arrangement, random_box
from tests.oracle.faults import standing
from tests.oracle.motion import moving
from tests.oracle.solids import Solids, build
from toolkit.box import Choices
from toolkit.box.holes import exits
from toolkit.plan import Plan, as_data, plan

BOXES = int(os.environ.get("ORACLE_BOXES", "480"))
MOVED = 10  # every so many boxes, one has its parts pushed about
CURED = 4  # every so many boxes with a hole, one is built with each of its cures
CODES = ("groove-outside-tail", "groove-shows-through-joint")


@dataclass
class Verdict:
    """What was seen of one arrangement: how many boxes were drawn, built, moved and had holes.

    ``refused`` counts the reasons why boxes can't be built, ``cured`` the cures by their kind. The
    four lists name each faulty box by its seed.
    """

    drawn: int = 0
    built: int = 0
    moved: int = 0
    holed: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    cured: Counter[str] = field(default_factory=Counter)
    standing: list[str] = field(default_factory=list)
    moving: list[str] = field(default_factory=list)
    daylight: list[str] = field(default_factory=list)
    cures: list[str] = field(default_factory=list)

    @property
    def share(self) -> float:
        """Share of the boxes drawn that can be built."""
        return self.built / self.drawn


def expected(made: Plan) -> list[Opening]:
    """The openings that a plan foresees."""
    if made.design.choices.groove.ends != "through":
        return []
    return sorted(
        Opening(hole.face, hole.corner, hole.groove, hole.low, hole.high, hole.depth)
        for hole in made.design.holes
    )


def daylight(solids: Solids, made: Plan) -> tuple[list[Opening], str]:
    """Openings seen in the solids, and how they differ from what the plan foresees and says."""
    seen, foreseen = openings(solids), expected(made)
    if not alike(seen, foreseen):
        return seen, f"seen {seen}, foreseen {foreseen}"
    if any(row.high - row.low <= HAIR for row in (*seen, *foreseen)):
        return seen, ""
    said = sorted((row.code, row.where) for row in made.found if row.code in CODES)
    due = findings_due(solids.facts, seen)
    return seen, "" if said == due else f"the plan says {said}, the solids {due}"


HANGS = ("bottom: it hangs below the walls", "bottom-below-walls")


def unsaid(faults: list[str], made: Plan) -> list[str]:
    """Faults of the solids but for a bottom that hangs low, where the plan says just that."""
    fault, code = HANGS
    said = code in {row.code for row in made.found}
    if said != (fault in faults):
        return [*faults, f"the plan {'says' if said else 'does not say'} {code}"]
    return [row for row in faults if row != fault]


def cures(choices: Choices, seen: list[Opening]) -> Iterator[tuple[str, str]]:
    """The kind of every cure on offer, and what is wrong with the box built with it."""
    for one in exits(choices):
        for cure in one.cures:
            after = choices.having(cure.changes)
            made = plan(after)
            if not made.works:
                yield cure.kind, f"{cure.sentence} makes a box that can't be"
                continue
            solids = build(as_data(made), after)
            faults, left = unsaid(standing(solids), made), openings(solids)
            hole = (one.hole.face, one.hole.corner, one.hole.groove)
            # The solids know nothing of plugs and of stopped ends: those stay as ploughed.
            if made.design.choices.groove.ends == "through":
                if len(left) >= len(seen):
                    faults.append(f"{len(left)} openings, {len(seen)} before")
                faults += [f"still open: {row}" for row in left if row[:3] == hole]
            yield cure.kind, f"{cure.sentence} {faults}" if faults else ""


def examine(arrangement: Arrangement, boxes: int) -> Verdict:
    """Draw boxes of one arrangement until so many could be built, and examine those."""
    v = Verdict()
    for seed in count():
        if v.built == boxes:
            return v
        choices = random_box(arrangement, seed)
        made = plan(choices)
        v.drawn += 1
        if not made.works:
            v.refused.update({row.code for row in made.found if row.level == "wont_work"})
            continue
        v.built += 1
        try:
            solids = build(as_data(made), choices)
            v.standing += [f"seed {seed}: {fault}" for fault in unsaid(standing(solids), made)]
            seen, differs = daylight(solids, made)
            v.holed += bool(seen)
            if differs:
                v.daylight.append(f"seed {seed}: {differs}")
            if seen and v.holed % CURED == 0:
                for kind, fault in cures(choices, seen):
                    v.cured[kind] += 1
                    v.cures += [f"seed {seed}: {fault}"] * bool(fault)
            if v.built % MOVED == 0:
                v.moved += 1
                v.moving += [f"seed {seed}: {fault}" for fault in moving(solids)]
        except Exception as error:
            error.add_note(f"{arrangement}, seed {seed}")
            raise
    raise AssertionError("seeds never end")


@cache
def survey() -> dict[Arrangement, Verdict]:
    """All arrangements, each with its share of the boxes."""
    each = max(1, BOXES // len(ARRANGEMENTS))
    # Fresh processes: a copy of one in which threads may be running is asking for a deadlock.
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        verdicts = pool.map(examine, ARRANGEMENTS, [each] * len(ARRANGEMENTS))
        return dict(zip(ARRANGEMENTS, verdicts, strict=True))
