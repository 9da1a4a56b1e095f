"""The door itself: one value in, one finite float out, or an error that says what to type."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from toolkit.measures.conversion import is_quantity, quantity_value
from toolkit.measures.errors import MeasureError, is_finite, is_number, plain
from toolkit.measures.figures import MINUS_SIGNS, NUMBER, START, ReadingError, value_of, with_units
from toolkit.measures.refusing import why_not
from toolkit.measures.text import tidy
from toolkit.measures.units import LENGTH, TEMPERATURE, Kind

LONGEST = 64
_MOST_SUGGESTED = 2
_MOST_TRIED = 16

_ONE = re.compile(rf"{START.pattern} ?(?P<word>[^0-9]*)")
_FEET_AND_INCHES = re.compile(
    rf"(?P<sign>[+{MINUS_SIGNS}]?) ?(?P<feet>[0-9]+) ?(?:'|ft\.?|foot|feet) ?-? ?"
    rf"(?P<inches>{NUMBER}) ?(?P<word>[^0-9]*)",
    re.IGNORECASE,
)

Parse = Callable[[str, Kind], float]
Limit = Callable[[float], str | None]


def parse_one(text: str, kind: Kind) -> float:
    """The value of one number with its unit in tidy text, else a ReadingError."""
    match = _ONE.fullmatch(text)
    unit = kind.find(match["word"]) if match else None
    if match is None or unit is None:
        both = _FEET_AND_INCHES.fullmatch(text) if kind is LENGTH else None
        inch = LENGTH.find(both["word"]) if both else None
        if both is None or inch is None or inch.name != "in":
            raise why_not(text, kind)
        return inch.own(_feet_and_inches(both))
    try:
        number = value_of(match["figures"])
    except ReadingError as refusal:
        texts = with_units(refusal.texts, [unit.name], sign=match["sign"])
        raise ReadingError(refusal.problem, texts=texts) from None
    return unit.own(_signed(number, match["sign"]))


def _feet_and_inches(match: re.Match[str]) -> float:
    """Feet followed by inches, as inches; one sign goes for both."""
    sign, feet = match["sign"], match["feet"]
    try:
        inches = value_of(match["inches"])
    except ReadingError as refusal:
        texts = with_units([f"{feet} ft {text}" for text in refusal.texts], ["in"], sign=sign)
        raise ReadingError(refusal.problem, texts=texts) from None
    return _signed(12 * int(feet) + inches, sign)


def _signed(number: float, sign: str) -> float:
    return -number if sign and sign in MINUS_SIGNS else number


def read(value: object, kind: Kind, *, what: str, limit: Limit, parse: Parse = parse_one) -> float:
    """The value of a text or a pint quantity in the kind's own unit, else a MeasureError."""
    try:
        number = _number(value, kind, parse)
        problem = _problem(number, limit)
        if problem:
            text = tidy(value) if isinstance(value, str) else _in_own_unit(number, kind)
            raise ReadingError(problem, texts=[text])
        return number
    except ReadingError as refusal:
        offers = _offers(refusal.texts, kind, limit, parse)
        hint = " or ".join(f'"{text}"' for text in offers)
        hint = f"type {hint}" if offers else f'type for example "{kind.example}"'
        raise MeasureError(
            what, read=value, problem=refusal.problem, hint=hint, offers=offers or (kind.example,)
        ) from None


def _number(value: object, kind: Kind, parse: Parse) -> float:
    if isinstance(value, str):
        if len(value) > LONGEST:
            raise ReadingError(f"is longer than {LONGEST} characters")
        return parse(tidy(value), kind)
    if is_quantity(value):
        return quantity_value(value, kind)
    if not is_number(value):
        raise ReadingError(f"is not {kind.noun}")
    if not is_finite(value):
        raise ReadingError("is not a finite number")
    # Always a refusal: a number alone has no unit.
    return parse(plain(value), kind)


def _problem(number: float, limit: Limit) -> str | None:
    return limit(number) if math.isfinite(number) else "is not a finite number"


def _in_own_unit(number: float, kind: Kind) -> str:
    return f"{plain(number)} {kind.units[0].name}"


def _offers(texts: tuple[str, ...], kind: Kind, limit: Limit, parse: Parse) -> tuple[str, ...]:
    """What to type: those of the texts that this door would read."""
    untried, readable = list(texts), []
    for text in untried:
        try:
            number = parse(text, kind)
        except ReadingError as refusal:
            # What it was taken for may be refused in turn, with better texts of its own.
            untried += refusal.texts[: max(0, _MOST_TRIED - len(untried))]
            continue
        if _problem(number, limit):
            # A sign too many is a likely slip, but not below absolute zero.
            if text[0] in MINUS_SIGNS and kind is not TEMPERATURE:
                untried.append(text[1:].lstrip())
            continue
        # The hint puts each text between double quotes, so it must hold none.
        spelt = text.replace('"', " in")
        if len(spelt) <= LONGEST and spelt not in readable:
            readable.append(spelt)
    return tuple(readable[:_MOST_SUGGESTED])
