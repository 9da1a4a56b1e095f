"""A box that nothing closes: no part, drawing or sentence speaks of a lid but to say so."""

import re
from collections.abc import Iterator
from datetime import date

from tests.boxes import ears, inch_postcard, postcard
from tests.oracle.designs import ARRANGEMENTS, random_box
from toolkit import explore
from toolkit.box import Choices
from toolkit.files import box_from_text
from toolkit.handout import handout
from toolkit.lesson import lesson1, lesson4
from toolkit.lesson.scene import ImpossibleError
from toolkit.pictures import (
    box_apart,
    corner_picture,
    section_across,
    section_along,
    sheet_pages,
)
from toolkit.plan import Plan, as_data, plan, rubric_table, tables
from toolkit.stock import BoxLayouts, blanks_of
from toolkit.study.answers import first_guess
from toolkit.study.own_box import OwnBoards
from toolkit.study.questions import draw, lessons_with_questions

TRAY = """
title = "Bench tray"
[size]
inside_length = "180 mm"
inside_width = "120 mm"
inside_height = "40 mm"
[thickness]
side = "12 mm"
end = "12 mm"
bottom = "8 mm"
[lid]
kind = "none"
"""
SAYS_SO = re.compile(r"has no(ne| lid)\b|no lid groove|no such lid", re.IGNORECASE)


def tray(choices: Choices) -> Choices:
    return choices.having({"lid.kind": "none", "thickness.lid": None})


def printed(html: str) -> list[str]:
    """The texts of a drawing or a page."""
    bare = re.sub(r"<(script|style)\b.*?</\1>", "", html, flags=re.DOTALL)
    return re.findall(r">([^<]+)<", bare)


def _texts(made: Plan) -> Iterator[object]:
    yield from (row for row in made.findings if row.code != "good-closure")
    yield from tables.whole_plan(made)
    if not made.design.exists:
        return
    pictures = [
        section_across(made),
        section_along(made),
        box_apart(made),
        box_apart(made, open=0.0),
    ]
    pictures += [corner_picture(made, which="back"), corner_picture(made, which="front")]
    for picture in pictures:
        yield picture.sentence
        yield from printed(picture.svg)
    for page in sheet_pages(made):
        yield from printed(page.svg)
    for lesson in lessons_with_questions():
        for question in draw(made, lesson=lesson):
            yield question.asks, question.working, question.nudge
            yield from (slip.hint for slip in question.slips)
        if (guess := first_guess(made, lesson=lesson)) is not None:
            yield guess.asks, guess.working
    for block in (lesson1.worked, lesson4.worked, lesson4.carry, lesson4.limits):
        yield block(made)
    for block in (lesson4.stages, lesson4.edges, lesson4.months, lesson4.ploughing):
        yield block(made)
    laid = BoxLayouts(blanks_of(made.parts), OwnBoards().load().boards).laid()
    yield laid.proof(made.choices.rule)


def _scenes(choices: Choices) -> Iterator[object]:
    for lesson in lessons_with_questions():
        for scene in getattr(explore, f"lesson{lesson}").scenes.values():
            try:
                view = scene.view(choices)
            except ImpossibleError as error:
                yield f"{error} {error.there_is}"
                continue
            if scene.name == "fit":
                assert "this box has none" in str(view.numbers.rows)
                continue
            yield from (control.label for control in scene.live(choices))
            yield view.picture.sentence
            yield view.numbers
            yield from (row for row in view.findings if row.code != "good-closure")
            yield from printed(view.picture.svg)


def test_nothing_of_a_tray_speaks_of_a_lid() -> None:
    boxes = [tray(make()) for make in (postcard, inch_postcard, ears)]
    kinds = [row for row in ARRANGEMENTS if row.lid == "none"]
    boxes += [tray(random_box(kind, seed)) for kind in kinds for seed in range(3)]
    worked = 0
    for choices in boxes:
        made = plan(choices)
        data = as_data(made)
        assert data["grooves"]["lid"] is None
        assert not [part for part in data["parts"] if part["name"] in ("lid", "batten")]
        if made.design.exists:
            assert made.design.frame.front_height.value == made.design.frame.wall_height.value
            worked += 1
        texts = [*_texts(made), *(_scenes(choices) if choices is boxes[0] else ())]
        spoken = [text for text in texts if re.search(r"\blids?\b", str(text), re.IGNORECASE)]
        assert [text for text in spoken if not SAYS_SO.search(str(text))] == []
    assert worked >= 6


def test_the_handout_of_a_tray_has_no_step_for_a_lid() -> None:
    made = plan(box_from_text(TRAY))
    assert made.works
    words = [" ".join(text.split()) for text in printed(handout(made, day=date(2026, 11, 25)))]
    said = [text for text in words if re.search(r"\blids?\b", text, re.IGNORECASE)]
    # The finding's own heading, and its sentence.
    assert [text for text in said if text != "lid" and not SAYS_SO.search(text)] == []
    assert any("Plane the bottom" in text for text in words)


def test_keys_of_a_lid_are_ignored_in_one_line() -> None:
    text = TRAY.replace('bottom = "8 mm"\n', 'bottom = "8 mm"\nlid = "9 mm"\n')
    text += '[groove]\ntop_edge = "7 mm"\n[panels]\nlid_tongue = "0.5 mm"\nacross = "2 mm"\n'
    stray, clean = plan(box_from_text(text)), plan(box_from_text(TRAY))
    said = [row.message for row in stray.findings if "Ignored" in row.message]
    assert len(said) == 1
    assert said[0].endswith("Ignored: thickness.lid, groove.top_edge, panels.lid_tongue.")
    assert not [row for row in clean.findings if "Ignored" in row.message]
    assert stray.part("side").width.value == clean.part("side").width.value


def test_a_trays_rubric_asks_for_no_play() -> None:
    assert "side play" not in str(rubric_table(plan(box_from_text(TRAY))).rows)
    assert "side play" in str(rubric_table(plan(postcard())).rows)
