"""Reads one value of a file, or says what is the matter with it and what to type."""

from __future__ import annotations

from difflib import get_close_matches
from fractions import Fraction
from math import isfinite
from typing import Any, Literal

from toolkit import measures
from toolkit.box import UnknownContents, contents
from toolkit.files.errors import UnfitError, shown, visible
from toolkit.results import above, below
from toolkit.stock import LONGEST_BOARD
from toolkit.wood import UnknownSpecies, ring_angle, species

LONGEST_TITLE = 80
LONGEST_LENGTH = 3000.0
MOST_TAILS = 24
MOST_SHARE = 2.0
LEAST_SLOPE, MOST_SLOPE = 1.0, 100.0
MOST_IRONS = 24
MOST_POINTS = 100

Allow = Literal["positive", "zero", "any"]


def read_length(
    value: Any,
    *,
    allow: Allow = "positive",
    least: float = -LONGEST_LENGTH,
    most: float = LONGEST_LENGTH,
) -> float:
    """A length written as text with its unit. [mm]"""
    if not isinstance(value, str):
        number = f"{value:g}" if _is_number(value) and abs(value) < 1e6 else "4"
        raise UnfitError(f'a length is text with its unit; type "{number} mm" or "{number} in"')
    mm = measures.length(value, what="length", allow=allow)
    if allow == "any" and (below(mm, least) or above(mm, most)):
        raise UnfitError(f'it goes from {least:g} mm to {most:g} mm; type such as "0.2 mm"')
    if above(mm, most):
        raise UnfitError(f'lengths go up to {most / 1000:g} m; type one such as "12 mm"')
    return mm


def _is_number(value: Any) -> bool:
    """Whether a value is a finite TOML number; true and false are not numbers."""
    return (
        isinstance(value, int | float)
        and not isinstance(value, bool)
        and (isinstance(value, int) or isfinite(value))
    )


def read_number(value: Any, *, least: float, most: float, example: str) -> float:
    """A plain number between two limits, in whatever unit its key has. [1]"""
    if not _is_number(value):
        raise UnfitError(f"this is a plain number; type {example}")
    if value < least or value > most:
        raise UnfitError(f"it goes from {least:g} to {most:g}; type such as {example}")
    return float(value)


def read_slope(value: Any) -> float:
    """A slope of 1 in r: a number, ``"1:7"`` or an angle. [along for each 1 across]"""
    if isinstance(value, str):
        ratio = measures.slope(value, what="slope")
    elif _is_number(value):
        ratio = float(value) if abs(value) < 1e6 else 1e6
    else:
        raise UnfitError('a slope is 1 in some number; type 7, "1:7" or "8.1 deg"')
    if below(ratio, LEAST_SLOPE) or above(ratio, MOST_SLOPE):
        raise UnfitError('a slope lies between 1 in 1 and 1 in 100; type 7, "1:7" or "8.1 deg"')
    return ratio


def read_share(value: Any) -> float:
    """A share of another size: a number from 0 to 2, or a fraction as text."""
    example = '0.25 or "1/4"'
    if not isinstance(value, str):
        return read_number(value, least=0, most=MOST_SHARE, example=example)
    top, bar, bottom = value.partition("/")
    digits = all(part.strip().isascii() and part.strip().isdigit() for part in (top, bottom))
    if not bar or not digits or len(value) > 20 or not int(bottom):
        raise UnfitError(f"a share is a number from 0 to 2 or a fraction; type {example}")
    fraction = float(Fraction(int(top), int(bottom)))
    return read_number(fraction, least=0, most=MOST_SHARE, example=example)


def read_temperature(value: Any) -> float:
    """The temperature of a room. [°C]"""
    if not isinstance(value, str):
        raise UnfitError('a temperature is text with its unit; type "20 °C" or "68 °F"')
    celsius = measures.temperature(value, what="temperature")
    if below(celsius, -40) or above(celsius, 60):
        raise UnfitError('a room lies between -40 and 60 °C; type such as "20 °C"')
    return celsius


def read_humidity(value: Any) -> float:
    """The relative humidity of a room. [%]"""
    if not isinstance(value, str):
        raise UnfitError('a humidity is text with its unit; type "50 %"')
    percent = measures.humidity(value, what="humidity")
    if below(percent, 0) or above(percent, 100):
        raise UnfitError('a relative humidity lies between 0 and 100 %; type such as "50 %"')
    return percent


def read_moisture(value: Any, *, least: float, most: float) -> float:
    """The moisture of wood, in percent of its dry weight. [%]"""
    if not isinstance(value, str):
        raise UnfitError('a moisture is text with its unit; type "9 %"')
    percent = measures.percent(value, what="moisture")
    if below(percent, least) or above(percent, most):
        raise UnfitError(
            f"wood that is worked lies between {least:g} and {most:g} %; "
            'type a meter\'s reading such as "9 %"'
        )
    return percent


def read_rings(value: Any) -> float:
    """The angle of the rings to the face, 0 flat-sawn and 90 quartered. [degree]"""
    offer = 'type "flat-sawn", "rift", "quarter-sawn" or an angle such as "30 deg"'
    if not isinstance(value, str):
        raise UnfitError(f"the rings are a word or an angle; {offer}")
    if not any(character.isdigit() for character in value):
        try:
            return ring_angle(value)
        except ValueError:
            raise UnfitError(f"boards are not sawn by that name; {offer}") from None
    degrees = measures.angle(value, what="rings")
    if below(degrees, 0) or above(degrees, 90):
        raise UnfitError(f"rings lie between 0 and 90 degrees to the face; {offer}")
    return degrees


