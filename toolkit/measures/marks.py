"""The marks of a rule: which there are, which lies at a length, and how it is written.

A place on the rule is a whole number of marks; fractions are then worked out in whole numbers too,
since lengths are written hundreds of times for one picture and must come back exactly when read.
"""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from toolkit.measures.errors import MeasureError, decimals, is_finite
from toolkit.measures.units import MM_PER_INCH

Units = Literal["mm", "in"]
Fineness = Literal["joints", "sizes", "rough"]
Direction = Literal["nearest", "up", "down"]

FINENESSES: tuple[Fineness, ...] = ("joints", "sizes", "rough")

# A length within a millionth of a mark lies on it: binary fractions must not push 4.0 up to 4.1.
TOLERANCE = 1e-6
# How near a 64th a length must be to be written as that fraction in a working. [mm]
_SAME_FRACTION = 0.005

# A hyphen would look like the one in 7-5/16.
_MINUS = "\N{MINUS SIGN}"

_MM_MARKS = (0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 25, 50, 100)
_INCH_PARTS = (128, 64, 32, 16, 8, 4, 2, 1)


class Scale(NamedTuple):
    """One fineness: its mark, and how many hundredths of a millimetre or of an inch's parts.

    ``parts`` is 0 on a millimetre rule; else an inch has that many marks, and ``fractions`` is
    each of them reduced.
    """

    mark: float
    hundredths: int = 0
    parts: int = 0
    fractions: tuple[str, ...] = ()


def _inch_scale(parts: int) -> Scale:
    fractions = [""]
    for top in range(1, parts):
        common = math.gcd(top, parts)
        fractions.append(f"{top // common}/{parts // common}")
    return Scale(254 / (parts * 10), parts=parts, fractions=tuple(fractions))


_SCALES: dict[Units, tuple[Scale, ...]] = {
    "mm": tuple(Scale(float(mark), hundredths=round(mark * 100)) for mark in _MM_MARKS),
    "in": tuple(_inch_scale(parts) for parts in _INCH_PARTS),
}
HUNDREDTHS = _SCALES["mm"][0]
_SIXTY_FOURTHS = _SCALES["in"][1]


def scale_of(what: str, mark: float, units: Units) -> Scale:
    """The scale whose marks lie this far apart, else a MeasureError naming those nearest."""
    scales = _SCALES.get(units)
    if scales is None:
        raise MeasureError(
            "units", read=units, problem="is not a rule's unit", hint='type "mm" or "in"'
        )
    if not is_finite(mark):
        read, nearest = str(mark), [scales[len(scales) // 2]]
    else:
        for scale in scales:
            if math.isclose(mark, scale.mark, rel_tol=TOLERANCE):
                return scale
        read = f"{decimals(mark if units == 'mm' else mark / MM_PER_INCH)} {units}"
        finer = [scale for scale in scales if scale.mark < mark][-1:]
        nearest = finer + [scale for scale in scales if scale.mark > mark][:1]
    texts = " or ".join(f'"{text_at(1, scale)} {units}"' for scale in nearest)
    name = "millimetre" if units == "mm" else "inch"
    raise MeasureError(
        what,
        read=read,
        problem=f"is not a distance between the marks of {name} rules",
        hint=f"type {texts}",
    )


def thickness_scale(units: Units) -> Scale:
    """The marks that a sawn thickness goes up to: common practice, no source."""
    return next(scale for scale in _SCALES[units] if scale.mark == 1 or scale.parts == 16)


def no_such_fineness(fineness: object) -> MeasureError:
    """The error for a fineness that no rule has."""
    return MeasureError(
        "fineness",
        read=fineness,
        problem="is not one of the three",
        hint='type "joints", "sizes" or "rough"',
    )


def count_at(value: float, mark: float, direction: Direction) -> int:
    """How many marks from 0 the mark at a length is; half-way goes away from 0."""
    try:
        marks = value / mark
        if direction == "nearest":
            if marks < 0:
                return -math.floor(0.5 + TOLERANCE - marks)
            return math.floor(marks + (0.5 + TOLERANCE))
        if direction == "up":
            return math.ceil(marks - TOLERANCE)
        if direction == "down":
            return math.floor(marks + TOLERANCE)
    except (TypeError, ValueError, OverflowError):
        raise MeasureError(
            "length",
            read=value,
            problem="is not a finite number of millimetres",
            hint="give a number of millimetres",
        ) from None
    raise MeasureError(
        "direction",
        read=direction,
        problem="is not a way to round",
        hint='type "nearest", "up" or "down"',
    )


def length_at(count: int, scale: Scale) -> float:
    """The length at so many marks from 0, exactly as reading its text gives it. [mm]"""
    if scale.parts:
        return count * 254 / (scale.parts * 10)
    return count * scale.hundredths / 100


def text_at(count: int, scale: Scale) -> str:
    """The number at so many marks from 0, with a true minus sign and no unit."""
    if count < 0:
        return f"{_MINUS}{text_at(-count, scale)}"
    if not scale.parts:
        whole, hundredths = divmod(count * scale.hundredths, 100)
        if not hundredths:
            return f"{whole}"
        if hundredths % 10:
            return f"{whole}.{hundredths:02d}"
        return f"{whole}.{hundredths // 10}"
    whole, top = divmod(count, scale.parts)
    if not top:
        return f"{whole}"
    return f"{whole} {scale.fractions[top]}" if whole else scale.fractions[top]


def inches_text(value: float) -> str:
    """A length in inches without the unit: a fraction when it is a 64th, else to 0.001."""
    count = count_at(value, _SIXTY_FOURTHS.mark, "nearest")
    if abs(length_at(count, _SIXTY_FOURTHS) - value) <= _SAME_FRACTION:
        return text_at(count, _SIXTY_FOURTHS)
    thousandths = count_at(value, MM_PER_INCH / 1000, "nearest")
    whole, rest = divmod(abs(thousandths), 1000)
    digits = f"{whole}.{rest:03d}".rstrip("0").rstrip(".")
    return f"{_MINUS}{digits}" if thousandths < 0 else digits
