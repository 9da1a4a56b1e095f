"""A size that stands in a table or a sentence and knows what it measures."""

from __future__ import annotations

from math import nan


class TaggedSize(str):
    """A size as it is written, with the part or tool it is of, its kind, and its value. [mm]"""

    part: str
    kind: str
    value: float

    # The empty ones are for copying, which puts them in afterwards.
    def __new__(
        cls, written: str, part: str = "", kind: str = "", value: float = nan
    ) -> TaggedSize:
        """The text of it is what stands on the page."""
        size = super().__new__(cls, written)
        size.part, size.kind, size.value = part, kind, value
        return size

    @property
    def tag(self) -> str:
        """What it measures: ``side, finished length``."""
        return f"{self.part}, {self.kind}"

    @property
    def sizes(self) -> tuple[TaggedSize, ...]:
        """Itself, as words hold their sizes."""
        return (self,)


class SizedText(str):
    """Words that know the sizes between them, such as a cell with three sizes."""

    sizes: tuple[TaggedSize, ...] = ()

    @classmethod
    def of(cls, *pieces: str) -> SizedText:
        """Words and sizes, one after another."""
        words = cls("".join(pieces))
        words.sizes = tuple(size for piece in pieces for size in getattr(piece, "sizes", ()))
        return words
