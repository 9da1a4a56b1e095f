"""How exactly a rule can tell a length: the errors that the law allows it."""

from __future__ import annotations

from math import ceil
from typing import Literal

from toolkit.results import above_zero, one_of

RuleClass = Literal["I", "II", "III"]

# a in mm, b in mm a metre, c in mm.
_ERRORS: dict[RuleClass, tuple[float, float, float]] = {
    "I": (0.1, 0.1, 0.1),
    "II": (0.3, 0.2, 0.2),
    "III": (0.6, 0.4, 0.3),
}


def rule_error(length: float, *, accuracy_class: RuleClass = "II", from_end: bool = False) -> float:
    """The error that a rule or tape may have between two marks a length apart.

    Parameters
    ----------
    length : float
        Between the marks. [mm]
    accuracy_class : str
        ``"I"``, ``"II"`` or ``"III"``, as printed on the rule in an oval.
    from_end : bool
        Whether one of the marks is the end of the rule itself, as with a hooked tape.

    Returns
    -------
    float
        Over or under by so much at most. [mm]

    Raises
    ------
    ValueError
        The length is not above 0, or there is no such class.

    Source
    ------
    Directive 2014/32/EU, Annex X (MI-008), chapter I: a + b × L, with L rounded up to the next
    whole metre, and c more from an end; read. The oval: from memory.

    >>> rule_error(300), rule_error(1200)
    (0.5, 0.7)
    """
    above_zero(length, name="length", example="300")
    one_of(accuracy_class, name="accuracy_class", allowed=tuple(_ERRORS))
    a, b, c = _ERRORS[accuracy_class]
    metres = ceil(length / 1000 * (1 - 1e-9))
    return round(a + b * metres + (c if from_end else 0.0), 6)
