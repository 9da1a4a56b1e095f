"""Lines, areas and words of a page as SVG, whose y runs down where the page's runs up."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from toolkit.pictures.apart.view import Floats
from toolkit.pictures.kit.lettering import Label, Place, lines_of
from toolkit.pictures.kit.pens import INK
from toolkit.pictures.kit.picture import FONTS, PX_PER_PT

DOT = 1.5  # radius of the dot that ends a leader on a face [pt]


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _path(lines: Iterable[Floats], height: float, *, closed: bool = False) -> str:
    """Lines on the page as SVG path data, whose y runs down."""
    words = []
    for line in lines:
        points = [f"{_number(x)} {_number(height - y)}" for x, y in line.tolist()]
        words.append("M" + "L".join(points) + ("Z" if closed else ""))
    return "".join(words)


def area(outlines: Iterable[Floats], *, colour: str, height: float) -> str:
    """Areas of one colour, none of them over another; ``height`` of the page. [pt]"""
    return f'<path fill="{colour}" d="{_path(outlines, height, closed=True)}"/>'


def stroke(
    lines: Iterable[Floats],
    *,
    colour: str,
    width: float,
    height: float,
    dash: tuple[float, ...] = (),
) -> str:
    """Lines of one pen; ``height`` of the page. [pt]"""
    pattern = " ".join(f"{length:g}" for length in dash)
    dashes = f' stroke-dasharray="{pattern}"' if dash else ""
    return (
        f'<path fill="none" stroke="{colour}" stroke-width="{width:g}"{dashes} '
        f'd="{_path(lines, height)}"/>'
    )


def words(label: Label, place: Place, *, height: float) -> str:
    """A label, and the dot that ends its leader. [pt]"""
    dot = ""
    if place.leader:
        x, y = place.leader[-1]
        dot = f'<circle cx="{_number(x)}" cy="{_number(height - y)}" r="{DOT:g}" fill="{INK}"/>'
    return dot + "".join(
        f'<text x="{_number(place.x)}" y="{_number(height - y)}" font-size="{label.size:g}" '
        f'text-anchor="middle" fill="{INK}">{escape(line)}</text>'
        for line, y in lines_of(label, place)
    )


def page(body: str, *, sentence: str, width: float, height: float) -> str:
    """A page as wide as its column, at most at its own size, that speaks its sentence. [pt]"""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" '
        f'aria-label="{escape(sentence)}" viewBox="0 0 {width:g} {height:g}" width="100%" '
        f'style="max-width:{width * PX_PER_PT:g}px;height:auto" font-family="{FONTS}" '
        f'stroke-linejoin="round" stroke-linecap="round">{body}</svg>'
    )
