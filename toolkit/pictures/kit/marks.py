"""What lies on a page, whoever writes it: ink, words and shaded surfaces, y upwards."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from toolkit.pictures.kit.lettering import Anchor
from toolkit.pictures.kit.pens import INK, PAPER, Pen
from toolkit.pictures.kit.picture import Point

Unit = Literal["pt", "mm"]
PER_INCH: dict[Unit, float] = {"pt": 72.0, "mm": 25.4}


@dataclass(frozen=True, slots=True)
class Ink:
    """Lines or areas of one pen, each with whether it is closed; shown only in some regions.

    ``digits`` are those of its coordinates where these are written as text.
    """

    pen: Pen
    lines: Sequence[tuple[Sequence[Point], bool]]
    regions: Sequence[Sequence[Point]] = ()
    digits: int = 1


@dataclass(frozen=True, slots=True)
class Words:
    """One line of words where they stand; ``upright`` runs up the page."""

    text: str
    x: float
    y: float
    size: float
    anchor: Anchor = "left"
    colour: str = INK
    upright: bool = False


@dataclass(frozen=True, slots=True)
class Image:
    """A shaded surface: a PNG, its lower left corner and its size."""

    png: bytes
    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Marks:
    """A page from ``low`` to ``high``: images below, then inks in their order, then words.

    All lengths, those of pens too, are in the page's own ``unit``; ``sentence`` says what it shows.
    """

    width: float
    low: float
    high: float
    inks: Sequence[Ink]
    words: Sequence[Words]
    sentence: str
    images: Sequence[Image] = ()
    unit: Unit = "pt"
    paper: str = PAPER
    cap: Literal["butt", "round"] = "butt"

    @property
    def height(self) -> float:
        """Of the page."""
        return self.high - self.low
