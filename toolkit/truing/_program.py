"""Linear programs for planes beside readings, kept small enough to follow a slider.

The programs have no whole numbers in them; ``scipy.optimize.milp`` is used because it hands a
program to the same solver, HiGHS, in a third of the time that ``linprog`` takes.

Before solving, the best plane by least squares is taken off the heights and they are divided by
what is left of them. A board that lies tilted is then the same program as one that lies level.

A face that is the same when the board is turned half round needs no program: of two planes that
are each other's turned image the one half way between them is as good, so the best lies level.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

# Among planes that leave as much, the one that takes least off the upper face is wanted. What
# breaks the tie counts so much less than the thickness that it cannot buy more of it than this
# share.
TIE = 1e-6

SAME = 1e-12  # heights this alike, in the program's own scale, are one height


class _Frame:
    """The readings in the program's own scale: −1 to 1 along and across, heights about a plane."""

    def __init__(self, x: Numbers, y: Numbers, height: Numbers) -> None:
        self.x0, self.y0 = (x.max() + x.min()) / 2, (y.max() + y.min()) / 2
        self.sx, self.sy = max(np.ptp(x) / 2, 1e-9), max(np.ptp(y) / 2, 1e-9)
        self.rows = np.column_stack(
            ((x - self.x0) / self.sx, (y - self.y0) / self.sy, np.ones(len(x)))
        )
        self.level: Numbers = np.linalg.lstsq(self.rows, height, rcond=None)[0]
        self.rest = self.flat(height)
        self.scale = max(float(np.ptp(self.rest)), 1e-9)

    def flat(self, height: Numbers) -> Numbers:
        """Heights above the plane by least squares. [mm]"""
        above: Numbers = height - self.rows @ self.level
        return above

    def turns_alike(self, *heights: Numbers) -> bool:
        """Whether readings and heights, all in this scale, are the same turned half round.

        So they are only where the readings are told in an order that turning reverses, as those
        of a grid are.
        """
        places = self.rows[:, :2]
        return bool(
            np.abs(places + places[::-1]).max() < SAME
            and all(np.abs(each - each[::-1]).max() < SAME for each in heights)
        )

    def slopes(self, found: Numbers) -> tuple[float, float]:
        """Slopes along x and y on the board, of a plane found in this frame. [mm/mm]"""
        tilt = found[:2] * self.scale + self.level[:2]
        return float(tilt[0] / self.sx), float(tilt[1] / self.sy)


def _solved(cost: Numbers, matrix: Numbers, least: Numbers) -> Numbers:
    """The unknowns that cost least while ``matrix @ unknowns`` is nowhere below ``least``."""
    from scipy.optimize import Bounds, LinearConstraint, milp

    limits = {
        "constraints": LinearConstraint(matrix, least, np.inf),
        "bounds": Bounds(-np.inf, np.inf),
    }
    # Quicker without presolving; where many planes tie, older solvers may need it to end.
    done = milp(cost, **limits, options={"presolve": False})
    if done.x is None:
        done = milp(cost, **limits, options={"presolve": True})
    if done.x is None:  # these programs always have an answer; a solver may still give up
        raise ValueError(
            f"no plane was found for these readings ({done.message}); look for one that is wildly "
            "off, such as a slipped decimal point"
        )
    found: Numbers = done.x
    return found


def best_slopes(x: Numbers, y: Numbers, top: Numbers, bottom: Numbers) -> tuple[float, float]:
    """Slopes of two parallel planes within a board that are furthest apart. [mm/mm]

    Where both faces are one, as far apart is as near: they are the planes under all readings and
    above all readings that are nearest to one another.
    """
    frame = _Frame(x, y, (top + bottom) / 2)
    above, below = frame.flat(top), frame.flat(bottom)
    frame.scale = max(float(np.ptp(above)), float(np.ptp(below)), frame.scale)
    above, below = above / frame.scale, below / frame.scale
    if frame.turns_alike(above, below):
        return frame.slopes(np.zeros(3))
    n = len(above)
    # Unknowns: the upper plane's three numbers and the thickness T. Upper plane below the top,
    # lower plane, which is the upper less T, above the bottom.
    matrix = np.zeros((2 * n, 4))
    matrix[:n, :3] = -frame.rows
    matrix[n:, :3] = frame.rows
    matrix[n:, 3] = -1.0
    cost = np.append(-frame.rows.mean(axis=0), -1.0 / TIE)
    return frame.slopes(_solved(cost, matrix, np.concatenate((-above, below))))
