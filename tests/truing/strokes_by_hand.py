"""A board planed stroke by stroke, apart from the sums: the sole rides, the iron cuts its arc."""

from dataclasses import dataclass
from math import ceil, radians, sin

import numpy as np

from toolkit.planes import Plane

CHEEKS = 14.0  # how much wider a sole is than its iron, both sides [mm]


@dataclass(frozen=True)
class ByHand:
    """Strokes made, the ridge left [mm], the drop of each full pass [mm], and if it came down."""

    strokes: int
    ridge: float
    drops: tuple[float, ...]
    finished: bool

    @property
    def drop_a_pass(self) -> float:
        """The first pass left out: it rides on flat wood. [mm]"""
        return (self.drops[-1] - self.drops[0]) / (len(self.drops) - 1)


def planed_by_hand(
    plane: Plane, *, width: float, remove: float, tracks: int, cell: float = 0.25
) -> ByHand:
    """Plane a flat board until all of it lies so much lower, or bare wood carries the sole."""
    across = np.linspace(0.0, width, ceil(width / cell * (1 - 1e-9)) + 1)
    surface = np.zeros(len(across))
    radius = plane.camber_radius / sin(radians(plane.bed))
    drops: list[float] = []
    strokes = 0
    while True:
        aside = across - (strokes % tracks + 0.5) * width / tracks
        level = surface[abs(aside) <= (plane.iron_width + CHEEKS) / 2].max()
        cut = level - plane.shaving + aside**2 / (2 * radius)
        np.minimum(surface, cut, out=surface, where=abs(aside) <= plane.iron_width / 2)
        strokes += 1
        low = -float(surface.max())
        if strokes % tracks == 0:
            drops.append(low)
        finished = low >= remove * (1 - 1e-9)
        stuck = len(drops) > 1 and strokes % tracks == 0 and drops[-1] <= drops[-2]
        if finished or stuck:
            return ByHand(strokes, float(np.ptp(surface)), tuple(drops), finished)
