"""The letters that pages and drawings carry with them, so that they look alike on every machine.

The faces come with matplotlib. They are cut down to the characters in use and written into the
page under names of the workbook's own, so that no font of the machine can take their place. A
drawing is measured in the very face that it carries.

Source
------
W3C CSS Fonts Module Level 4, ``@font-face``. ISO/IEC 14496-22 (OpenType), table ``MATH``; its
constants are those of faces cut like this one (from memory).
"""

from __future__ import annotations

import logging
from base64 import b64encode
from dataclasses import dataclass
from functools import lru_cache
from html import escape, unescape
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING
from unicodedata import normalize

from matplotlib import get_data_path

from toolkit.pictures.kit.picture import DRAWN

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont

# Always carried, so that the pages of a class share one cut: ASCII and the workbook's own signs.
ALPHABET = frozenset(
    [
        *map(chr, range(0x20, 0x7F)),
        *"\xa0°±²³µ·×÷½αΔθΣ–—‘’“”•…′″←→−√∞≈≤≥□✓✗",
    ]
)
# What a student may name in a lesson is not known beforehand: Latin letters of all kinds.
LATIN = ALPHABET | frozenset(map(chr, range(0xA0, 0x180)))

# A letter of a formula leans; browsers look for it among these.
_LEANING = (0x210E, *range(0x1D434, 0x1D468), *range(0x1D6E2, 0x1D71C))
_TALLER = ("One", "Two", "Three", "Four")  # sizes of brackets that STIX has in files of their own
_CONSTANTS = {  # thousandths of the size of letters, and percent
    "ScriptPercentScaleDown": 75,
    "ScriptScriptPercentScaleDown": 60,
    "AxisHeight": 250,
    "SubscriptShiftDown": 200,
    "SubscriptTopMax": 360,
    "SubscriptBaselineDropMin": 50,
    "SuperscriptShiftUp": 360,
    "SuperscriptShiftUpCramped": 290,
    "SuperscriptBottomMin": 112,
    "SuperscriptBaselineDropMax": 386,
    "SubSuperscriptGapMin": 264,
    "SuperscriptBottomMaxWithSubscript": 360,
    "SpaceAfterScript": 100,
    "FractionNumeratorShiftUp": 394,
    "FractionNumeratorDisplayStyleShiftUp": 677,
    "FractionDenominatorShiftDown": 345,
    "FractionDenominatorDisplayStyleShiftDown": 686,
    "FractionNumeratorGapMin": 66,
    "FractionNumDisplayStyleGapMin": 198,
    "FractionRuleThickness": 66,
    "FractionDenominatorGapMin": 66,
    "FractionDenomDisplayStyleGapMin": 198,
}


@dataclass(frozen=True, slots=True)
class Typeface:
    """A face as a page knows it, and the file and the licence that it is cut from."""

    family: str
    file: str
    licence: str = "LICENSE_STIX"
    weight: str = "normal"
    style: str = "normal"


DRAWINGS = Typeface(DRAWN, "DejaVuSans.ttf", "LICENSE_DEJAVU")
TEXT = (
    Typeface("Workbook Text", "STIXGeneral.ttf"),
    Typeface("Workbook Text", "STIXGeneralBol.ttf", weight="bold"),
    Typeface("Workbook Text", "STIXGeneralItalic.ttf", style="italic"),
)
FORMULAS = Typeface("Workbook Formulas", "STIXGeneral.ttf")


def with_faces(page: str) -> str:
    """A page of HTML with its letters in it.

    Parameters
    ----------
    page : str
        The page, whole, with a style sheet in its head.

    Returns
    -------
    str
        The page, its first style sheet longer by its faces: the same for the same page.
    """
    used = ALPHABET.union(unescape(page))
    faces = [*TEXT, DRAWINGS, *([FORMULAS] if "<math" in page else [])]
    return page.replace("<style>", f"<style>\n{_rules(faces, used)}", 1)


def svg_with_face(svg: str) -> str:
    """A drawing that stands alone in a file, with its letters in it.

    Parameters
    ----------
    svg : str
        The drawing.

    Returns
    -------
    str
        The drawing, a style sheet more before its end.
    """
    rules = escape(_rules([DRAWINGS], ALPHABET.union(unescape(svg))), quote=False)
    return svg.removesuffix("</svg>") + f"<style>{rules}</style></svg>"


