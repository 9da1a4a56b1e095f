"""Formulas, written in LaTeX and set as MathML.

A browser draws MathML by itself and a screen reader can walk through it.
"""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

from toolkit.document.blocks import Block
from toolkit.document.edition import PAPER, Edition


@dataclass(frozen=True, slots=True)
class Formula(Block):
    """A formula: what it gives, its lines in LaTeX, what stands for what, and its source."""

    name: str
    lines: tuple[str, ...]
    where: str
    source: str

    @property
    def heading(self) -> str:
        """What it gives."""
        return self.name

    def html(self, edition: Edition = PAPER) -> str:
        """It as HTML, each line set on its own."""
        from latex2mathml.converter import convert

        spell = edition.spell
        lines = "".join(convert(spell(line), display="block") for line in self.lines)
        where = f"<p>{escape(spell(self.where))}</p>" if self.where else ""
        return (
            f'<div class="formula"><h4>{escape(spell(self.name))}</h4>{lines}{where}'
            f'<p class="source">Source: {escape(spell(self.source))}</p></div>'
        )
