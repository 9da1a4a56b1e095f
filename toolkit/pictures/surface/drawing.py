"""A planed surface in raking light: seen from above, with the lamp and a section under it."""

from __future__ import annotations

import numpy as np

from toolkit.measures import Rule
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, Sheet
from toolkit.pictures.kit.view import View, rectangle, still_scale
from toolkit.pictures.surface import lamp, profile
from toolkit.pictures.surface.light import figure, lit
from toolkit.pictures.surface.png import wood_png
from toolkit.smoothing import Surface, what_shows
from toolkit.smoothing.surface import LINE
from toolkit.smoothing.words import fine

HEIGHT = 424.0
ROOM = (330.0, 216.0)  # for the patch [pt]
LEFT, LOW = 66.0, 160.0  # its lower left corner [pt]
SIDE = 412.0  # where what stands beside it begins [pt]
SECTION = 120.0  # the highest place of the section [pt]
AMBIENT = 0.16  # light of the room beside the lamp's, of what the lamp gives a level surface [1]
_WIDEST = 800  # cells of the shaded picture, more than a screen shows
_CHANGE = 0.004  # how much wood whose fibres slope looks lighter or darker, a degree [1]
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
    words = _sentence(surface, lamp_height, lamp_direction, rule)
    scale = still_scale((surface.width, ROOM[0]), (surface.length, ROOM[1]))
    sheet = Sheet(scale=scale, height=HEIGHT, text=PAPER_TEXT if paper else TEXT)
    view = View(sheet, LEFT, LOW, scale)
    wide, long = surface.width * scale, surface.length * scale
    sheet.image(
        _shaded(surface, lamp_height, lamp_direction), x=LEFT, y=LOW, width=wide, height=long
    )
    view.area("patch", rectangle((0, surface.width), (0, surface.length)), edge="visible")
    corners = ((LEFT, LOW), (LEFT + wide, LOW + long))
    lamp.beside(sheet, corners, direction=lamp_direction)
    profile.cut_line(sheet, left=LEFT, right=LEFT + wide, y=view.up(LINE * surface.length))
    enlarged = profile.times(surface, scale=scale)
    if ghost is not None:
        enlarged = profile.times(surface, scale=scale, kept=profile.times(ghost, scale=scale))
        behind = profile.outline(ghost, x=LEFT, top=SECTION, scale=scale, enlarged=enlarged)
        sheet.line("ghost", behind)
    foot = profile.draw(
        sheet, surface, x=LEFT, top=SECTION, scale=scale, enlarged=enlarged, rule=rule
    )
    title = f"section A–A, heights × {enlarged}"
    sheet.write(title, [Place(LEFT + wide / 2, foot - 2.2 * sheet.text - 14.0, "center")], rank=-1)
    sheet.write(
        "planed surface, seen from above",
        [Place(LEFT, HEIGHT - 15.0)],
        rank=-1,
        size=sheet.text + 0.7,
    )
    _beside(sheet, surface, lamp_height, lamp_direction)
    _torn(view, surface)
    _scale_bar(sheet, view, surface, rule)
    note = "sizes in millimetres" if rule.units == "mm" else "sizes in inches"
    if ghost is not None:
        note = f"dotted: before; {note}"
    sheet.write(note, [Place(sheet.width - 8.0, 8.0, "right"), Place(8.0, 8.0)], rank=1)
    return sheet.picture(words)


def _shaded(surface: Surface, lamp_height: float, lamp_direction: float) -> bytes:
    step, heights = surface.step, surface.heights
    light = lit(heights, step=step, lamp_height=lamp_height, lamp_direction=lamp_direction)
    tones = (light * np.float32(1 - AMBIENT) + np.float32(AMBIENT)) * figure(*heights.shape, step)
    if surface.grain is not None:
        # Curly wood gleams where its fibres lean to the eye, and is dark where they lean away.
        tones *= 1 + np.float32(_CHANGE) * surface.grain
    every = max(1, -(-heights.shape[1] // _WIDEST))
    return wood_png(tones[::every, ::every])


def _beside(sheet: Sheet, surface: Surface, height: float, direction: float) -> None:
    """At the right: how high the lamp is, and which way the strokes went."""
    left = 180 <= direction % 360 < 360
    lamp.from_the_side(
        sheet,
        (SIDE + 14.0, LOW + 104.0),
        room=96.0,
        height=height,
        left=left,
    )
    x, low, high = SIDE + 36.0, LOW + 4.0, LOW + 42.0
    tail, tip = ((x, low), (x, high)) if surface.direction > 0 else ((x, high), (x, low))
    lamp.arrow(sheet, tail, tip)
    sheet.write("planed\nthis way", [Place(x + 8.0, (low + high) / 2 + 2.0)], rank=2)


def _torn(view: View, surface: Surface) -> None:
    """Where it tore, pointed at once."""
    if not surface.torn.any():
        return
    rows, columns = np.nonzero(surface.torn)
    # A deep place near the right edge, where the leader comes from.
    heights = surface.heights[rows, columns]
    deep = np.flatnonzero(heights <= (heights.min() + heights.mean()) / 2)
    shown = deep[np.argmax(columns[deep])]
    x, y = (columns[shown] + 0.5) * surface.step, (rows[shown] + 0.5) * surface.step
    share = f"{surface.torn_share:.1f}" if surface.torn_share < 10 else f"{surface.torn_share:.0f}"
    at = view.at(float(x), float(y))
    right, top = view.across(surface.width), view.up(surface.length)
    # Level with the place, else higher or lower along the edge, else over the patch.
    spots = [
        Place(right + 10.0, at[1] + lift, "left", (at, (right + 8.0, at[1] + lift - 1.0)))
        for lift in sorted(np.arange(-190.0, 191.0, 10.0).tolist(), key=abs)
        if LOW + 12.0 <= at[1] + lift <= top - 8.0
    ]
    over = top + 10.0 + 1.22 * view.sheet.text
    for aside in (0.0, 40.0, -40.0, 80.0, -80.0):
        tip = (at[0] + aside, top + 6.0)
        spots.append(Place(tip[0], over, "center", (at, tip)))
    view.sheet.write(f"torn out\n{share} % of it", spots, rank=1, red=True)


def _scale_bar(sheet: Sheet, view: View, surface: Surface, rule: Rule) -> None:
    """A bar of a round length under the patch."""
    unit = 1.0 if rule.units == "mm" else 25.4
    sizes = (100, 50, 20, 10, 5, 2, 1) if rule.units == "mm" else (4, 2, 1, 0.5, 0.25, 0.125)
    bar = next(
        (size * unit for size in sizes if size * unit <= surface.width / 3), unit * sizes[-1]
    )
    right, y = view.across(surface.width), LOW - 9.0
    left = right - bar * view.scale
    sheet.line("mark", [(left, y), (right, y)])
    for x in (left, right):
        sheet.line("mark", [(x, y - 2.6), (x, y + 2.6)])
    sheet.write(
        rule.exact(bar, unit=False),
        [Place(left - 5.0, y - 3.4, "right"), Place(right + 5.0, y - 3.4)],
        rank=0,
    )


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
