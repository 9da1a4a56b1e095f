"""What is the same for every box of a kind: cautions, glossary, mishaps, steps and rubric."""

from __future__ import annotations

from toolkit.document import Listing, TableBlock, Words
from toolkit.plan import Plan
from toolkit.results import Table, read_table

LOCAL_RULES = (
    "Local rules and the shop's licensed or insured practice come first. Where they differ from "
    "this sheet, follow them."
)
_STEP = '<li><span class="tick" aria-hidden="true"></span>{}. <em>Before you go on: {}.</em></li>'


def _rows(table: str, *columns: str, plan: Plan | None = None) -> tuple[tuple[str, ...], ...]:
    """Some columns of a table; with a plan only the rows for a box with its lid, or without."""
    rows = read_table(f"handout/{table}.csv")
    if plan is not None:
        rows = tuple(row for row in rows if row["lid"] in ("", "yes" if plan.design.lids else "no"))
    return tuple(tuple(row[column] for column in columns) for row in rows)


def cautions() -> Listing:
    """The usual cautions of the trade, for the first page."""
    return Listing(_rows("cautions", "name", "words"), "<dt>{}</dt><dd>{}</dd>", "<dl>{}</dl>")


def glossary(words: Words) -> Listing:
    """The trade's words, by the alphabet of the English that is asked for."""
    rows = tuple(sorted(_rows("glossary", words, "meaning")))
    return Listing(rows, "<dt>{}</dt><dd>{}.</dd>", '<dl class="glossary">{}</dl>')


def mishaps(plan: Plan) -> TableBlock:
    """What went wrong, and what can still be done."""
    note = "Common practice, no source."
    columns = ("what happened", "what to do")
    rows = _rows("mishaps", "what", "do", plan=plan)
    return TableBlock(Table("What went wrong", columns, rows, note))


def steps(plan: Plan) -> Listing:
    """The steps of the weekend with a box to tick, each with the test before the next one."""
    rows = _rows("steps", "step", "test", plan=plan)
    return Listing(rows, _STEP, '<ol class="steps">{}</ol>')


def rubric(plan: Plan) -> TableBlock:
    """Measurable bands, with room for what was measured."""
    columns = ("what", "excellent", "pass", "rework")
    rows = tuple((*row, "") for row in _rows("rubric", *columns, plan=plan))
    note = "Custom: common practice, no source. Between pass and rework: accepted after a note."
    return TableBlock(Table("How good is it", (*columns, "mine"), rows, note))
