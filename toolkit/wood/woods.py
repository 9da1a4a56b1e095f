"""The woods of the workbook: one row each, looked up by the name a person would type."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache

from toolkit.results import Source, number, read_table
from toolkit.wood import _names


class UnknownSpecies(ValueError):  # noqa: N818 - its name is what went wrong
    """No wood of the table, or several, have this name; the message says what to type."""


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
    shrinkage_from, coefficients_from, fibre_saturation_from, specific_gravity_from : Source
        Where those numbers come from; empty where there are none.
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
    shrinkage_from: Source
    coefficients_from: Source
    fibre_saturation_from: Source
    specific_gravity_from: Source
    note: str


def _species(row: dict[str, str]) -> Species:
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
        fibre_saturation=float(row["fibre_saturation_pct"]),
        specific_gravity_green=number(row["specific_gravity_green"]),
        specific_gravity_12=number(row["specific_gravity_12"]),
        shrinkage_from=Source.of(row, "shrinkage_"),
        coefficients_from=Source.of(row, "coefficient_"),
        fibre_saturation_from=Source.of(row, "fibre_saturation_"),
        specific_gravity_from=Source.of(row, "specific_gravity_"),
        note=row["note"],
    )


@cache
def all_species() -> tuple[Species, ...]:
    """All woods of the table, in its order."""
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

    Raises
    ------
    UnknownSpecies
        No wood has this name, or several have; the message suggests what to type.

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
        raise UnknownSpecies(f"'{name}' may be any of several woods: type {_names.quoted(found)}.")
    near = _names.nearest(name, _spellings())
    hint = (
        f"did you mean {_names.quoted(near)}?"
        if near
        else "all_species() lists the woods it knows."
    )
    raise UnknownSpecies(f"'{name}' is not a wood in the workbook's table: {hint}")
