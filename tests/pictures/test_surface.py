"""The planed surface in raking light: its light and shadows measured, its drawing looked over."""

import re
import xml.etree.ElementTree as ET
from base64 import b64decode
from contextlib import nullcontext
from functools import cache
from io import BytesIO
from math import inf, radians, tan

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st
from numpy.typing import NDArray
from PIL import Image

from tests.pictures.test_layout_of_labels import _faults
from toolkit.measures import Rule
from toolkit.pictures import Picture, for_paper, raking_light
from toolkit.pictures.surface import drawing
from toolkit.pictures.surface.drawing import times
from toolkit.pictures.surface.light import lit, wood_png
from toolkit.planes import JACK, SMOOTHER, Surface, planed
from toolkit.smoothing import shadow_length

STRAIGHT = SMOOTHER.having(camber_radius=inf, overlap=30, shaving=0.08)


@cache
def surfaces() -> dict[str, Surface]:
    hand = {"scatter": 2.0, "depth_scatter": 10.0}
    return {
        "smoother": planed(SMOOTHER, **hand),
        "flat": planed(SMOOTHER.having(camber_radius=inf)),
        "jack": planed(JACK, **hand),
        "straight": planed(STRAIGHT, scatter=2, depth_scatter=25),
        "long": planed(JACK.having(overlap=80), width=30, length=60),
        "tiny": planed(SMOOTHER, width=4, length=3, step=0.05),
        "wide": planed(JACK, width=200, length=20, step=0.2),
    }


