"""Finds a thing by the name a person would type, whatever the order of its words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from toolkit.results import listed


def _words(text: str) -> frozenset[str]:
    """Words of a name, whatever its capitals, commas, hyphens and brackets."""
    for mark in ",-()/.":
        text = text.replace(mark, " ")
    return frozenset(text.casefold().split())


def candidates(query: str, names: Mapping[str, Iterable[str]]) -> list[str]:
    """Names that fit the query: those that equal it, or else those that contain its words.

    ``names`` gives for each name all the spellings that find it.
    """
    asked = _words(query)
    if not asked:
        return []
    spelt = {name: [_words(spelling) for spelling in also] for name, also in names.items()}
    own = [name for name in names if _words(name) == asked]
    exact = own or [name for name, sets in spelt.items() if asked in sets]
    return exact or [name for name, sets in spelt.items() if any(asked <= one for one in sets)]


def nearest(query: str, names: Mapping[str, Iterable[str]]) -> list[str]:
    """Names whose spelling, or one word of it, is most like the query; none if none is much so."""
    import difflib

    whole = {spelling.casefold() for also in names.values() for spelling in also}
    # One word alone is often what was meant: 'chery' for black cherry.
    single = {word for spelling in whole for word in _words(spelling)}
    close = difflib.get_close_matches(query.casefold(), sorted(whole | single), n=1, cutoff=0.6)
    return candidates(close[0], names) if close else []


def quoted(names: Iterable[str]) -> str:
    """Names in quotes for a choice, since some hold commas themselves."""
    return listed((f"'{name}'" for name in names), "or")
