"""What a lesson opens with, and a teacher's answers as Markdown, with the hints of all slips."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from toolkit.box import lead_error
from toolkit.measures import MM_PER_INCH
from toolkit.plan import Plan, plan as planned
from toolkit.results import capital
from toolkit.smoothing import shadow_length
from toolkit.study.asking import Asking, NotAskedError, told_apart
from toolkit.study.guesses import bench_things
from toolkit.study.lesson1_water import panel_movement
from toolkit.study.lesson2_questions import crosscut_bow
from toolkit.study.lesson4_sizes import bottom_width, lid_width
from toolkit.study.lesson5_questions import shadow
from toolkit.study.marking import Question, Slip
from toolkit.study.questions import draw

# A long board of the rack and a piece of it; a plane track, and a lamp low over the bench.
LONG_BOARD, BOW, PIECE = 2000.0, 12.0, 700.0  # [mm]
STEPS, LAMP = {"mm": 0.02, "in": MM_PER_INCH / 1000}, 5.0  # [mm, degrees]
DEEPER = {"mm": 1.0, "in": MM_PER_INCH / 32}
LEAD = 1.0  # [deg]


def _damp_lid(plan: Plan) -> Question:
    """How much wider a flat-sawn lid is in a damp summer."""
    asked = panel_movement(Asking(planned(plan.choices.having({"wood.rings": 0.0}))))
    panel = plan.design.uppermost
    wide = plan.choices.rule.show(panel.width.value)
    told = " Its movement is from memory." if panel.season.caution else ""
    return replace(
        asked,
        id="lesson1.damp-lid",
        how="",
        asks=f"A flat-sawn {panel.name} {wide} wide is fitted in a heated room. How much wider is "
        f"it in a damp August?{told}",
    )


def _crosscut_bow(plan: Plan) -> Question:
    """How much bow is left in a third of a board."""
    rule = plan.choices.rule
    return replace(
        crosscut_bow(Asking(plan), (PIECE, LONG_BOARD, BOW)),
        id="lesson2.crosscut-bow",
        how="",
        asks=f"A board {rule.show(LONG_BOARD)} long has {rule.show(BOW)} of bow. How much bow is "
        f"left in a piece of {rule.show(PIECE, fineness='rough')}?",
    )


def leaning_saw(plan: Plan) -> Question:
    """How far a leaning saw comes out of its line."""
    rule, thick = plan.choices.rule, plan.design.tail_board_thickness[0]
    nudge = "It feels like more: one degree is about 1 in 57 of the board's thickness."
    # A card and a coin are what the question offers beside the hair that is right.
    things = [row for row in bench_things() if row.read_in in ("both", rule.units)]
    card_and_coin = [row.thickness for row in things if 0.5 < row.thickness < 3.0]
    answer = round(lead_error(thick, lead=LEAD), 2)
    return Question(
        id="lesson3.leaning-saw",
        asks=f"Your saw leans one degree as it goes through a board {rule.show(thick)} thick. "
        "How far off its line is it on the other face: hair, card or coin?",
        answer=answer,
        working=f"{rule.show(thick)} × tan {LEAD:g}° = {rule.exact(answer)}",
        rule=rule,
        fineness="joints",
        slips=tuple(Slip(thickness, nudge) for thickness in card_and_coin),
        senses=("too far", "too little"),
        nudge=nudge,
    )


def _deeper_groove(plan: Plan) -> Question:
    """How much wider a panel is for grooves that are deeper."""
    depth, name = plan.design.choices.groove.depth, plan.design.upper_panel.name
    rule = plan.choices.rule
    more = DEEPER[rule.units]
    width = bottom_width if plan.design.sliding_lid is None else lid_width
    now = width(Asking(plan))
    then = width(Asking(planned(plan.choices.having({"groove.depth": depth + more}))))
    before = {slip.hint: slip.value for slip in now.slips}
    grown = [
        Slip(slip.value - before[slip.hint], slip.hint)
        for slip in then.slips
        if slip.hint in before
    ]
    answer = then.answer - now.answer
    return replace(
        then,
        id="lesson4.deeper-groove",
        how="",
        asks=f"Both {name} grooves are ploughed {rule.exact(more)} deeper. How much wider must "
        f"the {name} be?",
        answer=answer,
        working=f"2 × {rule.exact(more)} = {rule.exact(answer)}: the {name} sits in two grooves",
        slips=tuple(grown),
    )


def _shadow_of_a_track(plan: Plan) -> Question:
    """How long the shadow of a plane track is."""
    times = shadow(Asking(plan))
    rule = plan.choices.rule
    step = STEPS[rule.units]
    answer = shadow_length(step, lamp_height=LAMP)
    return replace(
        times,
        id="lesson5.shadow",
        how="",
        asks=f"The corner of an iron left a step {rule.fine(step)} high. A lamp shines across it "
        f"from {LAMP:g}° above the bench. How long is the step's shadow?",
        kind="length",
        fineness="joints",
        answer=answer,
        working=f"{rule.fine(step)} ÷ tan {LAMP:g}° = {rule.fine(answer)}",
        slips=tuple(Slip(slip.value * step, slip.hint) for slip in times.slips),
    )


_GUESSES: dict[int, Callable[[Plan], Question]] = {
    1: _damp_lid,
    2: _crosscut_bow,
    3: leaning_saw,
    4: _deeper_groove,
    5: _shadow_of_a_track,
}


def first_guess(plan: Plan, *, lesson: int) -> Question | None:
    """The question that a lesson opens with; None where this box has no such thing.

    Parameters
    ----------
    plan : Plan
        The box, worked out. [mm]
    lesson : int
        Number of the lesson.
    """
    if lesson not in _GUESSES or not plan.design.exists:
        return None
    try:
        return told_apart(_GUESSES[lesson](plan))
    except NotAskedError:
        return None


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
                *map(solution, mine),
                "## Other sizes, the same for a whole class",
                f'Let everybody change the cell under *Your turn* to `lesson.your_turn("{seed}")` '
                "and press *Other sizes* once. Whoever starts from the same box is asked this:",
                *map(solution, other),
            ]
        )
        + "\n"
    )


def _plain(text: str) -> str:
    """Text that Markdown leaves as it is; a star or a backtick would be taken for a mark."""
    for mark in ("*", "`", "_", "<"):
        text = text.replace(mark, f"\\{mark}")
    return text.strip()


def _cell(text: str) -> str:
    return _plain(text).replace("|", "\\|")
