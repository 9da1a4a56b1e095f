"""Says why a text cannot be read as a measure, and what its writer may have meant."""

from __future__ import annotations

import math
import re

from toolkit.measures.errors import decimals, quoted
from toolkit.measures.figures import MINUS_SIGNS, NUMBER, START, ReadingError, with_units
from toolkit.measures.units import KINDS, LENGTH, Kind

_NOT_FINITE = re.compile(r"\b(?:inf|infinity|nan)\b|∞", re.IGNORECASE)
_EXPONENT = re.compile(r"e[+-]?[0-9]+", re.IGNORECASE)
# "1,234.5", "1.234.567" or "1 200": one sign between the thousands, perhaps another for decimals.
_THOUSANDS = re.compile(
    r"(?P<whole>[0-9]{1,3}(?:(?: [0-9]{3})+|(?:,[0-9]{3})+(?=\.)|(?:\.[0-9]{3})+(?=,)"
    r"|(?:,[0-9]{3}){2,}|(?:\.[0-9]{3}){2,}))(?:[.,](?P<decimals>[0-9]+))?(?![0-9.,/])"
)
_FEET_THEN_BARE = re.compile(rf" ?(?:'|ft\.?|foot|feet) ?-? ?(?P<figures>{NUMBER})", re.IGNORECASE)
_POWER = re.compile(
    r" ?(?P<before>square|sq|cubic|cu)?\.? ?(?P<unit>[a-z]+)\.?"
    r"(?: ?(?:\^|\*\*) ?)?(?P<after>[23²³])?",
    re.IGNORECASE,
)
_MINUS_AND_FRACTION = re.compile(
    rf" ?[{MINUS_SIGNS}] ?(?P<fraction>[0-9]+/[0-9]+) ?(?P<word>[^0-9]*)"
)


def why_not(text: str, kind: Kind) -> ReadingError:
    """Why a tidy text is not one number with a unit of this kind."""
    if not text:
        return ReadingError("is empty")
    first_digit = re.search("[0-9]", text)
    if first_digit is None:
        finite = not _NOT_FINITE.search(text)
        return ReadingError("has no number" if finite else "is not a finite number")
    start = START.match(text)
    if start is None:
        tail = text[first_digit.start() :]
        head = quoted(text[: first_digit.start()].strip())
        return ReadingError(f"begins with {head}, not with a number", texts=(tail,))
    sign, figures = start["sign"], start["figures"]
    rest = text[start.end() :]
    return (
        _number_written_otherwise(text, sign, figures, rest, kind)
        or _second_number(text, sign, figures, rest, kind)
        or _unit_unknown(sign, figures, rest, kind)
    )


def _number_written_otherwise(
    text: str, sign: str, figures: str, rest: str, kind: Kind
) -> ReadingError | None:
    """A number with thousands, an exponent, or a point or bar too many."""
    unsigned = text.removeprefix(sign).lstrip()
    if thousands := _THOUSANDS.match(unsigned):
        number = re.sub("[^0-9]", "", thousands["whole"])
        if thousands["decimals"]:
            number += f".{thousands['decimals']}"
        units = _known_or_offered(unsigned[thousands.end() :], number, kind)
        return ReadingError(
            "is ambiguous, it has signs or spaces between its thousands",
            texts=with_units([number], units, sign=sign),
        )
    if (exponent := _EXPONENT.match(rest)) and "/" not in figures:
        value = float(figures.replace(",", ".") + exponent[0])
        if not math.isfinite(value):
            return ReadingError("is not a finite number")
        number = decimals(value)
        units = _known_or_offered(rest[exponent.end() :], number, kind)
        return ReadingError(
            "is written with an exponent", texts=with_units([number], units, sign=sign)
        )
    if rest[:1] in tuple(".,/"):
        unit = kind.find(rest.lstrip(".,"))
        texts = with_units([figures], [unit.name], sign=sign) if unit else ()
        return ReadingError("has a number that cannot be read", texts=texts)
    return None


def _second_number(
    text: str, sign: str, figures: str, rest: str, kind: Kind
) -> ReadingError | None:
    """An area, or something with figures in it behind the first number."""
    power = _POWER.fullmatch(rest)
    if power and (power["before"] or power["after"]) and (unit := kind.find(power["unit"])):
        cubed = (power["before"] or "").casefold().startswith("cu") or power["after"] in {"3", "³"}
        return ReadingError(
            f"is {'a volume' if cubed else 'an area'}, not {kind.noun}",
            texts=with_units([figures], [unit.name], sign=sign),
        )
    second = re.search(NUMBER, rest)
    if second is None:
        return None
    if kind is LENGTH and (bare := _FEET_THEN_BARE.fullmatch(rest)):
        return ReadingError(f"has no unit after {bare['figures']}", texts=(f"{text} in",))
    if (minus := _MINUS_AND_FRACTION.fullmatch(rest)) and figures.isdigit():
        number = f"{figures} {minus['fraction']}"
        units = _known_or_offered(minus["word"], number, kind)
        return ReadingError(
            "has a minus sign before its fraction", texts=with_units([number], units, sign=sign)
        )
    texts = with_units([figures], _known_or_offered(rest, figures, kind), sign=sign)
    tail = rest[second.start() :]
    if _known(tail, kind):
        texts = (*texts[:1], tail)
    return ReadingError(f"has a second number, {second[0]}", texts=texts)


def _unit_unknown(sign: str, figures: str, rest: str, kind: Kind) -> ReadingError:
    """No unit, a unit of something else, a misspelt one, or words behind it."""
    word = rest.strip()
    offered = with_units([figures], _offered(figures, kind), sign=sign)
    if not word:
        return ReadingError("has no unit", texts=offered)
    for other in KINDS:
        # A lone letter is a slip more often than a temperature.
        if other.noun != kind.noun and other.find(word) and not (len(word) == 1 and word.isalpha()):
            return ReadingError(f"is {other.noun}, not {kind.noun}", texts=offered)
    if nearest := kind.nearest(word):
        return ReadingError(
            f"has an unknown unit, {quoted(word)} ({nearest.name}?)",
            texts=with_units([figures], [nearest.name], sign=sign),
        )
    words = word.split()
    for count in range(len(words) - 1, 0, -1):
        if unit := kind.find(" ".join(words[:count])):
            return ReadingError(
                f"has {quoted(' '.join(words[count:]))} after its unit",
                texts=with_units([figures], [unit.name], sign=sign),
            )
    return ReadingError(f"has an unknown unit, {quoted(word)}", texts=offered)


def _offered(figures: str, kind: Kind) -> tuple[str, ...]:
    """The units to offer: nobody reads a fraction off a millimetre rule."""
    return ("in",) if kind is LENGTH and "/" in figures else kind.offered


def _known_or_offered(rest: str, figures: str, kind: Kind) -> tuple[str, ...]:
    """The first unit of this kind among the words of a text, else those to offer."""
    known = _known(rest, kind)
    return (known,) if known else _offered(figures, kind)


def _known(rest: str, kind: Kind) -> str | None:
    words = re.findall(r"[^\W\d_]+|[\"'°%]+[^\W\d_]*", rest)
    return next((unit.name for word in words if (unit := kind.find(word))), None)
