"""Woods whose dust is known to make some people ill.

Local rules and the shop's licensed or insured practice come first.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.results import Source, read_table
from toolkit.wood.woods import species

CAUTION = (
    "A listed wood does not always do harm: it depends on the species, the exposure, how much of "
    "the agent the piece holds, and the person (HSE WIS30, revision 1). A wood that is not listed "
    "is not thereby harmless."
)


@dataclass(frozen=True, slots=True)
class Sensitiser:
    """A wood known to make some people ill: its name in the list, and what was reported."""

    wood: str
    effects: str
    source: Source

    @property
    def sentence(self) -> str:
        """The reports in words; the caution belongs with them."""
        return f"Dust of {self.wood}: {self.effects} ({self.source})."


def sensitiser(wood: str) -> Sensitiser | None:
    """The reports on a wood's dust, or None if it is not listed (which does not make it harmless).

    HSE Woodworking Sheet 30 (WIS30), mostly from memory, row by row in ``sensitisers.csv``.
    """
    botanical = species(wood).scientific
    for row in read_table("wood/sensitisers.csv"):
        if botanical.startswith(row["botanical"]):
            return Sensitiser(row["wood"], row["effects"], Source.of(row))
    return None
