"""Dust: the limits that public bodies set, and the woods known to make some people ill.

Local rules and the shop's licensed or insured practice come first. Limits change and differ from
country to country: show the regulator's link beside a number, and let the regulator's page decide.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from toolkit.results import number, read_table
from toolkit.wood import _names
from toolkit.wood.species import AmbiguousSpecies, Species
from toolkit.wood.species import species as find_species

LINK_NOTE = "Limits change: the regulator's own page decides, not the number printed here."
SENSITISER_NOTE = (
    "A listed wood does not always do harm: it depends on the species, the exposure, how much of "
    "the agent the piece holds, and the person (HSE WIS30, revision 1). A wood that is not listed "
    "is not thereby harmless."
)


@dataclass(frozen=True, slots=True)
class DustLimit:
    """What one public body says of wood dust.

    Attributes
    ----------
    body, wood : str
        Who says it, and of which woods.
    limit : float or None
        Greatest mean over a working day of 8 hours; None for a class. [mg/m³]
    fraction : str
        The dust that is meant: ``total``, ``inhalable``, ``respirable``, or empty if not said.
    carcinogen_class : str
        The body's class, or empty.
    basis, source, seen, link : str
        Why, where it was found, how well, and the body's own page.
    """

    body: str
    wood: str
    limit: float | None
    fraction: str
    carcinogen_class: str
    basis: str
    source: str
    seen: str
    link: str

    def sentence(self) -> str:
        """Say it in words, with the way to the regulator."""
        if self.limit is None:
            said = f"class {self.carcinogen_class}, {self.basis}"
        else:
            fraction = f" of {self.fraction} dust" if self.fraction else ""
            said = f"{self.limit:g} mg/m³{fraction} over 8 hours ({self.basis})"
        return f"{self.body}, {self.wood}: {said}. {LINK_NOTE} {self.link}"


@dataclass(frozen=True, slots=True)
class Sensitiser:
    """A wood known to make some people ill, and how.

    Attributes
    ----------
    wood, botanical : str
        Name in the list, and the genus or species it stands for.
    effects : str
        What was reported.
    source, seen, note : str
        Where it was found, how well, and what to know.
    """

    wood: str
    botanical: str
    effects: str
    source: str
    seen: str
    note: str

    def sentence(self) -> str:
        """Say it in words, with its limits."""
        return f"{self.wood}: {self.effects} ({self.source}). {SENSITISER_NOTE}"


@cache
def dust_limits() -> tuple[DustLimit, ...]:
    """Limits and classes for wood dust, as last read.

    Returns
    -------
    tuple of DustLimit
        One row for each statement. [mg/m³]

    Source
    ------
    OSHA, NIOSH, ACGIH and the UK's HSE, row by row in ``dust_limits.csv``; link to them.
    """
    return tuple(
        DustLimit(limit=number(row.pop("limit_mg_m3")), **row)
        for row in map(dict, read_table("wood/dust_limits.csv"))
    )


@cache
def sensitisers() -> tuple[Sensitiser, ...]:
    """Woods known to make some people ill.

    Returns
    -------
    tuple of Sensitiser
        One row for each wood or genus.

    Source
    ------
    HSE Woodworking Sheet 30 (WIS30), mostly from memory, row by row in ``sensitisers.csv``.
    """
    return tuple(Sensitiser(**row) for row in read_table("wood/sensitisers.csv"))


def sensitiser(wood: Species | str) -> Sensitiser | None:
    """What is known against a wood, or None if it is not listed (which does not make it harmless).

    Parameters
    ----------
    wood : Species or str
        The wood, a name that finds it, or a name from the list such as ``oak``.

    Returns
    -------
    Sensitiser or None
        The row of the list.

    Raises
    ------
    UnknownSpecies
        Neither the list nor the table of woods has this name, or several woods have it.

    Source
    ------
    HSE Woodworking Sheet 30 (WIS30), mostly from memory.

    >>> sensitiser("white oak").wood, sensitiser("black cherry")
    ('oak', None)
    """
    if isinstance(wood, str):
        asked = _names.words(wood)
        for row in sensitisers():
            if asked == _names.words(row.wood):
                return row
        botanical = _botanical_names(wood)
    else:
        botanical = [wood.scientific]
    rows = {
        next((row for row in sensitisers() if name.startswith(row.botanical)), None)
        for name in botanical
    }
    if len(rows) > 1:
        find_species(str(wood))  # several woods that fare differently: raises with their names
    return rows.pop()


def _botanical_names(name: str) -> list[str]:
    """Scientific names of the wood, or of all the woods, with this name."""
    try:
        return [find_species(name).scientific]
    except AmbiguousSpecies as several:
        return [find_species(one).scientific for one in several.candidates]
