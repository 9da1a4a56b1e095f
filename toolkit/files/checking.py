"""Checks plain values against a schema and says in words, and in the file's order, what is wrong.

Pydantic finds the faults; its own texts are never shown.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from difflib import get_close_matches
from typing import Any, TypeVar, get_args, get_origin

from pydantic import ValidationError, WithJsonSchema
from pydantic.fields import FieldInfo

from toolkit.files.errors import (
    MOST_PROBLEMS,
    Fault,
    FileError,
    Path,
    Problem,
    UnfitError,
    dotted,
    measure_said,
    plain,
    shown,
)
from toolkit.files.formats import formerly
from toolkit.files.lines import lines_of
from toolkit.files.records import FileSection
from toolkit.measures import MeasureError

Model = TypeVar("Model", bound=FileSection)

# A slip of one letter comes before a key of that very name elsewhere, a vaguer likeness after it.
_CLOSE = 0.8


def checked(
    schema: type[Model],
    values: dict[str, Any],
    *,
    text: str,
    name: str,
    error: type[FileError],
    faults: Iterable[Fault] = (),
) -> Model:
    """The values of a file as its schema reads them, or all its problems, ``faults`` among them."""
    found = list(faults)
    read: Model | None = None
    try:
        read = schema.model_validate(values)
    except ValidationError as refusal:
        entries = refusal.errors(include_url=False)
        if len(entries) > MOST_PROBLEMS:
            lines = lines_of(text)
            entries.sort(key=lambda entry: lines.get(entry["loc"], len(text)))
        found += [_fault(schema, dict(entry)) for entry in entries[:MOST_PROBLEMS]]
    if read is None or found:
        raise error(name, problems_at(found, text))
    return read


def problems_at(faults: Iterable[Fault], text: str) -> list[Problem]:
    """Faults with their lines, in the order of the file; what has no line comes last."""
    lines = lines_of(text)
    placed = [
        (lines.get(path) or lines.get(formerly(path)), path, said)
        for path, said in dict.fromkeys(faults)
    ]
    placed.sort(key=lambda entry: entry[0] or len(text) + 1)
    return [Problem(dotted(path), said, line) for line, path, said in placed[:MOST_PROBLEMS]]


def _fault(schema: type[FileSection], entry: dict[str, Any]) -> Fault:
    """One of pydantic's errors as a path and our words."""
    path: Path = tuple(entry["loc"])
    value, kind = entry.get("input"), entry["type"]
    cause = entry.get("ctx", {}).get("error")
    if kind == "extra_forbidden":
        return path, _unknown(schema, path, value)
    if kind == "missing":
        return path, _missing(schema, path)
    if kind in {"model_type", "model_attributes_type"}:
        return path, f"read {shown(value)}: this is a section; type [{dotted(path)}] above its keys"
    if kind in {"list_type", "too_short", "too_long"}:
        most = entry.get("ctx", {}).get("max_length")
        many = f", at most {most} times" if most else ""
        heading = ".".join(step for step in path if isinstance(step, str))
        return path, f"read {shown(value)}: this is a list; type [[{heading}]] above each{many}"
    if isinstance(cause, MeasureError):
        return path, f"read {shown(value)}: {measure_said(cause)}"
    if isinstance(cause, UnfitError):
        return path, f"read {shown(value)}: {cause}"
    return path, f"read {shown(value)}: it can't be read here; see the example in the lessons"


def _unknown(schema: type[FileSection], path: Path, value: Any) -> str:
    """What to say of a key that no section has, or that another section has."""
    *above, key = path
    word = plain(str(key))
    a_section = isinstance(value, dict) and len(path) == 1
    what = f"[{word}] is no section" if a_section else f"{word} is no key here"
    keys = list(_fields(_model_at(schema, tuple(above))))
    if near := get_close_matches(word, keys, n=1, cutoff=_CLOSE):
        return f"{what}; type {f'[{near[0]}]' if a_section else near[0]}"
    if longer := [name for name in keys if word in name.split("_")]:
        return f"{what}; type {' or '.join(longer)}"
    homes = [
        _heading(section, field)
        for section, field in _fields(schema).items()
        if (inner := _model_of(field.annotation)) and key in _fields(inner)
    ]
    if homes and not a_section:
        return f"{what}; put it under {' or '.join(homes)}"
    if near := get_close_matches(word, keys, n=1):
        return f"{what}; type {f'[{near[0]}]' if a_section else near[0]}"
    return f"{what}; known here: {', '.join(keys[:16])}{', …' if len(keys) > 16 else ''}"


def _missing(schema: type[FileSection], path: Path) -> str:
    """What to type where a key or a whole section is needed."""
    *above, key = path
    field = _fields(_model_at(schema, tuple(above)))[str(key)]
    inner = _model_of(field.annotation)
    if inner is None:
        return f"it is missing; type {key} = {_example(field.metadata)}"
    needed = [name for name, own in _fields(inner).items() if own.is_required()]
    below = ", ".join(needed or list(_fields(inner))[:3])
    return f"the section is missing; type {_heading(str(key), field)} with {below} below it"


def _example(facts: Iterable[Any]) -> str:
    """The first example that a key's JSON Schema gives, as a file has it."""
    (schema,) = (fact.json_schema or {} for fact in facts if isinstance(fact, WithJsonSchema))
    examples = [*schema.get("examples", []), *schema.get("enum", [])]
    return json.dumps(examples[0], ensure_ascii=False)


def _heading(name: str, field: FieldInfo) -> str:
    return f"[[{name}]]" if get_origin(field.annotation) is list else f"[{name}]"


def _fields(model: type[FileSection]) -> dict[str, FieldInfo]:
    """The keys of a section by their names in a file."""
    return {field.alias or name: field for name, field in model.model_fields.items()}


def _model_at(schema: type[FileSection], path: Path) -> type[FileSection]:
    """The schema of the section at a path."""
    for step in path:
        if isinstance(step, str) and step in _fields(schema):
            schema = _model_of(_fields(schema)[step].annotation) or schema
    return schema


def _model_of(annotation: Any) -> type[FileSection] | None:
    """The section that a key holds, or holds a list of, if it does."""
    if isinstance(annotation, type) and issubclass(annotation, FileSection):
        return annotation
    return next(filter(None, map(_model_of, get_args(annotation))), None)
