"""Writes choices out as a full box file, in the units of its own rule."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from toolkit.box.change import value_written
from toolkit.box.choices import Choices
from toolkit.box.customs import Customs
from toolkit.files.errors import visible
from toolkit.files.formats import FORMAT
from toolkit.measures import Key, Rule, decimals, keys_of


def as_toml(choices: Choices) -> str:
    """A box file that says what these choices say, with every section, on its own rule."""
    rows = [f"format = {FORMAT}"]
    for name, key in keys_of(Choices).items():
        value = getattr(choices, name)
        if key.kind == "section":
            rows += ["", f"[{name}]", *_keys(value, key, choices.rule)]
        else:
            rows.append(f"{name} = {toml(value)}")
    return "\n".join(rows) + "\n"


def quoted(text: str) -> str:
    """Text as TOML has it, whatever is in it."""
    escapes = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}
    printed = (c if visible(c).isprintable() else f"\\U{ord(c):08X}" for c in text)
    safe = (escapes.get(c, shown) for c, shown in zip(text, printed, strict=True))
    return f'"{"".join(safe)}"'


def _keys(record: Any, section: Key, rule: Rule) -> Iterator[str]:
    """A line for each key of a record that is to be said."""
    said: set[str] = set()
    for name, key in keys_of(section.type).items():
        values = {getattr(record, each) for each in key.of or (name,)}
        value = values.pop()
        # Two that differ are no whole, and one that is a whole is not said of each.
        if values or name in said or value is None or _needless(record, key, value):
            continue
        said.update(key.of)
        if (text := value_written(value, key, rule=rule)) != {}:
            yield f"{name} = {toml(text)}"


def _needless(record: Any, key: Key, value: Any) -> bool:
    """Whether a default would only puzzle: a custom, or a key that belongs to another choice."""
    idle = key.only is not None and getattr(record, key.only[0]) != key.only[1]
    return (idle or isinstance(record, Customs)) and value == key.default


def toml(value: Any) -> str:
    """A value as TOML has it."""
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, float):
        return decimals(value, places=12)
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(toml, value))}]"
    if isinstance(value, dict):
        return f"{{ {', '.join(f'{key} = {toml(each)}' for key, each in value.items())} }}"
    return str(value)
