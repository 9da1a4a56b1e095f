"""The blocks that stand only once in a document: figures and tables."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Sequence
from dataclasses import dataclass, replace
from html import escape
from io import BytesIO
from typing import TYPE_CHECKING, Any, Protocol

from toolkit.document.blocks import Block
from toolkit.document.edition import PAPER, Edition
from toolkit.document.tables import as_html, as_text
from toolkit.results import Table, TaggedSize

if TYPE_CHECKING:
    from toolkit.pictures import Picture


@dataclass(frozen=True, slots=True)
class Figure(Block):
    """A picture with its sentence under it."""

    picture: Picture

    @property
    def shows(self) -> object:
        """The drawing."""
        return self.picture.svg

    def __repr__(self) -> str:
        return self.picture.sentence

    def html(self, edition: Edition = PAPER) -> str:
        """It as one figure; a screen's own look is on the element itself."""
        look = ' class="bench-view" style="margin:0"' if edition.screen else ""
        svg = self.picture.with_unique_ids(edition.place).svg
        said = escape(edition.spell(self.picture.sentence))
        return f"<figure{look}>{svg}<figcaption>{said}</figcaption></figure>"


class PlottedFigure(Protocol):
    """A figure of the drawing library, as far as a page needs it."""

    axes: Sequence[Any]

    def savefig(self, file: BytesIO, **how: Any) -> object:
        """Draw it into a file."""
        ...

    def get_suptitle(self) -> str:
        """The words over all of it."""
        ...


@dataclass(frozen=True, slots=True)
class Plot(Block):
    """A figure that a teacher drew with the drawing library; its title is heard in its place."""

    figure: PlottedFigure

    def __repr__(self) -> str:
        titles = (self.figure.get_suptitle(), *(axes.get_title() for axes in self.figure.axes))
        return next(filter(None, titles), "A figure without a title.")

    def html(self, edition: Edition = PAPER) -> str:
        """It as a picture that the page carries itself."""
        png = BytesIO()
        self.figure.savefig(png, format="png", dpi=200, bbox_inches="tight")
        data = b64encode(png.getvalue()).decode("ascii")
        alt = escape(repr(self), quote=True)
        return f'<figure><img src="data:image/png;base64,{data}" alt="{alt}"></figure>'


@dataclass(frozen=True, slots=True)
class TableBlock(Block):
    """A table. One whose caption is ``heard`` stands under a heading of the same words."""

    table: Table
    heard: bool = False
    kept: bool = False

    @property
    def shows(self) -> object:
        """What is listed, whatever it is called."""
        return self.table.columns, self.table.rows

    @property
    def sizes(self) -> tuple[TaggedSize, ...]:
        """The sizes among its cells, row by row."""
        cells = (cell for row in self.table.rows for cell in row)
        return tuple(size for cell in cells for size in getattr(cell, "sizes", ()))

    def under(self, heading: str) -> TableBlock:
        """The same table below a heading, whose words its caption does not repeat."""
        return replace(self, heard=self.table.title.casefold() == heading.casefold())

    def __repr__(self) -> str:
        return as_text(self.table)

    def html(self, edition: Edition = PAPER) -> str:
        """It as one table."""
        table = as_html(self.table, heard=self.heard, spell=edition.spell)
        if edition.screen:
            return f'<div class="bench-view">{table}</div>'
        return f'<div class="kit">{table}</div>' if self.kept else table


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
