"""How true is true enough: the numbers that a part is tested against, each an editable custom."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.planes import RIDGE_MOST


@dataclass(frozen=True, slots=True)
class Tolerances:
    """Customs of truing: common practice, no source. [mm]"""

    twist: float = 0.3  # of a wall so long and wide; a larger part may have more in proportion
    twist_length: float = 176.0
    twist_width: float = 66.0
    straight: float = 0.1  # the widest gap under a straightedge
    square: float = 0.1  # the same under the blade of a square, over the thickness or the width
    spread: float = 0.2  # between the thickest and the thinnest of the four walls
    size: float = 0.2  # a width or a length off its number
    ridge: float = RIDGE_MOST

    def twist_over(self, length: float, *, width: float) -> float:
        """The most twist of a part of that size. [mm]"""
        return self.twist * length * width / (self.twist_length * self.twist_width)
