"""Things a box is made for, with their standard sizes, so that a box can be sized from them."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache

from toolkit.results import Source, read_table


class UnknownContents(ValueError):  # noqa: N818 - said as a sentence, not as a type
    """Nothing of that name is in the table; the message offers the nearest names."""


@dataclass(frozen=True, slots=True)
class Contents:
    """A flat thing to keep: it lies with its long side along the box. [mm]"""

    name: str
    length: float
    width: float
    thickness: float | None
    source: Source


@cache
def all_contents() -> dict[str, Contents]:
    """Every named content, by name."""
    table = {}
    for row in read_table("box/contents.csv"):
        table[row["name"]] = Contents(
            name=row["name"],
            length=float(row["long_mm"]),
            width=float(row["short_mm"]),
            thickness=float(row["thickness_mm"]) if row["thickness_mm"] else None,
            source=Source.of(row),
        )
    return table


def contents(name: str) -> Contents:
    """Look contents up by name, in any case: standard papers, cards and trade sizes. [mm]"""
    table = {key.lower(): value for key, value in all_contents().items()}
    wanted = name.strip().lower()
    if wanted in table:
        return table[wanted]
    near = get_close_matches(wanted, table, n=1, cutoff=0.5)
    offer = table[near[0]].name if near else ", ".join(all_contents())
    raise UnknownContents(
        f'"{name}" is not in the table of contents; type {offer!r}, or give inside sizes instead'
    )
