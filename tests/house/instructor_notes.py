"""Writes what the instructor's notes reckon: ``python -m tests.house.instructor_notes``.

A number that depends on the box, on the class or on a table stands in the notes between two
remarks, which a page does not show: ``<!--=answer 4 lid-width-->116 mm<!--/-->``. This writes all
such numbers and the files of solutions anew; ``--check`` only says which are not up to date.
"""

import argparse
import re
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

import nbformat

from toolkit.box import Customs
from toolkit.classroom.contents import timed
from toolkit.classroom.index import HELPED
from toolkit.classroom.steps import Pace, weekend
from toolkit.files import WeekendClass, read_box, read_class
from toolkit.plan import Plan, plan, rubric, told
from toolkit.study import Question, draw, first_guess, lessons_with_questions, solutions

ROOT = Path(__file__).parents[2]
NOTES = ROOT / "instructor_notes"
SOLUTIONS = NOTES / "solutions"
LESSONS = lessons_with_questions()
MARKED = re.compile(r"<!--=(?P<name>[^>]+?)-->(?P<text>[^<]*)<!--/-->")
_MINUTES = re.compile(r"\*Minutes:\* (\d+) here, (\d+) at the (?:bench|rack)")


def lesson_path(lesson: int) -> Path:
    """The notebook of a lesson."""
    (found,) = (ROOT / "lessons").glob(f"{lesson:02d}_*.ipynb")
    return found


def page_path(lesson: int) -> Path:
    """The teacher's page of a lesson."""
    return NOTES / f"{lesson_path(lesson).stem}.md"


def pages() -> list[Path]:
    """Every page written by hand."""
    return sorted(NOTES.glob("*.md"))


@cache
def example() -> Plan:
    """The example box."""
    return plan(read_box(ROOT / "lessons" / "box.toml"))


@cache
def taught() -> WeekendClass:
    """The example class."""
    return read_class(NOTES / "class.toml")


@cache
def questions(lesson: int) -> dict[str, Question]:
    """The questions of a lesson on the example box, by the end of their name."""
    return {asked.id.partition(".")[2]: asked for asked in draw(example(), lesson=lesson)}


@cache
def minutes(lesson: int) -> tuple[int, int]:
    """What a lesson says of itself: minutes at the screen, and at the bench. [min]"""
    text = nbformat.read(lesson_path(lesson), as_version=4).cells[0].source
    found = _MINUTES.search(text)
    assert found, f"lesson {lesson} does not say how long it takes"
    return int(found[1]), int(found[2])


def _answer(lesson: str, name: str) -> str:
    asked = questions(int(lesson))[name]
    return asked.written(asked.answer)


def _guessed(lesson: str) -> str:
    asked = first_guess(example(), lesson=int(lesson))
    assert asked, f"lesson {lesson} asks nothing of the example box"
    return asked.written(asked.answer)


def _step(number: str, pace: Pace) -> str:
    (step,) = (step for step in weekend() if step.number == int(number))
    return f"{step.minutes[pace]:g} min"


def _custom(name: str) -> str:
    return example().choices.rule.exact(getattr(Customs(), name))


def _band(key: str, level: str) -> str:
    made = example()
    (row,) = (row for row in rubric(made) if row.key == key)
    return told(getattr(row.limits, level)[1], made.choices.rule)


def _over() -> str:
    plan = timed(taught())
    return f"{sum(plan.over(student) > 0 for student in plan.students)} of {len(plan.students)}"


NAMES: dict[str, Callable[..., str]] = {
    "answer": _answer,
    "band": _band,
    "bench": lambda lesson: f"{minutes(int(lesson))[1]} min",
    "custom": _custom,
    "delivery": lambda: f"{taught().buying.delivery_days} days",
    "guess": _guessed,
    "here": lambda lesson: f"{minutes(int(lesson))[0]} min",
    "led": lambda: f"{HELPED}",
    "over": _over,
    "resting": lambda: f"{taught().day.no_chopping:g} min",
    "settling": lambda: f"{taught().buying.settling_days} days",
    "step": _step,
}


def number(name: str) -> str:
    """The text that belongs under a name, such as ``step 11 novice``."""
    first, *rest = name.split()
    return NAMES[first](*rest)


def renewed(text: str) -> str:
    """A page with every marked number reckoned anew."""
    return MARKED.sub(lambda row: f"<!--={row['name']}-->{number(row['name'])}<!--/-->", text)


def written() -> dict[Path, str]:
    """Every file of the notes as it should be."""
    made = {path: renewed(path.read_text(encoding="utf-8")) for path in pages()}
    for lesson in LESSONS:
        path = SOLUTIONS / f"{lesson_path(lesson).stem}.md"
        made[path] = solutions(example(), lesson=lesson)
    return made


def main() -> int:
    """Write the notes, or with ``--check`` say which are not up to date."""
    parser = argparse.ArgumentParser(description="Reckon the instructor's notes anew.")
    parser.add_argument("--check", action="store_true", help="change nothing, fail on old ones")
    check = parser.parse_args().check
    old = 0
    for path, text in written().items():
        if path.exists() and path.read_text(encoding="utf-8") == text:
            continue
        old += 1
        print(f"{'old' if check else 'written'}: {path.relative_to(ROOT)}")
        if not check:
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8")
    return 1 if check and old else 0


if __name__ == "__main__":
    sys.exit(main())
