"""What a lesson shows for one state of its sliders, and how it is put on the page."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from html import escape

from toolkit.pages import as_html, as_text, findings_html
from toolkit.pictures import Picture
from toolkit.results import Finding, Table

_REGION = re.compile(r'(?<=[#"])c\d+-[0-9a-f]{8}')  # as a drawing names its regions

# One small sheet for every lesson: quiet, readable from the back of a room, and the same in
# JupyterLab, without code, and on paper.
SHEET = """
<style>
.bench-view { font-size: 15px; line-height: 1.45; color: #222; max-width: 60em; }
.bench-view svg { height: auto; display: block; }
.bench-view figcaption, .bench-say { margin: .4em 0 .8em; max-width: 46em; }
.bench-view table { border-collapse: collapse; margin: .6em 0; }
.bench-view caption, .bench-view caption h3 { margin: 0; font-size: 15px; text-align: left;
  font-weight: 600; padding: .3em 0; }
.bench-view summary { cursor: pointer; padding: .2em 0; }
.bench-view.bench-view th, .bench-view.bench-view td { text-align: left !important;
  font-size: 15px; padding: .15em .9em .15em 0;
  border-bottom: 1px solid #c9c2b6; vertical-align: top; font-weight: 400; }
.bench-view thead th { font-weight: 600; }
.bench-view .number { white-space: nowrap; }
.bench-view ul { margin: .3em 0; padding-left: 1.2em; }
.bench-view li p { margin: .15em 0; }
.bench-view .source { color: #555; font-size: .9em; }
.bench-impossible { border-left: 5px solid #9a2a1a; padding: .3em .8em; margin: .3em 0; }
.bench-right { border-left: 5px solid #222; padding: .2em .8em; }
.bench-hint { border-left: 5px dashed #222; padding: .2em .8em; }
</style>
"""


def placed(picture: Picture, place: str) -> Picture:
    """The same picture for another place of a page.

    Two pictures alike share the names of their regions. A browser takes a region by its name from
    the first of them, and none at all while that one is scrolled out of sight.

    Parameters
    ----------
    picture : Picture
        The picture.
    place : str
        A word for the place, letters only.
    """
    return replace(picture, svg=_REGION.sub(rf"\g<0>-{place}", picture.svg))


def spoken(text: str, look: str = "bench-say") -> str:
    """A sentence of a card as HTML, read out when it changes.

    Parameters
    ----------
    text : str
        The sentence.
    look : str
        ``bench-say``, ``bench-right`` or ``bench-hint``.
    """
    return f'<div class="bench-view"><p class="{look}" role="status">{escape(text)}</p></div>'


def _figure(picture: Picture) -> str:
    return (
        f'<figure class="bench-view" style="margin:0">{picture.svg}'
        f"<figcaption>{escape(picture.sentence)}</figcaption></figure>"
    )


@dataclass(frozen=True, slots=True)
class View:
    """A picture with its sentence, numbers with their workings, and findings.

    ``beside`` are pictures of the same state that belong under it.
    """

    picture: Picture
    numbers: Table
    findings: tuple[Finding, ...] = ()
    beside: tuple[Picture, ...] = ()

    @property
    def figure(self) -> str:
        """The picture and its sentence as one figure of HTML."""
        return _figure(self.picture)

    @property
    def words(self) -> str:
        """What is under it, the numbers and the findings, as HTML."""
        figures = [_figure(placed(picture, "beside")) for picture in self.beside]
        parts = [*figures, as_html(self.numbers)]
        if self.findings:
            parts.append(findings_html(self.findings, fold=True))
        return f'<div class="bench-view">{"".join(parts)}</div>'


class ImpossibleError(ValueError):
    """A combination of sliders that can't be; its text is the sentence shown.

    Parameters
    ----------
    sentence : str
        What can't be, and what to do.
    there_is : str
        The few words that come before it, by default those for a box.
    """

    def __init__(self, sentence: str, *, there_is: str = "No such box.") -> None:
        super().__init__(sentence)
        self.there_is = there_is


@dataclass(frozen=True, slots=True)
class Still:
    """A picture with its sentence, for paper and for readers without a mouse."""

    picture: Picture

    def _repr_html_(self) -> str:
        return SHEET + _figure(placed(self.picture, "still"))

    def __repr__(self) -> str:
        return self.picture.sentence


@dataclass(frozen=True, slots=True)
class Said:
    """Words of a lesson that are both read and tested."""

    text: str

    def _repr_html_(self) -> str:
        # No style sheet: a lesson's checked output is its words, not how they look.
        return f"<p>{escape(self.text)}</p>"

    def __repr__(self) -> str:
        return self.text


@dataclass(frozen=True, slots=True)
class Listed:
    """A table of a lesson, for screen and paper."""

    table: Table

    def _repr_html_(self) -> str:
        return f'{SHEET}<div class="bench-view">{as_html(self.table)}</div>'

    def __repr__(self) -> str:
        return as_text(self.table)
