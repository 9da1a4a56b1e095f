"""The woods of the workbook: one row each, looked up by the name a person would type."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache

from toolkit.results import number, read_table
from toolkit.wood import _names
from toolkit.wood._data import needed

NEWTONS_PER_POUND_FORCE = 4.4482216152605  # exact, by the definition of the pound-force


class UnknownSpecies(ValueError):  # noqa: N818 - its name is what went wrong
    """No wood of the table has this name; the message suggests the nearest."""


class AmbiguousSpecies(UnknownSpecies):
    """Several woods share this name; ``candidates`` lists them."""

    def __init__(self, message: str, candidates: tuple[str, ...]) -> None:
        super().__init__(message)
        self.candidates = candidates


@dataclass(frozen=True, slots=True)
class Provenance:
    """Where a group of numbers comes from.

    ``seen`` is ``read`` (the printed number was read), ``memory`` (from memory, not checked
    against a copy), ``computed``, or says which part is which. Both are empty without numbers.
    """

    source: str
    seen: str

    def __str__(self) -> str:
        words = {"read": "read in print", "memory": "from memory", "": "no number"}
        return f"{self.source} ({words.get(self.seen, self.seen)})".lstrip()


@dataclass(frozen=True, slots=True)
class Species:
    """A wood and its numbers; a number that the tables lack is None.

    Attributes
    ----------
    name, listed_as : str
        The name as people say it, and as handbooks list it (``cherry, black``).
    scientific, kind : str
        Botanical name; ``softwood``, ``hardwood`` or ``imported hardwood``.
    aliases : tuple of str
        Other names that find this wood.
    shrinkage_radial, shrinkage_tangential, shrinkage_volumetric : float or None
        Shrinkage from green to oven-dry, of the green size. [%]
    coefficient_radial, coefficient_tangential : float or None
        Change of width for each percent of moisture, 6 to 14 %. [1/%]
    fibre_saturation : float
        Moisture above which the wood no longer moves. [%]
    specific_gravity_green, specific_gravity_12 : float or None
        Oven-dry weight over volume green, or at 12 % moisture, relative to water. [1]
    side_hardness_green, side_hardness : float or None
        Force to sink an 11.3 mm ball to half its diameter, green and at 12 %. [N]
    planing_defect_free : float or None
        Pieces planed without a defect, on a planing machine in a trial. [%]
    shrinkage_from, coefficients_from, fibre_saturation_from : Provenance
        Where those numbers come from.
    specific_gravity_from, side_hardness_from, planing_from : Provenance
        Where those numbers come from.
    note : str
        What to know before using the numbers.
    """

    name: str
    listed_as: str
    scientific: str
    kind: str
    aliases: tuple[str, ...]
    shrinkage_radial: float | None
    shrinkage_tangential: float | None
    shrinkage_volumetric: float | None
    coefficient_radial: float | None
    coefficient_tangential: float | None
    fibre_saturation: float
    specific_gravity_green: float | None
    specific_gravity_12: float | None
    side_hardness_green: float | None
    side_hardness: float | None
    planing_defect_free: float | None
    shrinkage_from: Provenance
    coefficients_from: Provenance
    fibre_saturation_from: Provenance
    specific_gravity_from: Provenance
    side_hardness_from: Provenance
    planing_from: Provenance
    note: str

    def sentence(self) -> str:
        """Say in a sentence or two what the wood does, and what to know of its numbers."""
        radial, tangential = self.shrinkage_radial, self.shrinkage_tangential
        text = f"{self.name} ({self.scientific}, {self.kind})"
        if radial is not None and tangential is not None:
            text += (
                f" shrinks {tangential:.1f} % along its rings and {radial:.1f} % across them, "
                "from green to oven-dry"
            )
        return f"{text}. {self.note}".rstrip()


def _newtons(cell: str) -> float | None:
    """Pounds-force as printed to newtons, to the 10 N that the printed figure carries."""
    pounds = number(cell)
    return None if pounds is None else round(pounds * NEWTONS_PER_POUND_FORCE, -1)


def _species(row: dict[str, str]) -> Species:
    """One row of the table, typed."""

    def source_of(group: str) -> Provenance:
        return Provenance(row[f"{group}_source"], row[f"{group}_seen"])

    return Species(
        name=row["name"],
        listed_as=row["listed_as"],
        scientific=row["scientific"],
        kind=row["kind"],
        aliases=tuple(name.strip() for name in row["aliases"].split(";") if name.strip()),
        shrinkage_radial=number(row["shrinkage_radial_pct"]),
        shrinkage_tangential=number(row["shrinkage_tangential_pct"]),
        shrinkage_volumetric=number(row["shrinkage_volumetric_pct"]),
        coefficient_radial=number(row["coefficient_radial"]),
        coefficient_tangential=number(row["coefficient_tangential"]),
        fibre_saturation=needed(row["fibre_saturation_pct"]),
        specific_gravity_green=number(row["specific_gravity_green"]),
        specific_gravity_12=number(row["specific_gravity_12"]),
        side_hardness_green=_newtons(row["side_hardness_green_lbf"]),
        side_hardness=_newtons(row["side_hardness_12_lbf"]),
        planing_defect_free=number(row["planing_defect_free_pct"]),
        shrinkage_from=source_of("shrinkage"),
        coefficients_from=source_of("coefficient"),
        fibre_saturation_from=source_of("fibre_saturation"),
        specific_gravity_from=source_of("specific_gravity"),
        side_hardness_from=source_of("side_hardness"),
        planing_from=source_of("planing"),
        note=row["note"],
    )


@cache
def all_species() -> tuple[Species, ...]:
    """All woods of the table, in its order.

    Returns
    -------
    tuple of Species
        Softwoods, hardwoods and imported hardwoods.

    Source
    ------
    The columns ``…_source`` and ``…_seen`` of ``species.csv``, row by row.
    """
    return tuple(_species(row) for row in read_table("wood/species.csv"))


@cache
def _spellings() -> dict[str, tuple[str, ...]]:
    """For each wood all the spellings that find it."""
    return {
        wood.name: (wood.name, wood.listed_as, wood.scientific, *wood.aliases)
        for wood in all_species()
    }


@lru_cache(maxsize=512)
def species(name: str) -> Species:
    """The wood with this name.

    The order of the words, capitals, commas and hyphens do not matter, and part of a name will do
    where only one wood has it. 'Red oak' finds the commercial group and 'white oak' Quercus alba,
    in each case the one that moves more: the cautious choice for a board of unknown parentage.

    Parameters
    ----------
    name : str
        A common name in either order, or the scientific name.

    Returns
    -------
    Species
        The wood.

    Raises
    ------
    AmbiguousSpecies
        Several woods have this name; the message lists them.
    UnknownSpecies
        None has; the message suggests the nearest.

    Source
    ------
    Names as the handbook (FPL-GTR-190) lists them; aliases are common practice, no source.

    >>> species("cherry").name, species("Cherry, black").name, species("prunus serotina").name
    ('black cherry', 'black cherry', 'black cherry')
    """
    found = _names.candidates(name, _spellings())
    if len(found) == 1:
        return next(wood for wood in all_species() if wood.name == found[0])
    if found:
        raise AmbiguousSpecies(
            f"'{name}' may be any of several woods: type {_names.quoted(found)}.", tuple(found)
        )
    near = _names.nearest(name, _spellings())
    hint = (
        f"did you mean {_names.quoted(near)}?"
        if near
        else "all_species() lists the woods it knows."
    )
    raise UnknownSpecies(f"'{name}' is not a wood in the workbook's table: {hint}")
