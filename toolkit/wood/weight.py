"""What a part should weigh, and what its weight says of the water in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.results import above
from toolkit.wood import _names
from toolkit.wood._checks import above_zero, moisture_in_range
from toolkit.wood.species import Species
from toolkit.wood.species import species as find_species

WET_WOOD_SPREAD = 15.0  # custom: pieces of one size that differ by more may be wet [%]


def specific_gravity(species: Species | str, *, moisture: float) -> float:
    """Oven-dry weight over the volume at a moisture content, relative to water.

    As wood dries below fibre saturation its volume shrinks in a straight line. The line is laid
    through the two printed values, green and at 12 %; a wood printed green only is laid along its
    shrinkage of volume instead. Single boards stray from their species' mean by 10 % or so.

    Parameters
    ----------
    species : Species or str
        The wood, or a name that finds it.
    moisture : float
        Moisture content. [%]

    Returns
    -------
    float
        Specific gravity. [1]

    Raises
    ------
    ValueError
        The moisture is impossible, or the table lacks the wood's specific gravity.
    UnknownSpecies
        No wood of the table has this name.

    Source
    ------
    Handbook (FPL-GTR-190), Tables 5-3 and 5-5; the straight line is its Eq. 4-7, from memory.

    >>> round(specific_gravity("cherry", moisture=12), 3)
    0.5
    """
    wood = find_species(species) if isinstance(species, str) else species
    moisture_in_range(moisture, name="moisture")
    green, at_12 = wood.specific_gravity_green, wood.specific_gravity_12
    if green is None:
        raise ValueError(
            f"The table has no specific gravity for {wood.name}: weigh a piece, or take a wood "
            "that has one."
        )
    lost = max(wood.fibre_saturation - moisture, 0.0)
    if at_12 is not None:
        return 1 / (1 / green + (1 / at_12 - 1 / green) * lost / (wood.fibre_saturation - 12))
    if wood.shrinkage_volumetric is None:
        raise ValueError(f"The table has {wood.name} green only: weigh a piece instead.")
    return green / (1 - wood.shrinkage_volumetric / 100 * lost / wood.fibre_saturation)


def density(species: Species | str, *, moisture: float) -> float:
    """Density of wood with the water in it.

    Parameters
    ----------
    species : Species or str
        The wood, or a name that finds it.
    moisture : float
        Moisture content. [%]

    Returns
    -------
    float
        Density. [kg/m³]

    Raises
    ------
    ValueError
        The moisture is impossible, or the table lacks the wood's specific gravity.
    UnknownSpecies
        No wood of the table has this name.

    Source
    ------
    Handbook (FPL-GTR-190), ch. 4: 1000 times specific gravity times (1 + moisture / 100); its form
    from memory.

    >>> round(density("cherry", moisture=12))
    560
    """
    return 1000 * specific_gravity(species, moisture=moisture) * (1 + moisture / 100)


def part_weight(
    length: float, *, width: float, thickness: float, species: Species | str, moisture: float
) -> float:
    """Weight of a part.

    Parameters
    ----------
    length, width, thickness : float
        Size at this moisture. [mm]
    species : Species or str
        The wood, or a name that finds it.
    moisture : float
        Moisture content. [%]

    Returns
    -------
    float
        Weight. [g]

    Raises
    ------
    ValueError
        A size or the moisture is impossible, or the table lacks the wood's specific gravity.
    UnknownSpecies
        No wood of the table has this name.

    Source
    ------
    Handbook (FPL-GTR-190), ch. 4; the form from memory.

    >>> round(part_weight(700, width=70, thickness=16, species="cherry", moisture=12))
    439
    """
    above_zero(length, name="length", unit="mm", example="700 for a wall stick")
    above_zero(width, name="width", unit="mm", example="70 for a wall stick")
    above_zero(thickness, name="thickness", unit="mm", example="16 for a wall stick")
    # 1 mm³ is 1e-9 m³, and 1 kg is 1000 g.
    return length * width * thickness * density(species, moisture=moisture) * 1e-6


def moisture_by_weight(weight: float, *, weight_then: float, moisture_then: float) -> float:
    """Moisture of a piece now, from its weight now and a moisture once known.

    Parameters
    ----------
    weight, weight_then : float
        Weight now, and when the moisture was known; any one unit. [g]
    moisture_then : float
        The moisture content then, 0 for an oven-dry piece. [%]

    Returns
    -------
    float
        Moisture content now. [%]

    Raises
    ------
    ValueError
        A number is impossible, or the piece would hold less than no water.

    Source
    ------
    Definition of moisture content (handbook, FPL-GTR-190, ch. 4): water over oven-dry weight.

    >>> round(moisture_by_weight(436, weight_then=448, moisture_then=12), 2)
    9.0
    """
    above_zero(weight, name="weight", unit="g", example="436")
    above_zero(weight_then, name="weight_then", unit="g", example="448")
    moisture_in_range(moisture_then, name="moisture_then")
    now = 100 * (weight / weight_then * (1 + moisture_then / 100) - 1)
    if now < -1e-6:  # an oven-dry piece may come out a rounding error below nothing
        raise ValueError(
            f"A piece that weighs {weight:g} now and weighed {weight_then:g} at "
            f"{moisture_then:g} % would hold less than no water. Check both weights, and that no "
            "wood was planed off in between."
        )
    return max(now, 0.0)


@dataclass(frozen=True, slots=True)
class WeightSpread:
    """How much pieces of one size differ in weight.

    Attributes
    ----------
    spread : float
        How much more the heaviest weighs than the lightest. [%]
    limit : float
        The custom it is held against. [%]
    suspects : tuple of int
        Places in the list, from 0, of the pieces that outweigh the lightest by more.
    """

    spread: float
    limit: float
    suspects: tuple[int, ...]

    def sentence(self) -> str:
        """Say whether the pieces agree, and which to look at."""
        if not self.suspects:
            return f"The pieces agree within {self.spread:.0f} %."
        which = _names.listed((str(place + 1) for place in self.suspects), last_word="and")
        pieces = (
            f"Piece {which} outweighs" if len(self.suspects) == 1 else f"Pieces {which} outweigh"
        )
        return (
            f"{pieces} the lightest by more than {self.limit:g} % (up to {self.spread:.0f} %): "
            "perhaps wet rather than dense. Let the wood settle and weigh it again."
        )


def weight_spread(weights: Sequence[float], *, limit: float = WET_WOOD_SPREAD) -> WeightSpread:
    """Compare the weights of pieces cut to one size, to find one that may be wet.

    Parameters
    ----------
    weights : sequence of float
        Weights of pieces of one size and one wood. [g]
    limit : float
        The custom: pieces that outweigh the lightest by more are suspect. [%]

    Returns
    -------
    WeightSpread
        The spread and the suspects. [%]

    Raises
    ------
    ValueError
        There are fewer than two weights, or a number is not above 0.

    Source
    ------
    Common practice, no source: 15 % is a custom; dense wood may differ so much when dry.

    >>> weight_spread([430, 441, 512]).suspects
    (2,)
    """
    if len(weights) < 2:
        raise ValueError(f"{len(weights)} weight was given: weigh two or more pieces of one size.")
    for weight in weights:
        above_zero(weight, name="a weight", unit="g", example="440")
    above_zero(limit, name="limit", unit="%", example="15")
    lightest = min(weights)
    over = [100 * (weight / lightest - 1) for weight in weights]
    suspects = tuple(place for place, more in enumerate(over) if above(more, limit))
    return WeightSpread(spread=max(over), limit=limit, suspects=suspects)
