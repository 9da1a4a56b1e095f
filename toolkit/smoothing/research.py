"""What has been published on cut surfaces, and which surfaces anyone has set side by side."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

from toolkit.results import Source, read_table
from toolkit.smoothing._checks import one_of

Made = Literal["hand-planed", "machine-planed", "sanded", "router-cut"]
MADE: tuple[Made, ...] = ("hand-planed", "machine-planed", "sanded", "router-cut")


@dataclass(frozen=True, slots=True)
class Study:
    """One published study.

    Attributes
    ----------
    authors, year, finding, numbers : str
        Who, when, what, and the figures that it gives.
    surfaces : tuple of str
        Surfaces that it measured on one wood with one instrument; empty if it measured none.
    source : Source
        Where it was published, and whether it was read.
    """

    authors: str
    year: str
    finding: str
    numbers: str
    surfaces: tuple[str, ...]
    source: Source

    def sentence(self) -> str:
        """The finding with its source."""
        numbers = f" ({self.numbers})" if self.numbers else ""
        return f"{self.finding}{numbers}: {self.authors}, {self.year}, {self.source}."


@cache
def studies() -> tuple[Study, ...]:
    """The published studies that the workbook leans on.

    Returns
    -------
    tuple of Study
        In the table's order.

    Source
    ------
    Row by row in ``research.csv``.
    """
    return tuple(
        Study(
            row["authors"],
            row["year"],
            row["finding"],
            row["numbers"],
            tuple(name for name in row["surfaces"].split(";") if name),
            Source.of(row),
        )
        for row in read_table("smoothing/research.csv")
    )


@dataclass(frozen=True, slots=True)
class Comparison:
    """Whether two surfaces may be shown side by side.

    Attributes
    ----------
    one, other : str
        The surfaces.
    studies : tuple of Study
        Those that measured both; only they support a comparison.
    """

    one: Made
    other: Made
    studies: tuple[Study, ...]

    @property
    def supported(self) -> bool:
        """Whether any published study compares the two."""
        return bool(self.studies)

    def sentence(self) -> str:
        """What is known, or that nothing is."""
        if not self.supported:
            return (
                f"No published figure in the workbook sets a {self.one} surface beside a "
                f"{self.other} one, so none is shown: feel both at the bench."
            )
        said = " ".join(study.sentence() for study in self.studies)
        return f"{self.one} beside {self.other}: {said}"


def side_by_side(one: Made, *, other: Made) -> Comparison:
    """What published figures say of two surfaces, measured together.

    Figures from different studies, woods and instruments are not set side by side.

    Parameters
    ----------
    one, other : str
        ``"hand-planed"``, ``"machine-planed"``, ``"sanded"`` or ``"router-cut"``.

    Returns
    -------
    Comparison
        The studies that measured both, or none.

    Raises
    ------
    ValueError
        There is no such surface, or both are the same.

    Source
    ------
    ``research.csv``.

    >>> side_by_side("hand-planed", other="sanded").supported
    False
    """
    one_of(one, name="surface", allowed=MADE)
    one_of(other, name="other surface", allowed=MADE)
    if one == other:
        raise ValueError(f"both surfaces were given as {one!r}; give two different ones")
    rows = tuple(row for row in studies() if one in row.surfaces and other in row.surfaces)
    return Comparison(one, other, rows)
