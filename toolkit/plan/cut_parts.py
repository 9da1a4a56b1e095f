"""The cut list and the rough list: each part finished, and what to saw for it first."""

from __future__ import annotations

from toolkit.box import Design, as_made
from toolkit.results import AXES, ROUNDING, Part, Term, Working


def _part(
    d: Design,
    name: str,
    count: int,
    sizes: tuple[Working, Working, Working],
    wood: str,
    *,
    cut: Working | None = None,
    rough_width: Working | None = None,
    down: bool = False,
) -> Part:
    """A part with its rough sizes: each size as cut and its allowance, up to what is sawn."""
    length = cut or sizes[0]
    rule, rough = d.choices.rule, []
    for size, extra, axis in zip(
        (length, rough_width or sizes[1], sizes[2]),
        d.choices.allowances.of(name),
        AXES,
        strict=True,
    ):
        finished = Term(f"finished {axis}", size.value)
        if axis == "length" and size.value != sizes[0].value:
            finished = Term("cut length", size.value)
        if axis == "width" and rough_width is not None:
            finished = Term("full wall height", size.value)
        wanted = size.value + extra
        up = Term(ROUNDING, rule.sawn(wanted, axis=axis) - wanted)
        rough.append(Working(f"{name} rough {axis}", (finished, Term("allowance", extra), up)))
    rough_length, width, thickness = rough
    return Part(
        name,
        count,
        *sizes,
        cut_length=length,
        rough_length=rough_length,
        rough_width=width,
        rough_thickness=thickness,
        wood=wood,
        down=down,
    )


def _named(name: str, working: Working) -> Working:
    return Working(name, working.terms)


def parts(d: Design) -> tuple[Part, ...]:
    """Every part of a box that has a size left, finished and rough.

    The front is sawn and ploughed at the full height of the walls and ripped low afterwards.
    """
    f, wood, made = d.frame, d.choices.wood, d.choices.made
    height = f.wall_height
    rows = [
        _part(
            d,
            "side",
            2,
            (
                f.side_length,
                as_made("side width", value=made.side_width) or _named("side width", height),
                f.side_thickness,
            ),
            wood.sides,
            cut=f.side_cut,
        ),
        _part(
            d,
            "back",
            1,
            (
                f.back_length,
                as_made("back width", value=made.back_width) or _named("back width", height),
                f.back_thickness,
            ),
            wood.ends,
            cut=f.back_cut,
        ),
        _part(
            d,
            "front",
            1,
            (f.front_length, _named("front width", f.front_height), f.front_thickness),
            wood.ends,
            cut=f.front_cut,
            rough_width=height,
        ),
        *(
            _part(
                d,
                panel.name,
                1,
                (panel.length, panel.width, panel.thickness),
                d.wood_of(panel),
                down=True,
            )
            for panel in d.panels
        ),
    ]
    if d.lift_off_lid is not None and d.lift_off_lid.batten is not None:
        rows.append(_part(d, "batten", 2, d.lift_off_lid.batten, wood.ends))
    return tuple(part for part in rows if all(size.value > 0 for size in part.finished))
