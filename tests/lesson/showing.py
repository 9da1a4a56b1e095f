"""What every scene is held to: something to see at both ends of each slider, on a still page."""

from collections.abc import Iterable

from toolkit.box import Choices
from toolkit.lesson.scene import Scene


def both_ends_show(scenes: Iterable[Scene], choices: Choices) -> None:
    """Each slider at both its ends gives a picture, its sentence and numbers, all of one height."""
    for scene in scenes:
        heights = set()
        for control in scene.controls:
            places = control.options(choices.rule, control.first(choices))
            for _, value in (places[0], places[-1]):
                view = scene.view(choices, dict.fromkeys(control.keys, value))
                assert view.picture.sentence.endswith(".")
                assert view.numbers.rows
                heights.add(view.picture.drawn.height)
        assert len(heights) == 1, scene.name
