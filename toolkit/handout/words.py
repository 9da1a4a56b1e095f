"""The trade's words in American or in British English, one or the other and never mixed."""

from __future__ import annotations

import re
from typing import Literal

from toolkit.measures import TYPED

Words = Literal["us", "british"]

# American, British, in every form that is used.
_PAIRS = (
    ("half-blind", "lapped"),
    ("chipbreaker", "cap iron"),
    ("chipbreakers", "cap irons"),
    *((f"rabbet{us}", f"rebat{uk}") for us, uk in (("", "e"), ("s", "es"), ("ed", "ed"))),
    ("rabbeting", "rebating"),
    *((f"plow{end}", f"plough{end}") for end in ("", "s", "ed", "ing")),
    *((f"clamp{end}", f"cramp{end}") for end in ("", "s", "ed", "ing")),
    *((f"vise{end}", f"vice{end}") for end in ("", "s")),
    *((f"color{end}", f"colour{end}") for end in ("", "s", "ed")),
    *((f"millimeter{end}", f"millimetre{end}") for end in ("", "s")),
    *((f"fiber{end}", f"fibre{end}") for end in ("", "s")),
    *((f"center{end}", f"centre{end}") for end in ("", "s")),
    ("gray", "grey"),
)
_TAG = re.compile(r"(<[^>]*>)")


def spelled(html: str, *, words: Words) -> str:
    """A page with the trade's words in one English; what stands inside tags is left alone.

    So is what was marked as typed by somebody; the marks are taken out.

    Parameters
    ----------
    html : str
        The page.
    words : str
        ``"us"`` or ``"british"``.

    Raises
    ------
    ValueError
        It is neither.

    Source
    ------
    Common practice, no source.

    >>> spelled("<p class='clamp'>Rebates and clamps</p>", words="british")
    "<p class='clamp'>Rebates and cramps</p>"
    """
    if words not in ("us", "british"):
        raise ValueError(f'words {words!r} are not known; type "us" or "british"')
    other, own = (1, 0) if words == "us" else (0, 1)
    table = {pair[other]: pair[own] for pair in _PAIRS}
    pattern = re.compile(rf"\b(?:{'|'.join(map(re.escape, table))})\b", re.IGNORECASE)

    def turned(match: re.Match[str]) -> str:
        found = match[0]
        word = table[found.lower()]
        return word[0].upper() + word[1:] if found[0].isupper() else word

    skipped = False
    parts = []
    for part in _TAG.split(html):
        if part.startswith("<"):
            if re.match(r"<(script|style)\b", part):
                skipped = True
            elif re.match(r"</(script|style)\b", part):
                skipped = False
            parts.append(_spoken(part, pattern, turned))
        else:
            parts.append(part if skipped else pattern.sub(turned, part))
    return "".join(parts).replace(TYPED, "")


def _spoken(tag: str, pattern: re.Pattern[str], turned: object) -> str:
    """A tag whose label is read aloud: the label's words follow the page's."""
    return re.sub(
        r'(aria-label|aria-valuetext|alt)="([^"]*)"',
        lambda match: f'{match[1]}="{pattern.sub(turned, match[2])}"',  # type: ignore[call-overload]
        tag,
    )
