"""Everything for a class in one folder; a second run makes only what is missing or changed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from toolkit.classroom.class_pages import Look
from toolkit.classroom.jobs import Job, class_jobs, student_jobs
from toolkit.files import FileError, WeekendClass
from toolkit.files.folder_record import (
    RECORD,
    MadePage,
    mark,
    mark_of_file,
    read_record,
    still_there,
    write_record,
)
from toolkit.files.writing import locked, write_file
from toolkit.plan import Plan, plan
from toolkit.study import lesson_files

INDEX = "index.html"
Told = Callable[[int, int, str], object]


@dataclass(frozen=True, slots=True)
class FolderMade:
    """What a run made, what it kept as it was, what it took away, and whose box won't work.

    ``made``, ``kept`` and ``gone`` are paths within the folder; ``faults`` are (student's number,
    sentence).
    """

    folder: Path
    made: tuple[str, ...]
    kept: tuple[str, ...]
    gone: tuple[str, ...]
    faults: tuple[tuple[int, str], ...]

    @property
    def sentence(self) -> str:
        """The run in words."""
        many = len(self.made) + len(self.kept)
        if not self.made and not self.gone:
            return f"Nothing has changed: all {many} pages in {self.folder} are as they were."
        kept = f", {len(self.kept)} kept as they were" if self.kept else ""
        gone = f", {len(self.gone)} taken away" if self.gone else ""
        return f"{len(self.made)} of {many} pages made{kept}{gone}: {self.folder / INDEX}"


def boxes(taught: WeekendClass) -> tuple[dict[int, Plan], dict[int, str]]:
    """The plans of those whose box works, and why the others' do not.

    Parameters
    ----------
    taught : WeekendClass
        The class.

    Returns
    -------
    tuple of dict
        Plans and sentences, by student's number. [mm]

    Source
    ------
    The plans' own findings.
    """
    plans: dict[int, Plan] = {}
    faults: dict[int, str] = {}
    # Most students make the same box: it is worked out once.
    known: dict[str, Plan] = {}
    for student in taught.students:
        if student.choices is None:
            faults[student.number] = student.fault
            continue
        key = repr(student.choices)
        try:
            made = known[key] if key in known else known.setdefault(key, plan(student.choices))
        except (ValueError, ArithmeticError) as error:
            faults[student.number] = " ".join(str(error).split())
            continue
        if made.works:
            plans[student.number] = made
        else:
            first = next(row for row in made.findings if row.level == "wont_work")
            faults[student.number] = f"the box won't work: {first.sentence}"
    return plans, faults


def make_class(
    taught: WeekendClass,
    *,
    folder: Path,
    lessons: Sequence[int] | None = None,
    told: Told = lambda done, of, what: None,
) -> FolderMade:
    """Make every page of a class that is missing or was made from something else.

    Parameters
    ----------
    taught : WeekendClass
        The class. [mm]
    folder : Path
        Where it goes; made if it is not there.
    lessons : sequence of int, optional
        Lessons for the handouts; all of them if left out, none if empty.
    told : callable
        Told before each piece of work how many are done, of how many, and what comes.

    Returns
    -------
    FolderMade
        What was made. A student whose box won't work is in ``faults``; all others are made.

    Raises
    ------
    FileError
        The folder can't be written to, or another run is at work in it.
    ValueError
        The class's own box won't work, or there is no such lesson.

    Source
    ------
    The workbook's own.
    """
    known = [int(path.name[:2]) for path in lesson_files()]
    for number in lessons or ():
        if number not in known:
            raise ValueError(
                f"there is no lesson {number}; the lessons are {', '.join(map(str, known))}"
            )
    plans, faults = boxes(taught)
    spare = plan(taught.box)
    if not spare.works:
        first = next(row for row in spare.findings if row.level == "wont_work")
        raise ValueError(f"the class's own box won't work: {first.sentence}")
    folder.mkdir(parents=True, exist_ok=True)
    with locked(folder / RECORD, error=FileError, patience=1.0):
        run = _Run(taught, folder, read_record(folder), faults, told)
        run.all([*class_jobs(taught, plans, spare=spare)], plans, lessons)
    return FolderMade(
        folder, tuple(run.made), tuple(run.kept), tuple(run.gone), tuple(sorted(faults.items()))
    )


class _Run:
    """One run through a folder."""

    def __init__(
        self,
        taught: WeekendClass,
        folder: Path,
        record: dict[str, MadePage],
        faults: dict[int, str],
        told: Told,
    ) -> None:
        self.taught, self.folder, self.record = taught, folder, record
        self.faults, self.told = faults, told
        self.made: list[str] = []
        self.kept: list[str] = []
        self.gone: list[str] = []

    def all(self, shared: list[Job], plans: dict[int, Plan], lessons: Sequence[int] | None) -> None:
        jobs = [*student_jobs(self.taught, plans, lessons=lessons), *shared]
        todo = [job for job in jobs if not self._done(job)]
        for job in jobs:
            if job not in todo:
                self.kept += job.pages
        for at, job in enumerate(todo):
            self.told(at, len(todo) + 1, ", ".join(job.pages.values()))
            self._make(job)
        self._index(shared, len(todo))
        self._sweep({name for job in jobs for name in job.pages} | {INDEX})
        if self.made or self.gone:
            write_record(self.folder, pages=self.record)

    def _done(self, job: Job) -> bool:
        pages = {name: self.record.get(name) for name in job.pages}
        return all(
            page is not None
            and page.source == job.source
            and still_there(self.folder, name=name, page=page)
            for name, page in pages.items()
        )

    def _make(self, job: Job) -> None:
        for name in job.pages:
            (self.folder / name).parent.mkdir(parents=True, exist_ok=True)
        try:
            said = job.make(self.folder)
        except FileError:
            raise
        except (ValueError, ArithmeticError, LookupError) as error:
            if job.student is None:
                raise
            self.faults[job.student] = " ".join(str(error).split())
            return
        for name, words in said.items():
            self._note(name, job.source, words)
        # After each, so that a run that is broken off can be gone on with.
        write_record(self.folder, pages=self.record)

    def _note(self, name: str, source: str, words: str) -> None:
        holds = mark_of_file(self.folder / name)
        self.record[name] = MadePage(source, holds, words, f"{date.today():%Y-%m-%d}")
        self.made.append(name)

    def _index(self, shared: list[Job], done: int) -> None:
        made = {name: self.record[name] for name in (*self.kept, *self.made)}
        titles = {name: title for job in shared for name, title in job.pages.items()}
        faults = dict(sorted(self.faults.items()))
        # The day a page was made is printed on it and changes nothing else.
        inputs = [(name, replace(page, day="")) for name, page in sorted(made.items())]
        source = mark(self.taught, inputs, faults)
        job = Job({INDEX: "First page"}, source, lambda _: {})
        if self._done(job):
            self.kept.append(INDEX)
            return
        # Imported here, with all that draws: a run that finds nothing to do need not wait for it.
        from toolkit.classroom.index import index_page

        self.told(done, done + 1, "first page")
        look = Look(
            self.taught.title,
            mark(self.taught)[:8],
            date.today(),
            self.taught.words,
            self.taught.paper,
        )
        page = index_page(self.taught, look=look, titles=titles, made=made, faults=faults)
        write_file(self.folder / INDEX, page, error=FileError)
        self._note(INDEX, source, "")

    def _sweep(self, wanted: set[str]) -> None:
        """Take away what an earlier run made and this class has no more of.

        A page that somebody has written in since stays.
        """
        ours = set(self.made) | set(self.kept)
        for name in [name for name in self.record if name not in wanted or name not in ours]:
            if still_there(self.folder, name=name, page=self.record[name]):
                (self.folder / name).unlink()
                self.gone.append(name)
            del self.record[name]