def read_tails(value: Any) -> int | tuple[tuple[float, float], ...]:
    """A number of tails, or the lower and upper edge of each at the baseline. [mm]"""
    offer = f'type a number from 1 to {MOST_TAILS}, or places such as [["5 mm", "19 mm"]]'
    if isinstance(value, int) and not isinstance(value, bool):
        if not 1 <= value <= MOST_TAILS:
            raise UnfitError(f"an end has 1 to {MOST_TAILS} tails; {offer}")
        return value
    if not isinstance(value, list) or not 1 <= len(value) <= MOST_TAILS:
        raise UnfitError(f"tails are a count or a list of 1 to {MOST_TAILS} places; {offer}")
    places: list[tuple[float, float]] = []
    for number, place in enumerate(value, start=1):
        if not isinstance(place, list) or len(place) != 2:
            raise UnfitError(f"tail {number} needs two lengths, its lower and upper edge; {offer}")
        low, high = (_placed(length, f"tail {number}") for length in place)
        if not below(low, high):
            raise UnfitError(f"tail {number} does not end above its beginning; put the lower first")
        if places and below(low, places[-1][1]):
            raise UnfitError(f"tail {number} begins inside tail {number - 1}; list them upwards")
        places.append((low, high))
    return tuple(places)


def _placed(value: Any, what: str, most: float = LONGEST_LENGTH) -> float:
    """A length that is one of several in a value, so that a complaint must say which."""
    try:
        return read_length(value, allow="zero", most=most)
    except measures.MeasureError as error:
        said = f"{error.problem}; {error.hint}"
    except UnfitError as error:
        said = f"will not do: {error}"
    raise UnfitError(f"in {what}, {shown(value)} {said}")


def read_irons(value: Any) -> tuple[float, ...]:
    """Widths of plough irons. [mm]"""
    if not isinstance(value, list) or not 1 <= len(value) <= MOST_IRONS:
        raise UnfitError(f'irons are a list of 1 to {MOST_IRONS} widths; type ["6 mm"]')
    return tuple(_placed(iron, f"iron {number}") for number, iron in enumerate(value, start=1))


def read_point(value: Any) -> tuple[float, float]:
    """A place on a board, along it and across it. [mm]"""
    if not isinstance(value, list) or len(value) != 2:
        raise UnfitError('a place is two lengths, along and across; type ["250 mm", "40 mm"]')
    along, across = (_placed(length, "the place", most=LONGEST_BOARD) for length in value)
    return along, across


def read_heart_line(value: Any) -> tuple[tuple[float, float], ...]:
    """The places that a heart line runs through. [mm]"""
    if not isinstance(value, list) or not MOST_POINTS >= len(value) >= 2:
        raise UnfitError(
            f"a heart line has 2 to {MOST_POINTS} places, each along and across; "
            'type [["0 mm", "180 mm"], ["2200 mm", "195 mm"]]'
        )
    return tuple(read_point(place) for place in value)


def read_name(value: Any, *, what: str, example: str) -> str:
    """Text of one printable line."""
    if not isinstance(value, str):
        raise UnfitError(f'{what} is text between quotes; type "{example}"')
    seen = visible(value)
    if not seen.strip() or not seen.isprintable() or len(value) > LONGEST_TITLE:
        raise UnfitError(f"{what} is 1 to {LONGEST_TITLE} printable characters; retype it")
    return value


def read_species(value: Any) -> str:
    """A wood of the table, under the name that was typed."""
    name = read_name(value, what="a wood", example="black cherry")
    try:
        species(name)
    except UnknownSpecies as error:
        raise UnfitError(_about_it(error, f"'{name}' ")) from None
    return name


def read_contents(value: Any) -> str:
    """Contents of the table, under the name that the table has."""
    name = read_name(value, what="the contents", example="A6 cards")
    try:
        return contents(name).name
    except UnknownContents as error:
        raise UnfitError(_about_it(error, f'"{name}" ')) from None


def _about_it(error: ValueError, name: str) -> str:
    """What another room says of a name, which the line has told already."""
    said = str(error).rstrip(".")
    return f"it {said.removeprefix(name)}" if said.startswith(name) else said


def read_word(value: Any, *, words: tuple[str, ...]) -> str:
    """One of a few words."""
    if isinstance(value, str) and value in words:
        return value
    near = get_close_matches(shown(value).strip('"'), words, n=1)
    *head, last = (f'"{word}"' for word in near or words)
    raise UnfitError(f"no such choice; type {', '.join(head)}{' or ' if head else ''}{last}")


def read_file_name(value: Any) -> str:
    """The name of a file, from the folder of the file that names it."""
    seen = visible(value) if isinstance(value, str) else ""
    if not isinstance(value, str) or not seen.strip() or not seen.isprintable():
        raise UnfitError('the name of a file is text between quotes; type "../lessons/box.toml"')
    if len(value) > 300:
        raise UnfitError("no file has so long a name; retype it")
    return value


def read_two_lengths(value: Any, *, what: str, example: str) -> tuple[float, float]:
    """Two lengths that were measured together. [mm]"""
    if not isinstance(value, list) or len(value) != 2:
        raise UnfitError(f"{what}; type {example}")
    one, other = (read_length(length) for length in value)
    return one, other
