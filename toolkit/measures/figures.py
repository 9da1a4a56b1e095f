"""What a number looks like in tidy text, and the value of its figures."""

from __future__ import annotations

import re
from collections.abc import Iterable

from toolkit.measures.errors import decimals

# What keyboards and word processors give for a minus. The plain one comes last, so that within
# the brackets of a pattern it does not stand for a range.
MINUS_SIGNS = "\N{MINUS SIGN}\N{EN DASH}\N{SMALL HYPHEN-MINUS}\N{FULLWIDTH HYPHEN-MINUS}-"
HYPHENS = "\N{HYPHEN}\N{NON-BREAKING HYPHEN}\N{EN DASH}-"

# Mixed fractions first: read as a decimal, "1 1/2" would end at its 1.
NUMBER = (
    rf"(?:(?:[0-9]+[ {HYPHENS}])?[0-9]+/[0-9]+"
    r"|[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)"
)
START = re.compile(rf"(?P<sign>[+{MINUS_SIGNS}]?) ?(?P<figures>{NUMBER})")

_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)[^0-9/])?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)")
_COMMA_AND_THREE = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")


class ReadingError(Exception):
    """Why a text is no measure, and texts that its writer may have meant."""

    def __init__(self, problem: str, *, texts: Iterable[str] = ()) -> None:
        super().__init__(problem)
        self.problem = problem
        self.texts = tuple(texts)


def value_of(figures: str) -> float:
    """The value of figures such as ``7 5/16`` or ``12,5``; the error's texts are figures too."""
    fraction = _FRACTION.fullmatch(figures)
    if fraction is None:
        if _COMMA_AND_THREE.fullmatch(figures):
            raise ReadingError(
                "is ambiguous, its comma may be a decimal point or mark the thousands",
                texts=(figures.replace(",", "."), figures.replace(",", "")),
            )
        return float(figures.replace(",", "."))
    top, bottom = int(fraction["top"]), int(fraction["bottom"])
    if bottom == 0:
        raise ReadingError("has a zero under its fraction's bar")
    whole = int(fraction["whole"] or 0)
    if fraction["whole"] and top >= bottom:
        raise ReadingError(
            "has a fraction that is not less than 1 beside its whole number",
            texts=(decimals(whole + top / bottom),),
        )
    if not fraction["whole"] and (missing_space := _split(fraction["top"], bottom)):
        over, left = divmod(top, bottom)
        raise ReadingError(
            "is ambiguous, a space may be missing before its fraction",
            texts=(missing_space, f"{over} {left}/{bottom}" if left else f"{over}"),
        )
    return whole + top / bottom


def _split(top: str, bottom: int) -> str | None:
    """What ``71`` over 2 may have meant, ``7 1/2``, or None when no whole number stands before."""
    if int(top) > bottom:
        for end in range(1, len(top)):
            if top[end] != "0" and int(top[end:]) < bottom:
                return f"{top[:end]} {top[end:]}/{bottom}"
    return None


def with_units(figures: Iterable[str], units: Iterable[str], *, sign: str = "") -> tuple[str, ...]:
    """Each of the figures with each of the units and the sign."""
    return tuple(f"{sign}{number} {unit}" for number in figures for unit in units)
