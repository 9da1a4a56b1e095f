"""Keys of a file, each declared once: beside the field of the record that holds its value.

Reader, writer and schema of the files, and the forms of the lessons, follow from what stands there.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, Field, dataclass, field, fields, is_dataclass, replace
from functools import cache
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

_BY_TYPE: dict[Any, str] = {float: "length", int: "count", str: "name"}


@dataclass(frozen=True, slots=True)
class Key:
    """What a file may say under a key.

    Attributes
    ----------
    words : str
        What it is, as a sentence.
    kind : str
        How its value is written, such as ``length``; without one the field's type tells.
    least, most : float, optional
        Its range, of a list the number of entries. A length without ``least`` is above 0. [mm]
    example : optional
        A value as the file has it.
    rule : str
        How its value is found where the file leaves it out.
    source : str
        Whose habit its default is.
    name : str
        Its name in the file where that is not the field's.
    of : tuple of str
        The fields that it stands for: one value for both of them, or, of a point, one for each.
    both : bool
        Whether a file has both of these or neither.
    only : (str, value), optional
        Another key of the section, and the value with which alone this one matters.
    record : type, optional
        The record of a section whose values are handed on by key.
    type, default, needed : optional
        Filled in by ``keys_of``: the type of the field's values, what is there without it, and
        whether there is nothing.
    """

    words: str = ""
    kind: str = ""
    least: float | None = None
    most: float | None = None
    example: Any = None
    rule: str = ""
    source: str = ""
    name: str = ""
    of: tuple[str, ...] = ()
    both: bool = False
    only: tuple[str, Any] | None = None
    record: type | None = None
    type: Any = None
    default: Any = None
    needed: bool = False


def declared(words: str = "", **facts: Any) -> Mapping[str, Any]:
    """The metadata of a field that a file must have."""
    return {"key": Key(words, **facts)}


def key(words: str = "", *, default: Any = None, **facts: Any) -> Any:
    """A field that a file may leave out."""
    return field(default=default, metadata=declared(words, **facts))


@cache
def keys_of(record: type) -> dict[str, Key]:
    """The keys that a record declares, by the names of its fields and in their order."""
    specs = {spec.name: spec for spec in fields(record)}
    found: dict[str, Key] = {}
    for name, hint in get_type_hints(record).items():
        spec = specs.get(name)
        one = spec.metadata.get("key") if spec else getattr(record, name, None)
        if isinstance(one, Key):
            kind, type_ = _kind_and_type(hint)
            found[name] = replace(
                one,
                kind=one.kind or kind,
                type=one.record or type_,
                default=_default(spec),
                needed=_needed(spec),
            )
    for name, one in found.items():
        if one.kind == "point":
            found[name] = replace(one, needed=found[one.of[0]].needed)
        elif one.of:
            each = found[one.of[0]]
            found[name] = replace(one, kind=each.kind, least=each.least, most=each.most)
    return found


def _needed(spec: Field[Any] | None) -> bool:
    return spec is not None and spec.default is spec.default_factory is MISSING


def _default(spec: Field[Any] | None) -> Any:
    if spec is None or _needed(spec):
        return None
    return spec.default if spec.default_factory is MISSING else spec.default_factory()


def _kind_and_type(hint: Any) -> tuple[str, Any]:
    """How values of a type are written unless their key says so, and the type without None."""
    if get_origin(hint) in (Union, UnionType):
        types = [each for each in get_args(hint) if each is not NoneType]
        return _kind_and_type(types[0]) if len(types) == 1 else ("other", hint)
    if get_origin(hint) is Literal:
        return "word", hint
    if get_origin(hint) is tuple and is_dataclass(get_args(hint)[0]):
        return "list", get_args(hint)[0]
    if is_dataclass(hint):
        return "section", hint
    return _BY_TYPE.get(hint, "other"), hint
