"""The number of a file's format, and how a file of an older format is brought up to it."""

from __future__ import annotations

from collections.abc import Callable, MutableMapping
from typing import Any, Literal

from tomlkit.container import Container
from tomlkit.items import AbstractTable, InlineTable, Item, Table, Whitespace

from toolkit.files.errors import Path, UnfitError
from toolkit.measures import MeasureError, decimals, length

FileKind = Literal["box", "boards", "class"]
Tables = MutableMapping[str, Any]

FIRST = 1
FORMATS: dict[FileKind, int] = {"box": 2, "boards": 1, "class": 2}

# Keys of a box that had another place once, by their section and name.
_FORMERLY = {
    ("panels", "under_lid"): ("panels", "front_drop"),
    ("corner", "proud"): ("customs", "pins_proud"),
}
_SHY, _USUALLY_PROUD = "pins_shy", 0.2  # [mm]


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
    boxes = {"box": [tables], "class": _changes_of_students(tables)}.get(kind, [])
    # A file of the present format may have these too.
    for box in boxes:
        changed |= _pins_in_one_key(box)
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
    *above, section, name = ("", "", *path)
    old = _FORMERLY.get((str(section), str(name)))
    return path if old is None else (*above[2:], *old)


def _new_names(box: Tables) -> bool:
    changed = False
    for (section, new), (place, old) in _FORMERLY.items():
        table = box.get(section) if place == section else None
        if isinstance(table, MutableMapping) and old in table and new not in table:
            _rename(table, old, new)
            changed = True
    return changed


def _pins_in_one_key(box: Tables) -> bool:
    """Two customs told how proud or shy pins are; one key of the corner tells it now."""
    customs, corner = box.get("customs"), box.get("corner", {})
    if not (isinstance(customs, MutableMapping) and isinstance(corner, MutableMapping)):
        return False
    old = [name for name in ("pins_proud", _SHY) if name in customs]
    if not old or "proud" in corner:
        return False
    value = _proud(*(customs.pop(name, None) for name in ("pins_proud", _SHY)))
    if "corner" not in box:
        put(box, "corner", {})
    put(box["corner"], "proud", value)
    return True


def _proud(over: Any, under: Any) -> Any:
    """What one custom or both said, as text for one key; as it was where it is no length."""
    if under is None:
        return over
    try:
        # A plain 0 in a length is refused when the key is read.
        standing = _USUALLY_PROUD if over is None else length(over, allow="zero")
        return f"{decimals(standing - length(under, allow='zero'))} mm"
    except MeasureError:
        return under


def _rename(table: Tables, old: str, new: str) -> None:
    """Give a key another name; a document keeps its place and its remark."""
    item = table.value.item(old) if isinstance(table, AbstractTable) else None
    if isinstance(table, AbstractTable) and isinstance(item, Item):
        table.value._replace(old, new, item)
        dict.__delitem__(table, old)
        dict.__setitem__(table, new, item)
    else:
        table[new] = table.pop(old)


def put(tables: Tables, key: str, value: Any) -> None:
    """Put one value in its place, in plain values and in a document alike."""
    if isinstance(tables, dict) and not isinstance(tables, Container | Table | InlineTable):
        # The plain values must not share a table with the document.
        tables[key] = dict(value) if isinstance(value, dict) else value
    elif isinstance(tables, Table) and key not in tables and not isinstance(value, dict):
        _add_last(tables, key, value)
    else:
        tables[key] = value


def _add_last(table: Table, key: str, value: Any) -> None:
    """Add a key below the last one, above the blank line and the remarks of what comes next."""
    body = table.value.body
    end = len(body)
    while end and (body[end - 1][0] is None or isinstance(body[end - 1][1], Table)):
        end -= 1
    below_it = range(end, len(body))
    cut = next((at for at in below_it if isinstance(body[at][1], Whitespace | Table)), len(body))
    below = body[cut:]
    for inner, _item in below:
        if inner is not None:
            table.remove(inner)
    del body[cut:]
    table.append(key, value)
    for inner, item in below:
        if inner is None:
            body.append((inner, item))
        else:
            table.raw_append(inner, item)


def _changes_of_students(taught: Tables) -> list[Tables]:
    students = taught.get("student")
    rows = students if isinstance(students, list) else ()
    changes = [row.get("changes") for row in rows if isinstance(row, MutableMapping)]
    return [each for each in changes if isinstance(each, MutableMapping)]


def _new_names_of_students(taught: Tables) -> bool:
    return any([_new_names(each) for each in _changes_of_students(taught)])  # noqa: C419 - all of them


# From each older format to the next one: a change in place of the file's tables, be they plain
# values or a document with its comments, and whether there was any. It must bear with tables that
# are missing or wrong.
MIGRATIONS: dict[tuple[FileKind, int], Callable[[Tables], bool]] = {
    ("box", 1): _new_names,
    ("class", 1): _new_names_of_students,
}
