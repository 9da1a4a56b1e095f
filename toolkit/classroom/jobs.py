"""The pages of a class as pieces of work: what each is made from, and how it is made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Literal, TypeAlias

from toolkit.classroom.folder_record import mark, mark_of_files
from toolkit.document import Words, file_of, spelling
from toolkit.files import Student, WeekendClass
from toolkit.plan import Plan

if TYPE_CHECKING:
    from toolkit.document import Section

# What a page says in short, and its sections.
Page: TypeAlias = "tuple[str, list[Section]]"
Turned = Literal["portrait", "landscape"]
SUFFIXES = {".py", ".csv", ".css", ".j2", ".js", ".json", ".svg", ".toml"}
# The pages for the class by their files' names: the title, and how the paper is turned.
TITLES: dict[str, tuple[str, Turned]] = {
    "shopping": ("Shopping list", "landscape"),
    "kits": ("Kits to pack", "portrait"),
    "boards": ("Board layouts", "landscape"),
    "timetable": ("Timetable", "portrait"),
    "tools": ("Tools and sharpening", "landscape"),
    "hands": ("Show of hands", "portrait"),
    "wall": ("Wall sheet", "landscape"),
    "marks": ("Marks of the class", "landscape"),
}
# Not made where nobody's box works.
OF_BOXES = ("shopping kits boards", "wall", "marks")


@dataclass(frozen=True, slots=True)
class Job:
    """Pages that are made together: title by path, and contents and a short text by path."""

    pages: Mapping[str, str]
    source: str
    make: Callable[[], dict[str, tuple[bytes, str]]]
    student: int | None = None


@cache
def workbook_mark() -> str:
    """A mark of the workbook itself: pages of an older one are made anew."""
    home = Path(__file__).parents[1]
    return mark_of_files([path for path in home.rglob("*") if path.suffix in SUFFIXES])


def _lessons_mark() -> str:
    from toolkit.study import lesson_files

    books = lesson_files()
    folders = {path.parent for path in books}
    beside = [folder / name for folder in folders for name in ("box.toml", "boards.toml")]
    return mark_of_files([*books, *beside])


def page_of(student: int, kind: str) -> str:
    """Where a student's handout or rubric lies in the folder."""
    return f"{kind}s/student_{student:02d}.html"


def class_page(
    taught: WeekendClass,
    title: str,
    *,
    sections: Sequence[Section],
    source: str,
    turned: Turned = "portrait",
    reader: Student | None = None,
    typed: Iterable[str] = (),
) -> bytes:
    """A page in the look of the handout, as it is written to its file."""
    # Imported here, with all that draws: a run that finds nothing to do need not wait for it.
    from toolkit.handout import printed

    words = (reader or taught).words
    spell = spell_of(taught, words=words, typed=typed)
    on, fingerprint = f"{date.today():%Y-%m-%d}", source[:8]
    made = printed(
        sections,
        title=spell(title),
        of=taught.title,
        spell=spell,
        words=words,
        paper=(reader or taught).paper,
        css=file_of("classroom", "class_page.css"),
        turned=turned,
        byline=f"{taught.title}. Issue {fingerprint} of {on}.",
        foot=f"{taught.title} · {title} · issue {fingerprint} of {on}",
    )
    return made.encode()


def spell_of(
    taught: WeekendClass, *, words: Words, typed: Iterable[str] = ()
) -> Callable[[str], str]:
    """Puts our words into one English; titles and names of boards keep their spelling."""
    boxes = [row.choices.title for row in taught.students if row.choices is not None]
    boards = [board.name for board in taught.boards]
    return spelling(words, typed=(taught.title, *dict.fromkeys(boxes), *boards, *typed))


def student_jobs(
    taught: WeekendClass, plans: Mapping[int, Plan], *, lessons: Sequence[int] | None
) -> Iterator[Job]:
    """A handout and a rubric for each student that has a box."""
    taught_mark = _lessons_mark() if lessons != () else ""
    for student in taught.students:
        if (plan := plans.get(student.number)) is not None:
            yield _handout(student, plan, lessons, taught_mark)
            yield _rubric(taught, student, plan)


