"""Drawings and formulas on a phone that has no letters for them."""

import tomllib
from pathlib import Path

import pytest
from latex2mathml.converter import convert
from playwright.sync_api import BrowserContext

from tests.boxes import inch_postcard
from toolkit.document import file_of
from toolkit.pictures import box_apart, face_of_drawings, section_across, with_faces
from toolkit.pictures.kit.lettering import extent
from toolkit.plan import plan

MEASURED = """[...document.querySelectorAll("svg text")].map(
    word => [word.textContent, word.getComputedTextLength(),
        parseFloat(getComputedStyle(word).fontSize)])"""


def test_a_label_is_as_wide_on_a_phone_as_it_was_reckoned(
    printer: BrowserContext, tmp_path: Path
) -> None:
    made = plan(inch_postcard())
    pictures = f"<div>{box_apart(made).svg}</div><div>{section_across(made).svg}</div>"
    path = tmp_path / "pictures.html"
    path.write_text(f"<!DOCTYPE html><meta charset=utf-8>{face_of_drawings()}{pictures}")
    page = printer.new_page()
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(path.as_uri())
    page.evaluate("document.fonts.ready")
    words = page.evaluate(MEASURED)
    page.close()
    assert len(words) > 20
    for text, width, size in words:
        assert width == pytest.approx(extent(text, size=size)[0], rel=0.002), text


def test_brackets_are_as_tall_as_what_they_hold(printer: BrowserContext, tmp_path: Path) -> None:
    moisture = tomllib.loads(file_of("handout", "formulas.toml"))["moisture"]["lines"][0]
    formula = convert(moisture, display="block")
    path = tmp_path / "formula.html"
    path.write_text(
        with_faces(
            "<!DOCTYPE html><meta charset=utf-8><style>"
            f'math {{ font: 12pt "Workbook Formulas" }}</style>{formula}'
        )
    )
    page = printer.new_page()
    page.goto(path.as_uri())
    page.evaluate("document.fonts.ready")
    heights = "rows => rows.map(row => row.getBoundingClientRect().height)"
    brackets = page.locator("mo[fence=true]").evaluate_all(heights)
    fractions = page.locator("mfrac").evaluate_all(heights)
    page.close()
    assert len(brackets) == 2
    assert min(brackets) > 0.9 * max(fractions) > 30
