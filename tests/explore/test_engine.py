"""Every slider of every lesson and of the class plan, moved as a kernel moves it."""

from __future__ import annotations

from importlib import import_module
from types import ModuleType

import ipywidgets as widgets
import pytest

from toolkit.classroom import class_plan
from toolkit.explore.engine import Explorer
from toolkit.lesson.controls import first_value

LESSONS = [import_module(f"toolkit.explore.lesson{number}") for number in range(1, 6)]


def _standing(explorer: Explorer) -> tuple[list[widgets.Widget], str]:
    """What a page would show at this moment: the sliders, and picture and words as one text."""
    *_, sliders, _, picture, words = explorer.widget.children
    return list(sliders.children), picture.value + words.value


@pytest.mark.parametrize("lesson", [*LESSONS, class_plan], ids=lambda one: one.__name__)
def test_each_control_shows_what_its_scene_computes(lesson: ModuleType) -> None:
    for scene in lesson.SCENES:
        explorer = Explorer(scene)
        sliders, first = _standing(explorer)
        for control, slider in zip(scene.controls, sliders, strict=True):
            start = first_value(control, explorer.kept)
            places = [value for _, value in control.options(explorer.kept.rule, start)]
            assert (slider.description, slider.value) == (control.label, start)
            here = places.index(start)
            slider.value = places[here + 1 if here + 1 < len(places) else here - 1]
            view = scene.view(explorer.kept, dict.fromkeys(control.keys, slider.value))
            now = _standing(explorer)[1]
            assert now == view.figure(scene.name) + view.words(scene.name), control.label
            assert now != first, f"{control.label} changes nothing"
            slider.value = start
        assert _standing(explorer)[1] == first
