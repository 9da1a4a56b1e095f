"""How far a board's width moves between two moistures: one continuous law for all of them."""

from __future__ import annotations

import math

from toolkit.results import above_zero
from toolkit.wood._checks import moisture_in_range, rings_in_range
from toolkit.wood.woods import Species, species as find_species

RING_WORDS = {"flat-sawn": 0.0, "plain-sawn": 0.0, "rift": 45.0, "quarter-sawn": 90.0}

_DEGREE = math.pi / 180


def ring_angle(word: str) -> float:
    """Angle of the growth rings to the width that a word for the sawing stands for. [degrees]

    Common practice, no source; real boards of these names vary by 20 degrees or so.
    """
    stem = _stem(word)
    for known, angle in RING_WORDS.items():
        if stem == _stem(known):
            return angle
    raise ValueError(
        f"'{word}' is not a way of sawing the workbook knows: type flat-sawn, rift or "
        "quarter-sawn, or give the angle of the rings in degrees."
    )


def _stem(word: str) -> str:
    """'Quarter-sawn', 'quarter sawn', 'quartersawn' and 'quartered' alike: 'quarter'."""
    stem = word.casefold().strip().removesuffix("sawn").rstrip(" -")
    return "quarter" if stem == "quartered" else stem


def movement(
    width: float,
    *,
    species: Species | str,
    rings: float,
    moisture_from: float,
    moisture_to: float,
) -> float:
    """Change of a board's width between two moisture contents, by one law for all of them.

    Parameters
    ----------
    width : float
        Width at ``moisture_from``. [mm]
    species : Species or str
        The wood, or a name that finds it.
    rings : float
        Angle between the growth rings and the width: 0 flat-sawn, 90 quarter-sawn. [degrees]
    moisture_from, moisture_to : float
        Moisture content at the start and at the end. [%]

    Returns
    -------
    float
        Change of width, positive when the board swells. [mm]

    Raises
    ------
    ValueError
        The width is not above 0, or an angle or a moisture is impossible.
    UnknownSpecies
        No wood of the table has this name.

    Source
    ------
    Handbook (FPL-GTR-190), Eq. 13-3; its form from memory.

    >>> round(movement(232, species="white fir", rings=0, moisture_from=8, moisture_to=11), 3)
    1.712
    """
    if not 0 < width < math.inf:
        above_zero(width, name="width", unit="mm", example="116 for the lid of the postcard box")
    return width * strain(
        species, rings=rings, moisture_from=moisture_from, moisture_to=moisture_to
    )


def strain(
    species: Species | str, *, rings: float, moisture_from: float, moisture_to: float
) -> float:
    """Change of width for each millimetre of width, between two moisture contents.

    The shrinkage in a direction at an angle ``a`` to the rings is tangential times cos² a plus
    radial times sin² a, both measured on the green size. With that shrinkage a width is a straight
    line in the moisture, so going back returns the width one started from, at any angle. (Turning
    the two strains instead of the two shrinkages differs by at most 1.5 % of the movement, and
    then going back would not quite return.) Above fibre saturation nothing moves.

    Parameters
    ----------
    species : Species or str
        The wood, or a name that finds it.
    rings : float
        Angle between the growth rings and the width: 0 flat-sawn, 90 quarter-sawn. [degrees]
    moisture_from, moisture_to : float
        Moisture content at the start and at the end. [%]

    Returns
    -------
    float
        Strain, positive when the wood swells. [mm/mm]

    Raises
    ------
    ValueError
        An angle or a moisture is impossible, or the table lacks the wood's shrinkage.
    UnknownSpecies
        No wood of the table has this name.

    Source
    ------
    Handbook (FPL-GTR-190), Eq. 13-3; its form from memory. The turning of a strain with the
    angle is plane geometry, exact for straight rings.

    >>> round(strain("black cherry", rings=0, moisture_from=10, moisture_to=6), 5)
    -0.00994
    """
    wood = find_species(species) if isinstance(species, str) else species
    if not 0 <= rings <= 90:
        rings_in_range(rings)
    if not 0 <= moisture_from <= 300:
        moisture_in_range(moisture_from, name="moisture_from")
    if not 0 <= moisture_to <= 300:
        moisture_in_range(moisture_to, name="moisture_to")
    if wood.shrinkage_tangential is None or wood.shrinkage_radial is None:
        raise ValueError(f"The table has no shrinkage for {wood.name}: choose another wood.")
    saturation = wood.fibre_saturation
    start = min(moisture_from, saturation)
    end = min(moisture_to, saturation)
    sine = math.sin(rings * _DEGREE)
    across = sine * sine
    shrinkage = wood.shrinkage_tangential * (1 - across) + wood.shrinkage_radial * across
    return (end - start) / (100 * saturation / shrinkage - saturation + start)
