"""How much a part should weigh, and how wet a piece is by its weight."""

from __future__ import annotations

from toolkit.results import above_zero
from toolkit.wood._checks import moisture_in_range
from toolkit.wood.woods import Species, species as find_species


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

    >>> round(specific_gravity("black cherry", moisture=12), 3)
    0.5
    """
    wood = find_species(species) if isinstance(species, str) else species
    moisture_in_range(moisture, name="moisture")
    green, at_12 = wood.specific_gravity_green, wood.specific_gravity_12
    if green is None:
        raise ValueError(wood.unweighed)
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

    >>> round(density("black cherry", moisture=12))
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

    >>> round(part_weight(700, width=70, thickness=16, species="black cherry", moisture=12))
    439
    """
    above_zero(length, name="length", unit="mm", example="700 for a wall blank")
    above_zero(width, name="width", unit="mm", example="70 for a wall blank")
    above_zero(thickness, name="thickness", unit="mm", example="16 for a wall blank")
    # 1 mm³ is 1e-9 m³, and 1 kg is 1000 g.
    return length * width * thickness * density(species, moisture=moisture) * 1e-6


def moisture_by_weight(weight: float, *, before: float, moisture_before: float = 0.0) -> float:
    """Moisture of a piece that was weighed twice: what it lost or gained is water.

    Parameters
    ----------
    weight : float
        Weight now. [g]
    before : float
        Weight at the other weighing: out of the oven, once it no longer gets lighter. [g]
    moisture_before : float, optional
        Moisture at the other weighing, if it was not oven-dry. [%]

    Returns
    -------
    float
        Moisture content now, of the oven-dry weight. [%]

    Raises
    ------
    ValueError
        A weight is not above 0, the moisture is impossible, or the piece is lighter than dry.

    Source
    ------
    Handbook (FPL-GTR-190), ch. 4, definition of moisture content; its form from memory.

    >>> round(moisture_by_weight(41.2, before=37.8), 1)
    9.0
    """
    above_zero(weight, name="weight", unit="g", example="41.2 for an offcut")
    above_zero(before, name="before", unit="g", example="37.8 for an offcut out of the oven")
    moisture_in_range(moisture_before, name="moisture_before")
    moisture = (100 + moisture_before) * weight / before - 100
    if moisture < 0:
        raise ValueError(
            f"{weight:g} g now is lighter than the piece is with no water in it: weigh both times "
            "on one scale, and give the weight now first."
        )
    moisture_in_range(moisture, name="the moisture by these two weights")
    return moisture
