"""The SVG: the same bytes for the same plan, able to speak, and harmless to the page it is on."""

import os
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from matplotlib.patches import PathPatch
from matplotlib.text import Text

from tests.boxes import ears, inch_postcard, postcard
from tests.pictures.designs import pictures, postcard_plan
from toolkit.pictures import box_apart, corner_picture, for_paper, section_across
from toolkit.pictures.kit.picture import PX_PER_PT
from toolkit.plan import plan

ROOT = Path(__file__).parents[2]
SVG = "{http://www.w3.org/2000/svg}"
SHA = """
import hashlib
from tests.pictures.designs import pictures, postcard_plan
from toolkit.pictures import box_apart
words = "".join(p.svg for _, p in pictures(postcard_plan())) + box_apart(postcard_plan()).svg
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
    shown = set()
    for box in (postcard_plan(), plan(ears()), plan(inch_postcard())):
        shown |= {picture.svg for _, picture in pictures(box)}
        with for_paper():
            shown |= {picture.svg for _, picture in pictures(box)}
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


def test_a_notebook_shows_it_inline() -> None:
    picture = corner_picture(postcard_plan())
    assert picture._repr_html_() == picture.svg


def test_the_same_picture_may_stand_twice_on_a_page() -> None:
    picture = section_across(postcard_plan())
    again = picture.with_unique_ids("still")
    names = [set(re.findall(r' id="([^"]+)"', one.svg)) for one in (picture, again)]
    assert names[0] and not names[0] & names[1]
    assert set(re.findall(r"url\(#([^)]+)\)", again.svg)) == names[1]
    bare = [re.sub(r"c\d+-[\w-]+", "", one.svg) for one in (picture, again)]
    assert bare[0] == bare[1]


@pytest.mark.parametrize("draw", [corner_picture, section_across, box_apart])
def test_a_figure_has_the_same_marks(draw, tmp_path) -> None:  # type: ignore[no-untyped-def]
    """Every line and every word of the page, each where it stands, and saved as PDF and PNG."""
    picture = draw(postcard_plan())
    figure, drawn = picture.figure(), picture.drawn
    assert figure.get_size_inches() * 96 == pytest.approx((drawn.width, drawn.height))
    figure.canvas.draw()
    to_px = figure.dpi / 96
    patches = [artist for artist in figure.get_children() if isinstance(artist, PathPatch)]
    corners = {
        (round(x, 2), round(y, 2))
        for patch in patches
        for x, y in patch.get_transform().transform(patch.get_path().vertices) / to_px
    }
    for pen, points in drawn.strokes:
        for x, y in points:
            assert (round(x * PX_PER_PT, 2), round(y * PX_PER_PT, 2)) in corners, pen
    words = [(word.get_text(), word.get_window_extent()) for word in figure.findobj(Text)]
    for label in drawn.labels:
        for line in label.text.split("\n"):
            # Letters of a screen are set to whole dots, so that a long word is a little wider.
            assert any(
                text == line
                and label.x0 - 4 < box.x0 / to_px
                and box.x1 / to_px < label.x1 + 4
                and label.y0 - 4 < box.y0 / to_px
                and box.y1 / to_px < label.y1 + 4
                for text, box in words
            ), line
    for name, start in (("box.pdf", b"%PDF"), ("box.png", b"\x89PNG")):
        figure.savefig(tmp_path / name)
        assert (tmp_path / name).read_bytes().startswith(start)


def test_a_figure_keeps_grain_inside_its_part() -> None:
    across = section_across(postcard_plan())
    clipped = [artist for artist in across.figure().findobj(PathPatch) if artist.get_clip_path()]
    assert len(clipped) == sum(bool(ink.regions) for ink in across.marks.inks) > 0
