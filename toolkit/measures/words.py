"""Words that somebody typed, such as a title or a name: kept whole, and kept as they are."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar


def whole(text: str) -> str:
    """Text without halves of characters, which no file, page or screen can hold.

    >>> whole("3 tails\\ud83d"), whole("\\ud83d\\ude42")
    ('3 tails�', '🙂')
    """
    return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")


# Stands between the letters of what somebody typed, so that no rule of spelling finds a word in
# them. Unicode keeps it for use inside a program: nobody can have typed it.
TYPED = "\ufdd0"
_MARKED: ContextVar[bool] = ContextVar("typed text is marked", default=False)


@contextmanager
def marking_typed() -> Iterator[None]:
    """Round whatever makes text for a page that is respelled, which takes the marks out again."""
    before = _MARKED.set(True)
    try:
        yield
    finally:
        _MARKED.reset(before)


def as_typed(text: str) -> str:
    """What somebody typed (a title, a name), for a text of ours: it keeps its spelling."""
    return TYPED.join(text) if _MARKED.get() else text
