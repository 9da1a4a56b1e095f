"""What is the same for everyone: glossary, mishaps, steps and rubric."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

from toolkit.document import PAPER, Block, Edition, TableBlock, Words
from toolkit.results import Table, read_table


@dataclass(frozen=True, slots=True)
class Glossary(Block):
    """Terms and their meanings."""

    terms: tuple[tuple[str, str], ...]

    def html(self, edition: Edition = PAPER) -> str:
        """It as a list of terms."""
        items = "".join(
            f"<dt>{escape(edition.spell(term))}</dt><dd>{escape(edition.spell(meaning))}.</dd>"
            for term, meaning in self.terms
        )
        return f'<dl class="glossary">{items}</dl>'


@dataclass(frozen=True, slots=True)
class Steps(Block):
    """Steps with a box to tick, each with the test before the next one."""

    steps: tuple[tuple[str, str], ...]

    def html(self, edition: Edition = PAPER) -> str:
        """It as a numbered list."""
        items = "".join(
            f'<li><span class="tick" aria-hidden="true"></span>{escape(edition.spell(step))}. '
            f"<em>Before you go on: {escape(edition.spell(test))}.</em></li>"
            for step, test in self.steps
        )
        return f'<ol class="steps">{items}</ol>'


def glossary(words: Words) -> Glossary:
    """The trade's words, by the alphabet of the English that is asked for."""
    rows = read_table("handout/glossary.csv")
    return Glossary(tuple(sorted((row[words], row["meaning"]) for row in rows)))


def mishaps() -> TableBlock:
    """What went wrong, and what can still be done."""
    found = tuple((row["what"], row["do"]) for row in read_table("handout/mishaps.csv"))
    note = "Common practice, no source."
    return TableBlock(Table("What went wrong", ("what happened", "what to do"), found, note))


def steps() -> Steps:
    """The steps of the weekend."""
    rows = read_table("handout/steps.csv")
    return Steps(tuple((row["step"], row["test"]) for row in rows))


def rubric() -> TableBlock:
    """Measurable bands, with room for what was measured."""
    found = tuple(
        (row["what"], row["excellent"], row["pass"], row["rework"], "")
        for row in read_table("handout/rubric.csv")
    )
    note = "Custom: common practice, no source. Between pass and rework: accepted after a note."
    columns = ("what", "excellent", "pass", "rework", "mine")
    return TableBlock(Table("How good is it", columns, found, note))
