"""What is on each page for the class: from a class and its plans to sections of HTML."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from html import escape

from toolkit.classroom.clock import TimeOfDay
from toolkit.classroom.late import bought_back, offers
from toolkit.classroom.sheets import blank_rubric
from toolkit.classroom.steps import if_late, weekend
from toolkit.classroom.timetable import Timetable, shared_tools, timetable
from toolkit.classroom.tools_plan import (
    bench_table,
    handed,
    honing_table,
    irons_table,
    shared_table,
)
from toolkit.classroom.wall_sheet import groups, setting_tables
from toolkit.files import Student, WeekendClass
from toolkit.handout.sections import Section, figure
from toolkit.pages import as_html
from toolkit.plan import Plan
from toolkit.results import Table

Plans = Mapping[int, Plan]


def prose(*sentences: str) -> tuple[str, ...]:
    """Sentences as paragraphs; an empty one is left out."""
    return tuple(f"<p>{escape(text)}</p>" for text in sentences if text)


def each(*tables: Table) -> tuple[str, ...]:
    """Tables as HTML; one without rows is left out."""
    return tuple(as_html(table) for table in tables if table.rows)


def capital(text: str) -> str:
    """Text that begins a line."""
    return text[:1].upper() + text[1:]


def timed(taught: WeekendClass) -> Timetable:
    """The class at work, with the tools that it has."""
    paces = [student.pace for student in taught.students]
    usual = shared_tools(weekend(), students=len(paces))
    tools = {name: taught.tools.get(name, many) for name, many in usual.items()}
    numbers = [student.number for student in taught.students]
    return timetable(paces, tools=tools, hours=TimeOfDay(taught.day).hours, numbers=numbers)


def hours(taught: WeekendClass) -> tuple[str, list[Section]]:
    """The timetable: who runs over, what would help, what to leave out when late."""
    plan = timed(taught)
    saved = bought_back(plan.paces, tools=plan.tools, hours=plan.hours)
    rows = [Section("who", "Who runs over", plan.sentence, (*_drawn(plan), *each(plan.who())))]
    rows.append(Section("reached", "When each step comes", "", each(_reached(taught, plan))))
    rows.append(Section("savings", "What would help", "", each(offers(saved))))
    rows.append(Section("late", "When it is late", "", each(if_late(plan.steps))))
    return plan.sentence, rows


def _drawn(plan: Timetable) -> Iterator[str]:
    """The timetable as a picture, where the pictures have one."""
    from toolkit import pictures

    draw = getattr(pictures, "timetable_picture", None)
    if draw is not None:
        yield figure(draw(plan))


def _reached(taught: WeekendClass, plan: Timetable) -> Table:
    clock = TimeOfDay(taught.day)
    rows = []
    for step in plan.steps:
        bars = [bar for bar in plan.bars if bar.step == step.number]
        rows.append(
            (
                str(step.number),
                step.name,
                clock.shown(min(bar.start for bar in bars)),
                clock.shown(max(bar.end for bar in bars)),
            )
        )
    return Table(
        "The first begins, the last is done",
        ("no.", "step", "the first begins", "the last is done"),
        tuple(rows),
        note="About these times, to 5 min, breaks spread evenly. Minutes: common practice, no "
        "source.",
        numeric=(0,),
    )


def tools(taught: WeekendClass) -> tuple[str, list[Section]]:
    """What lies on the benches, what is shared, and who hones when."""
    plan, many = timed(taught), len(taught.students)
    per_bench = many / taught.benches if taught.benches else 0.0
    said = f"{many} students at {taught.benches} benches, up to {-int(-per_bench // 1)} to a bench."
    honing = honing_table(plan, clock=TimeOfDay(taught.day), students=taught.students)
    return said, [
        Section(
            "shared",
            "Shared tools and their queues",
            handed(taught.students),
            each(shared_table(plan, on_hand=taught.tools)),
        ),
        Section(
            "benches",
            "On the benches",
            said,
            each(bench_table(benches=taught.benches, students=many)),
        ),
        Section(
            "sharpening",
            "Sharpening",
            "Dull slips. Nobody saws time by leaving an edge dull.",
            each(honing, irons_table(plan, benches=taught.benches, students=many)),
        ),
    ]


def wall(taught: WeekendClass, plans: Plans) -> tuple[str, list[Section]]:
    """Everyone's settings, to hang where all can see them."""
    found = groups(plans)
    said = "; ".join(f"{group.letter}: {group.who}" for group in found) + "."
    words = "Find your number, then set by your own column only. " + handed(taught.students)
    return said, [Section("wall", "Settings", words.strip(), each(*setting_tables(found)))]


def rubric(student: Student, plan: Plan) -> tuple[str, list[Section]]:
    """A blank rubric, its limits on the student's own rule."""
    rule, frame = plan.choices.rule, plan.design.frame
    size = (frame.outside_length.value, frame.outside_width.value)
    words = f"{capital(student.called)}. {plan.choices.title}, outside {plan.outside}."
    table = blank_rubric(rule, size=size)
    sign = "<p>Measured by ____________________ on ____________ humidity ________ %</p>"
    return "", [Section("rubric", "How good is it", words, (as_html(table), sign))]
