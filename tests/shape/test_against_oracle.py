"""The workbook's solids beside those that the oracle builds: volumes and sections agree."""

from itertools import count, islice

import numpy as np
import pytest
from manifold3d import Manifold

from tests.oracle.designs import ARRANGEMENTS, random_box
from tests.oracle.shapes import block, hull as solid_of
from tests.oracle.solids import build
from tests.pictures.designs import named
from toolkit.box import Choices
from toolkit.plan import as_data, plan
from toolkit.shape import solids

NAMES = {"side near": "left side", "side far": "right side"}
NEAR = 1e-3  # of a volume or a section
EACH = 8  # random boxes of each arrangement
# Where a choice is left to the maker, the oracle makes its own: it stops every groove or none, and
# takes another width for a bevel that none was asked for.
CHOSEN = {"groove.ends": "through", "panels.bevel_width": 16.0}


def section(solid: Manifold, axis: int, at: float) -> float:
    """Area of a cut across an axis. [mm²]"""
    order = [(axis + 1) % 3, (axis + 2) % 3, axis]
    return float(solid.transform(np.eye(4)[order][:, :4]).slice(at).area())


def differing(choices: Choices) -> list[str]:
    """Volumes and sections in which both sets of solids differ."""
    made = plan(choices)
    s, found = build(as_data(made), choices), []
    f = s.facts
    theirs = s.walls | s.panels
    cuts = [
        (0, f.length / 2), (1, f.width / 2), (2, f.height / 2),
        (0, f.back[2] * 0.3), (0, f.length - f.front[2] * 0.8), (1, f.side[2] * 0.8),
        (2, sum(f.grooves["bottom"]) / 2), (2, f.height - 1.0),
    ]  # fmt: skip
    # The plain data has no size of what reaches down from a lift-off lid.
    above = solid_of(block((-1e3, 1e3), (-1e3, 1e3), (f.height, 1e3)))
    for part in solids(made.design):
        name = f"{part.name} {part.place}".strip()
        one, other = part.shape, theirs.get(NAMES.get(name, name))
        if part.name == "batten":
            continue
        assert other is not None, name
        if part.name == "lid" and not f.sliding:
            one, other = one ^ above, other ^ above
        rows = [("volume", float(one.volume()), float(other.volume()))]
        rows += [
            (f"cut at {'xyz'[axis]} = {at:.2f}", section(one, axis, at), section(other, axis, at))
            for axis, at in cuts
        ]
        found += [
            f"{name}, {what}: {a:.2f}, the oracle {b:.2f}"
            for what, a, b in rows
            if a != pytest.approx(b, rel=NEAR, abs=1e-3)
        ]
    return found


def test_the_example_boxes_are_those_of_the_oracle() -> None:
    wrong = {
        name: differing(box.having(CHOSEN)) for name, box in named().items() if plan(box).works
    }
    assert {name: rows for name, rows in wrong.items() if rows} == {}
    assert len(wrong) > 20


def test_random_boxes_are_those_of_the_oracle() -> None:
    wrong = {}
    for arrangement in ARRANGEMENTS:
        boxes = ((seed, random_box(arrangement, seed).having(CHOSEN)) for seed in count())
        works = ((seed, box) for seed, box in boxes if plan(box).works)
        for seed, box in islice(works, EACH):
            rows = differing(box)
            wrong |= {f"{arrangement}, seed {seed}": rows} if rows else {}
    assert wrong == {}
