"""Least length of whole boards against a constraint solver with a model of its own.

The model knows sections, strips and parts as intervals, and nothing of tables of sets.
"""

import random

import pytest

from tests.stock.racks import POSTCARD, curve
from toolkit.stock import Blank, Board, Defect
from toolkit.stock.layout import BoardLayouts

GAP = 5


def least_length(board: Board, parts: list[Blank]) -> tuple[int | None, bool]:
    """Least length of board, and whether the solver proved it (or that there is none)."""
    cp_model = pytest.importorskip("ortools.sat.python.cp_model")
    model = cp_model.CpModel()
    along, across = int(board.length), int(board.width)
    sections = range(len(parts))
    starts = [model.new_int_var(0, along, f"start {j}") for j in sections]
    ends = [model.new_int_var(0, along + GAP, f"end {j}") for j in sections]
    inside = [[model.new_bool_var(f"{i} in {j}") for j in sections] for i in range(len(parts))]
    used = model.new_int_var(0, along, "used")
    strips = [[] for _ in sections]
    for i, part in enumerate(parts):
        long, wide = int(part.length), int(part.width)
        if long > along or wide > across:
            return None, True
        x = model.new_int_var(0, along - long, f"x {i}")
        y = model.new_int_var(0, across - wide, f"y {i}")
        model.add_exactly_one(inside[i])
        model.add(used >= x + long)
        for j in sections:
            here = inside[i][j]
            model.add(x == starts[j]).only_enforce_if(here)
            model.add(ends[j] >= starts[j] + long + GAP).only_enforce_if(here)
            strips[j].append(
                model.new_optional_interval_var(
                    y, wide + GAP, model.new_int_var(0, across + GAP, ""), here, ""
                )
            )
        for d in board.defects:
            sides = [model.new_bool_var("") for _ in range(4)]
            model.add(x + long <= int(d.from_along)).only_enforce_if(sides[0])
            model.add(x >= int(d.to_along)).only_enforce_if(sides[1])
            model.add(y + wide <= int(d.from_across)).only_enforce_if(sides[2])
            model.add(y >= int(d.to_across)).only_enforce_if(sides[3])
            model.add_bool_or(sides)
    for j in sections:
        model.add_no_overlap(strips[j])
        if j:
            model.add(starts[j] >= ends[j - 1])
        model.add(ends[j] >= starts[j])
    model.minimize(used)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = 10
    solver.parameters.num_workers = 2
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return None, True
    return round(solver.objective_value), status == cp_model.OPTIMAL


def case(seed: int) -> tuple[Board, list[Blank]]:
    rng = random.Random(seed)
    along, across = rng.randint(600, 2200), rng.randint(130, 225)
    defects = []
    for _ in range(rng.randint(2, 8)):
        x, y = rng.randrange(along - 60), rng.randrange(across - 30)
        size = rng.randint(8, 60), rng.randint(4, 30)
        defects.append(Defect("knot", x, y, x + size[0], y + size[1]))
    parts = list(POSTCARD) if seed % 2 else list(POSTCARD[:4])
    return Board("board", "black cherry", along, across, 25, tuple(defects)), parts


@pytest.mark.parametrize("seed", range(20))
def test_the_same_least_length(seed):
    board, parts = case(seed)
    length, proved = least_length(board, parts)
    points = curve(BoardLayouts(board, parts, gap=GAP, cell=1, margin=0))
    if length is None:
        assert proved and not points
        return
    assert points, "the other solver found a layout"
    assert points[0].used <= length
    if proved:
        assert points[0].used == length


def test_the_other_solver_proves_most_of_these_boards():
    """Else the comparison above would say little."""
    assert sum(least_length(*case(seed))[1] for seed in (0, 2, 4)) >= 2
