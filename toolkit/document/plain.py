"""Text for terminals: their width, and their ASCII where they know nothing else."""

from __future__ import annotations

import shutil
import textwrap
import unicodedata

NARROWEST = 20
USUAL_WIDTH = 80

_SIGNS = str.maketrans(
    {
        "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "─": "-", "×": "x", "·": "*", "±": "+/-",
        "≤": "<=", "≥": ">=", "≈": "~", "→": "->", "←": "<-", "…": "...", "“": '"', "”": '"',
        "‘": "'", "’": "'", "′": "'", "″": '"', "°": " deg ", "√": "root ", "µ": "u", "μ": "u",
        "✗": "X", "✓": "+", "•": "*",
    }
)  # fmt: skip


def width_or_usual(width: int | None) -> int:
    """The width asked for, else the terminal's; never too narrow for a word. [characters]"""
    if width is None:
        width = shutil.get_terminal_size((USUAL_WIDTH, 24)).columns
    return max(width, NARROWEST)


def to_ascii(text: str) -> str:
    """Text in ASCII alone; a sign that has no spelling becomes a question mark.

    >>> to_ascii("1½ in × 20 °C")
    '1 1/2 in x 20 deg C'
    """
    spelt: list[str] = []
    for character in text:
        if unicodedata.decomposition(character).startswith("<fraction>"):
            fraction = unicodedata.normalize("NFKD", character).replace("⁄", "/")
            spelt.append(f" {fraction}" if spelt and spelt[-1][-1:].isdigit() else fraction)
        else:
            spelt.append(character)
    signs = "".join(spelt).translate(_SIGNS).replace("  deg ", " deg ").replace(" deg  ", " deg ")
    letters = unicodedata.normalize("NFKD", signs)
    bare = "".join(character for character in letters if not unicodedata.combining(character))
    return bare.encode("ascii", "replace").decode("ascii").rstrip(" ")


def wrapped(text: str, *, width: int, hanging: str = "") -> list[str]:
    """Text in lines, those after the first set in; words stay whole where they fit."""
    return textwrap.wrap(text, width, subsequent_indent=hanging, break_on_hyphens=False)
