"""A planed surface in raking light: seen from above, with the lamp and a section under it."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.pictures.kit import PartView, Picture, Point, Sheet, Slot, rectangle, still_scale
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.notes import unit_words
from toolkit.pictures.kit.strokes import arrow, points_of
from toolkit.pictures.surface.light import (
    figure,
    from_where,
    lamp_beside,
    lamp_from_the_side,
    lit,
    wood_png,
)
from toolkit.planes import Surface
from toolkit.smoothing import what_shows

TALL = 40.0  # room for the heights [pt]
BODY = 13.0  # wood left under the deepest place [pt]
_TIMES = (5000, 3000, 2000, 1000, 500, 300, 200, 100, 50, 30, 20, 10, 5, 3, 2, 1)
_MOST_POINTS = 600


def times(surface: Surface, *, scale: float, kept: int | None = None) -> int:
    """How many times heights are drawn, a round number that holds still. [pt/mm]"""
    rise = max(surface.rise, 1e-9) * scale
    if kept is not None and rise * kept <= TALL:
        return kept
    return next((n for n in _TIMES if rise * n <= TALL), _TIMES[-1])


def _outline(view: PartView, surface: Surface, *, enlarged: int) -> list[Point]:
    """The section's upper line on the page, its highest place at the view's zero. [pt]"""
    every = max(1, len(surface.across) // _MOST_POINTS)
    across, heights = surface.across[::every], surface.profile[::every]
    rise = (heights - heights.max()).astype(np.float64) * enlarged
    across = np.concatenate(([0.0], across, [surface.width]))
    return view.points(points_of(across, np.pad(rise, 1, "edge")))


def _section(view: PartView, surface: Surface, *, enlarged: int, rule: Rule) -> float:
    """Cut wood under the line, its height and the distance of two tracks; gives its foot. [pt]"""
    sheet, line = view.sheet, _outline(view, surface, enlarged=enlarged)
    x, right, foot = view.x, view.across(surface.width), view.y - TALL - BODY
    wood = [*line, (right, foot), (x, foot)]
    sheet.name("section", wood)
    sheet.line("end cut", wood, closed=True)
    sheet.line("visible", line)
    for end in (line[0], line[-1]):
        sheet.line("thin", [(end[0], foot), end])
    # The wood goes on below: a broken edge.
    steps = np.arange(41)
    ragged = foot + 0.9 * np.sin(2.3 * steps) + 0.7 * np.sin(5.1 * steps)
    sheet.line("thin", points_of(np.linspace(x, right, len(steps)), ragged))
    (from_low, low), (from_high, high) = (end(line, key=lambda at: at[1]) for end in (min, max))
    if high - low > 3.0:
        text, starts = rule.fine(surface.rise, unit=False), [from_low, from_high]
        single(sheet, (low, high), text, at=x - 16.0, starts=starts, axis="up", side=-1, rank=1)
    _tracks(view, surface, foot=foot, rule=rule)
    return foot


def _tracks(view: PartView, surface: Surface, *, foot: float, rule: Rule) -> None:
    """How far apart the middles of two tracks lie, those nearest the middle of the patch."""
    inside = sorted(row.centre for row in surface.last_pass if 0 < row.centre < surface.width)
    left, right = min(
        pairwise(inside), key=lambda two: abs(sum(two) - surface.width), default=(0.0, 0.0)
    )
    if right > left:
        text, at = f"{rule.show(right - left, unit=False)} between tracks", view.sheet.text + 4.5
        stops = view.across(left), view.across(right)
        single(view.sheet, stops, text, at=foot - at, starts=foot, axis="along", rank=1)


def _cut_line(sheet: Sheet, *, left: float, right: float, y: float) -> None:
    """Where the section is taken: short pieces of its line outside the patch, lettered A. [pt]"""
    for edge, way in ((left, -1.0), (right, 1.0)):
        sheet.line("gauge", [(edge + way * 2.0, y), (edge + way * 15.0, y)])
        spots = [Slot(edge + way * 18.0, y - 3.4, "left" if way > 0 else "right")]
        spots += [Slot(edge + way * 8.0, y + up, "center") for up in (4.0, -11.5)]
        sheet.write("A", spots, rank=-1, size=sheet.text + 0.7)


HEIGHT = 424.0
ROOM = (330.0, 216.0)  # for the patch [pt]
LEFT, LOW = 66.0, 160.0  # its lower left corner [pt]
SIDE = 412.0  # where what stands beside it begins [pt]
SECTION = 120.0  # the highest place of the section [pt]
AMBIENT = 0.16  # light of the room beside the lamp's, of what the lamp gives a level surface [1]
LINE = 0.25  # where the section is taken, as a share of the way along [1]
_WIDEST = 800  # cells of the shaded picture, more than a screen shows
_HARDLY = 0.0005  # a change of brightness that rounds to nothing [1]
_MM = Rule.millimetres()


def raking_light(
    surface: Surface,
    *,
    lamp_height: float = 5.0,
    lamp_direction: float = 270.0,
    rule: Rule = _MM,
    ghost: Surface | None = None,
) -> Picture:
    """Draw a planed surface as a low lamp shows it, and a section across its tracks.

    Shade and shadows are those of the heights, not enlarged. The wood's figure beneath is drawn,
    as is a little light of the room.

    Parameters
    ----------
    surface : Surface
        What was planed. [mm]
    lamp_height : float
        Angle of the lamp's light above the surface. [degrees]
    lamp_direction : float
        Where the lamp stands: 0 at the far end, 90 at the right, round like a clock. [degrees]
    rule : Rule
        Whose rule the sizes are read on.
    ghost : Surface, optional
        An earlier state, whose section is drawn thinly behind. [mm]

    Returns
    -------
    Picture
        The patch in true proportion, and the section with its enlargement said beside it.

    Raises
    ------
    ValueError
        The lamp is lower than half a degree or higher than 89.

    Source
    ------
    Lambert's law and straight rays; lines after ISO 128, dimensions after ISO 129-1.
    """
    if not 0.5 <= lamp_height <= 89:
        raise ValueError(
            f"lamp height was given as {lamp_height:g} degrees; give one from 0.5 to 89, such as 5"
        )
    scale = still_scale((surface.width, ROOM[0]), (surface.length, ROOM[1]))
    sheet = Sheet(scale=scale, height=HEIGHT)
    view, section = PartView(sheet, LEFT, LOW, scale), PartView(sheet, LEFT, SECTION, scale)
    wide, long = surface.width * scale, surface.length * scale
    shaded = _shaded(surface, lamp_height, lamp_direction)
    sheet.image(shaded, x=LEFT, y=LOW, width=wide, height=long)
    view.area("patch", rectangle((0, surface.width), (0, surface.length)), edge="visible")
    lamp_beside(sheet, ((LEFT, LOW), (LEFT + wide, LOW + long)), direction=lamp_direction)
    _cut_line(sheet, left=LEFT, right=LEFT + wide, y=view.up(LINE * surface.length))
    kept = times(ghost, scale=scale) if ghost is not None else None
    enlarged = times(surface, scale=scale, kept=kept)
    if ghost is not None:
        sheet.line("ghost", _outline(section, ghost, enlarged=enlarged))
    foot = _section(section, surface, enlarged=enlarged, rule=rule)
    under = Slot(LEFT + wide / 2, foot - 2.2 * sheet.text - 14.0, "center")
    sheet.write(f"section A–A, heights × {enlarged}", [under], rank=-1)
    over, text = Slot(LEFT, HEIGHT - 15.0), "planed surface, seen from above"
    sheet.write(text, [over], rank=-1, size=sheet.text + 0.7)
    left = 180 <= lamp_direction % 360 < 360
    lamp_from_the_side(sheet, (SIDE + 14.0, LOW + 104.0), room=96.0, height=lamp_height, left=left)
    arrow(sheet, (SIDE + 36.0, LOW + 4.0), (SIDE + 36.0, LOW + 42.0))
    sheet.write("planed\nthis way", [Slot(SIDE + 44.0, LOW + 25.0)], rank=2)
    _scale_bar(view, surface, rule)
    unit_words(sheet, rule=rule, ghost=ghost is not None)
    return sheet.picture(_sentence(surface, lamp_height, lamp_direction, rule))


def _shaded(surface: Surface, lamp_height: float, lamp_direction: float) -> bytes:
    step, heights = surface.step, surface.heights
    light = lit(heights, step=step, lamp_height=lamp_height, lamp_direction=lamp_direction)
    tones = (light * np.float32(1 - AMBIENT) + np.float32(AMBIENT)) * figure(*heights.shape, step)
    every = max(1, -(-heights.shape[1] // _WIDEST))
    return wood_png(tones[::every, ::every])


def _scale_bar(view: PartView, surface: Surface, rule: Rule) -> None:
    """A bar of a round length under the patch."""
    millimetres = (100, 50, 20, 10, 5, 2, 1)
    inches = (MM_PER_INCH * size for size in (4, 2, 1, 0.5, 0.25, 0.125))
    sizes = list(millimetres if rule.units == "mm" else inches)
    bar = next((size for size in sizes if size <= surface.width / 3), sizes[-1])
    right, y = view.across(surface.width), LOW - 9.0
    left = right - bar * view.scale
    view.sheet.line("mark", [(left, y), (right, y)])
    for x in (left, right):
        view.sheet.line("mark", [(x, y - 2.6), (x, y + 2.6)])
    spots = [Slot(left - 5.0, y - 3.4, "right"), Slot(right + 5.0, y - 3.4)]
    view.sheet.write(rule.exact(bar, unit=False), spots, rank=0)


def _sentence(surface: Surface, height: float, direction: float, rule: Rule) -> str:
    across = abs(90.0 - direction % 180.0)
    step = surface.corner_step
    shows = what_shows(
        height, ridge=surface.ridge, slope=surface.steepest, step=step, across=across
    )
    text = (
        f"{rule.show(surface.width)} by {rule.show(surface.length)} of wood, lamp at "
        f"{from_where(direction)}, {height:g}° up. {surface.sentence(rule)} "
    )
    if shows.ridge > 0:
        text += (
            "The scallops throw shadows of their own. "
            if shows.scallops_cast
            else f"The scallops throw no shadow and shade by {100 * shows.shading:.1f} %. "
            if shows.shading >= _HARDLY
            else "The scallops neither throw a shadow nor shade. "
        )
    if step > 0:
        return text + f"The highest step throws a shadow {rule.fine(shows.shadow)} long."
    return text + "No corner of the iron left a step."
