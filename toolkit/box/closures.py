"""The ways to close a box, and what each asks of its walls and says of itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from toolkit.measures import key

Seat = Literal["rebate", "battens"]
LidKind = Literal["sliding", "lift-off", "none"]


@dataclass(frozen=True, slots=True)
class Closure:
    """What others have to know of one way to close a box.

    Attributes
    ----------
    lids : tuple of str
        What closes it: a lid ``in grooves`` of the walls, over a front that is lowered for it, or
        one ``on the rim``.
    comes_off : str
        How the lid leaves the box.
    no_tongue : str
        Why there is no tongue of a lid to fit.
    idle : tuple of str
        Keys of a box file that it has no use for.
    remark : str
        What a maker would say of it, if anything.
    says : str
        What is the matter with the lid where one that slides is asked for.
    """

    lids: tuple[Literal["in grooves", "on the rim"], ...]
    comes_off: str = ""
    no_tongue: str = ""
    idle: tuple[str, ...] = ()
    remark: str = ""
    says: str = ""

    @property
    def grooved(self) -> bool:
        """Whether the walls are grooved for the lid, and the front is low."""
        return "in grooves" in self.lids


_LIFT_OFF = ("kind", "lift-off")


@dataclass(frozen=True, slots=True)
class LidChoice:
    """How the box is closed; all but the kind belongs to a lift-off lid."""

    kind: LidKind = key(default="sliding")
    seat: Seat = key("How a lift-off lid sits.", default="rebate", only=_LIFT_OFF)
    overhang: float | None = key(
        "Of a lift-off lid over the walls.",
        least=0,
        rule="a little, and more where the lid moves more in a year",
        only=_LIFT_OFF,
    )
    rebate_depth: float = key(default=4.0, only=_LIFT_OFF)
    batten_width: float = key(default=20.0, only=_LIFT_OFF)
    batten_thickness: float = key(default=8.0, only=_LIFT_OFF)

    @property
    def closure(self) -> Closure:
        """What this way to close a box asks of it."""
        return CLOSURES[self.kind]


CLOSURES: dict[LidKind, Closure] = {
    "sliding": Closure(("in grooves",), comes_off="slides out over the low front"),
    "lift-off": Closure(
        ("on the rim",),
        comes_off="lifts off",
        no_tongue="lies on the rim: it has no tongue to fit",
        says="the lid of this box lifts off",
    ),
    "none": Closure(
        (),
        no_tongue="this box has none",
        idle=(
            "thickness.lid",
            "groove.top_edge",
            "panels.lid_across",
            "panels.lid_tongue",
            "panels.lid_profile",
            "panels.under_lid",
            "made.lid_thickness",
            "made.lid_length",
            "made.lid_width",
            "made.lid_end_out",
            "made.top_edge",
            "allowances.lid",
        ),
        remark="this box has none: it is a tray, its four walls of full height.",
        says="this box has no lid",
    ),
}