@lru_cache(maxsize=1)
def face_of_drawings() -> str:
    """The letters of all drawings of a lesson, as a style sheet for HTML."""
    return f"<style>{_rules([DRAWINGS], LATIN)}</style>"


def face_file(face: Typeface) -> Path:
    """The whole face, as it was installed."""
    return _folder() / face.file


def _folder() -> Path:
    return Path(get_data_path()) / "fonts" / "ttf"


def _rules(faces: list[Typeface], used: frozenset[str]) -> str:
    """The faces as rules of CSS, after what their makers want to go with them."""
    licences = dict.fromkeys(face.licence for face in faces)
    said = [f"/*\n{(_folder() / name).read_text(encoding='ascii')}*/\n" for name in licences]
    # A screen's dots would make a word of a drawing wider or narrower than it was reckoned.
    exact = "svg text{text-rendering:geometricPrecision}\n"
    return "".join([*said, *(_rule(face, used) for face in faces), exact])


@lru_cache(maxsize=64)
def _rule(face: Typeface, used: frozenset[str]) -> str:
    data = b64encode(cut(face, used)).decode()
    return (
        f'@font-face{{font-family:"{face.family}";font-weight:{face.weight};'
        f'font-style:{face.style};src:url(data:font/woff;base64,{data}) format("woff")}}\n'
    )


def cut(face: Typeface, used: frozenset[str]) -> bytes:
    """The part of a face that is needed for some characters, as a WOFF file.

    Copyright and licence stay in it; its name is the workbook's, as the licence asks.
    """
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    # The dates in the files of STIX are before 1970, which is nobody's concern here.
    logging.getLogger("fontTools").setLevel(logging.ERROR)
    codes = set(map(ord, used))
    options = Options(
        hinting=False,
        name_IDs=[0, 7, 13, 14],
        layout_features=["kern"] if face in TEXT else [],
    )
    options.drop_tables += ["FFTM", "gasp"]
    if face == DRAWINGS:
        # What a drawing's words measure is reckoned letter by letter, with no kerning.
        options.drop_tables += ["GDEF", "GPOS", "GSUB", "MATH", "kern"]
    with TTFont(face_file(face), recalcTimestamp=False) as font:
        if face == FORMULAS:
            codes |= {code for code in _LEANING if normalize("NFKC", chr(code)) in used}
            _let_brackets_grow(font)
        cutter = Subsetter(options)
        cutter.populate(unicodes=codes)
        cutter.subset(font)
        look = face.weight if face.style == "normal" else face.style
        whole = f"{face.family} {look}"
        for number, words in {1: face.family, 2: look, 4: whole, 6: whole.replace(" ", "")}.items():
            font["name"].setName(words, number, 3, 1, 0x409)
        font.flavor = "woff"
        file = BytesIO()
        font.save(file)
    return file.getvalue()


def _let_brackets_grow(font: TTFont) -> None:
    """Give a face of STIX the table by which brackets grow with what they hold.

    Their taller shapes stand in files of their own.
    """
    from fontTools.otlLib.builder import buildMathTable
    from fontTools.ttLib import TTFont

    shapes = font["glyf"]
    names = {char: font.getBestCmap()[ord(char)] for char in "()[]"}
    ways = {name: [name] for name in names.values()}
    for size in _TALLER:
        with TTFont(_folder() / f"STIXSiz{size}SymReg.ttf") as other:
            for char, name in names.items():
                taller, source = f"{name}.{size}", other.getBestCmap()[ord(char)]
                shapes[taller] = other["glyf"][source]
                font["hmtx"][taller] = other["hmtx"][source]
                ways[name].append(taller)
    font.setGlyphOrder(shapes.glyphOrder)
    tall = {
        name: [(way, shapes[way].yMax - shapes[way].yMin) for way in row]
        for name, row in ways.items()
    }
    buildMathTable(
        font,
        constants=_CONSTANTS,
        # Without a word about single glyphs a browser takes the whole table for damaged.
        extendedShapes=[way for row in ways.values() for way in row[1:]],
        vertGlyphVariants=tall,
        minConnectorOverlap=0,
    )
