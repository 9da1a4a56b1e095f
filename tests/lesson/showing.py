"""What every scene is held to: something to see at both ends of each slider, on a still page."""

from collections.abc import Iterable

from toolkit.box import Choices
from toolkit.lesson.scene import Scene
from toolkit.study import bound_to


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


def stands_on_its_marks(scene: Scene, box: Choices) -> None:
    """A scene shows a box, and each slider stands on one of its marks, no two of them alike."""
    scene.view(box)
    for control in scene.controls:
        start = control.first(box)
        values = [value for _, value in control.options(box.rule, start)]
        assert start in values, control.label
        assert len(values) == len(set(map(str, values)))


def can_be_made(lesson: object, cells: str, choices: Choices) -> None:
    """Each of a lesson's cells, by name, says something of a box."""
    with bound_to(choices):
        for name in cells.split():
            assert repr(getattr(lesson, name)()), name
