"""The sections of a handout: a plan, its pictures, the bench's steps, in the order of use."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from toolkit.box.joinery import glue_up_steps, line_table, step_table, transfer_steps
from toolkit.document import (
    PAPER,
    Block,
    Bullets,
    Edition,
    Figure,
    FindingsBlock,
    Section,
    Sentence,
    TableBlock,
    Words,
)
from toolkit.handout import reference
from toolkit.handout.formulas import formulas
from toolkit.handout.lessons import Lesson
from toolkit.handout.what_if import WhatIf, rings_frames
from toolkit.handout.yours import if_yours_measures
from toolkit.pictures import (
    SheetPage,
    board_picture,
    box_apart,
    corner_picture,
    section_across,
    section_along,
    sheet_pages,
)
from toolkit.plan import Plan, tables
from toolkit.results import Finding, Table
from toolkit.stock import Board, BoxLayouts, blanks_of, cut_table, missing_sentences

NOTED = "What came out otherwise, why, and what to set differently for the next box."
LINES = 7  # for notes


@dataclass(frozen=True, slots=True)
class Lines(Block):
    """Lines to write on."""

    count: int = LINES

    def html(self, edition: Edition = PAPER) -> str:
        """It as empty rows."""
        return f'<div class="lines">{"<div></div>" * self.count}</div>'


@dataclass(frozen=True, slots=True)
class FullSize(Block):
    """A full-size sheet, on a page of its own."""

    page: SheetPage

    def html(self, edition: Edition = PAPER) -> str:
        """It as a page."""
        return f'<div class="sheet">{self.page.svg}</div>'


def _tables(*rows: Table) -> tuple[Block, ...]:
    return tuple(TableBlock(table) for table in rows if table.rows)


def _sources(findings: Iterable[Finding]) -> Block:
    named = sorted({part for row in findings for part in row.source.split("; ") if part})
    return Bullets(tuple(text for text in named if not text.startswith("edit ")))


def sections(
    plan: Plan,
    *,
    words: Words,
    lessons: Sequence[Lesson] = (),
    boards: Sequence[Board] = (),
    paper: str = "a4",
) -> list[Section]:
    """Everything between the cautions and the notes, in the order in which it is used."""
    rows = [*_numbers(plan)]
    if plan.design.exists:
        rows += [*_drawn(plan), *_bench(plan)]
        if boards:
            rows.append(_layout(plan, boards))
    rows += [lesson.section for lesson in lessons]
    rows += [*_reference(words), *_origins(plan), Section("notes", "Notes", NOTED, (Lines(),))]
    if plan.design.exists:
        pages = sheet_pages(plan, paper=paper)
        blocks = tuple(FullSize(page) for page in pages)
        said = "Print at 100 %. Measure the bars before you trust a sheet, then cut it out."
        rows.append(Section("sheets", "Full-size sheets", said, blocks))
    return rows


def _numbers(plan: Plan) -> Iterator[Section]:
    bad = any(row.level == "wont_work" for row in plan.findings)
    said = "Look at these before anyone saws." if bad else "Nothing here stops the box."
    yield Section("findings", "What a maker would say", said, (FindingsBlock(plan.findings),))
    lists = _tables(tables.cut_list(plan), tables.rough_list(plan))
    yield Section("lists", "Cut list and rough list", "", lists)


def _drawn(plan: Plan) -> Iterator[Section]:
    yield Section(
        "box",
        "The box",
        "Every part has its face mark, its edge mark and its number.",
        (Figure(box_apart(plan)),),
    )
    yield Section(
        "corners",
        "The corners",
        "Copy the pins from your own tails, never from here.",
        (
            Figure(corner_picture(plan, which="back")),
            Figure(corner_picture(plan, which="front")),
            *_tables(tables.tails(plan)),
        ),
    )
    yield Section(
        "grooves",
        "Grooves and panels",
        "",
        (
            Figure(section_across(plan)),
            Figure(section_along(plan)),
        ),
    )


def _bench(plan: Plan) -> Iterator[Section]:
    yield Section(
        "settings",
        "Gauge and plough settings",
        "Set each one once, try it on waste, and leave it set until the box is done.",
        _tables(tables.tool_settings(plan), line_table(plan.design)),
    )
    yield Section(
        "steps",
        "The steps",
        "Tick each one when its test is passed.",
        (
            reference.steps(),
            TableBlock(step_table(transfer_steps(plan.design), title="From tails to pins")),
            TableBlock(step_table(glue_up_steps(plan.design), title="Gluing up")),
        ),
    )
    yield Section(
        "yours",
        "If yours measures otherwise",
        "Wood is planed by hand: what is made is fact, and the rest follows from it.",
        _tables(if_yours_measures(plan)),
    )
    yield Section("season", "The season", "", tuple(_season(plan)))


def _season(plan: Plan) -> Iterator[Block]:
    """What the day was like, what the year will do, and a slider over the ring angle."""
    rooms = plan.choices.rooms
    yield Sentence(
        f"Reckoned for a bench at {rooms.make.temperature:g} °C and {rooms.make.humidity:g} %. "
        "On the day: temperature ______ humidity ______ date ________"
    )
    frames = rings_frames(plan)
    if frames:
        first = next(i for i, frame in enumerate(frames) if frame.own)
        yield WhatIf(frames, "rings", "What if the lid's rings stood at", first)


def _layout(plan: Plan, boards: Sequence[Board]) -> Section:
    """The parts on the boards that were given, with the saw cuts in order."""
    rule = plan.choices.rule
    laid = BoxLayouts(blanks_of(plan.parts), boards).laid()
    blocks: list[Block] = []
    for one in laid.boards:
        if one.sections:
            blocks += [
                Figure(board_picture(one.board, one, rule=rule)),
                TableBlock(cut_table(one, rule=rule)),
            ]
    blocks += map(Sentence, missing_sentences(laid, rule=rule))
    return Section("boards", "The parts on your boards", laid.proof(rule), tuple(blocks))


def _reference(words: Words) -> Iterator[Section]:
    yield Section("wrong", "When it goes wrong", "Stop first, and look.", (reference.mishaps(),))
    yield Section("good", "How good is it", "", (reference.rubric(),))
    yield Section("words", "The words", "", (reference.glossary(words),))


def _origins(plan: Plan) -> Iterator[Section]:
    workings = [*_tables(tables.workings(plan))]
    if plan.design.exists:
        workings += formulas(plan)
    yield Section("workings", "Where the numbers come from", "", tuple(workings))
    yield Section(
        "chosen",
        "Chosen and changed",
        "What the box file left to a rule, and which rules of thumb it changes.",
        _tables(tables.chosen(plan), tables.changed_customs(plan))
        or (Sentence("Nothing: every number is your own, and every custom is at its default."),),
    )
    yield Section("sources", "Sources", "", (_sources(plan.findings),))
