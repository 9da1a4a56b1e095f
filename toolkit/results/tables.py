"""Reads the tables that stand beside the code."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any


@cache
def read_table(place: str) -> tuple[dict[str, str], ...]:
    """Rows of a CSV file such as ``wood/species.csv``, every cell as stripped text."""
    # Imported here: together they would be most of the time that importing a room takes.
    import csv
    from importlib.resources import files

    text = files("toolkit").joinpath(*place.split("/")).read_text(encoding="utf-8")
    rows = csv.DictReader(text.splitlines())
    return tuple({key: cell.strip() for key, cell in row.items()} for row in rows)


@cache
def read_words(place: str) -> Mapping[str, Any]:
    """What a TOML file such as ``handout/headings.toml`` says, by its keys."""
    import tomllib
    from importlib.resources import files

    text = files("toolkit").joinpath(*place.split("/")).read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def rows_by_name(place: str, key: str) -> dict[str, dict[str, str]]:
    """The rows of such a file by the name in one of its columns."""
    return {row[key]: row for row in read_table(place)}


def number(cell: str) -> float | None:
    """The number in a cell, or None for an empty one. [the unit of its column]"""
    return float(cell) if cell else None
