"""What the door says when it cannot read a measure."""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import Decimal
from functools import partial
from numbers import Real
from typing import Any

_LONGEST_SHOWN = 40


class MeasureError(ValueError):
    """A measure that cannot be read or written.

    ``what`` was being read, as the student knows it; what was ``read``; the ``problem``, to follow
    the words that were read; and as ``hint`` what to type instead, each text of it in ``offers``.
    """

    def __init__(
        self, what: str, *, read: object, problem: str, hint: str, offers: Sequence[str] = ()
    ) -> None:
        self.what = what
        self.read = read if isinstance(read, str) else plain(read)
        self.problem = problem
        self.hint = hint
        self.offers = tuple(offers)
        shown = quoted(read) if isinstance(read, str) else _shortened(self.read)
        super().__init__(f"{what}: {shown} {problem}: {hint}")

    def __reduce__(self) -> tuple[Any, ...]:
        """Keep the keyword-only arguments, which pickle and copy would otherwise lose."""
        rebuild = partial(type(self), read=self.read, problem=self.problem, hint=self.hint)
        return rebuild, (self.what,), {**vars(self), "args": self.args}


def is_number(value: object) -> bool:
    """Whether a value is a real number of some kind; True and False are not."""
    return isinstance(value, (Real, Decimal)) and not isinstance(value, bool)


def is_finite(value: object) -> bool:
    """Whether a value is a real number that a float can hold."""
    try:
        return is_number(value) and math.isfinite(value)  # type: ignore[arg-type]
    except (OverflowError, ValueError):
        return False


def quoted(text: str) -> str:
    """The text on one line, cut short, between quotes that it does not itself hold."""
    text = _shortened("".join(c if c.isprintable() else " " for c in text))
    return f"“{text}”" if '"' in text else f'"{text}"'


def plain(value: object) -> str:
    """A value that is not text, as a reader would write it: 200.0 is 200."""
    if isinstance(value, float):
        return decimals(value)
    try:
        return " ".join(str(value).split())
    except ValueError:
        # Python declines to write out a whole number of thousands of digits.
        return f"a very long {type(value).__name__}"


def decimals(value: float, *, places: int = 6) -> str:
    """A number in plain decimals, without an exponent or needless zeros, of any unit. [1]"""
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _shortened(text: str) -> str:
    return text if len(text) <= _LONGEST_SHOWN else f"{text[: _LONGEST_SHOWN - 1]}…"
