"""The box cut through at full size: grooves and panel edges at a side, at the back, at the front.

A panel is broken off a little way in: its edges are what is checked against wood.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from toolkit.pictures.kit import Label, Point, Slot, extent, upright_band
from toolkit.pictures.kit.strokes import break_line
from toolkit.pictures.sheets.margins import section_captions
from toolkit.pictures.sheets.marks import SMALL, CutOut, Extent, Mark
from toolkit.plan import Plan
from toolkit.shape import cut_across, cut_along

_INTO = 24.0  # how much of a panel is drawn beyond the wall, at least [mm]
_SWAY = 0.3  # of the line where a panel is broken off
_SWING = 1.1  # what it comes to [mm]
_CAPTION = 76.0  # three sections stand side by side [mm]
_WORDS = {"left side": "side", "back end": "back", "front end": "front"}


def section_pieces(plan: Plan, *, day: str) -> tuple[CutOut, ...]:
    """The groove's section at a side, and the lid's at either end. [mm]"""
    d, f = plan.design, plan.design.frame
    across, along = cut_across(d), cut_along(d)
    wide, long = f.outside_width.value, f.outside_length.value
    panels = d.lids if d.lift_off_lid is not None else d.panels
    into = max(_INTO, *(panel.rebate_width + 12.0 for panel in panels))
    side, back, front = (
        wall.value + into for wall in (f.side_thickness, f.back_thickness, f.front_thickness)
    )
    reach = {
        "across": (across, -8.0, min(side, wide / 2)),
        "back": (along, -8.0, min(back, long / 2)),
        "front": (along, max(long - front, long / 2), long + 8.0),
    }
    captions = section_captions(plan)
    made = []
    for where, (cuts, start, stop) in reach.items():
        shapes = [(cut.name, upright_band(cut.points, left=start, right=stop)) for cut in cuts]
        parts = [(name, shape) for name, shape in shapes if shape]
        xs, zs = zip(*(point for _, shape in parts for point in shape), strict=True)
        broken, inward = (min(xs), -1.0) if where == "front" else (max(xs), 1.0)
        piece = CutOut(
            name=captions[where][0],
            caption=captions[where],
            # The line where it is broken off swings to and fro.
            window=Extent(min(xs) - _SWING, max(xs) + _SWING, min(zs), max(zs)),
            free=Extent(0.0, 0.0, 0.0, 0.0),
            stamp=(f"issue {plan.fingerprint} of {day}",),
            marks=tuple(mark for _, shape in parts for mark in _outline(shape, broken)),
            wishes=tuple(_names(parts, broken, inward)),
            caption_width=_CAPTION,
        )
        made.append(piece)
    return tuple(made)


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
) -> Iterator[Label]:
    """Which part is which, inside it if there is room, else beside it. [mm]

    ``inward`` is 1 where the inside of the box lies to the right, -1 where to the left.
    """
    for name, shape in parts:
        text = _WORDS.get(name, name)
        xs, zs = zip(*shape, strict=True)
        low, high = min(zs), max(zs)
        middle, level = (min(xs) + max(xs)) / 2, (low + high) / 2 - 0.26 * SMALL
        inner = broken - inward * (1.5 + extent(text, size=SMALL)[0] / 2)
        places = [Slot(x, level, "center") for x in (middle, inner)]
        if name in _WORDS:
            # A tall wall goes over several pages.
            heights = [low + (high - low) * share for share in (0.25, 0.75)]
            places += [Slot(middle, z, "center") for z in heights]
            outer = Slot(min(xs) - 1.5, level, "right"), Slot(max(xs) + 1.5, level)
            places.append(outer[0 if inward > 0 else 1])
        else:
            places += [Slot(inner, z, "center") for z in (high + 1.2, low - 1.2 - 0.76 * SMALL)]
        yield Label(text, tuple(places), 1, SMALL)
