"""The instructor's notes say what the workbook says: numbers, names, sliders, links, headings."""

import re
from pathlib import Path

import pytest

from tests.house import instructor_notes as notes
from toolkit import explore
from toolkit.cli import _parser

HEADINGS = [
    "Minutes",
    "If late",
    "Before class",
    "On the bench",
    "What they come with",
    "Say first",
    "They will guess",
    "Demonstration",
    "Before each slider",
    "In the room",
    "Measured by hand",
    "Where it goes wrong",
    "Take care",
    "Answers",
    "Other ways in",
    "Taught on",
]
# Numbers that name something and measure nothing: lessons, days, what was published and when.
NAMED = re.compile(
    r"\b(?:lessons?|days?|gauge) \d(?: and \d)?\b|FPL-GTR-\d+|\b1[89]\d\d\b", re.IGNORECASE
)
CODE = re.compile(r"```.*?```|`[^`]*`", re.DOTALL)
LINK = re.compile(r"\[[^\]]*\]\(([^)#]+)(?:#[^)]*)?\)")
UNWRITTEN = "not up to date; run: python -m tests.house.instructor_notes"


def _section(text: str, heading: str) -> str:
    found = re.search(rf"^## {heading}\n(.*?)(?=^## |\Z)", text, flags=re.MULTILINE | re.DOTALL)
    assert found, heading
    return found[1]


def _rows(text: str) -> list[list[str]]:
    """The cells of the tables in a text, their heads left out."""
    lines = [line for line in text.splitlines() if line.startswith("|")]
    cells = [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]
    rules = [at for at, row in enumerate(cells) if set("".join(row)) <= set("- :")]
    heads = {at - 1 for at in rules} | set(rules)
    return [row for at, row in enumerate(cells) if at not in heads]


def _bare(text: str) -> str:
    """A page without what may hold figures: marked numbers, code, links' targets, list numbers."""
    text = CODE.sub("", notes.MARKED.sub("", text))
    for label in LABELS:
        text = text.replace(f"| {label} |", "| |")
    text = re.sub(r"\]\([^)]*\)", "]", text)
    text = re.sub(r"^ *\d+\. ", "", text, flags=re.MULTILINE)
    return NAMED.sub("", text)


LABELS = {
    control.label
    for lesson in notes.LESSONS
    for scene in getattr(explore, f"lesson{lesson}").scenes.values()
    for control in scene.controls
}
PAGES = notes.pages()
BY_HAND = pytest.mark.parametrize("path", PAGES, ids=lambda path: path.name)
EACH = pytest.mark.parametrize("lesson", notes.LESSONS)


def test_numbers_and_solutions_are_up_to_date() -> None:
    for path, text in notes.written().items():
        assert path.exists(), f"{path.name}: {UNWRITTEN}"
        assert path.read_text(encoding="utf-8") == text, f"{path.name}: {UNWRITTEN}"


def test_no_solution_is_left_over() -> None:
    stems = {notes.lesson_path(lesson).stem for lesson in notes.LESSONS}
    assert {path.stem for path in notes.SOLUTIONS.iterdir()} == stems


def test_a_wrong_number_is_seen() -> None:
    text = "wide: <!--=answer 4 lid-width-->115 mm<!--/-->."
    assert notes.renewed(text) != text
    with pytest.raises(KeyError):
        notes.renewed("<!--=answer 4 no-such-question-->1 mm<!--/-->")


