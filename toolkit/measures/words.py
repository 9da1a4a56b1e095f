"""Words that somebody typed, such as a title or a name."""

from __future__ import annotations


def whole(text: str) -> str:
    """Text without halves of characters, which no file, page or screen can hold.

    >>> whole("3 tails\\ud83d"), whole("\\ud83d\\ude42")
    ('3 tails�', '🙂')
    """
    return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
