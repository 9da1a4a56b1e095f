"""The sections of a handout: a plan, its pictures, the steps at the bench, in the order of use."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from toolkit.box import (
    Choices,
    fitted_at,
    fitting_tables,
    glue_up_steps,
    line_table,
    making_told,
    step_table,
    transfer_steps,
)
from toolkit.document import (
    Block,
    Figure,
    FindingsBlock,
    Listing,
    OtherHtml,
    Section,
    TableBlock,
    Words,
)
from toolkit.handout.formulas import formula_blocks
from toolkit.handout.what_if import ring_angles
from toolkit.measures import MM_PER_INCH
from toolkit.pictures import (
    board_picture,
    box_apart,
    corner_picture,
    section_across,
    section_along,
    sheet_pages,
)
from toolkit.plan import (
    Plan,
    bench_steps_of,
    compare,
    plan,
    rows_for,
    rubric_table,
    tables,
    thick_boards,
)
from toolkit.results import Table, read_table, read_words
from toolkit.stock import Board, BoxLayouts, blanks_of, cut_table, missing_sentences, sawing

# What is measured at the bench, and the choice that stands for it.
_MEASURED = {
    "sides thicker": "thickness.side",
    "ends thicker": "thickness.end",
    "groove deeper": "groove.depth",
    "groove farther from the bottom edge": "groove.bottom_edge",
    "lap thicker": "corner.lap",
}


def _more(choices: Choices, key: str, step: float) -> Choices | None:
    value = choices.value(key)
    if not value:
        return None
    follows = {"corner.tail_length": None} if key == "corner.lap" else {}
    return choices.having({key: value + step, **follows})


def if_yours_measures(made: Plan) -> Table:
    """What a tenth of a millimetre, or 1/128 in, more in one place changes elsewhere."""
    rule = made.choices.rule
    step = 0.1 if rule.units == "mm" else MM_PER_INCH / 128
    settled = made.design.choices
    rows = []
    for words, key in _MEASURED.items():
        changed = _more(settled, key, step)
        if changed is None:
            continue
        differs = compare(made, plan(changed)).changes
        moves = [
            f"{row.where} {'+' if row.amount > 0 else '−'} {rule.exact(abs(row.amount))}"
            for row in differs
            if row.amount
        ]
        rows.append((words, "; ".join(moves) or "nothing else"))
    return Table(
        f"For each {rule.exact(step)} more",
        ("if yours has", "these change"),
        tuple(rows),
        note="Twice as much changes twice as much. What exists already stays: measure it, write "
        "it into your box file under [made], and work the rest out again.",
    )


LINES = 7  # for notes


def _section(name: str, *content: Block | Table | str, words: str = "") -> Section:
    row = read_words("handout/headings.toml")[name]
    return Section.of(name, row["heading"], words or row.get("words", ""), *content)


def in_order_of_use(
    plan: Plan,
    *,
    words: Words,
    lessons: Sequence[Section],
    boards: Sequence[Board],
    paper: str,
) -> Iterator[Section]:
    """Everything between the cautions and the end of the page."""
    bad = "" if plan.works else "Look at these before anyone saws."
    yield _section("findings", FindingsBlock(plan.findings), words=bad)
    yield _section("lists", tables.cut_list(plan), tables.rough_list(plan))
    if plan.design.exists:
        yield from _at_the_bench(plan)
        if boards:
            yield _layout(plan, boards)
    yield from lessons
    yield _section("wrong", mishaps(plan))
    yield _section("good", rubric_table(plan))
    yield _section("words", glossary(plan, words))
    yield from _origins(plan)
    yield _section("notes", OtherHtml(f'<div class="lines">{"<div></div>" * LINES}</div>'))
    if plan.design.exists:
        sheets = [f'<div class="sheet">{page.svg}</div>' for page in sheet_pages(plan, paper=paper)]
        yield _section("sheets", *map(OtherHtml, sheets))


def _at_the_bench(plan: Plan) -> Iterator[Section]:
    yield _section("box", Figure(box_apart(plan)))
    corners = (corner_picture(plan, which="back"), corner_picture(plan, which="front"))
    yield _section("corners", tables.tails(plan), *map(Figure, corners))
    yield _section("grooves", Figure(section_across(plan)), Figure(section_along(plan)))
    yield _section("settings", tables.tool_settings(plan), line_table(plan.design))
    yield _section(
        "steps",
        steps(plan),
        step_table(transfer_steps(plan.design), title="Tails, then pins"),
        step_table(glue_up_steps(plan.design), title="Gluing up"),
    )
    yield _section("yours", if_yours_measures(plan))
    yield from _season(plan)


def _season(plan: Plan) -> Iterator[Section]:
    """How wet the panels' wood is on the day, and the clearance that it then gets."""
    d, panel = plan.design, plan.design.upper_panel
    damp = fitted_at(d, panel=panel.name, moisture=panel.season.damp).clearance
    why = (
        f"Reckoned for wood at {making_told(plan.choices.rooms)}. What counts is the moisture of "
        "the wood, and it follows the air slowly, in weeks: after one damp day it is still dry, "
        f"and that day's air would leave a dry {panel.name} {plan.choices.rule.exact(damp)} of "
        "clearance. On the day, take the first of these that you have:"
    )
    ways = Listing(_rows("moisture", "way"), whole="<ol>{}</ol>")
    yield _section("season", why, ways, *fitting_tables(d), *ring_angles(plan))


