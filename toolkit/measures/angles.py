"""The doors for angles and for the slope of a dovetail."""

from __future__ import annotations

import math
import re

from toolkit.measures.conversion import is_quantity
from toolkit.measures.errors import decimals
from toolkit.measures.figures import NUMBER, ReadingError, value_of
from toolkit.measures.reading import parse_one, read
from toolkit.measures.units import ANGLE, SLOPE, Kind

_RATIO = re.compile(
    rf"(?P<rise>{NUMBER}) ?(?P<between>:|/|-?(?:in|to)-?) ?(?P<run>{NUMBER})", re.IGNORECASE
)


def angle(value: object, *, what: str = "angle") -> float:
    """An angle as people write it, of either sign: ``"30 deg"``, ``"30°"``, ``"0.5 rad"``. [degree]

    Reads and refuses as ``length`` does.

    >>> angle("30°")
    30.0
    """
    return read(value, ANGLE, what=what, limit=_no_limit)


def slope(value: object, *, what: str = "slope") -> float:
    """A dovetail's slope as people write it, as the run along for 1 across.

    Parameters
    ----------
    value : str or pint.Quantity
        A ratio that begins with 1, such as ``"1:7"`` or ``"1 in 7"``, or an angle.
    what : str
        Name of the slope, for the error.

    Returns
    -------
    float
        The run along the board for a rise of 1 across it. [ratio]

    Raises
    ------
    MeasureError
        It is neither such a ratio nor an angle, or it does not lie between 0 and 90 degrees.

    Source
    ------
    Definition: run = 1 / tan(angle).

    >>> slope("1 in 7")
    7.0
    """

    if is_quantity(value):
        return _run(read(value, SLOPE, what=what, limit=_steep_or_flat))

    def limit(run: float) -> str | None:
        return None if run > 0 else "does not run along at all"

    return read(value, SLOPE, what=what, limit=limit, parse=_parse_slope)


def _parse_slope(text: str, kind: Kind) -> float:
    """The run for 1 across of a tidy text, a ratio or an angle, else a ReadingError."""
    ratio = _RATIO.fullmatch(text)
    if ratio is None:
        if re.fullmatch(NUMBER, text):
            # Below 1 it may be a rise, a run or an angle, so there is nothing to offer.
            texts = [f"1:{text}", f"{text} deg"] if value_of(text) >= 1 else []
            raise ReadingError("is a bare number", texts=texts)
        degrees = parse_one(text, kind)
        problem = _steep_or_flat(degrees)
        if problem:
            raise ReadingError(problem, texts=[f"{decimals(abs(degrees))} deg"])
        return _run(degrees)
    rise, run = value_of(ratio["rise"]), value_of(ratio["run"])
    if ratio["between"] != "/" and rise == 1:
        return run
    across, along = sorted((rise, run))
    problem = "does not begin with 1" if rise != 1 else "is a fraction, not a ratio"
    raise ReadingError(problem, texts=[f"1:{decimals(along / across)}"] if across else ())


def _run(degrees: float) -> float:
    return 1 / math.tan(math.radians(degrees))


def _steep_or_flat(degrees: float) -> str | None:
    return None if 0 < degrees < 90 else "is not a slope between 0 and 90 deg"


def _no_limit(_: float) -> None:
    return None
