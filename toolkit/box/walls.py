"""The walls: how thickness, lap, inside and outside sizes make one another.

Axes: x along the length from the back end, y across, z up from the bottom edge. What has been
made is a fact here: it replaces the choice, and everything else is reckoned from it.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.choices import Choices
from toolkit.box.content_sizes import contents
from toolkit.box.settled import SettledGroove
from toolkit.box.wall_ends import as_made, left_standing, minus, tails_and_laps, thicknesses
from toolkit.results import Term, Working

DEFAULT_EASE = 4.0


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a wall's height, from low to high above its bottom edge. [mm]"""

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Frame:
    """The four walls and the space they leave, each size a working. [mm]

    ``tail_back`` and ``lap_back`` belong to the two back corners, ``_front`` to the front ones.
    Lengths are those of the finished box; ``side_cut`` and its like are what a wall is shot to
    before it is jointed, with the end grain that is left standing at its ends.
    """

    side_thickness: Working
    back_thickness: Working
    front_thickness: Working
    tail_back: Working
    tail_front: Working
    lap_back: Working
    lap_front: Working
    inside_length: Working
    inside_width: Working
    inside_height: Working
    outside_length: Working
    outside_width: Working
    wall_height: Working
    front_height: Working
    side_length: Working
    back_length: Working
    front_length: Working
    side_cut: Working
    back_cut: Working
    front_cut: Working
    lid_floor: Working | None
    bottom_groove: Span
    lid_groove: Span | None


def _walls(name: str, *rows: tuple[str, float]) -> tuple[Term, ...]:
    """The two walls crossed by one axis, as one doubled term where they are alike."""
    (first, one), (second, two) = rows
    if one == two:
        return (Term(name, one, 2),)
    return (Term(first, one), Term(second, two))


def _inside_and_outside(
    axis: str,
    walls: tuple[Term, ...],
    *,
    inside: Working | None,
    outside: Working | None,
) -> tuple[Working, Working]:
    """Of inside and outside one is known; the other follows by the thickness of the walls."""
    if outside is not None:
        base = Term(f"outside {axis}", outside.value)
        return Working(f"inside {axis}", (base, *minus(walls))), outside
    if inside is None:
        raise ValueError(f"neither an inside nor an outside {axis} is known")
    base = Term(f"inside {axis}", inside.value)
    return inside, Working(f"outside {axis}", (base, *walls))


def _chosen_size(c: Choices, place: str, axis: str) -> Working | None:
    """An inside or outside size as chosen, or as the contents and their ease ask for."""
    name = f"{place} {axis}"
    value: float | None = getattr(c.size, f"{place}_{axis}")
    if value is not None:
        return Working.of(name, ("as chosen", value))
    if place == "inside" and axis != "height" and c.size.contents is not None:
        thing = contents(c.size.contents)
        ease = DEFAULT_EASE if c.size.ease is None else c.size.ease
        size = thing.length if axis == "length" else thing.width
        return Working.of(name, (f"{axis} of {thing.name}", size), ("ease", ease))
    return None


def _levelled(name: str, made: float | None, over: tuple[Term, ...]) -> Working | None:
    """A length that exists, less the end grain that stands proud of the box yet. [mm]"""
    return None if made is None else Working(name, (Term("as made", made), *minus(over)))


def _cut(length: Working, made: float | None, over: tuple[Term, ...]) -> Working:
    """What a wall is shot to before it is jointed. [mm]"""
    if made is not None or not over:
        return as_made(length.name, value=made) or length
    return Working(length.name, (Term(f"{length.name} when flush", length.value), *over))


def _least(*values: float | None) -> float | None:
    known = [value for value in values if value is not None]
    return min(known) if known else None


def _heights(c: Choices, g: SettledGroove) -> tuple[Working, Working, Working | None]:
    """Inside height, wall height and, under a sliding lid, the floor of the lid groove."""
    lid_grooved = c.lid.closure.grooved
    bottom = (Term("bottom edge to groove", g.bottom_edge), Term("bottom groove", g.width))
    top = (Term("lid groove", g.width), Term("groove to top edge", g.top_edge))
    around = bottom + (top if lid_grooved else ())
    made = _least(c.made.side_width, c.made.back_width)
    outside = as_made("wall height", value=made) or _chosen_size(c, "outside", "height")
    if outside is None:
        inside = _chosen_size(c, "inside", "height")
        if inside is None:
            raise ValueError("neither an inside nor an outside height is known")
        space = Term("inside height", inside.value)
        wall = Working("wall height", (*bottom, space, *(top if lid_grooved else ())))
    else:
        wall = Working("wall height", outside.terms)
        inside = Working("inside height", (Term("wall height", wall.value), *minus(around)))
    floor = Working("lid groove floor", (*bottom, Term("inside height", inside.value)))
    return inside, wall, floor if lid_grooved else None


