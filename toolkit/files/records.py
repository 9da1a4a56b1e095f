"""From the keys that a record declares to its section of a file, and back to the record."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from inspect import cleandoc
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field, PlainValidator, WithJsonSchema, create_model

from toolkit.box import value_written
from toolkit.files.formats import FORMATS, FileKind
from toolkit.files.kinds import read_of
from toolkit.files.together import schema_between
from toolkit.measures import Key, Rule, keys_of
from toolkit.results import capital


class FileSection(BaseModel):
    """A table of a file: every key is known, and what is left out stays left out."""

    # Deferred: a section is built with the file that it is in, and a file when one is read.
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    def given(self) -> dict[str, Any]:
        """The keys that the file has, with their values as read."""
        return {key: getattr(self, key) for key in type(self).model_fields if self.has(key)}

    def has(self, key: str) -> bool:
        """Whether the file has this key."""
        return key in self.model_fields_set


def file_of(record: type, *, name: str, kind: FileKind) -> type[FileSection]:
    """The schema of a file whose sections are the fields of a record."""
    number = Key(kind="format", most=FORMATS[kind])
    return _model(record, name, needed=True, format=_entry(number, needed=False))


@cache
def section_of(record: type, *, needed: bool = True, apart: bool = False) -> type[FileSection]:
    """The schema of a record's section; ``apart`` gives by itself what a file has together."""
    name = f"{record.__name__.removesuffix('Choice')}Section"
    return _model(record, name, needed=needed, apart=apart)


def record_of(record: type, read: FileSection, *, usual: Any = None, **instead: Any) -> Any:
    """The record that a section of a file says; ``instead`` are fields that were read otherwise."""
    keys, given = keys_of(record), dict(instead)
    for name in read.model_fields_set - instead.keys():
        key, value = keys.get(name), getattr(read, name)
        if key is None:  # the file's format
            continue
        if key.of:
            values = value if key.kind == "point" else (value,) * len(key.of)
            given.update(zip(key.of, values, strict=True))
        elif key.record:
            given[name] = value.given()
        elif key.kind == "section":
            given[name] = record_of(key.type, value, usual=key.default)
        elif key.kind == "list":
            given[name] = tuple(record_of(key.type, each) for each in value)
        else:
            given[name] = value
    return record(**given) if usual is None else replace(usual, **given)


def explained(key: Key, *, words: str = "") -> str:
    """What a key is, and what is there without it."""
    said = capital(key.words or words)
    without = key.rule
    if not without and key.default not in (None, ()) and key.kind not in ("section", "list"):
        text = value_written(key.default, key, rule=Rule.millimetres())
        without = f"{text:.3g}" if isinstance(text, float) else str(text)
    rows = [said, f"If left out: {without}" if without else ""]
    return " ".join(row if row.endswith(".") else f"{row}." for row in rows if row)


def _model(
    record: type, name: str, *, needed: bool, apart: bool = False, **more: Any
) -> type[FileSection]:
    given = {
        field: _entry(key, needed=needed and key.needed, apart=apart)
        for field, key in file_keys(record, apart=apart).items()
    }
    words = cleandoc(record.__doc__ or "").partition("\n\n")[0]
    model: type[FileSection] = create_model(  # type: ignore[call-overload]
        name,
        __base__=FileSection,
        __cls_kwargs__={"json_schema_extra": schema_between(record) or None},
        __module__=__name__,
        __doc__=words,
        **more,
        **given,
    )
    return model


def file_keys(record: type, *, apart: bool = False) -> dict[str, Key]:
    """The keys that a file has of a record: of a point one for its two places, or one for each."""
    keys = keys_of(record)
    points = {name: key.of for name, key in keys.items() if key.kind == "point"}
    without = set(points) if apart else {part for parts in points.values() for part in parts}
    return {name: key for name, key in keys.items() if name not in without}


def _entry(key: Key, *, needed: bool, apart: bool = False) -> tuple[Any, Any]:
    """The type of a key and what pydantic is to know of it."""
    if key.kind == "list":
        many: dict[str, Any] = {"min_length": key.least, "max_length": key.most}
        many |= {"default": ... if needed else [], "alias": key.name or None}
        return list[section_of(key.type, apart=apart)], Field(**many)  # type: ignore[misc]
    alone: dict[str, Any] = {"default": ... if needed else None, "alias": key.name or None}
    if key.kind == "section":
        alone["description"] = key.words or None
        return section_of(key.type, needed=needed), Field(**alone)
    read = read_of(key)
    alone["description"] = explained(key, words=read.json.get("description", "")) or None
    return Annotated[Any, PlainValidator(read.reader), WithJsonSchema(read.json)], Field(**alone)
