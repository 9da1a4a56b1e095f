"""Sliders at sizes that no box can have, and at sizes that can be made but fail."""

from pathlib import Path

from tests.browser.lesson_page import LessonPage, corner_view, tracebacks
from toolkit.files import read_box
from toolkit.lesson import lesson4_box as lesson4
from toolkit.lesson.controls import with_values
from toolkit.lesson.scene import ImpossibleError
from toolkit.study import OwnBox, example_path

TAILS = "tails at the back"


def test_no_such_box_is_a_sentence_beside_the_last_good_picture(
    page: LessonPage, folder: Path
) -> None:
    # A tray for a few cards: its walls have no room for six tails.
    OwnBox("box").keep({"size.inside_height": "14 mm"})
    kept = read_box(folder / "my_box.toml")
    lesson = page
    lesson.run_all()
    lesson.shows(corner_view(kept, kept), after="opening it")

    options = [value for _, value in lesson4.CORNER_CONTROLS[3].options(kept.rule, 3)]
    good, picture, refusal = kept, corner_view(kept, kept), ""
    for tails in options[options.index(3) + 1 :]:
        wanted = with_values(kept, {"corner.tails_back": tails})
        lesson.press(TAILS, "ArrowRight")
        try:
            good, picture = wanted, corner_view(wanted, kept)
            lesson.shows(picture, after=f"{tails} tails")
        except ImpossibleError as error:
            refusal = str(error)
            break
    assert refusal, "this tray takes as many tails as the slider offers"
    lesson.says("No such box.")
    lesson.says(refusal)
    lesson.shows(picture, after="asking for what can't be")
    lesson.photograph("04-no-such-box")

    # Every slider still moves, and the way back is open.
    lesson.press("groove from the edge", "End")
    assert lesson.readout("groove from the edge") == "20 mm"
    lesson.press(TAILS, "Home")
    one = with_values(
        good, {"corner.tails_back": 1, "groove.bottom_edge": 20.0, "groove.top_edge": 20.0}
    )
    lesson.shows(corner_view(one, kept), after="going back to one tail")
    assert lesson.page.get_by_text("No such box.").count() == 0
    assert tracebacks(lesson.page) == []
    assert lesson.watched.errors == []


def test_a_damaged_box_file_is_set_aside_and_told(page: LessonPage, folder: Path) -> None:
    text = "[size]\ninside_length = 'a hand'\n"
    (folder / "my_box.toml").write_text(text, encoding="utf-8")
    page.run_all()
    page.says("a damaged one is set aside as my_box.damaged-")
    example = read_box(example_path())
    page.shows(corner_view(example, example), after="opening it over a damaged box")
    page.photograph("04-damaged")
    (aside,) = folder.glob("my_box.damaged-*.toml")
    assert aside.read_text(encoding="utf-8") == text
