"""The first page of a class's folder: what is in it, and what to look at first."""

from __future__ import annotations

from collections.abc import Mapping

from markupsafe import Markup

from toolkit.classroom.folder_record import MadePage, mark
from toolkit.classroom.jobs import class_page, page_of
from toolkit.classroom.tools_plan import called
from toolkit.document import Block, Listing, OtherHtml, Section
from toolkit.files import WeekendClass

HELPED = 8  # students whom one person can lead, common practice, no source
_FAULT = "<li><strong>Student {}</strong>: {}</li>"
_COLUMNS = ("student", "handout", "rubric", "measures in", "pace", "box")
_STUDENTS = Markup(
    '<table class="table"><caption>The students</caption><thead><tr>{}</tr></thead>'
    "<tbody>{}</tbody></table>"
)


def index_page(
    taught: WeekendClass,
    *,
    titles: Mapping[str, str],
    made: Mapping[str, MadePage],
    faults: Mapping[int, str],
) -> bytes:
    """The page that leads to all others: titles and pages made by path, faults by student."""
    sections = []
    if faults:
        words = "Nothing was made for these; mend the class file and run it again."
        rows = tuple((str(number), said) for number, said in faults.items())
        listing = Listing(rows, _FAULT, '<ul class="problem">{}</ul>')
        sections.append(Section.of("first", "Look at these first", words, listing))
    links = tuple((name, titles[name], made[name].said) for name in titles if name in made)
    listing = Listing(links, '<li><a href="{}">{}</a>: {}</li>')
    sections += [
        Section.of("class", "The class", _when(taught), *_remarks(taught)),
        Section.of("pages", "For the class", "", listing),
        Section.of("students", "For each student", "", _students(taught, made, faults)),
    ]
    # Of a box that can't be read file, key and value are told as they are spelled there.
    typed = [row.fault for row in taught.students if row.choices is None]
    title = "A class, ready to be taught"
    return class_page(taught, title, sections=sections, source=mark(taught), typed=typed)


def _when(taught: WeekendClass) -> str:
    day = taught.day
    dates = " and ".join(f"{one:%Y-%m-%d}" for one in day.dates)
    clock = [f"{minute // 60:02d}:{minute % 60:02d}" for minute in (day.start, day.end, day.lunch)]
    return (
        f"{dates}, {clock[0]} to {clock[1]}, lunch at {clock[2]} for {day.lunch_minutes} min, "
        f"breaks of {day.breaks} min in all: {day.minutes} min at the bench on each day."
    )


def _remarks(taught: WeekendClass) -> tuple[str, str]:
    many = len(taught.students)
    helpers = f"{taught.helpers} helper{'' if taught.helpers == 1 else 's'}"
    line = f"{many} student{'' if many == 1 else 's'}, {taught.benches} benches, {helpers}."
    if many > HELPED and not taught.helpers:
        line += f" Above {HELPED} students, ask for a helper (common practice, no source)."
    left = [row.number for row in taught.students if row.hand == "left"]
    return line, f"Left-handed: {called(left)}." if left else ""


def _students(
    taught: WeekendClass, made: Mapping[str, MadePage], faults: Mapping[int, str]
) -> Block:
    """The students with links to the pages that were made for each of them."""

    def link(number: int, kind: str) -> str:
        name = page_of(number, kind)
        words = Markup('<a href="{}">{}, student {}</a>').format(name, kind, number)
        return words if name in made else "not made"

    rows = []
    for row in taught.students:
        number, left = row.number, ", left-handed" if row.hand == "left" else ""
        units = row.choices.rule.units if row.choices else ""
        box = "won't work" if number in faults else "own" if row.own else "the class's"
        cells = (link(number, "handout"), link(number, "rubric"), units, row.pace + left, box)
        body = Markup().join(map(Markup("<td>{}</td>").format, cells))
        rows.append(Markup('<tr><th scope="row">student {}</th>{}</tr>').format(number, body))
    heads = Markup().join(map(Markup('<th scope="col">{}</th>').format, _COLUMNS))
    return OtherHtml(_STUDENTS.format(heads, Markup().join(rows)))
