"""How drawings are lettered: for a screen, or larger for paper, and in whose English.

Whoever prepares a page says so once, round everything that draws for it, instead of handing a flag
through every function between the page and the drawing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Edition:
    """The size of letters [pt]; a ``still`` frame keeps its empty room, whatever a slider does."""

    text: float
    still: bool


SCREEN = Edition(9.5, still=True)
PAPER = Edition(11.7, still=False)  # 11 pt when a picture is printed 508 pt (179 mm) wide
_NOW: ContextVar[Edition] = ContextVar("edition of drawings", default=SCREEN)


def edition() -> Edition:
    """The edition that is asked for."""
    return _NOW.get()


@contextmanager
def for_paper() -> Iterator[None]:
    """Every drawing made inside is lettered for paper, and without idle room above and below."""
    before = _NOW.set(PAPER)
    try:
        yield
    finally:
        _NOW.reset(before)


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
