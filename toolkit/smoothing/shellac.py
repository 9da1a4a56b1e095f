"""The cut of a shellac: how much of it is flakes."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.measures import convert
from toolkit.results import above_zero


@dataclass(frozen=True, slots=True)
class ShellacCut:
    """How strong a shellac is: flakes [g] in alcohol [mL]."""

    flakes: float
    alcohol: float

    @property
    def grams_to_litre(self) -> float:
        """The cut. [g/L]"""
        return 1000 * self.flakes / self.alcohol

    @property
    def pounds_to_gallon(self) -> float:
        """The cut as the trade calls it in the United States. [lb/US gal]"""
        return convert(self.grams_to_litre, unit="g/L", to="pound/gallon")

    def sentence(self) -> str:
        """The recipe and both names of its strength."""
        return (
            f"{self.flakes:.0f} g of flakes in {self.alcohol:.0f} mL of alcohol is a cut of "
            f"{self.grams_to_litre:.0f} g/L ({self.pounds_to_gallon:.1f} lb/US gal)."
        )


def shellac_cut(flakes: float, *, alcohol: float) -> ShellacCut:
    """The cut of a shellac: flakes over the alcohol that they are dissolved in.

    Parameters
    ----------
    flakes : float
        Weight of the flakes. [g]
    alcohol : float
        Volume of the alcohol. [mL]

    Returns
    -------
    ShellacCut
        The mixture. [g, mL]

    Raises
    ------
    ValueError
        An amount is not above 0.

    Source
    ------
    Definition, mass over volume: a 2 lb cut has 2 lb to a US gallon, 240 g to a litre.

    >>> round(shellac_cut(24, alcohol=100).pounds_to_gallon, 1)
    2.0
    """
    above_zero(flakes, name="flakes", unit="g", example="24")
    above_zero(alcohol, name="alcohol", unit="mL", example="100")
    return ShellacCut(float(flakes), float(alcohol))
