"""How woods fared on a planing machine, with its angle turned into a bench plane's.

The tables' angle is the machine's hook angle, between the knife's face and the square to the wood;
a bench plane's cutting angle lies between that face and the wood: 90 degrees less the hook.
A machine's percentages are no promise for a hand plane; they rank woods and angles.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from toolkit.results import Source, number, read_table
from toolkit.wood import species

HOOKS = (5, 10, 15, 20, 25, 30)


def from_hook(hook: float) -> float:
    """The cutting angle of a bench plane that meets the wood like a machine's hook angle.

    Parameters
    ----------
    hook : float
        The machine's hook angle. [degrees]

    Returns
    -------
    float
        Cutting angle. [degrees]

    Source
    ------
    Geometry: 90 degrees less the hook.

    >>> from_hook(20)
    70.0
    """
    return 90.0 - hook


@dataclass(frozen=True, slots=True)
class MachinePlaning:
    """How one wood fared on a planing machine.

    Attributes
    ----------
    wood : str
        The wood as the table lists it.
    perfect : float or None
        Pieces planed without a defect. [%]
    perfect_from : Source
        Where that comes from.
    advised : tuple of float or None
        Least and greatest cutting angle advised, turned into a bench plane's. [degrees]
    defect_free : tuple
        Cutting angle [degrees], least first, and pieces without a defect at it [%].
    angles_from : Source
        Where those come from.
    """

    wood: str
    perfect: float | None
    perfect_from: Source
    advised: tuple[float, float] | None
    defect_free: tuple[tuple[float, float], ...]
    angles_from: Source

    def sentence(self) -> str:
        """What the tables say, with their caveat."""
        rows = []
        if self.perfect is not None:
            rows.append(f"{self.perfect:g} % of pieces came off without a defect")
        if self.advised is not None:
            low, high = self.advised
            rows.append(
                f"advised cutting angle {low:g}° to {high:g}° (hook {90 - high:g}° to "
                f"{90 - low:g}°)"
            )
        if self.defect_free:
            angle, best = max(self.defect_free, key=lambda row: row[1])
            rows.append(f"best of the angles tried {angle:g}° with {best:g} %")
        return (
            f"{self.wood} on a planing machine: {'; '.join(rows)}. A machine's figures rank woods "
            "and angles; they are no promise for a hand plane."
        )


@cache
def machine_planings() -> tuple[MachinePlaning, ...]:
    """Every wood of the tables of machine planing.

    Returns
    -------
    tuple of MachinePlaning
        In the tables' order. [%, degrees]

    Source
    ------
    USDA Technical Bulletins 824 and 1267 (Davis) and GTR-113 Table 3-8, row by row in
    ``planing.csv`` with whether the printed number was read.
    """
    made = []
    for row in read_table("smoothing/planing.csv"):
        advised = None
        if hooks := row["recommended_hook_angle_deg"]:
            low, high = (float(part) for part in hooks.split("-"))
            advised = from_hook(high), from_hook(low)
        tried = ((hook, number(row[f"defect_free_hook_{hook}deg_pct"])) for hook in HOOKS)
        made.append(
            MachinePlaning(
                row["wood"],
                number(row["planing_perfect_pct"]),
                Source.of(row),
                advised,
                tuple((from_hook(hook), share) for hook, share in tried if share is not None)[::-1],
                Source.of(row, "angle_"),
            )
        )
    return tuple(made)


def machine_planing(wood: str) -> MachinePlaning | None:
    """How a wood fared on a planing machine, or None if the tables do not list it.

    Parameters
    ----------
    wood : str
        A name as the tables list it, or any that finds the wood in the workbook.

    Returns
    -------
    MachinePlaning or None
        Its row. [%, degrees]

    Raises
    ------
    UnknownSpecies
        Neither these tables nor the workbook's table of woods has this name, or several have it.

    Source
    ------
    As for `machine_planings`.

    >>> machine_planing("cherry").wood, machine_planing("ash").advised
    ('cherry, black', (65.0, 75.0))
    """
    listed = {_words(row.wood): row for row in machine_planings()}
    if found := listed.get(_words(wood)):
        return found
    known = species(wood)
    for name in (known.listed_as, known.name, *known.aliases):
        if found := listed.get(_words(name)):
            return found
    # 'sugar maple' is what the tables call hard maple, 'American beech' plain beech.
    for trade in _TRADE_NAMES.get(known.name, ()):
        if found := listed.get(_words(trade)):
            return found
    return None


# The workbook's names for woods that the tables list by their trade name.
_TRADE_NAMES = {
    "sugar maple": ("maple, hard",),
    "red maple": ("maple, soft",),
    "silver maple": ("maple, soft",),
    "American beech": ("beech",),
    "American basswood": ("basswood",),
    "American sycamore": ("sycamore",),
    "quaking aspen": ("aspen",),
    "northern red oak": ("oak, red",),
    "white ash": ("ash",),
    "yellow birch": ("birch",),
    "true mahogany": ("mahogany",),
}


def _words(name: str) -> frozenset[str]:
    return frozenset(name.casefold().replace(",", " ").replace("-", " ").split())
