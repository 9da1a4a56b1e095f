"""Reads the tables that lie beside the code, as text, once each."""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files


@cache
def read_table(filename: str) -> tuple[dict[str, str], ...]:
    """Rows of one of the room's CSV files, every cell as stripped text."""
    text = files("toolkit.classroom").joinpath(filename).read_text(encoding="utf-8")
    rows = csv.DictReader(text.splitlines())
    return tuple({key: cell.strip() for key, cell in row.items()} for row in rows)
