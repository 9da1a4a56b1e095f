"""The quick rule's coefficients, as they follow from the law's shrinkage."""

from __future__ import annotations

from toolkit.results import above, above_zero
from toolkit.wood.woods import Species

MEETING_POINT = 10.0  # starting moisture at which the quick rule and the law agree [%]
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
