"""Words that every drawing has: figures on the student's rule, their unit, what is wrong."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from toolkit.measures import Rule
from toolkit.pictures.kit.lettering import Slot
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import PartView
from toolkit.plan import Plan
from toolkit.results import Finding

Figures = Callable[[float], str]
_LINE = 76  # letters of a sentence that stands in place of a drawing


def figures(plan: Plan) -> Figures:
    """Lengths as bare figures, the unit said once on the sheet: ISO 129-1:2018 (from memory)."""
    return partial(plan.choices.rule.show, unit=False)


def units_said(rule: Rule) -> str:
    """In what the figures on a sheet are."""
    return f"sizes in {'millimetres' if rule.units == 'mm' else 'inches'}"


def unit_words(
    sheet: Sheet, *, rule: Rule, ghost: bool = False, more: str = "", instead: str = ""
) -> None:
    """In what the figures on the sheet are, and what is dotted, in the lower right corner."""
    text = instead or units_said(rule)
    text += more
    if ghost:
        text = f"dotted: before; {text}"
    x = sheet.width - 8.0
    sheet.write(text, [Slot(x, 8.0, "right"), Slot(8.0, 8.0)], rank=1)


def title(sheet: Sheet, text: str, *, x: float, y: float) -> None:
    """What a view shows, a little larger than the rest and centred. [pt]"""
    sheet.write(text, [Slot(x, y, "center")], rank=-1, size=sheet.text + 0.7)


def many(count: int, *, word: str) -> str:
    """A count with its word: ``2 knots``, ``1 knot``."""
    return f"{count} {word}{'' if count == 1 else 's'}"


def not_right(found: Sequence[Finding]) -> str:
    """What is wrong, as the end of a sentence; nothing where all is well."""
    said = dict.fromkeys(row.brief for row in found if row.brief)
    return f" Not right: {'; '.join(said)}." if said else ""


def note_of(found: Sequence[Finding]) -> str:
    """The words beside the mark of some findings at one spot: the first's that has any."""
    return next((row.note for row in found if row.note), "")


def nothing(words: str, *, height: float) -> Picture:
    """A box that cannot be: its sentence in place of a drawing."""
    sheet = Sheet(scale=1.0, height=height)
    lines, line = [], ""
    for word in words.split():
        if line and len(line) + len(word) >= _LINE:
            lines.append(line)
            line = ""
        line = f"{line} {word}".strip()
    block = "\n".join([*lines, line])
    sheet.write(block, [Slot(20.0, height * 0.6), Slot(8.0, height - 20.0)], rank=0, red=True)
    return sheet.picture(words)


def wrong(view: PartView, shape: Sequence[Point]) -> None:
    """A red outline round what is wrong. [mm]"""
    view.sheet.line("wrong", view.points(shape), closed=True)


def say(sheet: Sheet, text: str, at: Point, places: Sequence[Slot] = ()) -> None:
    """Red words at one of some places, or as near to a point as there is room. [pt]"""
    if text:
        sheet.write(text, places, rank=0, red=True, at=at)
