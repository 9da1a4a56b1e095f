"""The oil, shellac or wax that a box takes, and a class of them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from toolkit.measures import Rule, convert
from toolkit.results import Source, above_zero, not_negative, one_of, read_table
from toolkit.smoothing.customs import CUSTOMS


@dataclass(frozen=True, slots=True)
class SpreadRate:
    """How far a finish goes, for a square metre and one coat. [mL/m² or g/m²]"""

    finish: str
    measure: str  # by volume (mL) or by weight (g)
    least: float
    most: float
    parts: str  # what it is mixed of, where that is told
    source: Source


@cache
def spreads() -> tuple[SpreadRate, ...]:
    """How far each finish goes; every rate is a custom. [mL/m² or g/m²]"""
    return tuple(
        SpreadRate(
            row["finish"],
            row["measure"],
            float(row["least_per_m2"]),
            float(row["most_per_m2"]),
            row["parts"],
            Source.of(row),
        )
        for row in read_table("smoothing/spreads.csv")
    )


@dataclass(frozen=True, slots=True)
class Needed:
    """The finish that one box takes in all its coats, and what to buy for all of them. [mL or g]"""

    spread: SpreadRate
    area: float  # of one box [mm²]
    coats: int
    boxes: int
    least: float
    most: float
    to_buy: float  # at the greater rate, with some to spare
    spare: float  # of it [%]

    def sentence(self, rule: Rule) -> str:
        """Quantities in the units of the shelf and of the spoon."""
        row = self.spread
        coats = f"{self.coats} coat{'s' if self.coats != 1 else ''}"
        text = (
            f"{row.finish}: {coats} over {rule.area(self.area, large=True)} "
            f"take{'s' if self.coats == 1 else ''} "
            f"{_range(self.least, self.most)} {row.measure} a box{self._spoons()}"
        )
        if self.boxes != 1:
            text += f"; for {self.boxes} boxes, {self.spare:g} % spare, {self._shelf()}"
        return f"{text} ({row.source})."

    def _spoons(self) -> str:
        if self.spread.measure != "mL":
            return ""
        spoons = [
            convert(amount, unit="mL", to="metric_teaspoon") for amount in (self.least, self.most)
        ]
        return f" ({_range(*spoons)} teaspoons of 5 mL)"

    def _shelf(self) -> str:
        if self.spread.measure == "mL":
            ounces = convert(self.to_buy, unit="mL", to="fluid_ounce")
            return f"{self.to_buy:.0f} mL ({ounces:.1f} US fl oz)"
        ounces = convert(self.to_buy, unit="g", to="ounce")
        return f"{self.to_buy:.0f} g ({ounces:.1f} oz)"


def _range(low: float, high: float) -> str:
    texts = [f"{value:.1f}" if value < 10 else f"{value:.0f}" for value in (low, high)]
    return texts[0] if texts[0] == texts[1] else f"{texts[0]} to {texts[1]}"


def finish_needed(
    finish: str,
    *,
    area: float,
    coats: int = 1,
    boxes: int = 1,
) -> Needed:
    """The finish that an area [mm²] takes, for one box and to buy for a class. [mL or g]

    Rates: customs, row by row in ``spreads.csv``.
    """
    rates = {row.finish: row for row in spreads()}
    one_of(finish, name="finish", allowed=rates)
    row = rates[finish]
    not_negative(area, name="area", unit="mm²", example="73000")
    above_zero(coats, name="coats", unit="", example="2")
    above_zero(boxes, name="boxes", unit="", example="8")
    square_metres = area / 1e6 * coats
    least, most = row.least * square_metres, row.most * square_metres
    to_buy = most * boxes * (1 + CUSTOMS.spare / 100)
    return Needed(row, area, coats, boxes, least, most, to_buy, CUSTOMS.spare)


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
