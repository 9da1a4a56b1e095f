"""Brings what people type (½, curly and prime marks, thin spaces) to one plain spelling."""

from __future__ import annotations

import re
import unicodedata

from toolkit.measures.figures import HYPHENS

_SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹"
_SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉"
_PLAIN_DIGITS = str.maketrans(_SUPERSCRIPTS + _SUBSCRIPTS, "0123456789" * 2)
_HYPHEN_AND_SPACE = re.compile(f"(?<=[0-9][{HYPHENS}]) (?=[0-9]+/)")
_RAISED_FRACTION = re.compile(f"([{_SUPERSCRIPTS}]+)/([{_SUBSCRIPTS}]+)")

# Each is one keyboard's or word processor's way of writing the plain sign.
_FOOT_MARKS = (
    "\N{PRIME}\N{RIGHT SINGLE QUOTATION MARK}\N{LEFT SINGLE QUOTATION MARK}"
    "\N{MODIFIER LETTER PRIME}\N{ACUTE ACCENT}\N{GRAVE ACCENT}\N{FULLWIDTH APOSTROPHE}"
)
_INCH_MARKS = (
    "\N{DOUBLE PRIME}\N{RIGHT DOUBLE QUOTATION MARK}\N{LEFT DOUBLE QUOTATION MARK}"
    "\N{MODIFIER LETTER DOUBLE PRIME}\N{FULLWIDTH QUOTATION MARK}"
)
_FRACTION_BARS = "\N{FRACTION SLASH}\N{DIVISION SLASH}\N{FULLWIDTH SOLIDUS}"
_DEGREE_SIGNS = "\N{MASCULINE ORDINAL INDICATOR}\N{RING ABOVE}"
_INVISIBLE = (
    "\N{ZERO WIDTH SPACE}\N{ZERO WIDTH NON-JOINER}\N{ZERO WIDTH JOINER}\N{WORD JOINER}"
    "\N{ZERO WIDTH NO-BREAK SPACE}"
)
_SPELLINGS: dict[str, str] = {
    **dict.fromkeys(_FOOT_MARKS, "'"),
    **dict.fromkeys(_INCH_MARKS, '"'),
    **dict.fromkeys(_FRACTION_BARS, "/"),
    **dict.fromkeys(_DEGREE_SIGNS, "°"),
    **dict.fromkeys(_INVISIBLE, ""),
    "\N{DEGREE CELSIUS}": "°C",
    "\N{DEGREE FAHRENHEIT}": "°F",
    "\N{FULLWIDTH PERCENT SIGN}": "%",
    "\N{MICRO SIGN}": "u",
    "\N{GREEK SMALL LETTER MU}": "u",
}


def _vulgar_fractions() -> dict[str, str]:
    """Each one-character fraction with its spelling, such as ½ with `` 1/2 ``."""
    found = {}
    for code in (0xBC, 0xBD, 0xBE, *range(0x2150, 0x2160), 0x2189):
        _, *digits_and_bar = unicodedata.decomposition(chr(code)).split()
        text = "".join(chr(int(part, 16)) for part in digits_and_bar)
        # Spaces keep ½ apart from the figures beside it; ⅟ lacks its denominator.
        end = " " if text[-1].isdigit() else ""
        found[chr(code)] = f" {text}{end}".replace("\N{FRACTION SLASH}", "/")
    return found


_TABLE: dict[int, str] = str.maketrans({**_SPELLINGS, **_vulgar_fractions()})


def tidy(text: str) -> str:
    """The text in plain spelling, single-spaced, with no space round a fraction's bar."""
    # Two foot marks are the inch mark of those who cannot find it.
    text = text.translate(_TABLE).replace("''", '"')
    text = _RAISED_FRACTION.sub(lambda m: f" {m[0]} ".translate(_PLAIN_DIGITS), text)
    text = re.sub(" ?/ ?", "/", " ".join(text.split()))
    # 7-½ has become 7- 1/2.
    return _HYPHEN_AND_SPACE.sub("", text)


def whole(text: str) -> str:
    """Text without halves of characters, which no file, page or screen can hold.

    >>> whole("3 tails\\ud83d"), whole("\\ud83d\\ude42")
    ('3 tails�', '🙂')
    """
    return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
