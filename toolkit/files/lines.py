"""Which line of a TOML text each key is on, for messages."""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right
from collections import Counter
from contextlib import suppress

from toolkit.files.errors import Path

_BLANK = re.compile(r"(?:[ \t\r\n]+|#[^\n]*)*")
_SPACES = re.compile(r"[ \t]*")
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_QUOTED = re.compile(
    r'"""(?:[^\\]|\\[\s\S])*?"{3,5}'
    r"|'''[\s\S]*?'{3,5}"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'"
)
_PLAIN_VALUE = re.compile(r"[^,\]}#\n]*")
_REST_OF_LINE = re.compile(r"[^\n]*")


_MARK = re.compile(rf"{_QUOTED.pattern}|#[^\n]*|[\[\]{{}}.,=\n\"']")


def too_deep(text: str, *, most: int) -> int:
    """The first line with more brackets inside one another or dotted keys in a row; 0 for none.

    >>> too_deep("a = 1\\nb = [[['...']]]", most=2), too_deep("a.b.c = 'd.e.f.g'", most=2)
    (2, 0)
    """
    brackets = dots = 0
    for match in _MARK.finditer(text):
        mark = match[0]
        if mark in "[{":
            brackets += 1
        elif mark in "]}":
            brackets -= 1
        elif mark == ".":
            dots += 1
        elif mark in "\"'":
            # Text that nobody ended: the parser will say so.
            return 0
        elif mark in "\n=,":
            dots = 0
        if max(brackets, dots) > most:
            return text.count("\n", 0, match.start()) + 1
    return 0


class _LostError(Exception):
    """The text is not TOML from here on."""


class _Walk:
    """One pass through a text, noting the first line of every path."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.breaks = [match.start() for match in re.finditer("\n", text)]
        self.lines: dict[Path, int] = {}
        self.entries: Counter[Path] = Counter()

    def whole(self) -> None:
        section: Path = ()
        while True:
            self._skip(_BLANK)
            if self.at >= len(self.text):
                return
            start = self.at
            if self._take("[["):
                section = self._entry(self._keys("]]"), start)
            elif self._take("["):
                section = self._resolved(self._keys("]"))
                self._note(section, start)
            else:
                self._pair(section)
            self._skip(_REST_OF_LINE)

    def _pair(self, section: Path) -> None:
        start = self.at
        path = self._resolved(self._keys("="), section)
        self._note(path, start)
        self._skip(_SPACES)
        self._value(path)

    def _value(self, path: Path) -> None:
        if self._take("["):
            for index in range(len(self.text)):
                self._skip(_BLANK)
                if self._take("]"):
                    return
                self._note((*path, index), self.at)
                self._value((*path, index))
                self._next("]")
        elif self._take("{"):
            while True:
                self._skip(_BLANK)
                if self._take("}"):
                    return
                self._pair(path)
                self._next("}")
        else:
            self._skip(_QUOTED if self.text[self.at : self.at + 1] in ('"', "'") else _PLAIN_VALUE)

    def _next(self, closing: str) -> None:
        """Over the comma after an entry, or up to the bracket that closes them."""
        self._skip(_BLANK)
        if not self._take(",") and not self.text.startswith(closing, self.at):
            raise _LostError

    def _keys(self, until: str) -> list[str]:
        keys = []
        while True:
            self._skip(_SPACES)
            quoted = self.text[self.at : self.at + 1] in ('"', "'")
            found = self._skip(_QUOTED if quoted else _BARE_KEY)
            if not found:
                raise _LostError
            keys.append(next(iter(tomllib.loads(f"{found} = 0"))) if quoted else found)
            self._skip(_SPACES)
            if self._take(until):
                return keys
            if not self._take("."):
                raise _LostError

    def _resolved(self, keys: list[str], start: Path = ()) -> Path:
        """The path of keys, passing through the latest entry of each list of tables."""
        path = start
        for key in keys:
            path = (*path, key)
            if path in self.entries:
                path = (*path, self.entries[path] - 1)
        return path

    def _entry(self, keys: list[str], start: int) -> Path:
        path = (*self._resolved(keys[:-1]), keys[-1])
        self._note(path, start)
        self.entries[path] += 1
        path = (*path, self.entries[path] - 1)
        self._note(path, start)
        return path

    def _note(self, path: Path, at: int) -> None:
        line = bisect_right(self.breaks, at - 1) + 1
        for end in range(len(path), 0, -1):
            if path[:end] in self.lines:
                break
            self.lines[path[:end]] = line

    def _take(self, mark: str) -> bool:
        if not self.text.startswith(mark, self.at):
            return False
        self.at += len(mark)
        return True

    def _skip(self, pattern: re.Pattern[str]) -> str:
        match = pattern.match(self.text, self.at)
        if match is None:
            raise _LostError
        self.at = match.end()
        return match[0]


def lines_of(text: str) -> dict[Path, int]:
    """The first line of each key, section and entry of a list, by path, as far as the text is TOML.

    Its line ends are line feeds alone, and lines are counted from 1.

    >>> lines_of('[groove]\\ndepth = "4 mm"')[("groove", "depth")]
    2
    """
    walk = _Walk(text)
    # A broken text has good lines before the break, and they are what a message needs.
    with suppress(_LostError, RecursionError, ValueError):
        walk.whole()
    return walk.lines
