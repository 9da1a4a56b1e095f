"""Whom a document is rendered for: a reader at a screen or one with the paper in hand."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

from toolkit.results import capital, read_table

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
    """How blocks are rendered."""

    spell: Callable[[str], str] = str
    screen: bool = False
    place: str = ""


PAPER = Edition()
SCREEN = Edition(screen=True, place="still")


Words = Literal["us", "british"]
LANGUAGE = {"us": "en-US", "british": "en-GB"}


def spelling(words: Words, *, typed: Iterable[str] = ()) -> Callable[[str], str]:
    """What puts a text of ours into one English, and leaves in it what somebody typed.

    Parameters
    ----------
    words : str
        ``"us"`` or ``"british"``.
    typed : iterable of str
        What people typed and our texts quote: a title, a name, a board's name. Each is left as it
        is wherever it stands whole.

    Returns
    -------
    callable
        From a text to the same text respelled.

    Raises
    ------
    ValueError
        It is neither English.

    Source
    ------
    Common practice, no source.

    >>> spelling("british", typed=["Gray's vise"])("Gray's vise: rabbets and clamps in gray")
    "Gray's vise: rebates and cramps in grey"
    """
    if words not in LANGUAGE:
        raise ValueError(f'words {words!r} are not known; type "us" or "british"')
    other, own = ("british", "us") if words == "us" else ("us", "british")
    rows = read_table("document/english.csv")
    # A word that has other meanings too is turned one way only.
    table = {row[other]: row[own] for row in rows if row["way"] in ("", words)}
    known = "|".join(map(re.escape, sorted(table, key=len, reverse=True)))
    quoted = {form for text in typed if text.strip() for form in (text, capital(text))}
    longest_first = sorted(quoted, key=lambda text: (-len(text), text))
    left = "".join(rf"(?<!\w){re.escape(text)}(?!\w)|" for text in longest_first)
    # What a file says in its quotes is typed too.
    pattern = re.compile(rf'{left}\w+ = "[^"]*"|(?i:\b(?P<ours>{known})\b)')

    def turned(match: re.Match[str]) -> str:
        if match["ours"] is None:
            return match[0]
        word = table[match[0].lower()]
        return capital(word) if match[0][0].isupper() else word

    return lambda text: pattern.sub(turned, text)
