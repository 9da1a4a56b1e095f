"""Lines, areas, words and pictures of a page as SVG, whose y runs down where the page's runs up.

Written here and not by a general figure writer: a slider waits for every one of these bytes, and
a page of bench drawing needs only paths, words and now and then a shaded surface.

Source
------
W3C Scalable Vector Graphics (SVG) 2: path data, text, clipping, accessible names.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable, Sequence
from html import escape

from toolkit.pictures.kit.lettering import Label, Place, lines_of
from toolkit.pictures.kit.pens import INK, PAPER, RED
from toolkit.pictures.kit.picture import FONTS, PX_PER_PT, Point
from toolkit.pictures.kit.wording import wording

_ANCHOR = {"left": "", "center": ' text-anchor="middle"', "right": ' text-anchor="end"'}


def number(value: float) -> str:
    """A coordinate to a hundredth of a point, which no eye can tell apart, without idle zeros."""
    return f"{value:.2f}".rstrip("0").rstrip(".")


def way(line: Iterable[Point], *, height: float, closed: bool, digits: int = 1) -> str:
    """Path data of one line on a page so high; a tenth of a point is less than a dot. [pt]"""
    points = [f"{x:.{digits}f} {height - y:.{digits}f}" for x, y in line]
    return f"M{'L'.join(points)}{'Z' if closed else ''}"


def area(data: str, *, colour: str, more: str = "") -> str:
    """Areas of one colour; where two lie over one another, both are filled. [pt]"""
    return f'<path fill="{colour}"{more} d="{data}"/>'


def stroke(
    data: str, *, colour: str, width: float, dash: Sequence[float] = (), more: str = ""
) -> str:
    """Lines of one pen. [pt]"""
    pattern = " ".join(f"{length:g}" for length in dash)
    dashes = f' stroke-dasharray="{pattern}"' if dash else ""
    return (
        f'<path fill="none" stroke="{colour}" stroke-width="{width:g}"{dashes}{more} d="{data}"/>'
    )


def clip(data: str, *, name: str) -> str:
    """Regions outside which what refers to them by name is not shown."""
    return f'<clipPath id="{name}"><path d="{data}"/></clipPath>'


def words(rows: Iterable[tuple[Label, Place]], *, height: float) -> str:
    """Labels where they stand; what letters of one size and colour share is said once. [pt]"""
    alike: dict[tuple[float, bool], list[str]] = {}
    for label, place in rows:
        at = _ANCHOR[place.anchor]
        alike.setdefault((label.size, label.red), []).extend(
            f'<text x="{number(place.x)}" y="{number(height - y)}"{at}>'
            f"{escape(wording(line))}</text>"
            for line, y in lines_of(label, place)
        )
    return "".join(
        f'<g font-size="{size:g}" fill="{RED if red else INK}">{"".join(lines)}</g>'
        for (size, red), lines in alike.items()
    )


def image(png: bytes, *, x: float, y: float, width: float, size: float, height: float) -> str:
    """A picture made of dots, ``width`` by ``size``, its lower left corner at x and y. [pt]"""
    return (
        f'<image x="{number(x)}" y="{number(height - y - size)}" width="{number(width)}" '
        f'height="{number(size)}" preserveAspectRatio="none" '
        f'href="data:image/png;base64,{b64encode(png).decode()}"/>'
    )


def page(body: str, *, sentence: str, width: float, height: float, cap: str = "butt") -> str:
    """A page that is at most as wide as its column and that speaks its sentence. [pt]"""
    said = escape(wording(sentence))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{said}" '
        f'viewBox="0 0 {width:g} {height:g}" width="{width * PX_PER_PT:g}" '
        f'height="{height * PX_PER_PT:g}" style="max-width:100%;height:auto" '
        f'font-family="{FONTS}" stroke-linejoin="round" stroke-linecap="{cap}">'
        f'<title>{said}</title><rect width="{width:g}" height="{height:g}" '
        f'fill="{PAPER}"/>{body}</svg>'
    )
