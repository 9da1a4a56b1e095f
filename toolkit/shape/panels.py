"""Lid, bottom and battens where they lie in the finished box, as convex pieces."""

from __future__ import annotations

import numpy as np
from manifold3d import Manifold

from toolkit.box import Design, LiftOffLid, Panel
from toolkit.shape.slices import Range, block


def _middle(centre: float, length: float) -> Range:
    return centre - length / 2, centre + length / 2


def _inset(x: Range, y: Range, by: float, *, front: bool) -> tuple[Range, Range]:
    """A panel's outline drawn in by so much, at the front only where it is worked there too."""
    return (x[0] + by, x[1] - (by if front else 0.0)), (y[0] + by, y[1] - by)


def _bevelled(panel: Panel, x: Range, y: Range, *, is_lid: bool) -> Manifold:
    edge, run = panel.bevel
    inner_x, inner_y = _inset(x, y, run, front=not is_lid)
    flat, worked = (panel.low, panel.high) if is_lid else (panel.high, panel.low)
    brink = flat + edge if is_lid else flat - edge
    corners = [(a, b, z) for a in x for b in y for z in (flat, brink)]
    corners += [(a, b, worked) for a in inner_x for b in inner_y]
    return Manifold.hull_points(np.array(corners, dtype=np.float64))


def panel_pieces(d: Design, *, panel: Panel) -> tuple[Manifold, ...]:
    """A panel in its grooves, lying on their floor (the bottom: level with their tongue). [mm]"""
    f = d.frame
    is_lid = panel.name == "lid"
    length, width = panel.length.value, panel.width.value
    y = _middle(f.outside_width.value / 2, width)
    if is_lid:
        # Planed flush with the front when it is shut.
        x = (f.outside_length.value - length, f.outside_length.value)
    else:
        x = _middle(f.back_thickness.value + f.inside_length.value / 2, length)
    if panel.profile == "bevelled" and panel.rebate_depth > 0:
        return (_bevelled(panel, x, y, is_lid=is_lid),)
    if panel.profile == "flat" or panel.rebate_depth <= 0:
        return (block(x, y, (panel.low, panel.high)),)
    inner = _inset(x, y, panel.rebate_width, front=not is_lid)
    tongue = panel.low + panel.tongue if is_lid else panel.high - panel.tongue
    edge, body = (panel.low, tongue), (tongue, panel.high)
    if not is_lid:
        edge, body = body, edge
    return block(x, y, edge), block(*inner, body)


def lift_off_pieces(
    d: Design, *, lid: LiftOffLid
) -> tuple[tuple[Manifold, ...], tuple[Manifold, ...]]:
    """A lid lying on the rim, and the battens under it if it has any. [mm]"""
    f = d.frame
    middle_x, middle_y = f.outside_length.value / 2, f.outside_width.value / 2
    # The space inside lies off the middle where back and front are not equally thick.
    inside_x = f.back_thickness.value + f.inside_length.value / 2
    x, y = _middle(middle_x, lid.length.value), _middle(middle_y, lid.width.value)
    rim = f.wall_height.value
    centre_x = _middle(inside_x, lid.centre_length.value)
    centre_y = _middle(middle_y, lid.centre_width.value)
    if lid.batten is None:
        above = block(x, y, (rim, rim + lid.thickness.value - lid.down))
        return (above, block(centre_x, centre_y, (rim - lid.down, rim))), ()
    length, width, thickness = (size.value for size in lid.batten)
    across, down = _middle(middle_y, length), (rim - thickness, rim)
    battens = (
        block((centre_x[0], centre_x[0] + width), across, down),
        block((centre_x[1] - width, centre_x[1]), across, down),
    )
    return (block(x, y, (rim, rim + lid.thickness.value)),), battens
