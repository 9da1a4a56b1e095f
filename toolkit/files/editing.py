"""Changes the text of a box file key by key, without touching its remarks and its order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, MutableMapping
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from toolkit.box import Choices, Customs, value_written
from toolkit.files.errors import BoxFileError, Problem, plain, shown, visible
from toolkit.files.formats import FORMATS, bring_up, put
from toolkit.files.syntax import values_of
from toolkit.files.together import with_keys
from toolkit.measures import Key, Rule, decimals, keys_of


def edited(text: str, changes: Mapping[str, Any], *, name: str) -> str:
    """A box file's text with some keys changed; what a new key excludes goes.

    Parameters
    ----------
    text : str
        A TOML text with line feeds alone at its line ends.
    changes : mapping of str to value
        By key, such as ``groove.depth`` or ``rooms.make.humidity``; values as in the file, so
        lengths are text with a unit. None takes a key or a section out.
    name : str
        Name of the file in messages.

    Returns
    -------
    str
        The new text, brought up to the present format; not checked against the schema.

    Raises
    ------
    BoxFileError
        The text is not TOML, or a change cannot be put into it.

    >>> edited('[groove]\\ndepth = "4 mm"  # shallow\\n', {"groove.depth": "5 mm"}, name="b")
    '[groove]\\ndepth = "5 mm"  # shallow\\n'
    """
    wanted = values_of(text, name=name, error=BoxFileError)
    bring_up(wanted)
    try:
        document = tomlkit.parse(text if text.endswith("\n") else f"{text}\n")
        bring_up(document)
        for key, value in _with_what_gives_way(wanted, changes).items():
            path = key.split(".")
            plain_value = _toml_value(value, key=key, name=name)
            _change(wanted, path, plain_value, name=name)
            _change(document, path, plain_value, name=name)
        new = tomlkit.dumps(document)
    except (TOMLKitError, RecursionError) as problem:
        why = plain(str(problem), longest=80)
        said = f"it can't be changed in place ({why}); change it by hand"
        raise BoxFileError(name, [Problem("", said)]) from problem
    if values_of(new, name=name, error=BoxFileError) != wanted:
        said = "this change would disturb another line; make it by hand"
        raise BoxFileError(name, [Problem(", ".join(map(plain, changes)), said)])
    return new


def _with_what_gives_way(tables: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """The changes with the keys that they take the place of, each below its own section."""
    whole = dict(changes)
    for section in dict.fromkeys(key.partition(".")[0] for key in changes):
        old, above = tables.get(section), f"{section}."
        new = {key.removeprefix(above): changes[key] for key in changes if key.startswith(above)}
        if isinstance(old, dict):
            whole |= {f"{above}{key}": each for key, each in with_keys(section, old, new).items()}
    return whole


def _change(tables: Any, path: list[str], value: Any, *, name: str) -> None:
    """Put one value in its place, or take it out, in plain values and in a document alike."""
    *sections, key = path
    for section in sections:
        if section not in tables:
            if value is None:
                return
            put(tables, section, {})
        tables = tables[section]
        if not isinstance(tables, MutableMapping):
            said = f"{plain(section)} is not a section, so nothing can be put in it"
            raise BoxFileError(name, [Problem(plain(".".join(path)), said)])
    if value is None:
        if key in tables:
            del tables[key]
    else:
        put(tables, key, value)


def _toml_value(value: Any, *, key: str, name: str) -> Any:
    """A value as TOML knows it, else an error that names the key."""
    if value is None or isinstance(value, str | bool | int | float):
        return value
    if isinstance(value, list | tuple):
        return [_toml_value(item, key=key, name=name) for item in value]
    if isinstance(value, Mapping):
        return {str(k): _toml_value(item, key=key, name=name) for k, item in value.items()}
    said = f"read {shown(value)}: a file can't hold this; give text, a number or a list of them"
    raise BoxFileError(name, [Problem(plain(key), said)])


def as_toml(choices: Choices) -> str:
    """A box file that says what these choices say, with every section, on its own rule."""
    rows = [f"format = {FORMATS['box']}"]
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
