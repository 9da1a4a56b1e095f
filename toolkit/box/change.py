"""A change to a box: keys of its file, such as ``groove.depth``, with other values."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from toolkit.measures import Rule, length_text

# Lengths in mm; None for a key that is left out.
Change = Mapping[str, Any]


def written(change: Change, *, rule: Rule) -> dict[str, Any]:
    """A change as a box file has it: lengths as text with a unit.

    >>> written({"groove.depth": 4.0, "corner.tails_back": 3}, rule=Rule.millimetres())
    {'groove.depth': '4 mm', 'corner.tails_back': 3}
    """

    def text(value: Any) -> Any:
        if isinstance(value, tuple):
            return [text(each) for each in value]
        return length_text(value, rule=rule) if isinstance(value, float) else value

    return {key: text(value) for key, value in change.items()}
