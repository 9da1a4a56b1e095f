"""Writes choices out as a full box file, in the units of its own rule."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from typing import Any

from toolkit.box.choices import Choices, LidChoice, Panels, Room, Rooms, Tails, Wood
from toolkit.box.customs import Customs, describe
from toolkit.files.formats import FORMAT
from toolkit.measures import Rule, decimals, length_text

Lines = Iterator[str]

_WORDS_OF_RINGS = {0.0: "flat-sawn", 45.0: "rift", 90.0: "quarter-sawn"}


def as_toml(choices: Choices) -> str:
    """A box file that says what these choices say.

    Parameters
    ----------
    choices : Choices
        The choices.

    Returns
    -------
    str
        The whole file, with every section. Read back it gives the same lengths to 1e-6 mm. What
        was left out is left out again; customs are written where they differ from the default.

    Source
    ------
    The workbook's own.
    """
    rule = choices.rule
    lengths = _Lengths(rule)
    sections: dict[str, Lines] = {
        "rule": _rule(rule, lengths),
        "size": lengths.keys(choices.size),
        "thickness": lengths.keys(choices.thickness),
        "corner": lengths.keys(choices.corner, slope=choices.corner.slope),
        "groove": lengths.keys(choices.groove),
        "panels": _panels(choices.panels, lengths),
        "lid": _lid(choices.lid, lengths),
        "tools": lengths.keys(choices.tools),
        "wood": _wood(choices.wood),
        "rooms": _rooms(choices.rooms),
        "allowances": lengths.keys(choices.allowances, parts=None),
        **{f"allowances.{part}": lengths.keys(own) for part, own in choices.allowances.parts},
        "customs": _customs(choices.customs, lengths),
        "made": lengths.keys(choices.made),
    }
    rows = [f"format = {FORMAT}", f"title = {quoted(choices.title)}"]
    for name, lines in sections.items():
        rows += ["", f"[{name}]", *lines]
    return "\n".join(rows) + "\n"


def quoted(text: str) -> str:
    """Text as TOML has it, whatever is in it.

    >>> print(quoted('the 6" box'))
    "the 6\\" box"
    """
    escapes = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}
    safe = (escapes.get(c) or (c if c.isprintable() else f"\\U{ord(c):08X}") for c in text)
    return f'"{"".join(safe)}"'


class _Lengths:
    """Writes the records of choices, most of whose numbers are lengths."""

    def __init__(self, rule: Rule) -> None:
        self.rule = rule

    def text(self, value: float) -> str:
        return f'"{length_text(value, rule=self.rule)}"'

    def value(self, value: Any) -> str:
        if isinstance(value, str):
            return quoted(value)
        if isinstance(value, tuple):
            return f"[{', '.join(self.value(item) for item in value)}]"
        return self.text(value)

    def keys(self, record: Any, **otherwise: float | None) -> Lines:
        """A line for each key of a record that is not left out; ``otherwise`` are no lengths."""
        for spec in fields(record):
            value = getattr(record, spec.name)
            if spec.name in otherwise:
                if otherwise[spec.name] is not None:
                    yield f"{spec.name} = {decimals(value, places=12)}"
            elif spec.name in ("tails_back", "tails_front"):
                yield from self._tails(spec.name, value)
            elif value is not None:
                yield f"{spec.name} = {self.value(value)}"

    def _tails(self, key: str, tails: Tails) -> Lines:
        if tails is not None:
            yield f"{key} = {tails if isinstance(tails, int) else self.value(tails)}"


def _rule(rule: Rule, lengths: _Lengths) -> Lines:
    yield f"units = {quoted(rule.units)}"
    for key in ("joints", "sizes", "rough"):
        yield f"{key} = {lengths.text(getattr(rule, key))}"


def _panels(panels: Panels, lengths: _Lengths) -> Lines:
    across = ("bottom_across", "lid_across")
    if panels.bottom_across is not None and panels.bottom_across == panels.lid_across:
        yield f"across = {lengths.text(panels.bottom_across)}"
        yield from (row for row in lengths.keys(panels) if not row.startswith(across))
    else:
        yield from lengths.keys(panels)


def _lid(lid: LidChoice, lengths: _Lengths) -> Lines:
    usual = LidChoice(kind=lid.kind)
    for key, row in zip((spec.name for spec in fields(lid)), lengths.keys(lid), strict=True):
        # All but the kind belongs to a lift-off lid; under a sliding one it would only puzzle.
        if key == "kind" or lid.kind == "lift-off" or getattr(lid, key) != getattr(usual, key):
            yield row


def _wood(wood: Wood) -> Lines:
    for both, first, second in (("walls", "sides", "ends"), ("panels", "bottom", "lid")):
        one, other = getattr(wood, first), getattr(wood, second)
        if one == other:
            yield f"{both} = {quoted(one)}"
        else:
            yield from (f"{first} = {quoted(one)}", f"{second} = {quoted(other)}")
    yield f"rings = {quoted(_WORDS_OF_RINGS.get(wood.rings) or f'{decimals(wood.rings)} deg')}"


def _rooms(rooms: Rooms) -> Lines:
    for spec in fields(rooms):
        room: Room = getattr(rooms, spec.name)
        temperature, humidity = decimals(room.temperature), decimals(room.humidity)
        yield (f'{spec.name} = {{ temperature = "{temperature} °C", humidity = "{humidity} %" }}')


def _customs(customs: Customs, lengths: _Lengths) -> Lines:
    for name, value, _usual in customs.changed():
        is_length = describe(name)[0] == "length"
        yield f"{name} = {lengths.text(value) if is_length else decimals(value, places=12)}"
