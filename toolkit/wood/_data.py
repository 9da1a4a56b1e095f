"""Reads the tables that lie beside the code, as text, once each."""

from __future__ import annotations

from functools import cache


@cache
def read_table(filename: str) -> tuple[dict[str, str], ...]:
    """Rows of one of the room's CSV files, every cell as stripped text."""
    # Imported here: together they would be most of the time that importing the room takes.
    import csv
    from importlib.resources import files

    text = files("toolkit.wood").joinpath(filename).read_text(encoding="utf-8")
    rows = csv.DictReader(text.splitlines())
    return tuple({key: cell.strip() for key, cell in row.items()} for row in rows)


def number(cell: str) -> float | None:
    """The number in a cell, or None for an empty one. [the unit of its column]"""
    return float(cell) if cell else None


def needed(cell: str) -> float:
    """The number in a cell that may not be empty. [the unit of its column]"""
    return float(cell)
