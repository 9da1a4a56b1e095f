"""Measuring jars: filled as high as their amount, of a size that holds it."""

import pytest

from toolkit.pictures import Jar, Picture, for_paper, jars_picture


def fills(picture: Picture) -> dict[str, float]:
    """How high each jar is filled. [pt]"""
    return {
        one.name: max(y for _, y in one.points) - min(y for _, y in one.points)
        for one in picture.drawn.outlines
    }


def words(picture: Picture) -> list[str]:
    return [label.text for label in picture.drawn.labels]


def test_half_a_jar_is_half_as_high_as_a_full_one() -> None:
    high = fills(jars_picture([Jar("a", 100, "mL"), Jar("b", 60, "g")], sentence="x"))
    assert high["b"] / high["a"] == pytest.approx(0.6)


@pytest.mark.parametrize(("amount", "size"), [(0.4, 2), (2, 2), (2.1, 5), (351, 500), (501, 1000)])
def test_the_jar_holds_its_amount_and_its_marks_say_so(amount: float, size: float) -> None:
    said = words(jars_picture([Jar("wax, inside", amount, "g")], sentence="x"))
    assert f"{size:g} g" in said
    assert any(text.endswith(" g") and text != f"{size:g} g" for text in said) or amount == size


def test_nothing_is_lost_or_runs_off_the_page_and_what_was_is_dotted() -> None:
    jars = [Jar(f"thinned oil, outside {n}", 400 + n, "mL", 200.0) for n in range(3)]
    picture = jars_picture(jars, sentence="x")
    with for_paper():
        printed = jars_picture(jars, sentence="x")
    for one in (picture, printed):
        assert not one.drawn.dropped
        for label in one.drawn.labels:
            assert label.x0 >= 0 and label.x1 <= one.drawn.width
    assert sum(name == "ghost" for name, _ in picture.drawn.strokes) == 3
