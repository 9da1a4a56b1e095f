"""Words and letters that the drawings of tree and board share."""

from __future__ import annotations

from toolkit.measures import Rule
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.sheet import Sheet


def unit_words(
    sheet: Sheet, *, rule: Rule, ghost: bool = False, more: str = "", instead: str = ""
) -> None:
    """In what the figures on the sheet are, and what is dotted, in the lower right corner."""
    text = instead or f"sizes in {'millimetres' if rule.units == 'mm' else 'inches'}"
    text += more
    if ghost:
        text = f"dotted: before; {text}"
    x = sheet.width - 8.0
    sheet.write(text, [Place(x, 8.0, "right"), Place(8.0, 8.0)], rank=1)


def title(sheet: Sheet, text: str, *, x: float, y: float) -> None:
    """What a view shows, a little larger than the rest and centred. [pt]"""
    sheet.write(text, [Place(x, y, "center")], rank=-1, size=sheet.text + 0.7)


def many(count: int, *, word: str) -> str:
    """A count with its word: ``2 knots``, ``1 knot``."""
    return f"{count} {word}{'' if count == 1 else 's'}"
