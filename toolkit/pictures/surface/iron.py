"""The edge of a plane's iron in the wood: its angles, its cap iron and the shaving, to scale."""

from __future__ import annotations

from math import pi, radians, sin

from toolkit.measures import Rule
from toolkit.pictures.kit import PartView, Picture, Point, Sheet, Slot, rectangle
from toolkit.pictures.kit.notes import title, unit_words
from toolkit.pictures.kit.strokes import arrow_head, away, long_grain
from toolkit.planes import Plane

HEIGHT = 330.0
EDGE = (230.0, 96.0)  # where the edge cuts [pt]
SCALE = 22.0  # of the iron [pt/mm]
LONG = 8.5  # of iron that is drawn [mm]
THICK = 2.4  # of the iron [mm]
CAP_THICK = 1.2
_ARC = 62.0  # radius of the angle's arc [pt]
_LEAST_SHAVING = 1.6  # so that a shaving can be seen at all [pt]


def _way(angle: float, length: float, start: Point = (0.0, 0.0)) -> Point:
    return away(start, turn=radians(angle), far=length)


def iron_picture(plane: Plane, *, rule: Rule, ghost: Plane | None = None) -> Picture:
    """Draw a plane's edge from the side, the plane moving to the left.

    Parameters
    ----------
    plane : Plane
        How it is set. [mm, degrees]
    rule : Rule
        Whose rule the sizes are read on.
    ghost : Plane, optional
        How it was set before. [mm, degrees]

    Returns
    -------
    Picture
        The section with its cutting angle; the shaving is drawn thicker where it would not show.
    """
    sheet = Sheet(scale=SCALE, height=HEIGHT)
    view = PartView(sheet, *EDGE, SCALE)
    shaving = max(plane.shaving, _LEAST_SHAVING / SCALE)
    # The wood: planed behind the edge, a shaving higher before it.
    before, behind = -EDGE[0] / SCALE + 1.0, 11.5
    low = -2.6
    wood = [(before, low), (behind, low), (behind, 0.0), (0.0, 0.0), (0.0, shaving)]
    wood.append((before, shaving))
    view.area("wood", wood, fill="face", edge="visible")
    long_grain(view, rectangle((before, behind), (low, 0.0)))
    if ghost is not None:
        sheet.line("ghost", view.points(_iron(ghost)), closed=True)
    view.area("iron", _iron(plane), fill="floor", edge="visible")
    angle = plane.cutting.angle
    _shaving(view, plane, shaving)
    if plane.bevel == "down" and plane.setback is not None:
        view.area("cap iron", _cap(plane.bed, plane.setback), fill="far", edge="thin")
        tip = view.at(*_way(angle, plane.setback))
        text = f"cap iron {rule.exact(round(plane.setback, 2), unit=False)} back"
        away = (tip[0] - 96.0, tip[1] + 84.0)
        leader = (tip, (away[0] + 3.0, away[1] + 2.0))
        sheet.write(text, [Slot(*away, "right", leader)], rank=2)
    arc = [_way(angle * i / 24, _ARC, EDGE) for i in range(25)]
    sheet.line("thin", arc)
    middle = arc[12]
    spots = [Slot(middle[0] + 5.0, middle[1] + 2.0), Slot(EDGE[0] + 6.0, EDGE[1] - 18.0)]
    sheet.write(f"{angle:.3g}° cutting angle", spots, rank=0)
    if plane.skew:
        spot = Slot(sheet.width - 12.0, HEIGHT - 54.0, "right")
        text = f"skewed {plane.skew:g}°: the wood meets {plane.working_angle:.1f}°"
        sheet.write(text, [spot], rank=0)
    sheet.line("dimension", [(60.0, 208.0), (20.0, 208.0)])
    sheet.line("arrow", arrow_head((14.0, 208.0), turn=pi, long=10.0, half=3.0), closed=True)
    sheet.write("way of the plane", [Slot(14.0, 216.0)], rank=1)
    title(sheet, "the edge from the side", x=sheet.width / 2, y=HEIGHT - 22.0)
    more = "" if shaving == plane.shaving else "; shaving drawn thicker than it is"
    unit_words(sheet, rule=rule, ghost=ghost is not None, more=more)
    return sheet.picture(plane.sentence(rule))


def _iron(plane: Plane) -> list[Point]:
    """The iron in section, its edge at zero, the face that lifts first. [mm]"""
    if plane.bevel == "up":
        top = plane.cutting.angle
        reach = THICK / max(sin(radians(top - plane.bed)), 0.05)
        heel = _way(plane.bed, LONG)
        brow = _way(top, min(reach, LONG))
        return [(0.0, 0.0), brow, _way(plane.bed, LONG - 2.0, brow), heel]
    face = _way(plane.bed, LONG)
    heel = _way(plane.cutting.clearance, THICK / max(sin(radians(plane.honed_bevel)), 0.05))
    back = _way(plane.bed, LONG - 4.2, heel)
    if plane.back_bevel:
        # A narrow bevel on the face stands steeper than the bed for its first half millimetre.
        brow = _way(plane.cutting.angle, 0.5)
        return [(0.0, 0.0), brow, face, back, heel]
    return [(0.0, 0.0), face, back, heel]


def _cap(bed: float, setback: float) -> list[Point]:
    """The cap iron on the face of the iron, from its setback upwards. [mm]"""
    foot, top = _way(bed, setback), _way(bed, LONG)
    return [foot, _way(bed + 55.0, 1.4, foot), _way(bed + 90.0, CAP_THICK, top), top]


def _shaving(view: PartView, plane: Plane, thick: float) -> None:
    """A shaving that leaves the wood and climbs the face, to where the cap iron turns it."""
    angle = plane.cutting.angle
    climb = 2.6 if plane.setback is None else max(0.4, min(2.6, plane.setback))
    up = _way(angle, climb)
    steep = angle + 58.0
    curl = _way(steep, 1.8, up)
    points = [(-1.2, thick), (-0.35, thick), _way(angle + 90.0, thick, _way(angle, 0.35))]
    points += [_way(angle + 90.0, thick, up), _way(steep + 90.0, thick, curl), curl, up, (0.0, 0.0)]
    view.area("shaving", points, fill="face cut", edge="thin")
