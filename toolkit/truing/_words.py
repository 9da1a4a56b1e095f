"""Lists of words as they are spoken."""

from __future__ import annotations

from collections.abc import Sequence


def spoken(words: Sequence[str]) -> str:
    """Words joined by commas and a last ``and``.

    >>> spoken(["bow", "cup", "twist"])
    'bow, cup and twist'
    """
    return " and ".join(filter(None, [", ".join(words[:-1]), words[-1]]))
