"""How hollow a plane can leave a piece: it is the sole that keeps an edge straight."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from toolkit.results import below
from toolkit.truing._checks import above_zero

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class Hollow:
    """The deepest hollow that a plane can still ride down into.

    Attributes
    ----------
    depth : float
        Over the length of the piece. [mm]
    fair : bool
        Whether the piece is at least twice as long as the sole; on a shorter one the plane's toe
        and heel hang over its ends, and it rides deeper than this.
    """

    depth: float
    fair: bool

    def sentence(self, rule: Rule) -> str:
        """The hollow in words."""
        if self.fair:
            return f"It goes on cutting until the piece is about {rule.exact(self.depth)} hollow."
        return (
            f"It can leave the piece {rule.exact(self.depth)} hollow or more: the piece is shorter "
            "than two soles, and the plane rides deeper where its toe and heel hang over the ends."
        )


def hollow_ridden(shaving: float, *, length: float, sole: float, mouth: float = 0.5) -> Hollow:
    """How hollow a plane can leave a piece along its length before it stops cutting.

    Parameters
    ----------
    shaving : float
        How far the iron stands out below the sole. [mm]
    length, sole : float
        Of the piece, and of the plane's sole. [mm]
    mouth : float
        Where the mouth is, as a share of the sole from its toe. [1]

    Returns
    -------
    Hollow
        Its depth over the whole length. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, or the mouth is not within the sole.

    Source
    ------
    Geometry of an arc: over the sole it is as deep as the shaving where the mouth is. With the
    mouth a third of the way from the toe it is an eighth deeper.

    >>> round(hollow_ridden(0.05, length=700, sole=240).depth, 2)
    0.43
    """
    above_zero(shaving, name="shaving", example="0.05")
    above_zero(length, name="length", example="700")
    above_zero(sole, name="sole", example="370")
    if not 0 < mouth < 1:
        raise ValueError(f"mouth was given as {mouth:g}; give a share of the sole, such as 0.33")
    depth = shaving * (length / sole) ** 2 / (4 * mouth * (1 - mouth))
    return Hollow(depth, fair=not below(length, 2 * sole))
