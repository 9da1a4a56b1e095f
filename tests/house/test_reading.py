"""Reads whole pages as a student gets them: one set of units, one English, no word that misleads.

What stands in the other unit for a good reason is listed, with the reason.
"""

import re
from collections.abc import Iterable, Iterator
from datetime import date
from pathlib import Path

import pytest

from tests.boxes import ears, inch_postcard, postcard
from tests.classroom.classes import BOARDS, HEAD, THREE, write
from tests.reading_pages import Page
from toolkit import explore
from toolkit.box import Choices
from toolkit.classroom import make_class, wood
from toolkit.files import read_boards, read_class
from toolkit.handout import handout
from toolkit.lesson.scene import ImpossibleError
from toolkit.plan import plan
from toolkit.results import read_table
from toolkit.study import bound_to, draw, lessons_folder, lessons_with_questions
from toolkit.study.answers import first_guess

DAY = date(2026, 11, 25)
BOXES = {
    "mm": postcard(),
    "mm, ears": ears(),
    "in": inch_postcard(),
    "in, through": inch_postcard().having(
        {"corner.joint": "through", "corner.lap": None, "lid.kind": "lift-off"}
    ),
}
OTHER_UNIT = {
    "in": r"\d ?(?:mm|cm|m|µm)(?:[²³]|\b)|millimet|centimet|\bmicron",
    "mm": r"\d ?in\b(?! [\d{])|\d ?(?:″|ft\b|sq in|cu in)|\binch(?:es)?\b|\bthou(?:sandths)?\b|µin",
}
# Words that may stand round a size in the other unit, and why.
MAY_STAND = {
    "bars of 100 mm and 4 in": "whoever checks a print may have only the other rule",
    r"printed (?:under |up to )?\d*/?\d+ in": "a published value is quoted with its unit",
    r"1910 \(1 3/4 in\)": "a published value is quoted with its unit",
    r"A yard's next thickness is .{1,12} in rough": "yards sell by quarters of an inch",
    "wood thinner than an inch as an inch": "how a yard counts board feet",
    r"\d[\d.]* m³": "yards sell by the cubic metre or the board foot",
    r"board feet|board foot|cubic inches": "yards sell by the board foot",
    r"1 in (?:r\b|so many)": "a slope",
    "[35468] x [568] in index cards|4 x 6 in": "the name of what is kept in the box",
}
# Not to be said of the craft, and what is said instead.
BANNED = {
    "spelch": "breakout", "flank": "cheek", "handsome": "best figure", "sparing": "economical",
    "tip line": "gauge-1 line", "fingerprint": "issue", "after the end": "a clock time",
    r"stays? whole": "offcut", r"walls?['’]? stick": "blank", "practice stick": "blank",
    r"(?<!who )(?<!and )(?<!one of them )\blooks\b": "figure", r"\bgrips?\b": "engagement",
    "through-and-through": "flat-sawn", r"\d (?:mm|in) (?:over|under)\)": "no rest of a rounding",
}  # fmt: skip


def _read(html: str) -> Iterator[str]:
    page = Page(re.sub(r"<style.*?</style>", "", html, flags=re.DOTALL))
    yield from (page.text, page.scripts)
    for _, given in page.tags:
        yield from (given[name] or "" for name in ("aria-label", "alt", "title") if name in given)


def _paper(box: Choices) -> Iterator[tuple[str, str]]:
    boards = read_boards(lessons_folder() / "boards.toml")
    html = handout(plan(box), day=DAY, lessons=None, boards=boards)
    for text in _read(html):
        yield "handout", text


def _screen(box: Choices) -> Iterator[tuple[str, str]]:
    """Questions with their answers and hints; each scene at both ends of each slider."""
    made = plan(box)
    for lesson in lessons_with_questions():
        for asked in (*draw(made, lesson=lesson), first_guess(made, lesson=lesson)):
            if asked is not None:
                hints = (slip.hint for slip in asked.slips)
                said = (
                    asked.prompt,
                    asked.working,
                    asked.nudge,
                    asked.written(asked.answer),
                    *hints,
                )
                yield from ((asked.id, text) for text in said)
    for number in lessons_with_questions():
        for name, scene in getattr(explore, f"lesson{number}").scenes.items():
            for control in scene.controls:
                places = control.options(box.rule, control.first(box))
                for words, value in (places[0], places[-1]):
                    yield f"lesson {number}, {name}", f"{control.label}: {words}"
                    try:
                        view = scene.view(box, dict.fromkeys(control.keys, value))
                    except ImpossibleError as error:
                        yield f"lesson {number}, {name}", str(error)
                        continue
                    for text in _read(view.figure(name) + view.words(name)):
                        yield f"lesson {number}, {name}", text


