"""A planed surface in raking light: seen from above, with the lamp and a section under it."""

from __future__ import annotations

import numpy as np

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import unit_words
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, Sheet
from toolkit.pictures.kit.view import View, rectangle, still_scale
from toolkit.pictures.strokes import arrow
from toolkit.pictures.surface import lamp, profile
from toolkit.pictures.surface.light import figure, lit, wood_png
from toolkit.planes import Surface, fine
from toolkit.smoothing import what_shows

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
    paper: bool = False,
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
    paper : bool
        Larger letters, for print.

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
    sheet = Sheet(scale=scale, height=HEIGHT, text=PAPER_TEXT if paper else TEXT)
    view, section = View(sheet, LEFT, LOW, scale), View(sheet, LEFT, SECTION, scale)
    wide, long = surface.width * scale, surface.length * scale
    shaded = _shaded(surface, lamp_height, lamp_direction)
    sheet.image(shaded, x=LEFT, y=LOW, width=wide, height=long)
    view.area("patch", rectangle((0, surface.width), (0, surface.length)), edge="visible")
    lamp.beside(sheet, ((LEFT, LOW), (LEFT + wide, LOW + long)), direction=lamp_direction)
    profile.cut_line(sheet, left=LEFT, right=LEFT + wide, y=view.up(LINE * surface.length))
    kept = profile.times(ghost, scale=scale) if ghost is not None else None
    enlarged = profile.times(surface, scale=scale, kept=kept)
    if ghost is not None:
        sheet.line("ghost", profile.outline(section, ghost, enlarged=enlarged))
    foot = profile.draw_section(section, surface, enlarged=enlarged, rule=rule)
    under = Place(LEFT + wide / 2, foot - 2.2 * sheet.text - 14.0, "center")
    sheet.write(f"section A–A, heights × {enlarged}", [under], rank=-1)
    over, text = Place(LEFT, HEIGHT - 15.0), "planed surface, seen from above"
    sheet.write(text, [over], rank=-1, size=sheet.text + 0.7)
    left = 180 <= lamp_direction % 360 < 360
    lamp.from_the_side(sheet, (SIDE + 14.0, LOW + 104.0), room=96.0, height=lamp_height, left=left)
    arrow(sheet, (SIDE + 36.0, LOW + 4.0), (SIDE + 36.0, LOW + 42.0))
    sheet.write("planed\nthis way", [Place(SIDE + 44.0, LOW + 25.0)], rank=2)
    _scale_bar(view, surface, rule)
    unit_words(sheet, rule=rule, ghost=ghost is not None)
    return sheet.picture(_sentence(surface, lamp_height, lamp_direction, rule))


def _shaded(surface: Surface, lamp_height: float, lamp_direction: float) -> bytes:
    step, heights = surface.step, surface.heights
    light = lit(heights, step=step, lamp_height=lamp_height, lamp_direction=lamp_direction)
    tones = (light * np.float32(1 - AMBIENT) + np.float32(AMBIENT)) * figure(*heights.shape, step)
    every = max(1, -(-heights.shape[1] // _WIDEST))
    return wood_png(tones[::every, ::every])


def _scale_bar(view: View, surface: Surface, rule: Rule) -> None:
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
    spots = [Place(left - 5.0, y - 3.4, "right"), Place(right + 5.0, y - 3.4)]
    view.sheet.write(rule.exact(bar, unit=False), spots, rank=0)


def _sentence(surface: Surface, height: float, direction: float, rule: Rule) -> str:
    across = abs(90.0 - direction % 180.0)
    step = surface.corner_step
    shows = what_shows(
        height, ridge=surface.ridge, slope=surface.steepest, step=step, across=across
    )
    text = (
        f"{rule.show(surface.width)} by {rule.show(surface.length)} of wood, lamp at "
        f"{lamp.from_where(direction)}, {height:g}° up. {surface.sentence(rule)} "
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
        return text + f"The highest step throws a shadow {fine(shows.shadow, rule=rule)} long."
    return text + "No corner of the iron left a step."
