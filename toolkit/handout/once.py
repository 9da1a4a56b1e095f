"""A thing is said once: what stands in an earlier section already is only pointed to."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from html import escape

from toolkit.handout.sections import Section

_THING = re.compile(r"<(figure|table)\b.*?</\1>", re.DOTALL)
_DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
_ROWS = re.compile(r"<thead>.*?</tbody>", re.DOTALL)
_CAPTION = re.compile(r"<caption>(.*?)</caption>", re.DOTALL)
_HEADED = re.compile(r"<h([2-6])>(.*?)</h\1>|<caption>.*?</caption>", re.DOTALL)
_SEE = re.compile(r'(?:<div class="bench-view">)?<p class="see">(.*?)</p>(?:</div>)?')
_TAG = re.compile(r"<[^>]+>")
# A drawing's regions are named anew for each place of a page.
_PLACE = re.compile(r"(c\d+-[0-9a-f]{8})-[a-z]+")


def said_once(sections: Sequence[Section]) -> list[Section]:
    """The sections with every drawing and table where it stands first, and pointers after that.

    A table under a heading of the same words keeps its caption for those who hear the page.

    Parameters
    ----------
    sections : sequence of Section
        In the order of the page; they are numbered from 1 in it.

    Source
    ------
    The workbook's own.
    """
    seen: dict[str, tuple[int, Section]] = {}
    told = []
    for number, section in enumerate(sections, start=1):

        def once(match: re.Match[str], here: tuple[int, Section] = (number, section)) -> str:
            marks = _marks(match[0])
            if marks in seen:
                return _pointer(match[0], *seen[marks], here=here[0])
            seen[marks] = here
            return match[0]

        blocks: list[str] = []
        heading = section.heading
        for block in section.blocks:
            text, heading = _headed(_THING.sub(once, block), heading)
            said = _SEE.fullmatch(text.strip())
            if said and blocks and blocks[-1].rstrip().endswith("</p>"):
                # It ends the paragraph that leads up to it.
                text = f"{blocks.pop().rstrip().removesuffix('</p>')} <em>{said[1]}</em></p>"
            blocks.append(text)
        told.append(replace(section, blocks=tuple(blocks)))
    return told


def _marks(thing: str) -> str:
    """What is drawn or listed, whatever it is called."""
    found = _DRAWING.search(thing) or _ROWS.search(thing)
    return _PLACE.sub(r"\1", found[0] if found else thing)


def _pointer(thing: str, number: int, section: Section, *, here: int) -> str:
    caption = _CAPTION.search(thing)
    what = f"The table “{_TAG.sub('', caption[1])}”" if caption else "This drawing"
    if number == here:
        return f'<p class="see">{what} stands above.</p>'
    link = f'<a href="#{section.id}">{escape(section.short or section.heading)}</a>'
    return f'<p class="see">{what} is in section {number}, {link}.</p>'


def _headed(block: str, heading: str) -> tuple[str, str]:
    """A block whose captions do not repeat the heading above them, and its last heading."""
    above = heading

    def plain(match: re.Match[str]) -> str:
        nonlocal above
        words = _TAG.sub("", match[0])
        if not match[0].startswith("<caption"):
            above = words
        elif words.casefold() == above.casefold():
            return f'<caption class="heard">{words}</caption>'
        return match[0]

    return _HEADED.sub(plain, block), above
