"""One run through a class's folder: makes what is missing or changed, keeps what people wrote."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path

from toolkit.classroom.folder_record import (
    RECORD,
    MadePage,
    lies_below,
    mark,
    mark_of_bytes,
    mark_of_file,
    read_record,
    set_aside,
    still_there,
    write_record,
)
from toolkit.classroom.jobs import Job
from toolkit.files import FileError, WeekendClass, clear_left, write_file

INDEX = "index.html"
OnProgress = Callable[[int, int, str], object]
Notice = Callable[[str], object]


@dataclass
class FolderRun:
    """One run through a folder, whose lock is held."""

    taught: WeekendClass
    folder: Path
    faults: dict[int, str]
    on_progress: OnProgress
    on_notice: Notice
    made: list[str] = field(default_factory=list)
    kept: list[str] = field(default_factory=list)
    gone: list[str] = field(default_factory=list)
    record: dict[str, MadePage] = field(init=False)

    def __post_init__(self) -> None:
        """Read what was made before; a damaged record is set aside."""
        try:
            self.record = read_record(self.folder)
        except FileError as error:
            aside = set_aside(self.folder / RECORD)
            self.on_notice(f"{error}; it is now {aside.name}, and all pages are made anew")
            self.record = {}

    def all(self, jobs: Sequence[Job], *, titles: Mapping[str, str]) -> None:
        """Make the pages; ``titles`` are of those for the class, by their paths."""
        todo = [job for job in jobs if not self._done(job)]
        for job in jobs:
            if job not in todo:
                self._keep(job)
        for at, job in enumerate(todo):
            self.on_progress(at, len(todo) + 1, ", ".join(job.pages.values()))
            self._make(job)
        self._index(titles, len(todo))
        self._sweep({name for job in jobs for name in job.pages} | {INDEX})
        if self.made or self.gone:
            write_record(self.folder, pages=self.record)

    def _done(self, job: Job) -> bool:
        """Whether a job's pages are made of the same and lie there whole."""
        sources = {name: page.source for name, page in self.record.items()}
        return all(sources.get(name) == job.source and self._whole(name) for name in job.pages)

    def _whole(self, name: str) -> bool:
        """Whether a page lies as it was made, or with what somebody wrote in it."""
        if still_there(self.folder, name=name, page=self.record.get(name)):
            return True
        path = self.folder / name
        return path.is_file() and path.read_bytes().rstrip().endswith(b"</html>")

    def _keep(self, job: Job) -> None:
        for name in job.pages:
            if not still_there(self.folder, name=name, page=self.record[name]):
                self.on_notice(f"{name}: somebody has changed this page; it stays as it is")
            self.kept.append(name)

    def _make(self, job: Job) -> None:
        try:
            pages = job.make()
        except FileError:
            raise
        except (ValueError, ArithmeticError, LookupError) as error:
            if job.student is None:
                raise
            self.faults[job.student] = " ".join(str(error).split())
            return
        for name, (page, words) in pages.items():
            self._write(name, page, source=job.source, words=words)
        # After each, so that a run that is broken off can be gone on with.
        write_record(self.folder, pages=self.record)

    def _write(self, name: str, page: bytes, *, source: str, words: str) -> None:
        path, holds = self.folder / name, mark_of_bytes(page)
        if os.path.lexists(path.parent) and not path.parent.is_dir():
            self._set_aside(path.parent)
        path.parent.mkdir(exist_ok=True)
        clear_left(path)
        there = mark_of_file(path)
        if there != holds:
            ours = still_there(self.folder, name=name, page=self.record.get(name))
            if os.path.lexists(path) and not ours:
                self._set_aside(path)
            write_file(path, page, error=FileError)
        self.record[name] = MadePage(source, holds, words, f"{date.today():%Y-%m-%d}")
        self.made.append(name)

    def _set_aside(self, path: Path) -> None:
        aside = set_aside(path)
        old, new = (one.relative_to(self.folder).as_posix() for one in (path, aside))
        self.on_notice(f"{old}: this is not as the workbook made it, and is kept as {new}")

    def _index(self, titles: Mapping[str, str], done: int) -> None:
        made = {name: self.record[name] for name in (*self.kept, *self.made)}
        faults = dict(sorted(self.faults.items()))
        # The day a page was made is printed on it and changes nothing else.
        inputs = [(name, replace(page, day="")) for name, page in sorted(made.items())]
        source = mark(self.taught, inputs, faults)

        def make() -> dict[str, tuple[bytes, str]]:
            # Imported here, with all that draws: a run that finds nothing to do needs none of it.
            from toolkit.classroom.index import index_page

            page = index_page(self.taught, titles=titles, made=made, faults=faults)
            return {INDEX: (page, "")}

        job = Job({INDEX: "first page"}, source, make)
        if self._done(job):
            self._keep(job)
        else:
            self.on_progress(done, done + 1, "first page")
            self._make(job)

    def _sweep(self, wanted: set[str]) -> None:
        """Take away what an earlier run made and this class has no more of."""
        ours = set(self.made) | set(self.kept)
        for name in [name for name in self.record if name not in wanted or name not in ours]:
            path = self.folder / name
            if not still_there(self.folder, name=name, page=self.record[name]):
                if os.path.lexists(path):
                    self.on_notice(f"{name}: no longer of this class, but changed; it stays")
            elif lies_below(self.folder, name=name):
                path.unlink()
                self.gone.append(name)
            del self.record[name]
