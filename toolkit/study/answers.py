"""A teacher's answers: a lesson's guess and questions, their workings, and their slips' hints."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.plan import Plan
from toolkit.results import capital
from toolkit.study.first_guesses import first_guess
from toolkit.study.marking import Question
from toolkit.study.questions import draw

CLASS_SEED = "class"


def solution(question: Question) -> str:
    """One question with its answer, how it is reckoned, and what each slip is told."""
    name = question.id.partition(".")[2].replace("-", " ")
    answer = question.written(question.answer)
    right = answer if question.kind == "count" else f"{answer}, or within half a mark of it"
    rows = [(right, "Right, and the working above.")]
    rows += [(question.written(slip.value), slip.hint) for slip in question.slips]
    if question.nudge:
        rows.append(("anything else that is far off", question.nudge))
    table = [f"| {_cell(said)} | {_cell(hint)} |" for said, hint in rows]
    return "\n".join(
        [
            f"### {capital(name)}",
            "",
            _plain(question.prompt),
            "",
            f"**{answer}.** {_plain(question.working)}",
            "",
            "| answer | what to say |",
            "| --- | --- |",
            *table,
        ]
    )


def solutions(plan: Plan, *, lesson: int, seed: str = CLASS_SEED) -> str:
    """All answers of a lesson, on one box and on the first other sizes that a seed draws.

    Parameters
    ----------
    plan : Plan
        The box, worked out. [mm]
    lesson : int
        Number of the lesson.
    seed : str
        What the teacher types into the lesson, so that the whole room is asked the same.

    Returns
    -------
    str
        Markdown, with one heading of the first level.

    Raises
    ------
    NoQuestionsError
        The lesson has none, or nothing can be reckoned on this box.
    """
    opening = first_guess(plan, lesson=lesson)
    mine = draw(plan, lesson=lesson)
    # A lesson counts how often *Other sizes* was pressed, and adds the count to its seed.
    other = draw(plan, lesson=lesson, seed=f"{seed}/1", vary=True)
    title = plan.choices.title or "The example box"
    return (
        "\n\n".join(
            [
                f"# Lesson {lesson}: answers",
                f"For the teacher. Reckoned from one box, {title}, outside {plan.outside}. A "
                "student's own box gives other numbers; the slips are of the same kind.",
                *(["## Guess first", solution(opening)] if opening else []),
                f"## {title}",
                *_all(mine),
                "## Other sizes, the same for a whole class",
                f'Let everybody change the cell under *Your turn* to `lesson.your_turn("{seed}")` '
                "and press *Other sizes* once. Whoever starts from the same box is asked this:",
                *_all(other),
            ]
        )
        + "\n"
    )


def _all(questions: Sequence[Question]) -> list[str]:
    return [solution(question) for question in questions]


def _plain(text: str) -> str:
    """Text that Markdown leaves as it is; a star or a backtick would be taken for a mark."""
    for mark in ("*", "`", "_", "<"):
        text = text.replace(mark, f"\\{mark}")
    return text.strip()


def _cell(text: str) -> str:
    return _plain(text).replace("|", "\\|")