def _handout(student: Student, plan: Plan, lessons: Sequence[int] | None, taught_mark: str) -> Job:
    name, number = page_of(student.number, "handout"), student.number
    words, paper = student.words, student.paper
    inputs = (taught_mark, lessons, plan.choices, number, words, paper)

    def make() -> dict[str, tuple[bytes, str]]:
        from toolkit.handout import handout

        page = handout(plan, paper=paper, name=f"Student {number}", words=words, lessons=lessons)
        return {name: (page.encode(), "")}

    source = mark("handout", workbook_mark(), *inputs)
    return Job({name: f"Handout, {student.called}"}, source, make, number)


def _rubric(taught: WeekendClass, student: Student, plan: Plan) -> Job:
    inputs = (
        "rubric", plan.choices, student.number, student.words, student.paper, taught.title,
        dict(student.measured),
    )  # fmt: skip
    title: tuple[str, Turned] = (f"Rubric, {student.called}", "portrait")
    titles = {page_of(student.number, "rubric"): title}
    return _job(taught, titles, inputs, lambda: [_contents().rubric(student, plan)], student)


def class_jobs(taught: WeekendClass, plans: Mapping[int, Plan], *, spare: Plan) -> Iterator[Job]:
    """The pages for whoever leads the class. What the wood gives is reckoned once for three."""
    look = (taught.title, taught.words, taught.paper)
    day, buying = taught.day, taught.buying
    boxes = [(number, plan.choices) for number, plan in plans.items()]
    people = [(row.number, row.pace, row.hand, row.plough_hand) for row in taught.students]
    measured = [(row.number, dict(row.measured)) for row in taught.students]
    wood = (look, boxes, people, taught.boards, buying, day, spare.choices)
    hours = (look, people, day, dict(taught.tools))
    rows: list[tuple[str, tuple[object, ...], Callable[[], list[Page]]]] = [
        ("shopping kits boards", wood, lambda: _wood(taught, plans, spare)),
        ("timetable", hours, lambda: [_contents().hours(taught)]),
        ("tools", (*hours, taught.benches), lambda: [_contents().tools(taught)]),
        ("hands", (look, spare.choices), lambda: [_contents().hands(spare)]),
        ("wall", (look, boxes, people), lambda: [_contents().wall(taught, plans)]),
        ("marks", (look, boxes, measured), lambda: [_contents().marks(taught, plans)]),
    ]
    for names, inputs, make in rows:
        if plans or names not in OF_BOXES:
            titles = {f"{name}.html": TITLES[name] for name in names.split()}
            yield _job(taught, titles, inputs, make)


def _contents() -> ModuleType:
    """The room's pages, and with them all that draws: loaded when the first of them is made."""
    from toolkit.classroom import contents

    return contents


def _wood(taught: WeekendClass, plans: Mapping[int, Plan], spare: Plan) -> list[Page]:
    from toolkit.classroom.wood_contents import pages

    return pages(taught, plans, spare=spare)


def _job(
    taught: WeekendClass,
    titles: Mapping[str, tuple[str, Turned]],
    inputs: tuple[object, ...],
    pages: Callable[[], list[Page]],
    reader: Student | None = None,
) -> Job:
    """Pages with their titles by path; ``pages`` gives them in the same order."""

    def make() -> dict[str, tuple[bytes, str]]:
        from toolkit.pictures import worded

        with worded(spell_of(taught, words=(reader or taught).words)):
            found = pages()
        made = {}
        for (name, (title, turned)), (short, sections) in zip(titles.items(), found, strict=True):
            page = class_page(
                taught, title, sections=sections, source=mark(*inputs), turned=turned, reader=reader
            )
            made[name] = page, short
        return made

    names = {name: title for name, (title, _) in titles.items()}
    source = mark(workbook_mark(), *inputs)
    return Job(names, source, make, reader.number if reader else None)
