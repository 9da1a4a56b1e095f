"""The pages of a class as pieces of work: what each is made from, and how it is made."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Literal, TypeAlias

from toolkit.classroom.class_pages import Look, class_page
from toolkit.files import Student, WeekendClass, mark, mark_of_files
from toolkit.plan import Plan
from toolkit.stock import sets_needed

if TYPE_CHECKING:
    from toolkit.document import Section

Page: TypeAlias = "tuple[str, list[Section]]"
Turned = Literal["portrait", "landscape"]
SUFFIXES = {".py", ".csv", ".css", ".j2", ".js", ".json", ".svg"}


@dataclass(frozen=True, slots=True)
class Job:
    """Pages that are made together."""

    pages: Mapping[str, str]
    source: str
    make: Callable[[], dict[str, tuple[bytes, str]]]
    student: int | None = None


@cache
def workbook_mark() -> str:
    """A mark of the workbook itself: pages of an older one are made anew."""
    home = Path(__file__).parents[1]
    files = [path for path in home.rglob("*") if path.suffix in SUFFIXES]
    return mark_of_files(files)


def _lessons_mark() -> str:
    from toolkit.study import lesson_files

    books = lesson_files()
    folders = {path.parent for path in books}
    beside = [folder / name for folder in folders for name in ("box.toml", "boards.toml")]
    return mark_of_files([*books, *beside])


def handout_name(number: int) -> str:
    """Where a student's handout lies in the folder."""
    return f"handouts/student_{number:02d}.html"


def rubric_name(number: int) -> str:
    """Where a student's rubric lies in the folder."""
    return f"rubrics/student_{number:02d}.html"


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
    name = handout_name(student.number)
    source = mark(
        "handout", workbook_mark(), taught_mark, lessons, plan.choices, student.number,
        student.words, student.paper,
    )  # fmt: skip

    def make() -> dict[str, tuple[bytes, str]]:
        from toolkit.handout.page import handout

        page = handout(
            plan,
            paper=student.paper,
            name=f"Student {student.number}",
            words=student.words,
            lessons=lessons,
        )
        return {name: (page.encode(), "")}

    return Job({name: f"Handout, {student.called}"}, source, make, student.number)


def _rubric(taught: WeekendClass, student: Student, plan: Plan) -> Job:
    name = rubric_name(student.number)
    inputs = (
        "rubric", plan.choices, student.number, student.words, student.paper, taught.title,
        dict(student.measured),
    )  # fmt: skip
    return _job(
        {name: (f"Rubric, {student.called}", "portrait")},
        inputs,
        Look(
            taught.title,
            mark(*inputs)[:8],
            date.today(),
            student.words,
            student.paper,
            typed_of(taught),
        ),
        lambda: {name: _contents().rubric(student, plan)},
        student.number,
    )


def class_jobs(taught: WeekendClass, plans: Mapping[int, Plan], *, spare: Plan) -> Iterator[Job]:
    """The pages for whoever leads the class. What the wood gives is reckoned once for three."""
    look = (taught.title, taught.words, taught.paper)
    day, buying = taught.day, taught.buying
    boxes = [(number, plan.choices) for number, plan in plans.items()]
    people = [(row.number, row.pace, row.hand) for row in taught.students]
    sets = sets_needed(len(plans), spare=buying.spare) - len(plans)

    def wood_pages() -> dict[str, Page]:
        from toolkit.classroom import wood_contents
        from toolkit.classroom.wood import class_wood

        wood = class_wood(
            plans, boards=taught.boards, spare=spare, sets=sets, practice=buying.practice
        )
        return {
            "shopping.html": wood_contents.shopping(taught, wood),
            "kits.html": wood_contents.kits(taught, plans, wood, spare=spare, sets=sets),
            "boards.html": wood_contents.boards(taught, wood),
        }

    def job(
        titles: dict[str, tuple[str, Turned]],
        inputs: tuple[object, ...],
        pages: Callable[[], dict[str, Page]],
    ) -> Job:
        look = Look(
            taught.title,
            mark(*inputs)[:8],
            date.today(),
            taught.words,
            taught.paper,
            typed_of(taught),
        )
        return _job(titles, inputs, look, pages)

    def page(
        name: str, title: str, turned: Turned, inputs: tuple[object, ...], make: Callable[[], Page]
    ) -> Job:
        return job({name: (title, turned)}, inputs, lambda: {name: make()})

    if plans:
        yield job(
            {
                "shopping.html": ("Shopping list", "landscape"),
                "kits.html": ("Kits to pack", "portrait"),
                "boards.html": ("Board layouts", "landscape"),
            },
            (look, boxes, people, taught.boards, buying, day, spare.choices),
            wood_pages,
        )
    hours = (look, people, day, dict(taught.tools))
    yield page("timetable.html", "Timetable", "portrait", hours, lambda: _contents().hours(taught))
    tools = (*hours, taught.benches)
    yield page(
        "tools.html", "Tools and sharpening", "landscape", tools, lambda: _contents().tools(taught)
    )
    hands = (look, spare.choices)
    yield page("hands.html", "Show of hands", "portrait", hands, lambda: _contents().hands(spare))
    if plans:
        wall = (look, boxes, people)
        yield page(
            "wall.html", "Wall sheet", "landscape", wall, lambda: _contents().wall(taught, plans)
        )
        measured = [(row.number, dict(row.measured)) for row in taught.students]
        yield page(
            "marks.html",
            "Marks of the class",
            "landscape",
            (look, boxes, measured),
            lambda: _contents().marks(taught, plans),
        )


def typed_of(taught: WeekendClass) -> tuple[str, ...]:
    """What people typed and the class's pages quote: titles of boxes, names of boards."""
    boxes = [row.choices.title for row in taught.students if row.choices is not None]
    return (*dict.fromkeys(boxes), *(board.name for board in taught.boards))


def _contents() -> ModuleType:
    """The room's pages, and with them all that draws: loaded when the first of them is made."""
    from toolkit.classroom import contents

    return contents


def _job(
    titles: Mapping[str, tuple[str, Turned]],
    inputs: tuple[object, ...],
    look: Look,
    pages: Callable[[], dict[str, Page]],
    student: int | None = None,
) -> Job:
    def make() -> dict[str, tuple[bytes, str]]:
        made = {}
        from toolkit.pictures import worded

        with worded(look.spell):
            found = pages()
        for name, (short, sections) in found.items():
            title, turned = titles[name]
            made[name] = (class_page(title, look=look, sections=sections, turned=turned), short)
        return made

    source = mark(workbook_mark(), *inputs)
    return Job({name: title for name, (title, _) in titles.items()}, source, make, student)
