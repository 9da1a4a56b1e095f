"""A browser on a machine whose only font shows a box for whatever it is asked.

With no font at all Chromium sometimes fails to read even those that a page carries. And a box on
paper is a letter that the page did not bring.
"""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from playwright.sync_api import BrowserContext, Page

from tests.browser.harness import FLAGS, browser_path
from toolkit.pictures.kit.picture import DRAWN

BOXES = "Boxes"
_CONFIGURATION = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>{fonts}</dir><cachedir>{cache}</cachedir></fontconfig>
"""


def _write_boxes(path: Path) -> None:
    pen = TTGlyphPen(None)
    pen.moveTo((100, 0))
    for corner in ((900, 0), (900, 700), (100, 700)):
        pen.lineTo(corner)
    pen.closePath()
    font = FontBuilder(1000, isTTF=True)
    font.setupGlyphOrder([".notdef", "box"])
    # Letters of all kinds, signs, and the leaning letters of formulas.
    font.setupCharacterMap(dict.fromkeys((*range(0x20, 0x3000), *range(0x1D400, 0x1D800)), "box"))
    font.setupGlyf(dict.fromkeys((".notdef", "box"), pen.glyph()))
    font.setupHorizontalMetrics(dict.fromkeys((".notdef", "box"), (1000, 100)))
    font.setupHorizontalHeader(ascent=800, descent=-200)
    font.setupNameTable({"familyName": BOXES, "styleName": "Regular", "psName": BOXES})
    font.setupOS2()
    font.setupPost()
    font.save(path)


@contextmanager
def without_fonts(opened: BrowserContext, home: Path) -> Iterator[BrowserContext]:
    """A second browser beside one that is open, with the machine's fonts hidden from it."""
    fonts = home / "fonts"
    fonts.mkdir()
    _write_boxes(fonts / "boxes.ttf")
    configuration = home / "fonts.conf"
    configuration.write_text(
        _CONFIGURATION.format(fonts=fonts, cache=home / "cache"), encoding="utf-8"
    )
    assert opened.browser is not None
    root = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    browser = opened.browser.browser_type.launch(
        executable_path=browser_path(),
        headless=True,
        args=[*FLAGS, *root],
        env={**os.environ, "FONTCONFIG_FILE": str(configuration)},
    )
    try:
        yield browser.new_context(viewport={"width": 1280, "height": 900})
    finally:
        browser.close()


def print_page(browser: BrowserContext, page: Path, pdf: Path) -> bytes:
    """A page of HTML printed by a browser, its letters loaded."""
    opened = browser.new_page()
    opened.goto(page.as_uri())
    opened.evaluate("document.fonts.ready")
    printed = opened.pdf(path=pdf, prefer_css_page_size=True, print_background=True)
    opened.close()
    return printed


def letters_came(page: Page) -> bool:
    """Whether the drawings of a page are set in the face that came with it."""
    page.evaluate("document.fonts.ready")
    faces = page.evaluate("[...document.fonts].map(face => [face.family, face.status])")
    return [DRAWN, "loaded"] in [[family.strip('"'), status] for family, status in faces]