def _step(height: float, *, cells: int = 400, step: float = 0.02) -> NDArray[np.float32]:
    field = np.zeros((40, cells), dtype=np.float32)
    field[:, : cells // 2] = height
    return field


@pytest.mark.parametrize("lamp", [2.0, 5.0, 10.0, 45.0])
@pytest.mark.parametrize("height", [0.005, 0.02, 0.06])
def test_a_shadow_is_as_long_as_geometry_says(lamp: float, height: float) -> None:
    """Light lost behind a step, added up over the cells, is its shadow, parts of cells too."""
    step = 0.02
    light = lit(_step(height, step=step), step=step, lamp_height=lamp, lamp_direction=270)
    lost = (1 - light[20]).sum() * step
    assert lost == pytest.approx(shadow_length(height, lamp_height=lamp), rel=2e-3)
    assert light[20, : 400 // 2] == pytest.approx(1, abs=1e-3)


@pytest.mark.parametrize("off", [0.0, 15.0, 30.0, 45.0])
def test_a_slanting_light_throws_a_shorter_shadow(off: float) -> None:
    field = np.repeat(_step(0.05), 10, axis=0)
    light = lit(field, step=0.02, lamp_height=5, lamp_direction=270 + off)
    lost = (1 - light[200]).sum() * 0.02
    assert lost == pytest.approx(shadow_length(0.05, lamp_height=5, across=off), rel=0.02)


def test_a_shadow_is_dark_and_its_edge_sharp() -> None:
    step = 0.02
    light = lit(_step(0.05, step=step), step=step, lamp_height=5, lamp_direction=270)[20]
    shadow = shadow_length(0.05, lamp_height=5)
    inside = light[201 : 200 + int(shadow / step) - 1]
    assert (inside == pytest.approx(0, abs=1e-3)) and len(inside) > 20
    assert light[202 + int(shadow / step) :] == pytest.approx(1, abs=1e-3)


@given(st.floats(-0.06, 0.06), st.sampled_from([0.0, 90.0, 180.0, 270.0]))
@settings(deadline=None)
def test_a_slope_is_lit_by_the_cosine_of_its_light(slope: float, direction: float) -> None:
    """Lambert's law for small slopes: 1 + slope/tan(lamp), and 0 where the light grazes past."""
    x = np.arange(50, dtype=np.float32)[None, :] * np.ones((50, 1), dtype=np.float32) * 0.1
    field = slope * x
    light = lit(field, step=0.1, lamp_height=3, lamp_direction=direction)
    along = {90.0: -slope, 270.0: slope}.get(direction, 0.0)
    assert light[25, 25] == pytest.approx(max(1 + along / tan(radians(3)), 0), abs=2e-3)


@pytest.mark.parametrize("direction", [0.0, 20.0, 45.0, 100.0, 225.0, 300.0])
def test_turning_board_and_lamp_together_changes_nothing(direction: float) -> None:
    heights = np.array(planed(JACK, width=20, length=20, scatter=2).heights)
    light = lit(heights, step=0.1, lamp_height=4, lamp_direction=direction)
    turned = lit(np.rot90(heights, -1), step=0.1, lamp_height=4, lamp_direction=direction - 90)
    inner = (slice(30, -30), slice(30, -30))
    back = np.rot90(turned, 1)
    assert np.abs(back[inner] - light[inner]).mean() < 0.01


def test_no_light_is_made_or_lost_on_the_whole() -> None:
    """What a step shades is missing, and a ridge's bright side makes up for its dark one."""
    for direction in (270.0, 310.0, 0.0):
        heights = surfaces()["jack"].heights
        light = lit(heights, step=0.1, lamp_height=5, lamp_direction=direction)
        assert float(light.mean()) == pytest.approx(1, abs=0.02)
        assert float(light.min()) >= 0


def _read(svg: str) -> tuple[NDArray[np.uint8], bytes]:
    """The picture's own PNG: levels and palette."""
    image = Image.open(BytesIO(b64decode(re.search(r"data:image/png;base64,([^\"]+)", svg)[1])))
    return np.array(image), bytes(image.getpalette() or [])


def test_the_png_is_read_back_as_it_was_written() -> None:
    tones = np.random.default_rng(3).random((30, 50)).astype(np.float32)
    svg = f'href="data:image/png;base64,{__import__("base64").b64encode(wood_png(tones)).decode()}"'
    levels, palette = _read(svg)
    assert np.abs(levels[::-1] / 160 * 1.4 - tones).max() < 1.4 / 160 + 1e-6
    light = np.frombuffer(palette, np.uint8).reshape(-1, 3).sum(axis=1).astype(int)
    assert (np.diff(light) >= 0).all() and light[0] == 0


def test_the_lamps_side_of_a_ridge_is_the_bright_one() -> None:
    """Seen on the page: light from the left brightens what rises to the right of a hollow."""
    surface = planed(JACK)
    left = _read(raking_light(surface, lamp_direction=270).svg)[0].astype(int)
    right = _read(raking_light(surface, lamp_direction=90).svg)[0].astype(int)
    middles = [row.centre for row in surface.last_pass if 10 < row.centre < 50]
    for middle in middles:
        before, after = int((middle - 7) * 10), int((middle + 7) * 10)
        assert (left[:, after] > right[:, after]).all()
        assert (left[:, before] < right[:, before]).all()


def test_the_far_end_is_at_the_top() -> None:
    heights = np.zeros((100, 100), dtype=np.float32)
    heights[:50] = 0.1
    made = planed(SMOOTHER, width=10, length=10)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Surface, "heights", heights)
        drawn = raking_light(made, lamp_direction=180, lamp_height=5)
    levels = _read(drawn.svg)[0].astype(int)
    # The near half is high: its shadow falls just above the middle of the page.
    assert levels[44, 50] < 0.5 * levels[5, 50]
    assert levels[55, 50] > 0.9 * levels[95, 50]


@pytest.mark.parametrize("name", list(surfaces()))
@pytest.mark.parametrize("direction", [0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0])
def test_every_label_has_its_place(
    name: str, direction: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Shading takes the most of a picture's time, and no label looks at it."""
    monkeypatch.setattr(drawing, "_shaded", lambda *_: b"")
    millimetres, inches = Rule.millimetres(), Rule.inches()
    for height, paper, rule in (
        (1.0, False, millimetres),
        (2.0, True, millimetres),
        (5.0, True, inches),
        (30.0, False, inches),
        (80.0, True, millimetres),
    ):
        with for_paper() if paper else nullcontext():
            picture = raking_light(
                surfaces()[name],
                lamp_height=height,
                lamp_direction=direction,
                rule=rule,
                ghost=surfaces()["jack"] if height == 30 else None,
            )
        assert not _faults(picture.drawn), (height, paper)
        assert not picture.drawn.dropped, (height, paper)


def _words(picture: Picture) -> str:
    return " ".join(ET.fromstring(picture.svg).itertext())


def test_it_says_its_enlargement_and_keeps_it() -> None:
    for surface in surfaces().values():
        drawn = raking_light(surface)
        scale = drawn.drawn.scale / (4 / 3)
        n = times(surface, scale=scale)
        assert f"section A–A, heights × {n}" in _words(drawn)
        outline = drawn.drawn.outline("section")
        tops = [y for _, y in outline.points[:-2]]
        assert max(tops) - min(tops) == pytest.approx(surface.rise * scale * n, rel=0.02, abs=0.1)
    jack, smoother = surfaces()["jack"], surfaces()["smoother"]
    ghosted = raking_light(smoother, ghost=jack)
    scale = ghosted.drawn.scale / (4 / 3)
    assert f"heights × {times(jack, scale=scale)}" in _words(ghosted)
    assert "dotted: before" in _words(ghosted)


def test_the_patch_is_in_true_proportion() -> None:
    for surface in surfaces().values():
        picture = raking_light(surface)
        image = ET.fromstring(picture.svg).find("{http://www.w3.org/2000/svg}image")
        assert image is not None
        wide, high = float(image.get("width", 0)), float(image.get("height", 0))
        assert wide / high == pytest.approx(surface.width / surface.length, rel=1e-3)
        patch = picture.drawn.outline("patch")
        assert (patch.width, patch.height) == pytest.approx((surface.width, surface.length))


@pytest.mark.parametrize("height", [0.0, 0.4, 90.0, inf])
def test_a_lamp_that_cannot_be_is_refused(height: float) -> None:
    with pytest.raises(ValueError, match=r"give one from 0\.5 to 89"):
        raking_light(surfaces()["smoother"], lamp_height=height)


def test_it_is_small() -> None:
    """Asked for: 60 kB of shading."""
    for surface in surfaces().values():
        for direction in (270.0, 320.0):
            svg = raking_light(surface, lamp_direction=direction).svg
            shade = re.search(r"base64,([^\"]+)", svg)
            assert shade and len(b64decode(shade[1])) < 60_000
