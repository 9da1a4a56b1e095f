"""The parts of a box cut through, as outlines: across at its middle, and along at its middle.

Across, x runs from the outside of the left-hand side as seen from the front; along, from the
outside of the back end. z runs up from the bottom edge.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box import Design, LiftOffLid, Panel, Span
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import rectangle


@dataclass(frozen=True, slots=True)
class Cut:
    """One part where it is cut. [mm]"""

    name: str
    points: tuple[Point, ...]
    end_grain: bool


def _wall(
    faces: tuple[float, float], height: float, sunk: list[Span], depth: float
) -> tuple[Point, ...]:
    """A wall cut across, from its outside face to its inside face, with its grooves. [mm]"""
    back, face = faces
    inward = 1.0 if face > back else -1.0
    floor = face - inward * min(depth, abs(face - back))
    points: list[Point] = [(back, 0.0), (face, 0.0)]
    for span in sorted(sunk, key=lambda span: span.low):
        points += [(face, span.low), (floor, span.low), (floor, span.high), (face, span.high)]
    return (*points, (face, height), (back, height))


def _worked_edge(panel: Panel) -> list[Point]:
    """A panel's edge, from its flat face round to its worked face: inward, and off the flat face.

    The first point is the edge's corner on the flat face. [mm]
    """
    thick, tongue = panel.thickness.value, panel.tongue
    if panel.rebate_depth <= 0 or panel.profile == "flat":
        return [(0.0, 0.0), (0.0, thick)]
    if panel.profile == "rebated":
        return [
            (0.0, 0.0),
            (0.0, tongue),
            (panel.rebate_width, tongue),
            (panel.rebate_width, thick),
        ]
    edge, run = panel.bevel
    return [(0.0, 0.0), (0.0, edge), (run, thick)]


def _panel_cut(
    panel: Panel, left: float, right: float, *, worked_right: bool = True
) -> tuple[Point, ...]:
    """A panel cut from edge to edge: the bottom is worked underneath, the lid on top. [mm]"""
    flat, way = (panel.low, 1.0) if panel.name == "lid" else (panel.high, -1.0)
    edge = _worked_edge(panel)
    points = [(left + inward, flat + way * off) for inward, off in edge]
    plain = [(0.0, 0.0), (0.0, panel.thickness.value)]
    other = [
        (right - inward, flat + way * off) for inward, off in (edge if worked_right else plain)
    ]
    return (*points, *reversed(other))


def _lift_off(d: Design, lid: LiftOffLid, *, along: bool) -> list[Cut]:
    f = d.frame
    rim = f.wall_height.value
    outside = f.outside_length.value if along else f.outside_width.value
    size = lid.length.value if along else lid.width.value
    centre = lid.centre_length.value if along else lid.centre_width.value
    middle = outside / 2
    inner = middle
    if along:
        inner = f.back_thickness.value + f.inside_length.value / 2
    left, right = middle - size / 2, middle + size / 2
    if lid.batten is None:
        top = rim + lid.thickness.value - lid.down
        points = [
            (left, rim),
            (inner - centre / 2, rim),
            (inner - centre / 2, rim - lid.down),
            (inner + centre / 2, rim - lid.down),
            (inner + centre / 2, rim),
            (right, rim),
            (right, top),
            (left, top),
        ]
        return [Cut("lid", tuple(points), not along)]
    cuts = [
        Cut("lid", tuple(rectangle((left, right), (rim, rim + lid.thickness.value))), not along)
    ]
    width, down = lid.batten[1].value, lid.batten[2].value
    if along:
        for i, x in enumerate((inner - centre / 2, inner + centre / 2 - width), 1):
            cuts.append(
                Cut(f"batten {i}", tuple(rectangle((x, x + width), (rim - down, rim))), True)
            )
    else:
        # The battens lie nearer the ends: the cut at mid-length looks on to one of them.
        half = lid.batten[0].value / 2
        beyond = rectangle((middle - half, middle + half), (rim - down, rim))
        cuts.append(Cut("batten", tuple(beyond), False))
    return cuts


def cut_across(d: Design) -> list[Cut]:
    """Sides, bottom and lid, cut across at mid-length. [mm]

    Parameters
    ----------
    d : Design
        The box. [mm]

    Source
    ------
    The design.
    """
    f, depth = d.frame, d.choices.groove.depth
    wide, thick, high = f.outside_width.value, f.side_thickness.value, f.wall_height.value
    sunk = [f.bottom_groove, *([f.lid_groove] if f.lid_groove else [])]
    middle = wide / 2
    half = d.bottom.width.value / 2
    cuts = [
        Cut("left side", _wall((0.0, thick), high, sunk, depth), True),
        Cut("right side", _wall((wide, wide - thick), high, sunk, depth), True),
        Cut("bottom", _panel_cut(d.bottom, middle - half, middle + half), True),
    ]
    if isinstance(d.lid, LiftOffLid):
        return [*cuts, *_lift_off(d, d.lid, along=False)]
    half = d.lid.width.value / 2
    return [*cuts, Cut("lid", _panel_cut(d.lid, middle - half, middle + half), True)]


def cut_along(d: Design) -> list[Cut]:
    """Back, front, bottom and lid, cut along at mid-width. [mm]

    Parameters
    ----------
    d : Design
        The box. [mm]

    Source
    ------
    The design.
    """
    f, depth = d.frame, d.choices.groove.depth
    long, back, front = f.outside_length.value, f.back_thickness.value, f.front_thickness.value
    sunk = [f.bottom_groove, *([f.lid_groove] if f.lid_groove else [])]
    middle, half = back + f.inside_length.value / 2, d.bottom.length.value / 2
    cuts = [
        Cut("back end", _wall((0.0, back), f.wall_height.value, sunk, depth), True),
        Cut(
            "front end",
            _wall((long, long - front), f.front_height.value, [f.bottom_groove], depth),
            True,
        ),
        Cut("bottom", _panel_cut(d.bottom, middle - half, middle + half), False),
    ]
    if isinstance(d.lid, LiftOffLid):
        return [*cuts, *_lift_off(d, d.lid, along=True)]
    lid = _panel_cut(d.lid, long - d.lid.length.value, long, worked_right=False)
    return [*cuts, Cut("lid", lid, False)]
