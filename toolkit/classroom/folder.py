"""Everything for a class in one folder; a second run makes only what is missing or changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from toolkit.classroom.folder_record import OWN_FILES, RECORD
from toolkit.classroom.folder_run import INDEX, FolderRun, Notice, OnProgress
from toolkit.classroom.jobs import class_jobs, student_jobs
from toolkit.files import FileError, WeekendClass, check_output_folder, locked, spare_inputs
from toolkit.plan import Plan, plan as planned
from toolkit.study import lessons_by_number


@dataclass(frozen=True, slots=True)
class FolderMade:
    """What a run made, what it kept as it was, what it took away, and whose box won't work."""

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
    """The plans of those whose box works, and why the others' do not."""
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
            plan = known[key] if key in known else known.setdefault(key, planned(student.choices))
        except (ValueError, ArithmeticError) as error:
            faults[student.number] = " ".join(str(error).split())
            continue
        if plan.works:
            plans[student.number] = plan
        else:
            faults[student.number] = f"the box {_trouble(plan)}"
    return plans, faults


def _trouble(plan: Plan) -> str:
    first = next(row for row in plan.findings if row.level == "wont_work")
    return f"won't work: {first.sentence}"


def make_class(
    taught: WeekendClass,
    *,
    folder: Path,
    lessons: Sequence[int] | None = None,
    on_progress: OnProgress = lambda done, of, what: None,
    on_notice: Notice = lambda sentence: None,
) -> FolderMade:
    """Make every page of a class that is missing or was made from something else.

    What somebody wrote into a page is kept: the page stays as long as it needs no other contents,
    and is then renamed before the new one is written.

    Parameters
    ----------
    taught : WeekendClass
        The class. [mm]
    folder : Path
        Where it goes; made if it is not there.
    lessons : sequence of int, optional
        Lessons for the handouts; all of them if left out, none if empty.
    on_progress : callable
        OnProgress before each piece of work how many are done, of how many, and what comes.
    on_notice : callable
        OnProgress of each file that somebody else wrote or changed, and what became of it.

    Returns
    -------
    FolderMade
        What was made. A student whose box won't work is in ``faults``; all others are made.

    Raises
    ------
    FileError
        The folder can't be written to, another run is at work in it, or a page would replace a
        file that the class is read from.
    ValueError
        The class's own box won't work, or there is no such lesson.
    """
    check_output_folder(folder)
    lessons_by_number(lessons)  # refused before anything is made
    plans, faults = boxes(taught)
    spare = planned(taught.box)
    if not spare.works:
        raise ValueError(f"the class's own box {_trouble(spare)}")
    shared = [*class_jobs(taught, plans, spare=spare)]
    jobs = [*student_jobs(taught, plans, lessons=lessons), *shared]
    names = [INDEX, *OWN_FILES, *(name for job in jobs for name in job.pages)]
    spare_inputs(
        [folder / name for name in names],
        inputs=taught.files,
        instead="type another folder, such as a new one",
    )
    folder.mkdir(exist_ok=True)
    with locked(folder / RECORD, error=FileError, patience=1.0):
        run = FolderRun(taught, folder, faults, on_progress, on_notice)
        run.all(jobs, titles={name: title for job in shared for name, title in job.pages.items()})
    return FolderMade(
        folder, tuple(run.made), tuple(run.kept), tuple(run.gone), tuple(sorted(faults.items()))
    )
