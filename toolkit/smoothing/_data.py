"""Reads the tables that lie beside the code, as text, once each."""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files
from typing import Literal, get_args

from toolkit.results import Source

Seen = Literal["read", "memory", "none"]


@cache
def read_table(filename: str) -> tuple[dict[str, str], ...]:
    """Rows of one of the room's CSV files, every cell as stripped text."""
    text = files("toolkit.smoothing").joinpath(filename).read_text(encoding="utf-8")
    rows = csv.DictReader(text.splitlines())
    return tuple({key: cell.strip() for key, cell in row.items()} for row in rows)


def number(cell: str) -> float | None:
    """The number in a cell, or None for an empty one. [the unit of its column]"""
    return float(cell) if cell else None


def source_of(row: dict[str, str]) -> Source:
    """Where a row comes from."""
    seen: dict[str, Seen] = {word: word for word in get_args(Seen)}
    return Source(row["source"], seen[row["seen"]])
