"""What is wrong, drawn where it is wrong: a red outline and a few words."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import View


def wrong(view: View, shape: Sequence[Point]) -> None:
    """A red outline round what is wrong. [mm]"""
    view.sheet.line("wrong", view.points(shape), closed=True)


def say(sheet: Sheet, text: str, at: Point, places: Sequence[Place] = ()) -> None:
    """Red words at one of some places, or as near to a point as there is room. [pt]"""
    if text:
        sheet.write(text, places, rank=0, red=True, at=at)
