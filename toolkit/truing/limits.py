"""How true is true enough: the numbers that a part is tested against, each an editable custom."""

from __future__ import annotations

from dataclasses import dataclass, fields

from toolkit.truing._checks import above_zero


@dataclass(frozen=True, slots=True)
class Limits:
    """Customs of truing: common practice, no source.

    Parameters
    ----------
    twist : float
        The most twist of a wall of ``twist_length`` × ``twist_width`` on which joints may be laid
        out. [mm]
    twist_length, twist_width : float
        Of that wall; a larger part may have more in proportion to length times width. [mm]
    straight : float
        The widest gap under a straightedge. [mm]
    square : float
        The widest gap under the blade of a square, over the thickness or the width. [mm]
    spread : float
        Between the thickest and the thinnest of the four walls. [mm]
    size : float
        A width or a length off its number. [mm]
    ridge : float
        The highest ridge that a smoothed face may keep. [mm]

    Raises
    ------
    ValueError
        One of them is not above 0.
    """

    twist: float = 0.3
    twist_length: float = 176.0
    twist_width: float = 64.0
    straight: float = 0.1
    square: float = 0.1
    spread: float = 0.2
    size: float = 0.2
    ridge: float = 0.015

    def __post_init__(self) -> None:
        """A limit of nothing would fail every part."""
        for spec in fields(self):
            above_zero(getattr(self, spec.name), name=spec.name, example=f"{spec.default}")

    def twist_over(self, length: float, *, width: float) -> float:
        """The most twist of a part of that size. [mm]

        ``length`` and ``width`` are the part's. [mm]
        """
        above_zero(length, name="length", example="176")
        above_zero(width, name="width", example="64")
        return self.twist * length * width / (self.twist_length * self.twist_width)
