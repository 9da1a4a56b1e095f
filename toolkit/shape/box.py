"""The whole box as solids, every part where it stands when the box is finished."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from manifold3d import Manifold, OpType

from toolkit.box import Design
from toolkit.shape.panels import lift_off_pieces, panel_pieces
from toolkit.shape.walls import standing


@dataclass(frozen=True, slots=True, eq=False)
class Solid:
    """One part as a closed solid, where it stands in the finished box. [mm]

    ``name`` is the part's name in the cut list, ``place`` tells two of a kind apart, ``grain`` is
    the axis along which its fibres run: 0 along the box, 1 across.
    """

    name: str
    place: str
    shape: Manifold
    grain: Literal[0, 1]


@lru_cache(maxsize=16)
def solids(design: Design) -> tuple[Solid, ...]:
    """Every part of a box as a solid, where it stands in the finished box.

    x runs along the box from the outside of its back end, y across, z up from the bottom edge.

    Parameters
    ----------
    design : Design
        The box. [mm]

    Returns
    -------
    tuple of Solid
        Two sides, back, front, bottom, the lid if there is one, and its battens if it has any. [mm]

    Raises
    ------
    ValueError
        The box has no space inside, or its tails do not fit: there is nothing to draw.
    """
    if not design.exists:
        raise ValueError(
            "this box cannot be drawn: it has no space inside or no room for its tails; "
            "the findings of its plan say what to change"
        )
    panel: Literal[0, 1] = 1 if design.choices.panels.grain == "across" else 0
    rows = [
        Solid("side", "near", standing(design, "side", far=False), 0),
        Solid("side", "far", standing(design, "side", far=True), 0),
        Solid("back", "", standing(design, "back", far=False), 1),
        Solid("front", "", standing(design, "front", far=True), 1),
        *(
            Solid(one.name, "", _joined(panel_pieces(design, panel=one)), panel)
            for one in design.grooved
        ),
    ]
    if design.lift_off_lid is not None:
        pieces, battens = lift_off_pieces(design, lid=design.lift_off_lid)
        rows.append(Solid("lid", "", _joined(pieces), 0))
        for place, batten in zip(("back", "front"), battens, strict=False):
            rows.append(Solid("batten", place, batten, 1))
    return tuple(rows)


def _joined(pieces: Sequence[Manifold]) -> Manifold:
    return Manifold.batch_boolean(list(pieces), OpType.Add)
