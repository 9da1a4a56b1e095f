"""What is on each page for the class: from a class and its plans to sections of blocks."""

from __future__ import annotations

from collections.abc import Mapping

from toolkit.classroom.assessment import assess, assess_student
from toolkit.classroom.scheduling import Timetable, shared_tools, timetable
from toolkit.classroom.sheets import class_table, hands_sheet, student_sheet
from toolkit.classroom.steps import TimeOfDay, helped, if_late, weekend
from toolkit.classroom.timetable_shown import bought_back, drawn, offers
from toolkit.classroom.tools_plan import (
    bench_table,
    called,
    groups,
    handed,
    honing_table,
    irons_table,
    setting_tables,
    shared_table,
)
from toolkit.document import Figure, Section
from toolkit.files import Measured, Student, WeekendClass
from toolkit.pictures import for_paper
from toolkit.plan import Plan, rubric_table
from toolkit.results import Table, capital
from toolkit.study import lessons_with_questions

Plans = Mapping[int, Plan]


def timed(taught: WeekendClass) -> Timetable:
    """The class at work, with the tools that it has."""
    paces = helped([student.pace for student in taught.students], helpers=taught.helpers)
    usual = shared_tools(weekend(), students=len(paces))
    tools = {name: taught.tools.get(name, many) for name, many in usual.items()}
    numbers = [student.number for student in taught.students]
    return timetable(paces, tools=tools, hours=TimeOfDay(taught.day).hours, numbers=numbers)


def hours(taught: WeekendClass) -> tuple[str, list[Section]]:
    """The timetable: who runs over, what would help, what to leave out when late."""
    plan = timed(taught)
    who = (_drawn(taught, plan), _sat_with(taught, plan), plan.who())
    return plan.sentence, [
        Section.of("who", "Who runs over", plan.sentence, *who),
        Section.of("reached", "When each step comes", "", _reached(taught, plan)),
        Section.of("savings", "What would help", "", offers(bought_back(plan))),
        Section.of("late", "When it is late", "", if_late(plan.steps)),
    ]


def _drawn(taught: WeekendClass, plan: Timetable) -> Figure:
    """The timetable as a picture, with the times of day."""
    clock = TimeOfDay(taught.day)
    # On paper everything stands on one page; the day is said by the strip that a time stands over.
    pairs = zip(taught.students, plan.paces, strict=True)
    words = [one.pace if one.pace == pace else "helped" for one, pace in pairs]
    with for_paper():
        return Figure(drawn(plan, clock=lambda at: clock.shown(at).partition(", ")[2], paces=words))


def _sat_with(taught: WeekendClass, plan: Timetable) -> str:
    """Who is reckoned faster than they are, for the helper at their side."""
    slow = [one.number for one, pace in zip(taught.students, plan.paces, strict=True)
            if one.pace != pace]  # fmt: skip
    if not slow:
        return ""
    names = ", ".join(str(number) for number in slow)
    return (
        f"Student{'s' if len(slow) > 1 else ''} {names}: slow, but with a helper beside them and "
        "reckoned at a novice's pace (custom, no source)."
    )


def _reached(taught: WeekendClass, plan: Timetable) -> Table:
    clock = TimeOfDay(taught.day)
    rows = []
    for step in plan.steps:
        bars = [bar for bar in plan.bars if bar.step == step.number]
        first, last = min(bar.start for bar in bars), max(bar.end for bar in bars)
        rows.append((str(step.number), step.name, clock.shown(first), clock.shown(last)))
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
    shared = shared_table(plan, on_hand=taught.tools)
    own = bench_table(benches=taught.benches, students=many)
    honing = honing_table(plan, clock=TimeOfDay(taught.day), students=taught.students)
    irons = irons_table(plan, benches=taught.benches, students=many)
    dull = "Dull slips. Nobody saws time by leaving an edge dull."
    queues = "Shared tools and their queues"
    return said, [
        Section.of("shared", queues, handed(taught.students), shared),
        Section.of("benches", "On the benches", said, own),
        Section.of("sharpening", "Sharpening", dull, honing, irons),
    ]


def wall(taught: WeekendClass, plans: Plans) -> tuple[str, list[Section]]:
    """Everyone's settings, to hang where all can see them."""
    found = groups(plans)
    said = "; ".join(f"{group.letter}: {called(group.students)}" for group in found) + "."
    words = "Find your number, then set by your own column only. " + handed(taught.students)
    return said, [Section.of("wall", "Settings", words.strip(), *setting_tables(found))]


def hands(plan: Plan) -> tuple[str, list[Section]]:
    """Sheets to count a show of hands on, one for each lesson, on the box that everybody makes."""
    words = (
        "Ask before anything is shown, and call the answers; each hand goes up once, for the "
        "nearest. Most hands on a wrong answer: say what it stands for, then show it."
    )
    return words, [
        Section.of(f"hands-{number}", f"Lesson {number}", words, *hands_sheet(plan, lesson=number))
        for number in lessons_with_questions()
    ]


def rubric(student: Student, plan: Plan) -> tuple[str, list[Section]]:
    """A rubric on the student's own rule: filled where the box was measured, else blank."""
    words = f"{capital(student.called)}. {plan.choices.title}, outside {plan.outside}."
    sign = "Measured by ____________________ on ____________ humidity ________ %"
    blank = Section.of("rubric", "How good is it", words, rubric_table(plan), sign)
    if not student.measured:
        return "", [blank]
    try:
        marked = assess_student(student, plan=plan)
    except ValueError as error:
        return "", [Section.of("marks", "Marks", f"Not marked: {error}."), blank]
    sheet = student_sheet(marked, student=student.number, title=plan.choices.title)
    return marked.sentence, [Section.of("marks", "Marks", "", sheet), blank]


def marks(taught: WeekendClass, plans: Plans) -> tuple[str, list[Section]]:
    """The class's table of marks; empty, to be filled by hand, until the boxes are measured."""
    rows, wrong = [], []
    for student in taught.students:
        if (plan := plans.get(student.number)) is None:
            continue
        try:
            rows.append((student.number, assess_student(student, plan=plan)))
        except ValueError as error:
            wrong.append(f"{capital(student.called)}: {error}.")
            rows.append((student.number, assess(Measured(), plan=plan)))
    done = sum(box.worst is not None for _, box in rows)
    said = " ".join([f"{done} of {len(rows)} boxes measured.", *wrong])
    how = (
        "Type what was measured below [student.measured] in the class file, and make the folder "
        "again: this table and the students' sheets fill themselves."
    )
    return said, [Section.of("marks", "Marks", said, class_table(rows), how)]
