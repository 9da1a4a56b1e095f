"""The first page of a class's folder: what is in it, and what to look at first."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from toolkit.classroom.class_pages import Look, class_page
from toolkit.classroom.jobs import handout_name, rubric_name
from toolkit.classroom.wall_sheet import spans
from toolkit.files import Student, WeekendClass
from toolkit.files.folder_record import MadePage
from toolkit.handout.sections import Section
from toolkit.measures import as_typed, marking_typed

HELPED = 8  # students whom one person can lead, common practice, no source


def index_page(
    taught: WeekendClass,
    *,
    look: Look,
    titles: Mapping[str, str],
    made: Mapping[str, MadePage],
    faults: Mapping[int, str],
) -> bytes:
    """The page that leads to all others.

    Parameters
    ----------
    taught : WeekendClass
        The class.
    look : Look
        What it shares with the others.
    titles : mapping
        The title of each page for the class, by its path.
    made : mapping
        What was made, by its path.
    faults : mapping
        Why students have no handout, by their numbers.

    Returns
    -------
    bytes
        One self-contained HTML file.

    Source
    ------
    The workbook's own.
    """
    sections = []
    if faults:
        # What can't be read is told with its file, key and value, as they are spelled there.
        unread = {row.number for row in taught.students if row.choices is None}
        with marking_typed():
            rows = "".join(
                f"<li><strong>Student {number}</strong>: "
                f"{escape(as_typed(said) if number in unread else said)}</li>"
                for number, said in faults.items()
            )
        words = "Nothing was made for these; mend the class file and run it again."
        block = f'<ul class="problem">{rows}</ul>'
        sections.append(Section("first", "Look at these first", words, (block,)))
    sections.append(Section("class", "The class", _when(taught), _remarks(taught)))
    sections.append(Section("pages", "For the class", "", (_pages(titles, made),)))
    sections.append(Section("students", "For each student", "", (_students(taught, made, faults),)))
    return class_page("A class, ready to be taught", look=look, sections=sections)


def _when(taught: WeekendClass) -> str:
    day = taught.day
    dates = " and ".join(f"{one:%Y-%m-%d}" for one in day.dates)
    clock = [f"{minute // 60:02d}:{minute % 60:02d}" for minute in (day.start, day.end, day.lunch)]
    return (
        f"{dates}, {clock[0]} to {clock[1]}, lunch at {clock[2]} for {day.lunch_minutes} min, "
        f"breaks of {day.breaks} min in all: {day.minutes} min at the bench on each day."
    )


def _remarks(taught: WeekendClass) -> tuple[str, ...]:
    many, said = len(taught.students), []
    helpers = f"{taught.helpers} helper{'' if taught.helpers == 1 else 's'}"
    line = f"{many} student{'' if many == 1 else 's'}, {taught.benches} benches, {helpers}."
    if many > HELPED and not taught.helpers:
        line += f" Above {HELPED} students, ask for a helper (common practice, no source)."
    said.append(line)
    left = [row.number for row in taught.students if row.hand == "left"]
    if left:
        said.append(f"Left-handed: student{'' if len(left) == 1 else 's'} {spans(left)}.")
    return tuple(f"<p>{escape(text)}</p>" for text in said)


def _pages(titles: Mapping[str, str], made: Mapping[str, MadePage]) -> str:
    rows = "".join(
        f'<li><a href="{name}">{escape(title)}</a>: {escape(made[name].said)}</li>'
        for name, title in titles.items()
        if name in made
    )
    return f"<ul>{rows}</ul>"


def _students(taught: WeekendClass, made: Mapping[str, MadePage], faults: Mapping[int, str]) -> str:
    heads = "".join(
        f'<th scope="col">{head}</th>'
        for head in ("student", "handout", "rubric", "measures in", "pace", "box")
    )
    rows = "".join(_student(row, made, faults) for row in taught.students)
    return (
        f'<table class="table"><caption>The students</caption><thead><tr>{heads}</tr></thead>'
        f"<tbody>{rows}</tbody></table>"
    )


def _student(row: Student, made: Mapping[str, MadePage], faults: Mapping[int, str]) -> str:
    def link(name: str, what: str) -> str:
        if name not in made:
            return "not made"
        return f'<a href="{name}">{what}, student {row.number}</a>'

    box = "won't work" if row.number in faults else "own" if row.own else "the class's"
    cells = (
        link(handout_name(row.number), "handout"),
        link(rubric_name(row.number), "rubric"),
        row.choices.rule.units if row.choices else "",
        escape(row.pace + (", left-handed" if row.hand == "left" else "")),
        box,
    )
    body = "".join(f"<td>{cell}</td>" for cell in cells)
    return f'<tr><th scope="row">student {row.number}</th>{body}</tr>'
