"""Lesson 2, dimensioning: from a warped rough board to true parts by hand."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.lesson2_board import (
    ACROSS,
    ALONG,
    BOARD,
    CROSSCUT,
    WARP,
    long_board,
    planed,
    rough_table,
    stick_of,
    walls,
    yield_of,
)
from toolkit.explore.lesson2_planes import COARSE, FINE, MEDIUM, PLANES_SCENE
from toolkit.explore.lesson2_time import TIME
from toolkit.explore.made_form import MadeForm
from toolkit.explore.readings_form import ReadingsForm
from toolkit.explore.rescue_card import RescueCard
from toolkit.explore.scene import Scene
from toolkit.explore.view import Listed, Said, Still
from toolkit.explore.worked import own
from toolkit.pictures import board_inside, clock_picture, face_map, shavings_picture
from toolkit.plan import Plan
from toolkit.planes import JACK, SMOOTHER, TRY
from toolkit.results import Table
from toolkit.truing import (
    ORDERS,
    THICKNESS_FIRST,
    Warp,
    bench_time,
    crosscut_first,
    cut_to,
    least_strokes,
    order_of_work,
    planing_job,
)

GUESS = "lesson2.crosscut-bow"
SCENES: tuple[Scene, ...] = (WARP, CROSSCUT, PLANES_SCENE, TIME)


def _bow_left() -> float:
    """The bow that a piece of 700 mm keeps of the long board's. [mm]"""
    return cut_to(long_board(), length=700.0).bow


def guess() -> widgets.Widget:
    """Guess first: how much bow is left in a third of a board."""
    rule = own().choices.rule
    whole = long_board()
    return guess_card(
        GUESS,
        f"A board {rule.show(whole.length)} long has {rule.show(whole.bow)} of bow. How much bow "
        f"is left in a piece of {rule.show(700.0, fineness='rough')}?",
        hint="with its unit: 4 mm, 1/8 in",
    )


def worked() -> Said:
    """One worked by hand, then the same from the toolkit."""
    rule, whole = own().choices.rule, long_board()
    part = 700.0 / whole.length
    return Said(
        f"{rule.exact(whole.bow)} bow × ({rule.exact(700.0, unit=False)} ÷ "
        f"{rule.exact(whole.length, unit=False)})² = {rule.exact(whole.bow)} × {part**2:.4g} = "
        f"{rule.exact(round(_bow_left(), 2))}."
    )


def warp() -> Explorer:
    """The warped face and its sliders."""
    return Explorer(WARP)


def crosscut() -> Explorer:
    """The long board and what crosscutting first saves."""
    return Explorer(CROSSCUT)


def planes() -> Explorer:
    """Camber, depth and overlap."""
    return Explorer(PLANES_SCENE)


def time() -> Explorer:
    """How long a face takes, by the class's own pace."""
    return Explorer(TIME)


def readings() -> ReadingsForm:
    """A small table for the student's own readings of a face."""
    return ReadingsForm(own)


def made() -> MadeForm:
    """What was measured at the bench, kept as fact."""
    return MadeForm()


def _own_warp(box: Plan) -> Warp:
    length, width, _ = stick_of(box)
    return Warp(length, width, bow=1.5, cup=0.5, twist=1.3)


def face_still() -> Still:
    """The walls' stick from above, for paper."""
    box = own()
    drawn = planed(_own_warp(box))
    return Still(face_map(drawn, along=ALONG, across=ACROSS, rule=box.choices.rule))


def crosscut_still() -> Still:
    """The true board in the long one and in a piece of it, for paper."""
    box = own()
    rule, whole, thick = box.choices.rule, long_board(), BOARD[2]
    saved = crosscut_first(whole, thickness=thick, length=700.0, width=75.0)
    return Still(
        board_inside(
            whole,
            piece=cut_to(whole, length=700.0, width=75.0),
            thickness=thick,
            wanted=walls(box).thickness.value,
            rule=rule,
            sentence=saved.sentence(rule),
        )
    )


def planes_still() -> Still:
    """What three planes leave, for paper."""
    box = own()
    rule, width = box.choices.rule, walls(box).rough_width.value
    rows = [
        least_strokes(plane, width=width, remove=remove)
        for plane, remove in ((JACK, COARSE), (TRY, MEDIUM), (SMOOTHER, FINE))
    ]
    said = " ".join(row.sentence(rule) for row in rows)
    return Still(shavings_picture(rows, rule=rule, sentence=said))


def time_still() -> Still:
    """What one face of a side takes a practised hand and a learner, for paper."""
    side = walls(own())
    job = planing_job(COARSE, length=side.rough_length.value, width=side.rough_width.value)
    return Still(clock_picture(bench_time(job.count)))


def order(*steps: str) -> Listed:
    """The order of work for a side, with the test after each step.

    Parameters
    ----------
    *steps : str
        A teacher's own order: steps by name, or one name of an order. What must not come so
        early is said under the table.
    """
    box = own()
    rule, side = box.choices.rule, walls(box)
    named = ORDERS.get(steps[0]) if len(steps) == 1 else steps
    found = order_of_work(side, order=named or THICKNESS_FIRST)
    rows = tuple(
        (str(number), task.step.name, task.sentence(rule))
        for number, task in enumerate(found.tasks, start=1)
    )
    said = " ".join(row.sentence for row in found.findings if row.level != "good")
    others = f"Another order: {', '.join(repr(name) for name in ORDERS)}, or the steps by name."
    columns = ("step", "name", "what to do")
    title = "Order of work for a side, with its tests"
    return Listed(Table(title, columns, rows, note=said or others))


def rough() -> Listed:
    """Rough sizes that follow from the stick's own warp."""
    box = own()
    return Listed(rough_table(box, _own_warp(box)))


def compare() -> Said:
    """The guess beside the answer: bow goes with the square of the length."""
    return compare_guess(GUESS, own(), answer=_bow_left())


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(2, own=own, seed=seed)


def carry() -> Said:
    """What to carry to the bench: what the stick must give, and the first plane's setting."""
    box = own()
    rule = box.choices.rule
    length, width, thick = stick_of(box)
    gives = yield_of(_own_warp(box), thick)
    strokes = least_strokes(JACK, width=width, remove=COARSE)
    return Said(
        f"Walls' stick {rule.show(length, fineness='rough')} × {rule.show(width)} × "
        f"{rule.show(thick)}; warped like the one above it gives "
        f"{rule.exact(round(gives.program, 2))} for walls of "
        f"{rule.show(walls(box).thickness.value)}. Jack plane: {strokes.tracks} tracks side by "
        f"side, each {strokes.overlap:.0%} over the last. Crosscut first, then plane."
    )


def rescue() -> RescueCard:
    """Ways out of what went wrong with a wall, and of anything else."""
    return RescueCard(own, stages=("rough", "true"))
