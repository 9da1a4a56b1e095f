"""Names of a room that are fetched when they are first asked for.

Whoever reads a file of boards need not wait for numpy, nor a cut list for what only one lesson
asks.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module


def fetcher(room: str, homes: Mapping[str, str]) -> Callable[[str], object]:
    """The ``__getattr__`` of a room, from each module's names, parted by spaces (PEP 562)."""
    home_of = {name: home for home, names in homes.items() for name in names.split()}

    def fetch(name: str) -> object:
        if name not in home_of:
            raise AttributeError(f"module {room!r} has no attribute {name!r}")
        value = getattr(import_module(f"{room}.{home_of[name]}"), name)
        setattr(sys.modules[room], name, value)
        return value

    return fetch
