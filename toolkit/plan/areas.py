"""How much surface a worked-out box has to finish."""

from __future__ import annotations

from typing import Any

from toolkit.box import LiftOffLid
from toolkit.plan.plan import Plan
from toolkit.smoothing import Areas, box_areas


def finishing_areas(made: Plan) -> Areas:
    """The surfaces of a box that take a finish. [mm²]"""
    f, d = made.design.frame, made.design
    lid = d.lid
    common: dict[str, Any] = {
        "outside_width": f.outside_width.value,
        "wall_height": f.wall_height.value,
        "side_thickness": f.side_thickness.value,
        "end_thickness": f.back_thickness.value,
        "front_thickness": f.front_thickness.value,
        "inside_height": f.inside_height.value,
        "recess": max(d.bottom.low, 0.0),
    }
    if isinstance(lid, LiftOffLid):
        # A rebated lid rests on its thinned edge; the raised centre does not show outside.
        edge = lid.thickness.value - (lid.down if lid.seat == "rebate" else 0.0)
        return box_areas(
            f.outside_length.value,
            **common,
            lid_thickness=edge,
            lid_size=(lid.length.value, lid.width.value),
            lid="lift-off",
        )
    groove = d.choices.groove
    return box_areas(
        f.outside_length.value,
        **common,
        lid_thickness=lid.thickness.value,
        open_groove=groove.width * groove.depth,
        front_height=f.front_height.value,
        lid="sliding",
    )