def _layout(plan: Plan, boards: Sequence[Board]) -> Section:
    """The parts on the boards that were given, with the saw cuts in order."""
    rule = plan.choices.rule
    laid = BoxLayouts(blanks_of(plan.parts), boards, **sawing(rule)).laid()
    found: list[Block | Table | str] = []
    for one in laid.boards:
        if one.sections:
            drawing = board_picture(one.board, one, rule=rule)
            found += [Figure(drawing), cut_table(one, rule=rule)]
    found += missing_sentences(laid, rule=rule)
    if thick := thick_boards(plan, laid.boards):
        found.append(FindingsBlock(thick))
    return _section("boards", *found, words=laid.proof(rule))


def _origins(plan: Plan) -> Iterator[Section]:
    formulas = formula_blocks(plan) if plan.design.exists else ()
    yield _section("workings", tables.workings(plan), *formulas)
    nothing = "Nothing: every number is your own, and every custom is at its default."
    chosen, changed = tables.chosen(plan), tables.changed_customs(plan)
    yield _section("chosen", chosen, changed, "" if chosen.rows or changed.rows else nothing)
    named = {part for row in plan.findings for part in row.source.split("; ") if part}
    sources = tuple((text,) for text in sorted(named) if not text.startswith("edit "))
    yield _section("sources", Listing(sources))


LOCAL_RULES = (
    "Local rules and the shop's licensed or insured practice come first. Where they differ from "
    "this sheet, follow them."
)
_STEP = '<li><span class="tick" aria-hidden="true"></span>{}. <em>Before you go on: {}.</em></li>'


def _rows(table: str, *columns: str, plan: Plan | None = None) -> tuple[tuple[str, ...], ...]:
    """Some columns of a table; with a plan only the rows that speak of its box."""
    place = f"handout/{table}.csv"
    rows = read_table(place) if plan is None else rows_for(plan, place)
    return tuple(tuple(row[column] for column in columns) for row in rows)


def cautions() -> Listing:
    """The usual cautions of the trade, for the first page."""
    return Listing(_rows("cautions", "name", "words"), "<dt>{}</dt><dd>{}</dd>", "<dl>{}</dl>")


def glossary(plan: Plan, words: Words) -> Listing:
    """The trade's words, by the alphabet of the English that is asked for."""
    rows = tuple(sorted(_rows("glossary", words, "meaning", plan=plan)))
    return Listing(rows, "<dt>{}</dt><dd>{}.</dd>", '<dl class="glossary">{}</dl>')


def mishaps(plan: Plan) -> TableBlock:
    """What went wrong, and what can still be done."""
    note = "Common practice, no source."
    columns = ("what happened", "what to do")
    rows = _rows("mishaps", "what", "do", plan=plan)
    return TableBlock(Table("What went wrong", columns, rows, note))


def steps(plan: Plan) -> Listing:
    """The steps of the weekend with a box to tick, each with the test before the next one."""
    rows = tuple((row["step"], row["test"]) for row in bench_steps_of(plan))
    return Listing(rows, _STEP, '<ol class="steps">{}</ol>')
