"""Letters that pages and drawings carry: all that are used, as wide as reckoned, with licences."""

import ast
import re
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont

from tests.boxes import postcard
from tests.letters import carried, not_carried, shown
from toolkit.handout import handout
from toolkit.pictures import face_of_drawings, sheet_pages, svg_with_face, with_faces
from toolkit.pictures.kit.faces import ALPHABET, DRAWINGS, FORMULAS, LATIN, TEXT, cut
from toolkit.pictures.kit.lettering import extent
from toolkit.plan import plan

TOOLKIT = Path(__file__).parents[2] / "toolkit"


@pytest.fixture(scope="module")
def page() -> str:
    return handout(plan(postcard()), name="Zoë Łukasz Χρήστος")


def test_every_letter_of_a_page_is_in_it(page: str) -> None:
    assert len(carried(page)) == 5
    assert {"×", "−", "°", "✓", "Ł", "Χ", "α"} <= shown(page)
    assert not_carried(page) == []
    # A browser sets a variable with the leaning letter, h with the constant of its kind.
    formulas = carried(page)[FORMULAS.family, "normal", "normal"].getBestCmap()
    assert {0x1D44A, 0x1D6FC, 0x210E} <= set(formulas)


def test_the_page_names_no_other_family(page: str) -> None:
    sheets = "".join(re.findall(r"<style>(.*?)</style>", page, flags=re.DOTALL))
    named = set(re.findall(r'"(Workbook [^"]*)"', sheets)) | {DRAWINGS.family}
    assert named == {family for family, *_ in carried(page)}


@pytest.mark.parametrize("face", [*TEXT, DRAWINGS, FORMULAS], ids=lambda face: face.file)
def test_licences_go_with_a_face_and_its_makers_name_does_not(face) -> None:  # type: ignore[no-untyped-def]
    once, again = (cut(face, ALPHABET) for _ in range(2))
    assert once == again
    assert len(once) < 25_000
    names = TTFont(BytesIO(once))["name"]
    assert "Copyright" in names.getDebugName(0)
    assert "license" in names.getDebugName(13).lower()
    assert not re.search("STIX|DejaVu|Vera", "".join(map(str, map(names.getDebugName, (1, 4, 6)))))


def test_the_licences_are_in_the_page(page: str) -> None:
    assert page.count("SIL OPEN FONT LICENSE Version 1.1") == 1
    assert page.count("Bitstream Vera Fonts Copyright") == 1


def test_a_word_is_as_wide_as_it_was_reckoned() -> None:
    """In the carried face letters stand side by side with no kerning and no ligature."""
    font = TTFont(BytesIO(cut(DRAWINGS, LATIN)))
    assert not {"kern", "GPOS", "GSUB"} & set(font.keys())
    widths, glyphs, em = font["hmtx"], font.getBestCmap(), font["head"].unitsPerEm
    for words in ("back end, inside face", "AVATAR fix", "7 5/16 in × 1°", "Zoë"):
        whole = sum(widths[glyphs[ord(char)]][0] for char in words) * 11 / em
        assert whole == pytest.approx(extent(words, size=11)[0], rel=1e-4)


def test_a_drawing_uses_no_sign_that_a_lesson_does_not_carry() -> None:
    used: dict[str, str] = {}
    for path in (TOOLKIT / "pictures").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                used |= dict.fromkeys(node.value, path.name)
    (face,) = carried(face_of_drawings()).values()
    unseen = {"\n", "\N{ZERO WIDTH SPACE}"}
    has = set(map(chr, face.getBestCmap())) | unseen
    assert {char: file for char, file in used.items() if char not in has} == {}


def test_brackets_grow() -> None:
    table = TTFont(BytesIO(cut(FORMULAS, ALPHABET)))["MATH"].table
    assert table.MathConstants.AxisHeight.Value == 250
    rows = table.MathVariants.VertGlyphConstruction
    assert len(rows) == 4
    for row in rows:
        tall = [way.AdvanceMeasurement for way in row.MathGlyphVariantRecord]
        assert tall == sorted(tall)
        assert tall[-1] > 2.5 * tall[0]


def test_a_sheet_in_a_file_of_its_own_has_its_letters(page: str) -> None:
    sheet = sheet_pages(plan(postcard()))[0]
    alone = svg_with_face(sheet.svg)
    words = "".join(ElementTree.fromstring(sheet.svg).itertext())
    assert ElementTree.fromstring(alone).tag.endswith("svg")
    (face,) = carried(alone).values()
    assert set(map(ord, words)) - {0x0A} <= set(face.getBestCmap())
    # In the handout the page has them for all its drawings.
    assert page.count("@font-face") == 5


def test_a_page_without_formulas_has_no_face_for_them() -> None:
    faces = carried(with_faces("<html><head><style></style></head><body>&Scaron;</body></html>"))
    assert FORMULAS.family not in {family for family, *_ in faces}
    assert all(0x160 in face.getBestCmap() for face in faces.values())
