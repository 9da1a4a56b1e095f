"""The kinds of values in a file: how each is read, and what the JSON Schema says of it."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, time
from functools import partial
from itertools import pairwise
from typing import Any, get_args

from toolkit.files import values
from toolkit.files.errors import UnfitError
from toolkit.files.formats import read_format
from toolkit.measures import Key
from toolkit.results import capital
from toolkit.wood import RING_WORDS

MOST_DAYS = 14
MOST_STUDENTS = 60
_TIME = re.compile(r"(\d{1,2})[:.](\d{2})")


def read_whole(value: Any, *, least: int, most: int, example: int) -> int:
    """A whole number between two limits."""
    if not isinstance(value, int) or isinstance(value, bool):
        raise UnfitError(f"this is a whole number; type {example}")
    if not least <= value <= most:
        raise UnfitError(f"it goes from {least} to {most}; type such as {example}")
    return value


def read_time(value: Any) -> int:
    """A time of day. [min after midnight]"""
    if isinstance(value, time):
        return value.hour * 60 + value.minute
    offer = 'a time of day is text from "00:00" to "23:59"; type such as "09:00"'
    match = _TIME.fullmatch(value.strip()) if isinstance(value, str) else None
    if not match or int(match[1]) > 23 or int(match[2]) > 59:
        raise UnfitError(offer)
    return int(match[1]) * 60 + int(match[2])


def read_dates(value: Any) -> tuple[date, ...]:
    """The days on which a class meets, in their order."""
    offer = 'type such as ["2027-06-05", "2027-06-06"]'
    if not isinstance(value, list) or not 1 <= len(value) <= MOST_DAYS:
        raise UnfitError(f"dates are a list of 1 to {MOST_DAYS} days; {offer}")
    days = [_day(entry, offer) for entry in value]
    for before, after in pairwise(days):
        if before >= after:
            raise UnfitError(f"{after} does not come after {before}; list each day once, in order")
    return tuple(days)


def _day(entry: Any, offer: str) -> date:
    # A date with a time of day is a kind of date too, and not what is meant.
    if type(entry) is date:
        return entry
    try:
        return date.fromisoformat(entry)
    except (TypeError, ValueError):
        said = f"“{entry}” is no day of the calendar" if isinstance(entry, str) else "a day is text"
        raise UnfitError(f"{said}; year, month and day in this order, {offer}") from None


def read_changes(value: Any) -> dict[str, Any]:
    """Sections of a box file, unread: each student's box is checked by itself."""
    if not isinstance(value, dict):
        raise UnfitError(
            "changes are sections of a box file; type [student.changes.thickness] and below it "
            'such as side = "13 mm"'
        )
    return value


Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Read:
    """A reader, which says all that there is to say of a value, and its JSON Schema."""

    reader: Callable[[Any], Any]
    json: Json


def read_of(key: Key) -> Read:
    """How the value of a key is read."""
    found = KINDS[key.kind]
    return found if isinstance(found, Read) else found(key)


def _length(key: Key) -> Read:
    least, most = key.least or 0.0, key.most or values.LONGEST_LENGTH
    allow: values.Allow = "positive" if key.least is None else "zero"
    span = f"{'above 0' if allow == 'positive' else '0'} to {most / 1000:g} m"
    if least < 0:
        allow, span = "any", f"{least:g} to {most:g} mm"
    json = {
        "type": "string",
        "description": f"A length with its unit, {span}.",
        "examples": ["12 mm", "1/2 in"],
    }
    return Read(partial(values.read_length, allow=allow, least=least, most=most), json)


def _number(key: Key) -> Read:
    least, most = key.least or 0, key.most or 1e6
    reader = partial(values.read_number, least=least, most=most, example=str(key.example or 2))
    json = {"type": "number", "minimum": least, "maximum": most}
    return Read(reader, json | ({"examples": [key.example]} if key.example else {}))


def _count(key: Key) -> Read:
    limits: Any = {"least": key.least, "most": key.most, "example": key.example}
    json = {"minimum": key.least, "maximum": key.most, "examples": [key.example]}
    return Read(partial(read_whole, **limits), {"type": "integer", **json})


def _format(key: Key) -> Read:
    return Read(partial(read_format, present=int(key.most or 1)), {"const": key.most})


def _word(key: Key) -> Read:
    words = get_args(key.type)
    return Read(partial(values.read_word, words=words), {"enum": list(words)})


def _text(reader: Callable[[Any], Any], description: str, *examples: str, **more: Any) -> Read:
    said = {"description": description} if description else {}
    longest = {"maxLength": values.LONGEST_TITLE}
    json = {"type": "string", "minLength": 1, **longest, **said, "examples": list(examples)}
    return Read(reader, {key: value for key, value in (json | more).items() if value is not None})