@BY_HAND
def test_no_number_is_typed(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    if "\n## Minutes\n" in text:
        text = text.replace(_section(text, "Minutes"), "")
    found = re.findall(r".{0,30}\d.{0,20}", _bare(text))
    assert not found, f"mark these numbers, or write them in words: {found}"


@BY_HAND
def test_every_mark_is_closed(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count("<!--") == 2 * len(notes.MARKED.findall(text))


@BY_HAND
def test_links_lead_somewhere(path: Path) -> None:
    for target in LINK.findall(path.read_text(encoding="utf-8")):
        assert "://" not in target, "the workbook needs no network"
        assert (path.parent / target).resolve().exists(), target


def test_the_index_leads_to_every_page_and_the_readme_to_the_index() -> None:
    index = (notes.NOTES / "index.md").read_text(encoding="utf-8")
    linked = {(notes.NOTES / target).resolve() for target in LINK.findall(index)}
    wanted = {*PAGES, *notes.SOLUTIONS.glob("*.md")} - {notes.NOTES / "index.md"}
    assert {path.resolve() for path in wanted} <= linked
    readme = (notes.ROOT / "README.md").read_text(encoding="utf-8")
    assert "instructor_notes/index.md" in LINK.findall(readme)


@BY_HAND
def test_commands_that_are_named_exist(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    known = re.findall(r"^ {4}([a-z]+) ", _parser().format_help(), flags=re.MULTILINE)
    for named in re.findall(r"(?:`|^)workbook ([a-z]+)", text, flags=re.MULTILINE):
        assert named in known


@EACH
def test_a_page_has_the_same_headings_as_every_other(lesson: int) -> None:
    text = notes.page_path(lesson).read_text(encoding="utf-8")
    assert re.findall(r"^## (.+)$", text, flags=re.MULTILINE) == HEADINGS
    assert len(re.findall(r"^# ", text, flags=re.MULTILINE)) == 1


@EACH
def test_minutes_add_up_to_what_the_lesson_says(lesson: int) -> None:
    text = notes.page_path(lesson).read_text(encoding="utf-8")
    (row,) = _rows(_section(text, "Minutes"))
    *here, bench = (int(cell) for cell in row)
    assert (sum(here), bench) == notes.minutes(lesson)


@EACH
def test_every_slider_has_its_question(lesson: int) -> None:
    """Under the heading of each scene stand its own sliders, all of them and no other."""
    module = getattr(explore, f"lesson{lesson}")
    text = _section(notes.page_path(lesson).read_text(encoding="utf-8"), "Before each slider")
    asked = {}
    for part in text.split("\n### ")[1:]:
        head, _, rest = part.partition("\n")
        (name,) = re.findall(r"`lesson\.(\w+)\(\)`", head)
        rows = _rows(rest)
        assert all(len(row) == 3 and all(row) for row in rows), name
        asked[name] = [row[0] for row in rows]
    scenes = module.scenes.items()
    shown = {name: [control.label for control in scene.controls] for name, scene in scenes}
    assert asked == shown


@EACH
def test_names_of_the_lesson_exist(lesson: int) -> None:
    module = getattr(explore, f"lesson{lesson}")
    text = notes.page_path(lesson).read_text(encoding="utf-8")
    for name in re.findall(r"\blesson\.(\w+)", text):
        assert hasattr(module, name), name


@EACH
def test_what_students_come_with_is_asked(lesson: int) -> None:
    """Each row names questions of this lesson, in the words of the page of answers."""
    text = notes.page_path(lesson).read_text(encoding="utf-8")
    names = {name.replace("-", " ") for name in notes.questions(lesson)}
    rows = _rows(_section(text, "What they come with"))
    assert len(rows) >= 6
    for *_, asked in rows:
        assert set(asked.split(", ")) <= names | {"guess"}, asked


@EACH
def test_the_page_leads_to_its_answers_and_they_hold_every_slip(lesson: int) -> None:
    page = notes.page_path(lesson)
    assert f"solutions/{page.name}" in page.read_text(encoding="utf-8")
    answers = (notes.SOLUTIONS / page.name).read_text(encoding="utf-8")
    for asked in notes.questions(lesson).values():
        assert f"**{asked.written(asked.answer)}.**" in answers
        for slip in asked.slips:
            assert f"| {asked.written(slip.value)} | {slip.hint} |" in answers
