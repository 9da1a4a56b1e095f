"""The number of a file's format, and how a file of an older format is brought up to it."""

from __future__ import annotations

from collections.abc import Callable, MutableMapping
from typing import Any, Literal

from tomlkit.items import AbstractTable, Item

from toolkit.files.errors import Path, UnfitError

FileKind = Literal["box", "boards", "class"]
Tables = MutableMapping[str, Any]

FIRST = 1
FORMATS: dict[FileKind, int] = {"box": 2, "boards": 1, "class": 2}

# Keys of a box that had another name once, by section and present name.
_FORMERLY = {("panels", "under_lid"): "front_drop"}


def read_format(value: Any, *, present: int) -> int:
    """The number of a file's format, once it has been brought up."""
    if not isinstance(value, int) or isinstance(value, bool):
        raise UnfitError(f"the format is a whole number; type format = {present}")
    if value > present:
        raise UnfitError(
            f"a newer workbook wrote this file and this one reads format {present}; "
            "open it with the newer workbook"
        )
    if value < present:
        raise UnfitError(f"there was never such a format; type format = {present}")
    return value


def bring_up(tables: Tables, *, kind: FileKind = "box") -> bool:
    """Change tables of an older format into the present one, in place; whether any was changed."""
    number, changed = tables.get("format", FIRST), False
    # A format that is no number is left for the reader to refuse.
    if not isinstance(number, int) or isinstance(number, bool):
        return False
    while number < FORMATS[kind] and (kind, number) in MIGRATIONS:
        changed |= MIGRATIONS[kind, number](tables)
        number += 1
    # A file without a number, in which nothing is older, needs none.
    if changed or tables.get("format", number) != number:
        tables["format"] = number
        changed = True
    return changed


def formerly(path: Path) -> Path:
    """Where an older file has what is at a path now, for the numbers of lines."""
    *above, name = path or ("",)
    old = _FORMERLY.get((str(above[-1]), str(name))) if above else None
    return path if old is None else (*above, old)


def _new_names(box: Tables) -> bool:
    changed = False
    for (section, new), old in _FORMERLY.items():
        table = box.get(section)
        if isinstance(table, MutableMapping) and old in table and new not in table:
            _rename(table, old, new)
            changed = True
    return changed


def _rename(table: Tables, old: str, new: str) -> None:
    """Give a key another name; a document keeps its place and its remark."""
    item = table.value.item(old) if isinstance(table, AbstractTable) else None
    if isinstance(table, AbstractTable) and isinstance(item, Item):
        table.value._replace(old, new, item)
        dict.__delitem__(table, old)
        dict.__setitem__(table, new, item)
    else:
        table[new] = table.pop(old)


def _new_names_of_students(taught: Tables) -> bool:
    students = taught.get("student")
    rows = students if isinstance(students, list) else ()
    changes = [row.get("changes") for row in rows if isinstance(row, MutableMapping)]
    found = [_new_names(each) for each in changes if isinstance(each, MutableMapping)]
    return any(found)


# From each older format to the next one: a change in place of the file's tables, be they plain
# values or a document with its comments, and whether there was any. It must bear with tables that
# are missing or wrong.
MIGRATIONS: dict[tuple[FileKind, int], Callable[[Tables], bool]] = {
    ("box", 1): _new_names,
    ("class", 1): _new_names_of_students,
}
