"""The walls: how thickness, lap, inside and outside sizes make one another.

Axes: x along the length from the back end, y across, z up from the bottom edge. What has been
made is a fact here: it replaces the choice, and everything else is reckoned from it.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.choices import Choices
from toolkit.box.content_sizes import contents
from toolkit.box.settled import SettledGroove
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
    lid_floor: Working | None
    bottom_groove: Span
    lid_groove: Span | None


def as_made(name: str, *, value: float | None) -> Working | None:
    """A measured fact as a working, or None where nothing has been made yet. [mm]"""
    return None if value is None else Working.of(name, ("as made", value))


def _thickness(name: str, made: float | None, chosen: float) -> Working:
    return as_made(name, value=made) or Working.of(name, ("as chosen", chosen))


def _tail_and_lap(
    c: Choices, lap: float | None, board: str, pin_board: Working
) -> tuple[Working, Working]:
    """Tail length and lap against one pin board: of the two, one is fixed, the other is left."""
    thickness = (f"{board} thickness", pin_board.value)
    gauged, chosen = c.made.tail_length, c.corner.tail_length
    if c.corner.joint == "through" and gauged is None:
        return Working.of("tail length", thickness), Working.of("lap", ("through joint", 0.0))
    if gauged is None and lap is not None:
        return (
            Working.of("tail length", thickness, ("lap", -lap)),
            Working.of("lap", ("as chosen", lap)),
        )
    fixed = gauged if gauged is not None else chosen
    if fixed is None:
        raise ValueError("lap or tail length must be settled before the frame is reckoned")
    word = "as gauged" if gauged is not None else "as chosen"
    return (
        Working.of("tail length", (word, fixed)),
        Working.of("lap", thickness, ("tail length", -fixed)),
    )


def _walls(name: str, *rows: tuple[str, float]) -> tuple[Term, ...]:
    """The two walls crossed by one axis, as one doubled term where they are alike."""
    (first, one), (second, two) = rows
    if one == two:
        return (Term(name, one, 2),)
    return (Term(first, one), Term(second, two))


def _minus(terms: tuple[Term, ...]) -> tuple[Term, ...]:
    return tuple(Term(term.label, -term.each, term.times) for term in terms)


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
        return Working(f"inside {axis}", (base, *_minus(walls))), outside
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
        inside = Working("inside height", (Term("wall height", wall.value), *_minus(around)))
    floor = Working("lid groove floor", (*bottom, Term("inside height", inside.value)))
    return inside, wall, floor if lid_grooved else None


def _thicknesses(c: Choices) -> tuple[Working, Working, Working]:
    """Of a side, the back and the front."""
    made = c.made
    return (
        _thickness("side thickness", made.side_thickness, c.thickness.side),
        _thickness("back thickness", made.back_thickness, c.thickness.end),
        _thickness("front thickness", made.front_thickness, c.thickness.end),
    )


def tails_and_laps(
    c: Choices, *, lap: float | None
) -> tuple[tuple[Working, Working], tuple[Working, Working]]:
    """Tail length and lap at the back and at the front; without a lap something else decides."""
    side, back, front = _thicknesses(c)
    if c.corner.tails_on == "ends":
        return _tail_and_lap(c, lap, "side", side), _tail_and_lap(c, lap, "side", side)
    return _tail_and_lap(c, lap, "back", back), _tail_and_lap(c, lap, "front", front)


def frame(c: Choices, *, groove: SettledGroove, lap: float | None, under_lid: float = 0.0) -> Frame:
    """The four walls of a box whose groove is settled; without a lap something else decides it."""
    made, on_ends = c.made, c.corner.tails_on == "ends"
    side, back, front = _thicknesses(c)
    (tail_back, lap_back), (tail_front, lap_front) = tails_and_laps(c, lap=lap)
    lid_grooved = c.lid.closure.grooved

    # What the made walls say of the space between them; the shorter of two unlike ends rules,
    # because the longer can still be cut down to it.
    ends = _least(made.back_length, made.front_length)
    known_width_in = known_width_out = known_length = None
    if ends is not None and on_ends:
        known_width_in = Working.of(
            "inside width", ("end as made", ends), ("tail length", -tail_back.value, 2)
        )
    elif ends is not None:
        known_width_out = as_made("outside width", value=ends)
    laps = [Term("back lap", lap_back.value), Term("front lap", lap_front.value)]
    # A side that carries the tails stops short of the faces by the laps, but under a sliding lid
    # its ear above the low front runs on to the front face.
    short = () if on_ends else tuple(laps[:1] if lid_grooved else laps)
    if made.side_length is not None:
        known_length = Working("outside length", (Term("side as made", made.side_length), *short))

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

    length = Term("outside length", outside_length.value)
    across = (
        (Term("inside width", inside_width.value), Term("tail length", tail_back.value, 2))
        if on_ends
        else (Term("outside width", outside_width.value),)
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
        side_length=as_made("side length", value=made.side_length)
        or Working("side length", (length, *_minus(short))),
        back_length=as_made("back length", value=made.back_length)
        or Working("back length", across),
        front_length=as_made("front length", value=made.front_length)
        or Working("front length", across),
        lid_floor=floor,
        bottom_groove=Span(g.bottom_edge, g.bottom_edge + g.width),
        lid_groove=Span(top - g.width, top) if lid_grooved else None,
    )
