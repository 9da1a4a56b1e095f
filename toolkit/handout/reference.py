"""The pages that are the same for everyone: glossary, mishaps, steps and rubric."""

from __future__ import annotations

from html import escape

from toolkit.handout.words import Words
from toolkit.pages import as_html
from toolkit.results import Table, read_table


def glossary(words: Words) -> str:
    """The trade's words, by the alphabet of the English that is asked for.

    Parameters
    ----------
    words : str
        ``"us"`` or ``"british"``.

    Source
    ------
    Named in the table; mostly common practice.
    """
    listed = sorted((row[words], row["meaning"]) for row in read_table("handout/glossary.csv"))
    items = "".join(
        f"<dt>{escape(term)}</dt><dd>{escape(meaning)}.</dd>" for term, meaning in listed
    )
    return f'<dl class="glossary">{items}</dl>'


def mishaps() -> str:
    """What went wrong, and what can still be done."""
    found = tuple((row["what"], row["do"]) for row in read_table("handout/mishaps.csv"))
    note = "Common practice, no source."
    return as_html(Table("What went wrong", ("what happened", "what to do"), found, note))


def steps() -> str:
    """The steps with a box to tick, and the test before the next one."""
    items = "".join(
        f'<li><span class="tick" aria-hidden="true"></span>{escape(row["step"])}. '
        f"<em>Before you go on: {escape(row['test'])}.</em></li>"
        for row in read_table("handout/steps.csv")
    )
    return f'<ol class="steps">{items}</ol>'


def rubric() -> str:
    """Measurable bands, with room for what was measured."""
    found = tuple(
        (row["what"], row["excellent"], row["pass"], row["rework"], "")
        for row in read_table("handout/rubric.csv")
    )
    note = "Custom: common practice, no source. Between pass and rework: accepted after a note."
    return as_html(
        Table("How good is it", ("what", "excellent", "pass", "rework", "mine"), found, note)
    )