def frame(
    c: Choices,
    *,
    groove: SettledGroove,
    lap: float | None,
    proud: float,
    under_lid: float = 0.0,
) -> Frame:
    """The four walls of a box whose groove is settled; without a lap something else decides it."""
    made, on_ends = c.made, c.corner.tails_on == "ends"
    side, back, front = thicknesses(c)
    (tail_back, lap_back), (tail_front, lap_front) = tails_and_laps(c, lap=lap, proud=proud)
    over_side, over_end = left_standing(c, proud)
    lid_grooved = c.lid.closure.grooved

    # What the made walls say of the space between them; the shorter of two unlike ends rules,
    # because the longer can still be cut down to it.
    ends = _least(made.back_length, made.front_length)
    known_width_in = known_width_out = known_length = None
    if ends is not None and on_ends:
        taken = (*minus(over_end), Term("tail length", -tail_back.value, 2))
        known_width_in = Working("inside width", (Term("end as made", ends), *taken))
    elif ends is not None:
        known_width_out = _levelled("outside width", ends, over_end)
    laps = [Term("back lap", lap_back.value), Term("front lap", lap_front.value)]
    # A side that carries the tails stops short of the faces by the laps, but under a sliding lid
    # its ear above the low front runs on to the front face.
    blind = c.corner.joint == "half-blind"
    short = () if on_ends or not blind else tuple(laps[:1] if lid_grooved else laps)
    if made.side_length is not None:
        long = (Term("side as made", made.side_length), *minus(over_side))
        known_length = Working("outside length", (*long, *short))

    inside_length, outside_length = _inside_and_outside(
        "length",
        _walls("end thickness", ("back thickness", back.value), ("front thickness", front.value)),
        inside=_chosen_size(c, "inside", "length"),
        outside=known_length or _chosen_size(c, "outside", "length"),
    )
    inside_width, outside_width = _inside_and_outside(
        "width",
        (Term("side thickness", side.value, 2),),
        inside=known_width_in or _chosen_size(c, "inside", "width"),
        outside=known_width_out
        or (None if known_width_in else _chosen_size(c, "outside", "width")),
    )
    inside_height, wall_height, floor = _heights(c, groove)
    front_height = Working("front height", wall_height.terms)
    if floor is not None:
        low = (
            Term("lid groove floor", floor.value),
            Term("clearance under the lid", -under_lid),
        )
        front_height = Working("front height", low)

    side_length = _levelled("side length", made.side_length, over_side) or Working(
        "side length", (Term("outside length", outside_length.value), *minus(short))
    )
    across = (
        (Term("inside width", inside_width.value), Term("tail length", tail_back.value, 2))
        if on_ends
        else (Term("outside width", outside_width.value),)
    )
    back_length, front_length = (
        _levelled(f"{name} length", value, over_end) or Working(f"{name} length", across)
        for name, value in (("back", made.back_length), ("front", made.front_length))
    )
    g = groove
    top = wall_height.value - g.top_edge
    return Frame(
        side_thickness=side,
        back_thickness=back,
        front_thickness=front,
        tail_back=tail_back,
        tail_front=tail_front,
        lap_back=lap_back,
        lap_front=lap_front,
        inside_length=inside_length,
        inside_width=inside_width,
        inside_height=inside_height,
        outside_length=outside_length,
        outside_width=outside_width,
        wall_height=wall_height,
        front_height=as_made("front height", value=made.front_width) or front_height,
        side_length=side_length,
        back_length=back_length,
        front_length=front_length,
        side_cut=_cut(side_length, made.side_length, over_side),
        back_cut=_cut(back_length, made.back_length, over_end),
        front_cut=_cut(front_length, made.front_length, over_end),
        lid_floor=floor,
        bottom_groove=Span(g.bottom_edge, g.bottom_edge + g.width),
        lid_groove=Span(top - g.width, top) if lid_grooved else None,
    )
