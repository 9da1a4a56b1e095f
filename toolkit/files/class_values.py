"""Reads the values of a class file that a box has none of: dates, times of day, whole numbers."""

from __future__ import annotations

import re
from datetime import date, time
from itertools import pairwise
from typing import Any

from toolkit.files import values
from toolkit.files.errors import UnfitError, visible

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
    one, other = (values.read_length(length) for length in value)
    return one, other


def read_changes(value: Any) -> dict[str, Any]:
    """Sections of a box file, unread: each student's box is checked by itself."""
    if not isinstance(value, dict):
        raise UnfitError(
            "changes are sections of a box file; type [student.changes.thickness] and below it "
            'such as side = "13 mm"'
        )
    return value
