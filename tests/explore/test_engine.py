"""Every slider of every lesson and of the class plan, moved as a kernel moves it."""

import ipywidgets as widgets
import pytest

from toolkit import explore
from toolkit.classroom import class_plan
from toolkit.explore.engine import Explorer

SCENES = {
    f"lesson{number}": getattr(explore, f"lesson{number}").scenes.values() for number in range(1, 6)
} | {"class plan": class_plan.SCENES}


def _standing(explorer: Explorer) -> tuple[list[widgets.Widget], str]:
    """What a page would show at this moment: the sliders, and picture and words as one text."""
    *_, sliders, _, picture, words = explorer.widget.children
    return list(sliders.children), picture.value + words.value


@pytest.mark.parametrize("lesson", SCENES)
def test_each_control_shows_what_its_scene_computes(lesson: str) -> None:
    for scene in SCENES[lesson]:
        explorer = Explorer(scene)
        sliders, first = _standing(explorer)
        for control, slider in zip(scene.controls, sliders, strict=True):
            start = control.first(explorer.kept)
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
