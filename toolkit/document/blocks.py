"""The blocks of a document that hold words: sentences, prose, headings, lists, findings."""

from __future__ import annotations

from dataclasses import dataclass, replace
from html import escape
from typing import Self

from toolkit.document.edition import PAPER, SCREEN, SHEET, Edition
from toolkit.document.findings import findings_html, findings_text
from toolkit.results import Finding, SizedText, TaggedSize


class Block:
    """A piece of a document."""

    __slots__ = ()

    @property
    def shows(self) -> object:
        """What stands only once in a document."""
        return None

    @property
    def heading(self) -> str:
        """The last heading in it, or nothing."""
        return ""

    @property
    def sizes(self) -> tuple[TaggedSize, ...]:
        """The sizes that stand in it, each tagged by part and kind."""
        return ()

    def html(self, edition: Edition = PAPER) -> str:
        """It as HTML, every text in it escaped."""
        raise NotImplementedError

    def _repr_html_(self) -> str:
        return SHEET + self.html(SCREEN)


@dataclass(frozen=True, slots=True)
class Pointer(Block):
    """Where something stands that is not shown again: in a section, or above in the same one."""

    what: str
    number: int = 0
    id: str = ""
    section: str = ""

    def inline(self, edition: Edition) -> str:
        """It for the end of a paragraph."""
        what = escape(edition.spell(self.what))
        if not self.id:
            return f"{what} stands above."
        link = f'<a href="#{self.id}">{escape(edition.spell(self.section))}</a>'
        return f"{what} is in section {self.number}, {link}."

    def html(self, edition: Edition = PAPER) -> str:
        """It as a paragraph of its own."""
        return f'<p class="see">{self.inline(edition)}</p>'


@dataclass(frozen=True, slots=True)
class TextBlock(Block):
    """A block of words; ``typed`` by somebody, it keeps its spelling."""

    text: str
    typed: bool = False
    pointer: Pointer | None = None
    sizes: tuple[TaggedSize, ...] = ()

    @classmethod
    def of(cls, *pieces: str) -> Self:
        """Words with sizes between them, one after another."""
        words = SizedText.of(*pieces)
        return cls(str(words), sizes=words.sizes)

    def __repr__(self) -> str:
        return self.text

    def spelled(self, edition: Edition) -> str:
        """The words in the edition's English."""
        return self.text if self.typed else edition.spell(self.text)

    def pointing(self, pointer: Pointer) -> TextBlock:
        """The same words with a pointer behind them."""
        return replace(self, pointer=pointer)

    def _ended(self, paragraph: str, edition: Edition) -> str:
        if self.pointer is None:
            return f"{paragraph}</p>"
        return f"{paragraph} <em>{self.pointer.inline(edition)}</em></p>"


class Sentence(TextBlock):
    """A sentence, or a few, as one paragraph: read by people and by tests."""

    __slots__ = ()

    def html(self, edition: Edition = PAPER) -> str:
        """It as a paragraph."""
        return self._ended(f"<p>{escape(self.spelled(edition))}", edition)

    def _repr_html_(self) -> str:
        # No style sheet: a lesson's checked output is its words, not how they look.
        return self.html()


class Prose(TextBlock):
    """Markdown, its headings one level deeper than written: its title is a section's heading."""

    __slots__ = ()

    @property
    def heading(self) -> str:
        """The last heading in it, or nothing."""
        lines = [line for line in self.text.splitlines() if line.startswith("#")]
        return lines[-1].strip("# ") if lines else ""

    def html(self, edition: Edition = PAPER) -> str:
        """It as HTML."""
        # Imported here: a page without prose need not load a reader of markdown.
        from toolkit.document.markdown import html_of

        body = html_of(self.text, spell=str if self.typed else edition.spell)
        if self.pointer is None:
            return body
        paragraph = body.removesuffix("</p>")
        return (
            self._ended(paragraph, edition)
            if paragraph != body
            else f"{body}\n{self.pointer.html(edition)}"
        )


@dataclass(frozen=True, slots=True)
class Heading(Block):
    """A heading between blocks."""

    heading: str = ""
    level: int = 3

    def html(self, edition: Edition = PAPER) -> str:
        """It as HTML."""
        return f"<h{self.level}>{escape(edition.spell(self.heading))}</h{self.level}>"


@dataclass(frozen=True, slots=True)
class Listing(Block):
    """Rows of words: each is put into the HTML ``row``, escaped, and all of them into ``whole``."""

    rows: tuple[tuple[str, ...], ...]
    row: str = "<li>{}</li>"
    whole: str = "<ul>{}</ul>"

    def html(self, edition: Edition = PAPER) -> str:
        """It as a list."""
        rows = ([escape(edition.spell(words)) for words in row] for row in self.rows)
        return self.whole.format("".join(self.row.format(*row) for row in rows))


@dataclass(frozen=True, slots=True)
class FindingsBlock(Block):
    """What a maker would say, the worst four first, the rest folded: on a screen all good."""

    findings: tuple[Finding, ...]

    def __repr__(self) -> str:
        return findings_text(self.findings)

    def html(self, edition: Edition = PAPER) -> str:
        """It as a counted list."""
        return findings_html(self.findings, fold=edition.screen, spell=edition.spell)


@dataclass(frozen=True, slots=True)
class OtherHtml(Block):
    """HTML as it is: a page's own form, or what a teacher's object shows of itself."""

    markup: str

    def html(self, edition: Edition = PAPER) -> str:
        """It as it came."""
        return self.markup