def _name(what: str, example: str) -> Callable[[Key], Read]:
    def read(key: Key) -> Read:
        shown = key.example or example
        reader = partial(values.read_name, what=what, example=shown)
        return _text(reader, f"{capital(what)}: one printable line.", shown)

    return read


def _list(reader: Callable[[Any], Any], least: int, most: int, items: Json, *more: Any) -> Read:
    *description, example = more
    said = {"description": description[0]} if description else {}
    many = {"type": "array", "minItems": least, "maxItems": most, "items": items}
    return Read(reader, {**many, **said, "examples": [example]})


def _ratio(
    reader: Callable[[Any], Any], span: tuple[float, float], description: str, examples: list[Any]
) -> Read:
    limits = {"minimum": span[0], "maximum": span[1]}
    said = {"description": description, "examples": examples}
    return Read(reader, {"type": ["number", "string"], **limits, **said})


def _two(what: str, *example: str) -> Read:
    typed = "[" + ", ".join(f'"{length}"' for length in example) + "]"
    reader = partial(values.read_two_lengths, what=what, example=typed)
    return _list(reader, 2, 2, _LENGTH, list(example))


def _moisture(key: Key) -> Read:
    least, most = key.least or 0.0, key.most or 100.0
    reader = partial(values.read_moisture, least=least, most=most)
    return _text(reader, f"A moisture of wood, {least:g} to {most:g} % of its dry weight.", "9 %")


_LENGTH = {"type": "string"}
_PAIR = {"type": "array", "items": _LENGTH, "minItems": 2, "maxItems": 2}

KINDS: dict[str, Read | Callable[[Key], Read]] = {
    "length": _length,
    "number": _number,
    "count": _count,
    "word": _word,
    "title": _name("the title", "Postcard box"),
    "name": _name("the name", "long cherry"),
    "contents": _text(
        values.read_contents, "What the box is for, by its name in the table.", "A6 cards"
    ),
    "species": _text(values.read_species, "A wood of the table.", "black cherry"),
    "temperature": _text(values.read_temperature, "A temperature with its unit.", "20 °C", "68 °F"),
    "humidity": _text(values.read_humidity, "A relative humidity.", "50 %"),
    "moisture": _moisture,
    "rings": _text(
        values.read_rings,
        "Rings to the face of lid and bottom: a word or an angle from 0 to 90 degrees.",
        *RING_WORDS,
        "30 deg",
    ),
    "slope": _ratio(
        values.read_slope,
        (values.LEAST_SLOPE, values.MOST_SLOPE),
        "1 in so many, or an angle.",
        [7, "1:7", "8.1 deg"],
    ),
    "share": _ratio(
        values.read_share,
        (0, values.MOST_SHARE),
        "A share of another size, 1 being the same, or a fraction as text.",
        [0.25, "1/4"],
    ),
    "tails": Read(
        values.read_tails,
        {
            "description": "How many, or the lower and upper edge of each at the baseline.",
            "oneOf": [
                {"type": "integer", "minimum": 1, "maximum": values.MOST_TAILS},
                {"type": "array", "minItems": 1, "maxItems": values.MOST_TAILS, "items": _PAIR},
            ],
            "examples": [3, [["5 mm", "19 mm"], ["25 mm", "39 mm"]]],
        },
    ),
    "irons": _list(
        values.read_irons, 1, values.MOST_IRONS, _LENGTH, "Widths of the plough's irons.", ["6 mm"]
    ),
    "point": _list(
        values.read_point,
        2,
        2,
        _LENGTH,
        "Along and across the board, from its lower left corner.",
        ["250 mm", "40 mm"],
    ),
    "heart line": _list(
        values.read_heart_line,
        2,
        values.MOST_POINTS,
        _PAIR,
        [["0 mm", "180 mm"], ["2200 mm", "195 mm"]],
    ),
    "format": _format,
    "time": _text(
        read_time,
        "",
        "09:00",
        maxLength=None,
        pattern=r"^\s*([01]?\d|2[0-3])[:.][0-5]\d\s*$",
    ),
    "dates": _list(
        read_dates,
        1,
        MOST_DAYS,
        {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"},
        ["2027-06-05", "2027-06-06"],
    ),
    "file": _text(values.read_file_name, "", "../lessons/box.toml", maxLength=300),
    "changes": Read(read_changes, {"type": "object"}),
    "diagonals": _two("both diagonals are two lengths", "221 mm", "221.5 mm"),
    "box size": _two("the size is two lengths, along and across", "176 mm", "134 mm"),
}
