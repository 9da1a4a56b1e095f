"""Marks of a page as SVG, whose y runs down where the page's runs up.

Written here and not by a general figure writer: a slider waits for every one of these bytes, and
a page of bench drawing needs only paths, words and now and then a shaded surface.

Source
------
W3C Scalable Vector Graphics (SVG) 2: path data, text, clipping, accessible names.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable, Iterator, Sequence
from hashlib import sha256
from html import escape

from toolkit.pictures.kit.marks import Image, Marks
from toolkit.pictures.kit.pens import Pen
from toolkit.pictures.kit.picture import FONTS, PX_PER_PT, Point

_ANCHOR = {"left": "", "center": ' text-anchor="middle"', "right": ' text-anchor="end"'}


def to_svg(marks: Marks, *, place: str = "") -> str:
    """A page that is at most as wide as its column and that speaks its sentence.

    Two pictures on one page must not share the name of a region, and the same plan must give the
    same bytes: the marks themselves name it, with their ``place`` where the same stand twice.
    """
    inks = [(ink, _data(ink.lines, marks, ink.digits)) for ink in marks.inks]
    images = "".join(_image(image, marks) for image in marks.images)
    words = "".join(_words(marks))
    names: dict[str, str] = {}
    if any(ink.regions for ink in marks.inks):
        whole = "".join([images, *(data for _, data in inks), words, marks.sentence])
        own = f"-{sha256(whole.encode()).hexdigest()[:8]}{place and '-'}{place}"
    paths = []
    for ink, data in inks:
        more = ""
        if ink.regions:
            regions = _data([(row, True) for row in ink.regions], marks, ink.digits)
            name = names.setdefault(regions, f"c{len(names)}{own}")
            more = f' clip-path="url(#{name})"'
        paths.append(f'<path {_look(ink.pen)}{more} d="{data}"/>')
    clips = [
        f'<clipPath id="{name}"><path d="{regions}"/></clipPath>' for regions, name in names.items()
    ]
    said, wide, high = escape(marks.sentence), marks.width, marks.height
    size = f'width="{wide * PX_PER_PT:g}" height="{high * PX_PER_PT:g}"'
    if marks.unit == "mm":
        size = f'width="{wide:g}mm" height="{high:g}mm"'
    else:
        size += ' style="max-width:100%;height:auto"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{said}" '
        f'viewBox="0 0 {wide:g} {high:g}" {size} '
        f'font-family="{FONTS}" stroke-linejoin="round" stroke-linecap="{marks.cap}">'
        f'<title>{said}</title><rect width="{wide:g}" height="{high:g}" fill="{marks.paper}"/>'
        f"{images}{''.join([*clips, *paths])}{words}</svg>"
    )


def _number(value: float) -> str:
    """A coordinate to a hundredth, which no eye can tell apart, without idle zeros."""
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _data(lines: Iterable[tuple[Sequence[Point], bool]], marks: Marks, digits: int) -> str:
    """Path data of some lines; a tenth of a point is less than a dot."""
    high, form = marks.high, f"{{:.{digits}f}} {{:.{digits}f}}".format
    return "".join(
        [
            f"M{'L'.join([form(x, high - y) for x, y in line])}{'Z' if closed else ''}"
            for line, closed in lines
        ]
    )


def _look(pen: Pen) -> str:
    """A pen as attributes; where two areas of one lie over one another, both are filled."""
    if pen.fill is not None:
        return f'fill="{pen.fill}"'
    pattern = " ".join(f"{length:g}" for length in pen.dash)
    dashes = f' stroke-dasharray="{pattern}"' if pattern else ""
    # Corners of a heavy outline are as sharp as those of the wood.
    sharp = ' stroke-linejoin="miter"' if pen.width > 1 else ""
    return f'fill="none" stroke="{pen.colour}" stroke-width="{pen.width:g}"{dashes}{sharp}'


def _words(marks: Marks) -> Iterator[str]:
    """Lines of words; what letters of one size and colour share is said once."""
    alike: dict[tuple[float, str], list[str]] = {}
    for row in marks.words:
        x, y = _number(row.x), _number(marks.high - row.y)
        turn = f' transform="rotate(-90 {x} {y})"' if row.upright else ""
        alike.setdefault((row.size, row.colour), []).append(
            f'<text x="{x}" y="{y}"{_ANCHOR[row.anchor]}{turn}>{escape(row.text)}</text>'
        )
    for (size, colour), lines in alike.items():
        yield f'<g font-size="{_number(size)}" fill="{colour}">{"".join(lines)}</g>'


def _image(row: Image, marks: Marks) -> str:
    x, y = _number(row.x), _number(marks.high - row.y - row.height)
    return (
        f'<image x="{x}" y="{y}" width="{_number(row.width)}" height="{_number(row.height)}" '
        f'preserveAspectRatio="none" href="data:image/png;base64,{b64encode(row.png).decode()}"/>'
    )
