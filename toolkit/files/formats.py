"""The number of a box file's format, and how a file of an older format is brought up to it."""

from __future__ import annotations

from collections.abc import Callable, MutableMapping
from typing import Any

from toolkit.files.errors import UnfitError

FIRST = 1
FORMAT = 1

Migration = Callable[[MutableMapping[str, Any]], None]

# From each older format to the next one: a change in place of the file's tables, be they plain
# values or a document with its comments. It must bear with tables that are missing or wrong.
MIGRATIONS: dict[int, Migration] = {}


def read_format(value: Any) -> int:
    """The number of a file's format, once it has been brought up."""
    if not isinstance(value, int) or isinstance(value, bool):
        raise UnfitError(f"the format is a whole number; type format = {FORMAT}")
    if value > FORMAT:
        raise UnfitError(
            f"a newer workbook wrote this file and this one reads format {FORMAT}; "
            "open it with the newer workbook"
        )
    if value < FORMAT:
        raise UnfitError(f"there was never such a format; type format = {FORMAT}")
    return value


def bring_up(tables: MutableMapping[str, Any]) -> bool:
    """Change tables of an older format into the present one, in place; whether any was changed."""
    changed = False
    number = tables.get("format", FIRST)
    # A format that is no number is left for the reader to refuse.
    while isinstance(number, int) and number < FORMAT and number in MIGRATIONS:
        MIGRATIONS[number](tables)
        number += 1
        tables["format"] = number
        changed = True
    return changed
