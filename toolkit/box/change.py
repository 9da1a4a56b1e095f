"""A change to a box, written as its file has it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import is_dataclass
from typing import Any

from toolkit.box.choices import Change, Choices
from toolkit.measures import Key, Rule, decimals, keys_of, length_text
from toolkit.results import capital, listed, read_words
from toolkit.wood import RING_WORDS

# The first word of each angle.
_RINGS: dict[float, str] = {angle: word for word, angle in reversed(RING_WORDS.items())}
_NUMBERS: dict[str, Callable[[float], str]] = {
    "temperature": lambda value: f"{decimals(value)} °C",
    "humidity": lambda value: f"{decimals(value)} %",
    "moisture": lambda value: f"{decimals(value)} %",
    "rings": lambda value: _RINGS.get(value) or f"{decimals(value)} deg",
}
_LENGTHS = ("length", "tails", "irons")


def key_at(name: str) -> Key:
    """What a box file may say under a key such as ``rooms.make.humidity``."""
    found = Key(type=Choices)
    for step in name.split("."):
        found = keys_of(found.type)[step]
    return found


def value_written(value: Any, key: Key, *, rule: Rule) -> Any:
    """A value as a file has it: a length is text with its unit, a record a table of its keys."""
    if value is None:
        return None
    if is_dataclass(value):
        inner = keys_of(key.type).items()
        table = {
            name: value_written(getattr(value, name), each, rule=rule)
            for name, each in inner
            if not each.of
        }
        return {name: said for name, said in table.items() if said is not None}
    if isinstance(value, tuple):
        # Whole numbers are counts only where they stand alone.
        each = (float(each) if isinstance(each, int) else each for each in value)
        return [value_written(one, key, rule=rule) for one in each]
    if key.kind in _NUMBERS:
        return _NUMBERS[key.kind](value)
    counted = key.kind == "tails" and isinstance(value, int)
    return value if counted or key.kind not in _LENGTHS else length_text(value, rule=rule)


def written(change: Change, *, rule: Rule) -> dict[str, Any]:
    """A change as a box file has it: lengths as text with a unit, counts as numbers.

    Parameters
    ----------
    change : mapping
        Values by key, such as ``groove.depth``. [mm]
    rule : Rule
        The rule on which its lengths are written.

    >>> written({"groove.depth": 4.0, "corner.tails_back": 3}, rule=Rule.millimetres())
    {'groove.depth': '4 mm', 'corner.tails_back': 3}
    """
    return {name: value_written(value, key_at(name), rule=rule) for name, value in change.items()}


def told(change: Change, *, rule: Rule) -> str:
    """What to do for a change, each of its keys named by what is done at the bench.

    >>> told({"corner.pin": 6.5, "corner.tails_back": 3}, rule=Rule.millimetres())
    'Make the pins 6.5 mm at the baseline and set out 3 equal tails at the back.'
    """
    known = read_words("box/changes.toml")
    parts = []
    for name, value in change.items():
        words = known.get(f"{name}={value}")
        kind, said = key_at(name).kind, value
        if kind == "length" and value is not None:
            said = rule.exact(value)
        elif kind in _NUMBERS or kind == "slope":
            said = _NUMBERS.get(kind, decimals)(value)
        parts.append((known[name] if words is None else words).format(said))
    return f"{capital(listed(filter(None, parts)))}."
