"""The woods of the workbook: one row each, looked up by the name a person would type."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from toolkit.results import Source, listed, number, read_table

WORKED_BACK = "computed"  # how a shrinkage that no table has came by its number
MEETING_POINT = 10.0  # starting moisture at which the quick rule and the law agree [%]


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
        Shrinkage from green to oven-dry, of the green size; where no table has it, worked back
        from the coefficients, and ``from_memory`` if those are. [%]
    coefficient_radial, coefficient_tangential : float or None
        Change of width for each percent of moisture, 6 to 14 %: where European tables print a
        differential swelling, a hundredth of that. [1/%]
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

    @property
    def from_memory(self) -> bool:
        """Whether how it moves rests on one number from memory, with no shrinkage to check it."""
        return self.shrinkage_from.seen == WORKED_BACK and self.coefficients_from.seen == "memory"

    @property
    def caution(self) -> str:
        """What to say beside every number that rests on such a one; empty for other woods."""
        if not self.from_memory:
            return ""
        return (
            f"The shrinkage of {self.name} is not known: how it moves is reckoned from its "
            "differential swelling, a number from memory."
        )

    @property
    def unweighed(self) -> str:
        """What to say where its weight is asked for and not known; empty for other woods."""
        if self.specific_gravity_green is not None:
            return ""
        return f"Density and hardness of {self.name} are not known here: weigh a piece."


def _worked_back(wood: Species) -> Species:
    """A wood without shrinkage, given the one at which law and coefficients agree at 10 %."""

    def shrinkage(coefficient: float | None) -> float | None:
        if coefficient is None:
            return None
        saturation = wood.fibre_saturation
        return 100 * saturation * coefficient / (1 + coefficient * (saturation - MEETING_POINT))

    return replace(
        wood,
        shrinkage_radial=shrinkage(wood.coefficient_radial),
        shrinkage_tangential=shrinkage(wood.coefficient_tangential),
        shrinkage_from=Source("worked back: S = 100 F C / (1 + (F - 10) C)", WORKED_BACK),
    )


def _species(row: dict[str, str]) -> Species:
    wood = Species(
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
    known = wood.shrinkage_tangential is not None or wood.coefficient_tangential is None
    return wood if known else _worked_back(wood)


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
    A name that both continents have (oak, ash, cherry) is refused with the woods it may be.

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

    >>> species("Cherry, black").name, species("prunus serotina").name, species("teak").name
    ('black cherry', 'black cherry', 'teak')
    """
    found = candidates(name, _spellings())
    if len(found) == 1:
        return next(wood for wood in all_species() if wood.name == found[0])
    if found:
        raise UnknownSpecies(f"'{name}' may be any of several woods: type {quoted(found)}.")
    hint = "all_species() lists the woods it knows."
    if near := nearest(name, _spellings(), likeness=0.4):
        slip = nearest(name, _spellings())
        words = "did you mean {}?" if slip else "nearest in spelling are {}."
        hint = words.format(quoted(near))
    raise UnknownSpecies(f"'{name}' is not a wood in the workbook's table: {hint}")


def _words(text: str) -> frozenset[str]:
    """Words of a name, whatever its capitals, commas, hyphens and brackets."""
    for mark in ",-()/.":
        text = text.replace(mark, " ")
    return frozenset(text.casefold().split())


def candidates(query: str, names: Mapping[str, Iterable[str]]) -> list[str]:
    """Names that fit the query: those that equal it, or else those that contain its words.

    ``names`` gives for each name all the spellings that find it.
    """
    asked = _words(query)
    if not asked:
        return []
    spelt = {name: [_words(spelling) for spelling in also] for name, also in names.items()}
    own = [name for name in names if _words(name) == asked]
    exact = own or [name for name, sets in spelt.items() if asked in sets]
    return exact or [name for name, sets in spelt.items() if any(asked <= one for one in sets)]


def nearest(query: str, names: Mapping[str, Iterable[str]], *, likeness: float = 0.6) -> list[str]:
    """The three names whose spelling, or one word of it, is most like the query; none if unlike."""
    import difflib

    whole = {spelling.casefold() for also in names.values() for spelling in also}
    # One word alone is often what was meant: 'chery' for black cherry.
    single = {word for spelling in whole for word in _words(spelling)}
    known = sorted(whole | single)
    close = difflib.get_close_matches(query.casefold(), known, n=12, cutoff=likeness)
    found = dict.fromkeys(name for spelling in close for name in candidates(spelling, names))
    return list(found)[:3]


def quoted(names: Iterable[str]) -> str:
    """Names in quotes for a choice, since some hold commas themselves."""
    return listed((f"'{name}'" for name in names), "or")
