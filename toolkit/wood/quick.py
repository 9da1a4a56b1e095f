"""The sums on paper: the handbook's quick rule of movement, and a formula for cup."""

from __future__ import annotations

import math
from dataclasses import dataclass

from toolkit.results import above, above_zero, below
from toolkit.wood._checks import moisture_in_range, rings_in_range
from toolkit.wood.woods import MEETING_POINT, Species, species as find_species

QUICK_RULE_RANGE = (6.0, 14.0)  # moistures between which the handbook offers the rule [%]


@dataclass(frozen=True, slots=True)
class QuickRule:
    """The change by the handbook's quick rule, and whether the rule holds here. [mm]

    ``valid``: both moistures lie within 6 to 14 %, the range the rule was made for.
    ``coefficients_fit``: the wood's coefficients belong to its own shrinkage, as the law uses it.
    """

    change: float
    valid: bool
    coefficients_fit: bool
    species: Species

    @property
    def doubt(self) -> str:
        """The reasons not to trust it, empty if there are none."""
        low, high = QUICK_RULE_RANGE
        range_told = (
            f"The quick rule holds from {low:g} to {high:g} % moisture; outside use the law."
        )
        note = self.species.caution if self.coefficients_fit else self.species.note
        return f"{'' if self.valid else range_told} {note}".strip()


def quick_rule(
    width: float,
    *,
    species: Species | str,
    rings: float,
    moisture_from: float,
    moisture_to: float,
) -> QuickRule:
    """The sum a maker does on paper: width times coefficient times percent.

    It stands beside the law for comparison. Nothing changes over from one to the other: at the
    end of the rule's range the movement would jump.

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
    QuickRule
        The change of width and whether the rule is valid for it. [mm]

    Raises
    ------
    ValueError
        A number is impossible, or the table lacks the wood's coefficients.
    UnknownSpecies
        No wood of the table has this name.

    Source
    ------
    Handbook (FPL-GTR-190), Eq. 13-2 and Table 13-5. Between the angles: common practice, no source.

    >>> rule = quick_rule(100, species="black cherry", rings=0, moisture_from=6, moisture_to=12)
    >>> round(rule.change, 3), rule.valid
    (1.488, True)
    """
    wood = find_species(species) if isinstance(species, str) else species
    above_zero(width, name="width", unit="mm", example="116 for the lid of the postcard box")
    rings_in_range(rings)
    moisture_in_range(moisture_from, name="moisture_from")
    moisture_in_range(moisture_to, name="moisture_to")
    if wood.coefficient_tangential is None or wood.coefficient_radial is None:
        raise ValueError(f"The table has no coefficients for {wood.name}: use the law instead.")
    across = math.sin(math.radians(rings)) ** 2
    coefficient = wood.coefficient_tangential * (1 - across) + wood.coefficient_radial * across
    low, high = QUICK_RULE_RANGE
    driest, wettest = sorted((moisture_from, moisture_to))
    return QuickRule(
        change=width * coefficient * (moisture_to - moisture_from),
        valid=not (below(driest, low) or above(wettest, high)),
        coefficients_fit=coefficients_fit(wood),
        species=wood,
    )


def cup_formula(width: float, *, ring_radius: float, tangential: float, radial: float) -> float:
    """Cup of a flat-sawn board by a formula for paper, good for small strains.

    With ``u = width / (2 ring_radius)`` the hollow of the bark side is
    ``ring_radius (radial - tangential) u atan(u)``.

    Parameters
    ----------
    width : float
        Width of the board. [mm]
    ring_radius : float
        Radius of the ring at the middle of its width. [mm]
    tangential, radial : float
        Strain along the rings and across them, positive when the wood swells. [mm/mm]

    Returns
    -------
    float
        Depth of the hollow on the bark side; negative when that side goes round. [mm]

    Raises
    ------
    ValueError
        A size is not above 0.

    Source
    ------
    Derived here: the first term of the exact map.

    >>> round(cup_formula(116, ring_radius=80, tangential=-0.00992, radial=-0.00504), 4)
    0.1776
    """
    above_zero(width, name="width", unit="mm", example="116")
    above_zero(ring_radius, name="ring_radius", unit="mm", example="80")
    half = width / (2 * ring_radius)
    return ring_radius * (radial - tangential) * half * math.atan(half)


LAST_DIGIT = 0.00001  # one unit of the last digit to which coefficients are printed


def coefficient_from_shrinkage(shrinkage: float, *, fibre_saturation: float = 30.0) -> float:
    """Coefficient of the quick rule at which it agrees with the law, starting from 10 %.

    Parameters
    ----------
    shrinkage : float
        Shrinkage in one direction, green to oven-dry. [%]
    fibre_saturation : float
        Moisture above which the wood no longer moves. [%]

    Returns
    -------
    float
        Change of width for each percent of moisture. [1/%]

    Raises
    ------
    ValueError
        A number is not above 0.

    Source
    ------
    Handbook (FPL-GTR-190), Eq. 13-2 and 13-3 set equal at 10 %; it reproduces Table 13-5.

    >>> round(coefficient_from_shrinkage(7.1), 5)
    0.00248
    """
    above_zero(shrinkage, name="shrinkage", unit="%", example="7.1 for black cherry")
    above_zero(fibre_saturation, name="fibre_saturation", unit="%", example="30")
    return shrinkage / (100 * fibre_saturation - shrinkage * (fibre_saturation - MEETING_POINT))


def coefficients_fit(wood: Species) -> bool:
    """Whether a wood's coefficients belong to its shrinkage, to one unit of their last digit."""
    pairs = (
        (wood.shrinkage_radial, wood.coefficient_radial),
        (wood.shrinkage_tangential, wood.coefficient_tangential),
    )
    for shrinkage, coefficient in pairs:
        if shrinkage is None or coefficient is None:
            return False
        own = coefficient_from_shrinkage(shrinkage, fibre_saturation=wood.fibre_saturation)
        if above(abs(own - coefficient), LAST_DIGIT):
            return False
    return True
