"""The first page of a class's folder: what is in it, and what to look at first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from html import escape

from toolkit.classroom.class_pages import Look, class_page
from toolkit.classroom.jobs import handout_name, rubric_name
from toolkit.classroom.wall_sheet import spans
from toolkit.document import PAPER, Block, Edition, Section, Sentence
from toolkit.files import MadePage, Student, WeekendClass

HELPED = 8  # students whom one person can lead, common practice, no source


@dataclass(frozen=True, slots=True)
class Faults(Block):
    """Why students have no handout, by their numbers.

    Of a box that is ``unread`` file, key and value are told as they are spelled there.
    """

    said: Mapping[int, str]
    unread: frozenset[int]

    def html(self, edition: Edition = PAPER) -> str:
        """It as a list."""
        rows = "".join(
            f"<li><strong>Student {number}</strong>: "
            f"{escape(said if number in self.unread else edition.spell(said))}</li>"
            for number, said in self.said.items()
        )
        return f'<ul class="problem">{rows}</ul>'


@dataclass(frozen=True, slots=True)
class Pages(Block):
    """Links to the pages for the class, by title, and what each says in short."""

    titles: Mapping[str, str]
    said: tuple[tuple[str, str], ...]

    def html(self, edition: Edition = PAPER) -> str:
        """It as a list."""
        rows = "".join(
            f'<li><a href="{name}">{escape(edition.spell(self.titles[name]))}</a>: '
            f"{escape(edition.spell(said))}</li>"
            for name, said in self.said
        )
        return f"<ul>{rows}</ul>"


@dataclass(frozen=True, slots=True)
class Students(Block):
    """The students with links to the pages that were made for each of them."""

    students: tuple[Student, ...]
    made: frozenset[str]
    faults: frozenset[int]

    def html(self, edition: Edition = PAPER) -> str:
        """It as a table."""
        heads = "".join(
            f'<th scope="col">{head}</th>'
            for head in ("student", "handout", "rubric", "measures in", "pace", "box")
        )
        rows = "".join(map(self._row, self.students))
        return (
            f'<table class="table"><caption>The students</caption><thead><tr>{heads}</tr></thead>'
            f"<tbody>{rows}</tbody></table>"
        )

    def _row(self, row: Student) -> str:
        box = "won't work" if row.number in self.faults else "own" if row.own else "the class's"
        cells = (
            self._link(handout_name(row.number), f"handout, student {row.number}"),
            self._link(rubric_name(row.number), f"rubric, student {row.number}"),
            row.choices.rule.units if row.choices else "",
            escape(row.pace + (", left-handed" if row.hand == "left" else "")),
            box,
        )
        body = "".join(f"<td>{cell}</td>" for cell in cells)
        return f'<tr><th scope="row">student {row.number}</th>{body}</tr>'

    def _link(self, name: str, what: str) -> str:
        return f'<a href="{name}">{what}</a>' if name in self.made else "not made"


def index_page(
    taught: WeekendClass,
    *,
    look: Look,
    titles: Mapping[str, str],
    made: Mapping[str, MadePage],
    faults: Mapping[int, str],
) -> bytes:
    """The page that leads to all others: titles and pages made by path, faults by student."""
    sections = []
    if faults:
        unread = {row.number for row in taught.students if row.choices is None}
        words = "Nothing was made for these; mend the class file and run it again."
        block = Faults(faults, frozenset(unread))
        sections.append(Section("first", "Look at these first", words, (block,)))
    links = tuple((name, made[name].said) for name in titles if name in made)
    sections.append(Section("class", "The class", _when(taught), _remarks(taught)))
    sections.append(Section("pages", "For the class", "", (Pages(titles, links),)))
    students = Students(taught.students, frozenset(made), frozenset(faults))
    sections.append(Section("students", "For each student", "", (students,)))
    return class_page("A class, ready to be taught", look=look, sections=sections)


def _when(taught: WeekendClass) -> str:
    day = taught.day
    dates = " and ".join(f"{one:%Y-%m-%d}" for one in day.dates)
    clock = [f"{minute // 60:02d}:{minute % 60:02d}" for minute in (day.start, day.end, day.lunch)]
    return (
        f"{dates}, {clock[0]} to {clock[1]}, lunch at {clock[2]} for {day.lunch_minutes} min, "
        f"breaks of {day.breaks} min in all: {day.minutes} min at the bench on each day."
    )


def _remarks(taught: WeekendClass) -> tuple[Block, ...]:
    many, said = len(taught.students), []
    helpers = f"{taught.helpers} helper{'' if taught.helpers == 1 else 's'}"
    line = f"{many} student{'' if many == 1 else 's'}, {taught.benches} benches, {helpers}."
    if many > HELPED and not taught.helpers:
        line += f" Above {HELPED} students, ask for a helper (common practice, no source)."
    said.append(line)
    left = [row.number for row in taught.students if row.hand == "left"]
    if left:
        said.append(f"Left-handed: student{'' if len(left) == 1 else 's'} {spans(left)}.")
    return tuple(map(Sentence, said))