def _offenders(
    said: Iterable[tuple[str, str]], pattern: str, *, left: Iterable[str] = ()
) -> list[str]:
    """Each place where a pattern stands, with what is round it; what is ``left`` does not count."""
    passed = re.compile("|".join(f"(?:{words})" for words in left) or r"(?!)")
    sought = re.compile(rf".{{0,40}}(?i:{pattern}).{{0,25}}")
    found = {}
    for where, text in said:
        for match in sought.finditer(passed.sub("", " ".join(text.split()))):
            found[where, match[0]] = f"{where}: … {match[0]} …"
    return list(found.values())


Said = list[tuple[str, str]]


@pytest.fixture(scope="module", params=BOXES)
def pages(request: pytest.FixtureRequest) -> tuple[Choices, Said, Said]:
    """A box, what is printed of it, and what stands on a screen."""
    box = BOXES[request.param]
    with bound_to(box):
        return box, list(_paper(box)), list(_screen(box))


def test_no_size_stands_in_the_other_unit(pages: tuple[Choices, Said, Said]) -> None:
    box, paper, screen = pages
    assert len(paper) > 20 and len(screen) > 500
    pattern = OTHER_UNIT[box.rule.units]
    assert _offenders([*paper, *screen], pattern, left=MAY_STAND) == []


def test_a_size_in_the_other_unit_is_seen() -> None:
    for units, text in (
        ("in", "up to 0.3 mm"),
        ("in", "0.1 m²"),
        ("mm", "1/2 in off"),
        ("mm", "3 ft"),
    ):
        assert _offenders([("page", text)], OTHER_UNIT[units])
    for units, text in (("in", "1 1/2 in"), ("mm", "1 in 7"), ("mm", "4 mm in all")):
        assert _offenders([("page", text)], OTHER_UNIT[units]) == []


def _family(words: str) -> str:
    """The words of the other English."""
    other = {"us": "british", "british": "us"}[words]
    rows = [row for row in read_table("document/english.csv") if row["way"] in ("", words)]
    return rf"\b(?:{'|'.join(re.escape(row[other]) for row in rows)})\b"


def test_one_english_stands_in_a_page_and_no_word_that_misleads(
    pages: tuple[Choices, Said, Said],
) -> None:
    box, paper, screen = pages
    assert _offenders(paper, _family(box.rule.words)) == []
    # On the screen the lessons' own prose is British, and so is all that stands beside it.
    assert _offenders(screen, _family("british")) == []
    assert _offenders([*paper, *screen], "|".join(BANNED)) == []


def test_notes_and_lessons_say_no_word_that_misleads() -> None:
    """As they are written, for teachers and students."""
    said = []
    home = lessons_folder().parent
    for path in (*home.glob("lessons/*.ipynb"), *home.glob("instructor_notes/**/*.md")):
        said += [(path.name, line) for line in path.read_text(encoding="utf-8").splitlines()]
    said = [(where, line) for where, line in said if '": ' not in line[:30]]
    assert len(said) > 1500
    # People look; a board has a figure.
    banned = (words for words in BANNED if "looks" not in words)
    assert _offenders(said, "|".join(banned)) == []


@pytest.fixture(scope="module")
def class_pages(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a class of which the second student measures in inches."""
    path = write(
        tmp_path_factory.mktemp("class"), HEAD + THREE.replace('words = "us"\n', "") + BOARDS
    )
    folder = path.parent / "out"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(wood, "TIME_LIMIT", 0.3)
        patch.setitem(wood.class_wood.__kwdefaults__, "seconds", 0.3)
        make_class(read_class(path), folder=folder, lessons=())
    return folder


@pytest.mark.parametrize("number", [1, 2])
def test_a_students_class_pages_are_in_their_own_units_and_words(
    class_pages: Path, number: int
) -> None:
    units, words = {1: ("mm", "british"), 2: ("in", "us")}[number]
    said = [
        (path.parent.name, text)
        for path in class_pages.glob(f"*/student_{number:02d}.html")
        for text in _read(path.read_text(encoding="utf-8"))
    ]
    assert len(said) > 10
    assert _offenders(said, OTHER_UNIT[units], left=MAY_STAND) == []
    assert _offenders(said, _family(words)) == []
    pages = (
        (path.name, text) for path in class_pages.glob("*.html") for text in _read(path.read_text())
    )
    assert _offenders(pages, "|".join(BANNED)) == []
