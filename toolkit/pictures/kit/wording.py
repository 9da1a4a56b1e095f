"""The English that drawings are lettered in.

Whoever prepares a page says so once, round everything that draws for it, as for its edition.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

_SPELL: ContextVar[Callable[[str], str]] = ContextVar("spelling of drawings", default=str)


@contextmanager
def worded(spell: Callable[[str], str]) -> Iterator[None]:
    """Every drawing made inside has its words turned by ``spell``."""
    before = _SPELL.set(spell)
    try:
        yield
    finally:
        _SPELL.reset(before)


def wording(text: str) -> str:
    """A text of a drawing in the English that is asked for."""
    return _SPELL.get()(text)
