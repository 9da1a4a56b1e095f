"""The box cut through at full size: grooves and panel edges at a side, at the back, at the front.

A panel is broken off a little way in: its edges are what is checked against wood.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from toolkit.box import Panel
from toolkit.pictures.kit.figure_of_wood import break_line
from toolkit.pictures.kit.lettering import Place, extent
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import band
from toolkit.pictures.sheets.marks import SMALL, Mark, Piece, Window, Wish
from toolkit.pictures.sheets.words import section_captions
from toolkit.plan import Plan
from toolkit.shape import CutPart, cut_across, cut_along

_INTO = 24.0  # how much of a panel is drawn beyond the wall, at least [mm]
_SWAY = 0.3  # of the line where a panel is broken off
_SWING = 1.1  # what it comes to [mm]
_CAPTION = 76.0  # three sections stand side by side [mm]
_WORDS = {"left side": "side", "back end": "back", "front end": "front"}


def section_pieces(plan: Plan, *, day: str) -> tuple[Piece, ...]:
    """The groove's section at a side, and the lid's at either end. [mm]"""
    d, f = plan.design, plan.design.frame
    across, along, long = cut_across(d), cut_along(d), f.outside_length.value
    into = _INTO
    if isinstance(d.lid, Panel):
        into = max(into, d.lid.rebate_width + 12.0, d.bottom.rebate_width + 12.0)
    else:
        into = max(into, d.lid.rebate_width + 12.0)
    reach = {
        "across": (across, -8.0, min(f.side_thickness.value + into, f.outside_width.value / 2)),
        "back": (along, -8.0, min(f.back_thickness.value + into, long / 2)),
        "front": (along, max(long - f.front_thickness.value - into, long / 2), long + 8.0),
    }
    captions = section_captions(plan)
    made = []
    for where, (cuts, start, stop) in reach.items():
        parts = [(cut.name, _between(cut, start, stop)) for cut in cuts]
        made.append(_piece(where, [row for row in parts if row[1]], captions[where], plan, day))
    return tuple(made)


def _between(cut: CutPart, left: float, right: float) -> list[Point]:
    """What of a part lies between two uprights. [mm]"""
    return [(x, z) for z, x in band([(z, x) for x, z in cut.points], low=left, high=right)]


def _piece(
    where: str,
    parts: Sequence[tuple[str, list[Point]]],
    caption: tuple[str, str],
    plan: Plan,
    day: str,
) -> Piece:
    points = [point for _, shape in parts for point in shape]
    xs, zs = zip(*points, strict=True)
    broken = min(xs) if where == "front" else max(xs)
    # The line where it is broken off swings to and fro.
    window = Window(min(xs) - _SWING, max(xs) + _SWING, min(zs), max(zs))
    marks = [mark for _, shape in parts for mark in _outline(shape, broken)]
    return Piece(
        name=caption[0],
        caption=caption,
        window=window,
        free=Window(0.0, 0.0, 0.0, 0.0),
        stamp=(f"{day} · {plan.fingerprint}",),
        marks=tuple(marks),
        wishes=tuple(_names(parts, broken, -1.0 if where == "front" else 1.0)),
        caption_width=_CAPTION,
    )


def _outline(shape: Sequence[Point], broken: float) -> Iterator[Mark]:
    """A part's outline; where it is broken off, a free-hand line. [mm]"""
    for a, b in zip(shape, [*shape[1:], *shape[:1]], strict=True):
        if a[0] == b[0] == broken:
            low, high = sorted((a[1], b[1]))
            yield Mark("edge", tuple(break_line(broken, low=low, high=high, sway=_SWAY)))
        elif a != b:
            yield Mark("edge", (a, b))


def _names(
    parts: Sequence[tuple[str, list[Point]]], broken: float, inward: float
) -> Iterator[Wish]:
    """Which part is which, inside it if there is room, else beside it. [mm]

    ``inward`` is 1 where the inside of the box lies to the right, -1 where to the left.
    """
    for name, shape in parts:
        text = _WORDS.get(name, name)
        xs, zs = zip(*shape, strict=True)
        middle, level = (min(xs) + max(xs)) / 2, (min(zs) + max(zs)) / 2 - 0.26 * SMALL
        width = extent(text, size=SMALL)[0]
        inner = broken - inward * (1.5 + width / 2)
        places = [Place(x, level, "center") for x in (middle, inner)]
        if name in _WORDS:
            # A tall wall goes over several pages.
            heights = [min(zs) + (max(zs) - min(zs)) * share for share in (0.25, 0.75)]
            places += [Place(middle, z, "center") for z in heights]
            away = min(xs) - 1.5 if inward > 0 else max(xs) + 1.5
            side = "right" if inward > 0 else "left"
            places.append(Place(away, level, side))  # type: ignore[arg-type]
        else:
            gaps = (max(zs) + 1.2, min(zs) - 1.2 - 0.76 * SMALL)
            places += [Place(inner, z, "center") for z in gaps]
        yield Wish(text, tuple(places), 1)
