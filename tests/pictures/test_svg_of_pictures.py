"""The SVG: the same bytes for the same plan, able to speak, and harmless to the page it is on."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import time
from pathlib import Path
from xml.etree import ElementTree as ET

import matplotlib as mpl
import pytest

from tests.boxes import ears, inch_postcard, postcard
from tests.pictures.designs import pictures, postcard_plan
from toolkit.pictures import corner_picture
from toolkit.plan import plan

ROOT = Path(__file__).parents[2]
SVG = "{http://www.w3.org/2000/svg}"
SHA = """
import hashlib
from tests.pictures.designs import pictures, postcard_plan
words = "".join(p.svg for _, p in pictures(postcard_plan()))
print(hashlib.sha256(words.encode()).hexdigest())
"""


def _elsewhere(code: str, **environment: str) -> str:
    done = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        cwd=ROOT,
        env={**os.environ, **environment},
    )
    return done.stdout.strip()


def test_the_same_plan_gives_the_same_bytes() -> None:
    first = [picture.svg for _, picture in pictures(postcard_plan())]
    # Other drawings in between must leave no trace on the figure they share.
    for _, picture in pictures(plan(inch_postcard()), ghost=plan(ears())):
        assert picture.svg not in first
    assert [picture.svg for _, picture in pictures(postcard_plan())] == first


def test_another_day_and_another_run_give_the_same_bytes() -> None:
    one = _elsewhere(SHA, PYTHONHASHSEED="1", TZ="UTC")
    assert one == _elsewhere(SHA, PYTHONHASHSEED="2", TZ="Pacific/Auckland")


def test_somebodys_own_settings_change_nothing() -> None:
    first = corner_picture(postcard_plan()).svg
    theirs = {
        "savefig.bbox": "tight",
        "svg.fonttype": "path",
        "font.size": 20.0,
        "figure.dpi": 200.0,
        "savefig.transparent": True,
        "lines.linewidth": 9.0,
        "font.family": ["serif"],
        "axes.grid": True,
        "savefig.facecolor": "black",
        "svg.hashsalt": None,
    }
    with mpl.rc_context(theirs):
        assert corner_picture(postcard_plan()).svg == first


def test_nobodys_settings_are_changed() -> None:
    code = """
import matplotlib
before = matplotlib.rcParams.copy()
from tests.pictures.designs import pictures, postcard_plan
list(pictures(postcard_plan()))
import sys
print(before == matplotlib.rcParams.copy(), "matplotlib.pyplot" in sys.modules)
"""
    assert _elsewhere(code) == "True False"


@pytest.mark.parametrize("choices", [postcard(), inch_postcard(), ears()])
def test_each_picture_speaks_for_itself(choices) -> None:  # type: ignore[no-untyped-def]
    for _, picture in pictures(plan(choices)):
        root = ET.fromstring(picture.svg)
        assert root.tag == f"{SVG}svg"
        assert root.get("role") == "img"
        title = root[0]
        assert title.tag == f"{SVG}title"
        assert title.text == picture.sentence
        assert root.get("aria-label") == title.text
        assert picture.sentence.endswith(".")
        words = [text.text for text in root.iter(f"{SVG}text")]
        assert sorted(words) == sorted(  # type: ignore[type-var]
            line for label in picture.drawn.labels for line in label.text.split("\n")
        )


def test_a_sentence_may_hold_any_letter() -> None:
    box = plan(postcard().having({"title": "<b>&"}))
    assert ET.fromstring(corner_picture(box).svg) is not None


def test_pictures_on_one_page_do_not_meddle_with_one_another() -> None:
    # The same picture twice would be the same through and through; others share no name.
    shown = {
        picture.svg
        for box in (postcard_plan(), plan(ears()), plan(inch_postcard()))
        for paper in (False, True)
        for _, picture in pictures(box, paper=paper)
    }
    assert len(shown) > 12
    seen: set[str] = set()
    for svg in shown:
        # A style element would reach out to everything on the page.
        assert "<style" not in svg and "<script" not in svg
        assert "http" not in svg.replace("http://www.w3.org/", "")
        names = set(re.findall(r' id="([^"]+)"', svg))
        used = set(re.findall(r"url\(#([^)]+)\)", svg))
        assert used and used <= names
        assert not names & seen
        seen |= names


def test_pictures_are_small() -> None:
    for name, picture in pictures(postcard_plan()):
        # A page with twenty of them is still one that a phone loads.
        assert len(picture.svg) < 30_000, name


def test_drawing_follows_the_hand() -> None:
    """Processor time of one slider step, at several times what it takes on a quiet machine."""
    boxes = [plan(postcard().having({"size.inside_height": 36.0 + 0.2 * i})) for i in range(12)]
    corner_picture(boxes[0])
    spent = []
    for box in boxes:
        start = time.process_time()
        corner_picture(box, ghost=boxes[0])
        spent.append(time.process_time() - start)
    assert sorted(spent)[len(spent) // 2] < 0.06


def test_a_notebook_shows_it_inline() -> None:
    picture = corner_picture(postcard_plan())
    assert picture._repr_html_() == picture.svg
