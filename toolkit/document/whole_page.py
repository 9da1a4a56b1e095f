"""A whole page: a template filled with sections, in one English."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files as package_files
from typing import Any

from toolkit.document.blocks import Block, Pointer, Sentence, TextBlock
from toolkit.document.edition import Edition
from toolkit.document.shown import TableBlock
from toolkit.results import Table

PAPERS = {"a4": "A4", "letter": "letter"}


@cache
def file_of(room: str, name: str) -> str:
    """A template or a style sheet that lies in a room."""
    return package_files(f"toolkit.{room}").joinpath(name).read_text(encoding="utf-8")


def css_text(text: str) -> str:
    """Text as a CSS string: a title may hold quotes, and nothing may end the style sheet."""
    safe = "".join(
        char if char.isalnum() or char in " .,:·-" else f"\\{ord(char):x} " for char in text
    )
    return f'"{safe}"'


def page(template: str, *, spell: Callable[[str], str], **values: Any) -> str:
    """A template filled; what is put into it is escaped.

    Its filters: ``spelled`` for our own words, ``shown`` for blocks, ``markup`` for HTML.
    """
    # Imported here: a class's run that finds nothing to do need not load it.
    import jinja2
    from markupsafe import Markup

    def shown(block: Block) -> Markup:
        return Markup(block.html(Edition(spell)))

    environment = jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined)
    environment.filters |= {
        "css_text": lambda text: Markup(css_text(text)),
        "spelled": spell,
        "shown": shown,
        "markup": Markup,
    }
    return environment.from_string(template).render(**values)


@dataclass(frozen=True, slots=True)
class Section:
    """A heading, a line of prose and blocks; ``short`` is its name in the contents."""

    id: str
    heading: str
    words: str
    blocks: tuple[Block, ...]
    short: str = ""

    @classmethod
    def of(cls, id: str, heading: str, words: str = "", *content: Block | Table | str) -> Section:
        """A section of blocks, tables and sentences; an empty table or sentence is left out."""
        held = (one for one in content if (one.rows if isinstance(one, Table) else one))
        return cls(id, heading, words, tuple(map(_block, held)))

    @property
    def name(self) -> str:
        """What the contents and pointers call it."""
        return self.short or self.heading


def _block(content: Block | Table | str) -> Block:
    if isinstance(content, Table):
        return TableBlock(content)
    return Sentence(content) if isinstance(content, str) else content


def shown_once(sections: Sequence[Section]) -> tuple[Section, ...]:
    """Sections with every drawing and table where it stands first, and pointers after that.

    A table under a heading of the same words keeps its caption for those who hear the page.

    Parameters
    ----------
    sections : sequence of Section
        In the order of the page; they are numbered from 1 in it.

    Returns
    -------
    tuple of Section
        As many sections in the same order.
    """
    first: dict[object, tuple[int, Section]] = {}
    found = []
    for number, section in enumerate(sections, start=1):
        blocks: list[Block] = []
        heading = section.heading
        for block in section.blocks:
            if block.shows is not None and block.shows in first:
                _point(blocks, _pointer(block, *first[block.shows], here=number))
                continue
            first[block.shows] = (number, section)
            heading = block.heading or heading
            blocks.append(block.under(heading) if isinstance(block, TableBlock) else block)
        found.append(replace(section, blocks=tuple(blocks)))
    return tuple(found)


def _pointer(block: Block, number: int, section: Section, *, here: int) -> Pointer:
    table = isinstance(block, TableBlock)
    what = f"The table “{block.table.title}”" if table else "This drawing"  # type: ignore[attr-defined]
    return Pointer(what) if number == here else Pointer(what, number, section.id, section.name)


def _point(blocks: list[Block], pointer: Pointer) -> None:
    """Put a pointer behind the paragraph that leads up to it, or on a line of its own."""
    last = blocks[-1] if blocks else None
    if isinstance(last, TextBlock):
        blocks[-1] = last.pointing(pointer)
    else:
        blocks.append(pointer)
