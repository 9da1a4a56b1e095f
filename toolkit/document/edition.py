"""Whom a document is rendered for: a reader at a screen or one with the paper in hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

# One small sheet for every lesson: quiet, readable from the back of a room, and the same in
# JupyterLab and without code.
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


@dataclass(frozen=True, slots=True)
class Edition:
    """How blocks are rendered.

    ``spell`` is applied to the workbook's own words. On a ``screen`` what is good is folded away
    and each block carries the screen's look. ``place`` tells two drawings alike apart where both
    stand on one page: a browser takes a region by its name from the first of them, and none at
    all while that one is scrolled out of sight.
    """

    spell: Callable[[str], str] = str
    screen: bool = False
    place: str = ""


PAPER = Edition()
SCREEN = Edition(screen=True, place="still")
