"""A student's own files: begun from an example, kept, never lost."""

from __future__ import annotations

import time
from abc import ABC, abstractmethod
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import datetime
from pathlib import Path
from typing import Any, Generic, Protocol, TypeVar

from toolkit.files import FileError, KindOfFile, file_text, locked
from toolkit.study.folder import passing_folder


def set_aside(path: Path) -> Path:
    """Rename a damaged file, beside where it was; nothing is overwritten. Hold its lock."""
    stamp = datetime.now().strftime("%Y%m%d-%H%M%S")
    stem, number = f"{path.stem}.damaged-{stamp}", 1
    aside = path.with_name(f"{stem}{path.suffix}")
    while aside.exists():
        number += 1
        aside = path.with_name(f"{stem}-{number}{path.suffix}")
    return path.rename(aside)


def last_set_aside(path: Path) -> Path | None:
    """The newest damaged file that was set aside from here, or None."""
    found = path.parent.glob(f"{path.stem}.damaged-*{path.suffix}")
    return max(found, key=lambda aside: aside.name, default=None)


# An editor that saves in two strokes is through both in less than this. [s]
_MOMENT = 0.2
_SHOWN = "the workbook's example is shown instead"
_BOUND: ContextVar[Mapping[str, Any] | None] = ContextVar("bound to", default=None)


@contextmanager
def bound(own: Mapping[str, Any]) -> Iterator[None]:
    """Inside, these are the student's own, by class name; what is not named is the example."""
    with passing_folder():
        before = _BOUND.set(own)
        try:
            yield
        finally:
            _BOUND.reset(before)


class HasPath(Protocol):
    """What is handed on of a file: at least whose it is."""

    @property
    def path(self) -> Path | None:
        """The student's own file, or None while it is the workbook's example."""
        ...


What = TypeVar("What")
Loaded = TypeVar("Loaded", bound=HasPath)


class OwnFile(ABC, Generic[What, Loaded]):
    """What one of the student's own files says, or else the workbook's example of it."""

    kind: KindOfFile[What]

    @property
    @abstractmethod
    def path(self) -> Path:
        """The student's own file, whether or not it exists yet."""

    @property
    @abstractmethod
    def example(self) -> Path:
        """The workbook's example, which is never written to."""

    @abstractmethod
    def _given(self, what: What, path: Path | None, notice: str = "") -> Loaded:
        """What is handed on of it."""

    def load(self) -> Loaded:
        """The student's own if there is one, else the workbook's example."""
        path = self.path
        if path.exists():
            try:
                return self._given(self.kind.read(path), path)
            except FileError as damage:
                return self._after_damage(damage)
        if (what := self._bound) is not None:
            return self._given(what, None)
        aside = last_set_aside(path)
        notice = (
            ""
            if aside is None
            else (
                f"There is no {path.name} now; a damaged one is set aside as {aside.name}. "
                "This is the workbook's example."
            )
        )
        return self._example(notice)

    @property
    def source(self) -> Path:
        """The file that `load` reads: the student's own, or the workbook's example."""
        return self.path if self.path.exists() else self.example

    @property
    def _bound(self) -> What | None:
        """What stands in the place of the student's own and of the example."""
        return (_BOUND.get() or {}).get(type(self).__name__)

    def undo(self) -> Loaded:
        """Take the last change back; again goes one change further."""
        self.load()
        return self._given(self.kind.undo(self.path), self.path)

    def start_again(self) -> Loaded:
        """Begin again from the example; the file so far is kept, so that undoing brings it back."""
        loaded = self.load()
        if loaded.path is None:
            return loaded
        example = file_text(self.example, error=self.kind.error)
        return self._given(self.kind.write(self.path, example), self.path)

    def _change(self, edit: Callable[[str], str]) -> Loaded:
        """Put an edited text in the place of the student's own, which the first change makes."""
        path = self.path
        if not path.exists():
            # A value that will be refused must not leave a file behind, and the example's own
            # state must be the one that undoing the first change brings back.
            example = file_text(self.example, error=self.kind.error)
            self.kind.from_text(edit(example), name=path.name)
            self.kind.change(path, lambda text: text, start=self.example)
        return self._given(self.kind.change(path, edit), path)

    def _after_damage(self, damage: FileError) -> Loaded:
        path = self.path
        try:
            with locked(path, error=self.kind.error) as target:
                time.sleep(_MOMENT)
                try:
                    return self._given(self.kind.read(target), path)
                except FileError as problem:
                    return self._example(_set_aside(target, problem))
        except FileError:
            # Nobody can hold it, so nobody can move it either.
            return self._example(_left(damage))

    def _example(self, notice: str) -> Loaded:
        return self._given(self.kind.read(self.example), None, notice)


def _left(damage: FileError) -> str:
    """What to say of a file that can't be read and stays in its place."""
    return f"{damage}. It is left where it is, and {_SHOWN}."


def _set_aside(target: Path, problem: FileError) -> str:
    """What to say of a file that can't be read, after setting it aside where that is right."""
    try:
        # A file that the system will not open may be quite in order.
        with target.open("rb"):
            pass
        aside = set_aside(target)
    except OSError:
        return _left(problem)
    return (
        f"{problem}. The file is set aside as {aside.name} in {aside.parent}, and {_SHOWN}. "
        f"Nothing of it is lost: put it right and name it {target.name} again, or go on from here."
    )
