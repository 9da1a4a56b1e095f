"""Which keys of a box file exclude or need one another: said, put right, and in JSON Schema."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from toolkit.box import CLOSURES, EITHER, Choices, Closure, Either, LidChoice, Size
from toolkit.files.errors import Fault, shown
from toolkit.measures import Key, keys_of

Values = Mapping[str, Any]
SECTIONS = {name: key.type for name, key in keys_of(Choices).items() if key.kind == "section"}


def faults_between(values: Values) -> Iterator[Fault]:
    """Everything wrong between keys that may each be right, as (path, what to say)."""
    thickness = values.get("thickness")
    if isinstance(thickness, dict) and "lid" not in thickness and _closure(values).lids:
        yield ("thickness", "lid"), 'it is missing; type lid = "12 mm"'
    for name, record in SECTIONS.items():
        section = values.get(name)
        # A section that is none is the schema's to refuse.
        if not isinstance(section, dict):
            if name in values or name == "size":
                continue
            section = {}
        for key, said in _in_section(section, record):
            read = f"read {shown(section[key])}: " if key in section else ""
            yield (name, key), f"{read}{said}"


def _closure(values: Values) -> Closure:
    """How a file says that its box is closed; the usual way where it says nothing known."""
    lid = values.get("lid")
    kind = lid.get("kind") if isinstance(lid, dict) else None
    return next((CLOSURES[known] for known in CLOSURES if known == kind), LidChoice().closure)


def _in_section(section: Values, record: type) -> Iterator[tuple[str, str]]:
    for either in _either(record):
        yield from _one_of_two(section, either)
    for whole, key in _wholes(record):
        yield from _whole_or_each(section, whole, key)
    if record is Size and "ease" in section and "contents" not in section:
        yield (
            "ease",
            'ease is room beside contents, and there are none; type contents = "A6 cards" too',
        )


def _one_of_two(section: Values, either: Either) -> Iterator[tuple[str, str]]:
    first, second = either.keys
    if either.never and section.get(either.never[0]) == either.never[1]:
        yield from ((key, either.never[2]) for key in either.keys if key in section)
    elif first in section and second in section:
        yield second, f"{first} is given too{either.why}; keep one of the two"
    elif either.example and section.keys().isdisjoint({*either.keys, either.unless}):
        said = f'it is missing, and so is {second}; type one, {first} = "{either.example}"'
        yield first, said


def _whole_or_each(section: Values, whole: str, key: Key) -> Iterator[tuple[str, str]]:
    """Either one key for both or a key for each."""
    one, other = key.of
    if whole in section:
        said = f"{whole} is given too and stands for {one} and {other}; keep {whole} or these two"
        yield from ((each, said) for each in key.of if each in section)
    if key.both:
        for each, beside in ((one, other), (other, one)):
            if each in section and beside not in section:
                said = (
                    f'{beside} is missing beside it; type {beside} = "…" too, or one wood for both'
                )
                yield each, said


def with_keys(name: str, section: Values, new: Values) -> dict[str, Any]:
    """New keys of a section, and what gives way to them: None for a key that goes."""
    changes: dict[str, Any] = {}
    record, given = SECTIONS.get(name), {key for key, value in new.items() if value is not None}
    for either in _either(record):
        first, second = either.keys
        no_more = either.never and new.get(either.never[0]) == either.never[1]
        if no_more or (either.unless and either.unless in given):
            changes |= {first: None, second: None}
        changes |= {second: None} if first in given else {}
        changes |= {first: None} if second in given else {}
    for whole, key in _wholes(record):
        if whole in given:
            changes |= dict.fromkeys(key.of)
        elif whole in section and not given.isdisjoint(key.of):
            # What one of the two no longer has of it, the other keeps.
            changes |= {whole: None} | dict.fromkeys(key.of, section[whole])
    return changes | dict(new)


def schema_between(record: type) -> dict[str, Any]:
    """What JSON Schema is to say between the keys of a section."""
    found: dict[str, Any] = {}
    pairs = [_schema_of_two(either) for either in _either(record)]
    found |= {"allOf": pairs} if len(pairs) > 1 else pairs[0] if pairs else {}
    if record is Choices:
        # Only a box that is closed by a lid needs to say how thick that is.
        open_kinds = [kind for kind, closure in CLOSURES.items() if not closure.lids]
        found["anyOf"] = [
            {"properties": {"thickness": {"required": ["lid"]}}},
            *(
                {
                    "properties": {
                        "lid": {"properties": {"kind": {"const": kind}}, "required": ["kind"]}
                    },
                    "required": ["lid"],
                }
                for kind in open_kinds
            ),
        ]
    if record is Size:
        found["dependentRequired"] = {"ease": ["contents"]}
    for whole, key in _wholes(record):
        neither = {"properties": dict.fromkeys(key.of, False)}
        found.setdefault("dependentSchemas", {})[whole] = neither
        if key.both:
            one, other = key.of
            found.setdefault("dependentRequired", {}).update({one: [other], other: [one]})
    return found


def _schema_of_two(either: Either) -> dict[str, Any]:
    found: dict[str, Any] = {"not": {"required": list(either.keys)}}
    if either.example:
        needed = filter(None, (*either.keys, either.unless))
        found = {"anyOf": [{"required": [key]} for key in needed], **found}
    if either.never:
        key, value, _ = either.never
        found["if"] = {"properties": {key: {"const": value}}, "required": [key]}
        found["then"] = {"properties": dict.fromkeys(either.keys, False)}
    return found


@cache
def _either(record: type | None) -> list[Either]:
    return [either for either in EITHER if either.section is record]


@cache
def _wholes(record: type | None) -> list[tuple[str, Key]]:
    keys = keys_of(record).items() if record else ()
    return [(name, key) for name, key in keys if key.of and key.kind != "point"]
