"""The handout: one file that needs nothing else, in order, readable by everyone."""

import re
import tomllib
from dataclasses import replace
from datetime import date
from itertools import pairwise
from pathlib import Path

import nbformat
import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from tests.reading_pages import Page
from toolkit.cli import main
from toolkit.document import file_of
from toolkit.files import read_boards
from toolkit.handout import handout
from toolkit.handout.formulas import formula_blocks
from toolkit.plan import plan
from toolkit.results import read_table
from toolkit.smoothing import FinishPlan, check_finish
from toolkit.study import LessonError, OwnBox, folder as places, lessons_folder
from toolkit.wood import equilibrium_moisture

DAY = date(2026, 11, 25)
BOXES = {"mm": postcard, "in": inch_postcard, "ears": ears, "lift-off": lift_off}


@pytest.fixture(scope="module", params=BOXES)
def page(request: pytest.FixtureRequest) -> Page:
    return Page(handout(plan(BOXES[request.param]()), day=DAY))


@pytest.fixture(scope="module")
def example() -> str:
    """The workbook's own box, without lessons."""
    return handout(plan(postcard()), day=DAY)


def test_nothing_is_asked_from_outside(page: Page) -> None:
    for tag, attributes in page.tags:
        assert tag not in ("link", "iframe", "object", "embed")
        assert tag != "script" or "src" not in attributes
        for name in ("src", "href", "xlink:href"):
            value = attributes.get(name) or ""
            assert value.startswith(("#", "data:")) or not value, (tag, value)


def test_safety_comes_first_and_local_rules_before_it(page: Page) -> None:
    words = " ".join(page.text.split())
    listed = re.search("Cut list|Cutting list", words)
    assert listed and words.index("Before you touch a tool") < listed.start()
    assert "Local rules and the shop's licensed or insured practice come first." in words
    for line in ("Long hair tied back", "with a stick, never a finger", "own marked bottle"):
        assert words.index(line) < listed.start(), line


def test_rags_are_handled_in_one_way_wherever_they_are_spoken_of() -> None:
    cautions = {row["name"]: row["words"] for row in read_table("handout/cautions.csv")}
    rule = cautions["Oily rags"].partition(". ")[2]
    (found,) = (row for row in check_finish(FinishPlan(("oil",))) if row.code == "oily-rags")
    assert found.remedy.startswith(rule)
    notes = lessons_folder().parent / "instructor_notes"
    for path in (
        *lessons_folder().glob("05*.ipynb"),
        *notes.glob("05*.md"),
        *notes.glob("safety*"),
    ):
        assert rule in path.read_text(encoding="utf-8"), path.name


def test_headings_skip_no_level_and_there_is_one_first(page: Page) -> None:
    assert page.levels[0] == 1 and page.levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(page.levels))


def test_every_picture_says_its_finding(page: Page) -> None:
    pictures = page.all("svg")
    assert len(page.all("figcaption")) >= 5
    assert len(pictures) > len(page.all("figcaption"))
    for attributes in pictures:
        assert attributes.get("role") == "img"
        assert re.search(r"\d", attributes.get("aria-label") or "")


def test_tables_have_headers_and_the_page_a_language(page: Page) -> None:
    assert page.all("html")[0]["lang"]
    assert {row.get("scope") for row in page.all("th")} == {"col", "row"}
    assert len(page.all("caption")) == len(page.all("table"))


def test_no_two_things_have_one_name(page: Page) -> None:
    named = [attributes["id"] for _, attributes in page.tags if "id" in attributes]
    assert len(named) == len(set(named))
    targets = {(a.get("href") or "")[1:] for a in page.all("a")}
    assert targets <= set(named)


def test_date_and_fingerprint_stand_on_every_page(example: str) -> None:
    margin = example[example.index("@bottom-left") :].split("}")[0]
    assert plan(postcard()).fingerprint in margin
    assert "2026-11-25" in margin


def test_the_students_own_numbers_are_in_it() -> None:
    html = handout(plan(postcard().having({"made.side_thickness": 11.4})), day=DAY)
    assert "124.8 mm" in html


@pytest.mark.parametrize(
    "title",
    [
        "</style><script>alert(1)</script>",
        'a "quoted" box, a\\b;}',
        "שבע תיבה, шкатулка 🧰",
        "Gray \N{MAN}\N{ZERO WIDTH JOINER}\N{GIRL} center",
    ],
)
def test_any_title_is_shown_as_text(title: str) -> None:
    page = Page(handout(plan(postcard().having({"title": title})), day=DAY, name=title))
    assert page.text.count(title) >= 2
    assert "alert(1)" not in page.scripts
    assert len(page.all("style")) == 1


def test_a_box_that_cannot_exist_still_gets_its_findings() -> None:
    made = plan(postcard().having({"corner.tails_back": 24}))
    page = Page(handout(made, day=DAY))
    assert "find no room" in page.text
    assert "Look at these before anyone saws" in page.text
    assert not page.all("svg")


def test_changed_customs_are_told() -> None:
    html = handout(plan(postcard().having({"customs.lap_least": 2.5})), day=DAY)
    assert "customs.lap_least" in html


def test_paper() -> None:
    assert "size: letter" in handout(plan(postcard()), paper="letter", day=DAY)
    with pytest.raises(ValueError, match='type "a4" or "letter"'):
        handout(plan(postcard()), paper="a3")


def test_a_failed_handout_leaves_no_half_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "box.html"
    target.write_text("the old one", encoding="utf-8")
    monkeypatch.setattr("toolkit.handout.sections.box_apart", lambda plan: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        main(["handout", str(lessons_folder() / "box.toml"), "-o", str(target)])
    assert target.read_text(encoding="utf-8") == "the old one"
    assert [path.name for path in tmp_path.iterdir()] == ["box.html"]


def test_it_is_light(example: str) -> None:
    assert len(example.encode()) < 1_000_000


def test_one_english_and_never_both() -> None:
    made = plan(postcard())
    for words, own, other in (
        ("us", ("rabbet", "plow", "vise", "half-blind"), ("rebate", "plough", "vice", "cramp")),
        ("british", ("rebate", "plough", "vice", "lapped"), ("rabbet", "plow ", "vise", "clamp")),
    ):
        page = Page(handout(made, day=DAY, words=words))
        text = f" {page.text.lower()} {page.scripts.lower()}"
        for word in own:
            assert re.search(rf"\b{word}", text), (words, word)
        for word in other:
            assert not re.search(rf"\b{word.strip()}(?:s|d|ed|ing)?\b", text), (words, word)
        assert page.all("html")[0]["lang"] == {"us": "en-US", "british": "en-GB"}[words]
    with pytest.raises(ValueError, match='type "us" or "british"'):
        handout(made, words="welsh")  # type: ignore[arg-type]


def test_what_people_typed_keeps_its_spelling(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The title, a name, the boards' names, and what a teacher wrote into a lesson."""

    source = (lessons_folder() / "04_groove_layout.ipynb").read_text(encoding="utf-8")
    book = nbformat.reads(source, as_version=4)
    shown = [cell for cell in book.cells if cell.id in ("title", "cautions", "import", "bench")]
    note = nbformat.v4.new_markdown_cell("Meet *Gray* at the **vise & plow**, by the center.")
    book.cells = [*shown, note, nbformat.v4.new_code_cell("lesson.still()")]
    nbformat.write(book, tmp_path / "04_groove_layout.ipynb")
    monkeypatch.setattr(places, "lesson_files", lambda: list(tmp_path.glob("*.ipynb")))
    boards = read_boards(lessons_folder() / "boards.toml")
    boards = [replace(board, name=f"plow {board.name}") for board in boards]
    for words, title, whose in (
        ("british", "Gray vise, center", "Chipbreaker"),
        ("us", "Grey cramp, centre", "Fibre"),
    ):
        made = plan(postcard().having({"title": title}))
        html = handout(made, day=DAY, words=words, name=whose, lessons=None, boards=boards)
        page = Page(html)
        labels = " ".join(row.get("aria-label") or "" for row in page.all("svg"))
        for text in (page.text, labels):
            assert title in text
            assert "plow short cherry" in text
        # The sentence of the box, its title, its head, and each of the full-size sheets.
        assert page.text.count(title) >= 6
        assert whose in page.text
        assert "Meet Gray at the vise & plow, by the center." in page.text
        ours = page.text.replace("plow short", "").replace("vise & plow", "").replace(title, "")
        assert {"us": "plow it: clamp it", "british": "plough it: cramp it"}[words] in ours


def test_tenths_are_worked_out_again(example: str) -> None:
    text = " ".join(Page(example).text.split())
    rows = text[text.index("For each 0.1 mm more") :]
    assert "sides thicker" in rows
    # Worked by hand: a groove 0.1 deeper on both sides widens the panels by 0.2.
    assert re.search(r"groove deeper.*?lid width \+ 0\.2 mm", rows)


def test_lessons_bring_their_own_numbers() -> None:
    made = plan(postcard().having({"size.inside_width": 120.0}))
    page = Page(handout(made, day=DAY, lessons=[4]))
    assert "lid width = 120 inside width" in page.text
    assert "lesson.worked()" not in page.text
    assert page.levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(page.levels))
    assert len(page.all("style")) == 1
    assert OwnBox().load().path is None, "the student's folder is left alone"


def test_a_failed_lesson_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    from toolkit.explore import lesson4

    def broken() -> None:
        raise RuntimeError("the saw slipped")

    monkeypatch.setattr(lesson4, "worked", broken)
    with pytest.raises(LessonError, match=r"lesson 4, cell \d+ \(lesson.worked\(\)\): the saw"):
        handout(plan(postcard()), lessons=[4])
    with pytest.raises(LessonError, match="there is no lesson 9"):
        handout(plan(postcard()), lessons=[9])


def test_boards_that_are_given_are_laid_out() -> None:
    boards = read_boards(lessons_folder() / "boards.toml")
    page = Page(handout(plan(postcard()), day=DAY, boards=boards))
    assert "Saw cuts, short cherry" in page.text


@pytest.fixture(scope="module")
def whole() -> str:
    """The example with all its lessons."""
    return handout(plan(postcard()), day=DAY, lessons=None, name="7")


def test_nothing_is_drawn_or_listed_twice(whole: str) -> None:
    places = re.compile(r"(c\d+-[0-9a-f]{8})-[a-z]+")
    for thing in (r"<svg\b.*?</svg>", r"<tbody>.*?</tbody>"):
        found = [places.sub(r"\1", row) for row in re.findall(thing, whole, re.DOTALL)]
        assert len(found) > 10
        assert len(found) == len(set(found))
    text = " ".join(Page(whole).text.split())
    for pointer in (
        "Glue goes on long grain. The table “Gluing up” is in section 7, The steps.",
        "The table “Which line on which face” is in section 6, Gauge and plough settings.",
        "This drawing is in section 4, The corners.",
    ):
        assert pointer in text, pointer
    headings = re.findall(r"<(?:h\d)[^>]*>(.*?)</h\d>", whole)
    for name in ("Gluing up", "Dividers", "How good is it"):
        assert headings.count(name) <= 2, name


def test_a_heading_is_not_repeated_by_the_table_under_it(whole: str) -> None:
    said = re.findall(r"<h[2-6][^>]*>(.*?)</h[2-6]>", whole, re.DOTALL)
    plain = [re.sub(r"<[^>]+>|^\s*<span.*?</span>", "", words).strip() for words in said]
    assert all(one != other for one, other in pairwise(plain))
    assert '<caption class="heard">How good is it</caption>' in whole


def test_sections_are_numbered_as_in_the_contents(whole: str) -> None:
    listed = re.findall(r'<li><a href="#([^"]+)">', whole[: whole.index("</nav>")])
    headed = re.findall(r'<h2 id="([^"]+)"><span class="nr">(\d+)</span>', whole)
    assert [name for name, _ in headed] == listed
    assert [int(number) for _, number in headed] == list(range(1, len(listed) + 1))


def test_what_is_to_be_typed_into_a_lesson_is_left_out_on_paper(whole: str) -> None:
    text = " ".join(Page(whole).text.split())
    assert "lesson." not in text
    assert "The grooves in the order of your plough." in text
    assert "the tails would go slack." in text


def test_the_style_sheet_is_not_written_as_text(example: str) -> None:
    style = example[example.index("<style>") : example.index("</style>")]
    assert not re.search(r"&(#|\w+;)", style)
    assert '[fill="#fcfaf4"]' in style


def test_formulas_stand_with_their_source_and_the_students_numbers(page: Page) -> None:
    formulas = page.all("math")
    assert len(formulas) >= 12
    words = " ".join(page.text.split())
    for part in ("Moisture that wood comes to in a room", "Wall height", "Angle of a tail"):
        assert part in words


def test_a_formula_on_paper_gives_what_the_workbook_reckons(example: str) -> None:
    """The coefficients as printed, worked out by hand against the toolkit's own answer."""
    t, h = 20.0, 0.5
    worked = {}
    for line in tomllib.loads(file_of("handout", "formulas.toml"))["moisture"]["lines"][1:]:
        name, _, terms = line.partition(" = ")
        sums = terms.replace("T^2", "* T ** 2").replace(" T ", " * T ").replace(" * * ", " * ")
        worked[name] = eval(sums, {"T": t})
    w, k, k1, k2 = (worked[name] for name in ("W", "K", "K_1", "K_2"))
    top = k1 * k * h + 2 * k1 * k2 * k**2 * h**2
    moisture = 1800 / w * (k * h / (1 - k * h) + top / (1 + k1 * k * h + k1 * k2 * k**2 * h**2))
    assert moisture == pytest.approx(equilibrium_moisture(temperature=t, humidity=100 * h))
    text = re.sub(r"\s", " ", Page(example).text)
    assert "M=9.3%" in text
    # Tangential shrinkage of black cherry 7.1 %, from 9.27 to 14.43 %: by hand 1.47 mm of 116.
    assert "=1.47 mm" in text
    assert "=66 mm" in text.replace("= 66", "=66")


def test_a_formula_leaves_out_what_a_box_has_not() -> None:
    for box in (lift_off, ears, inch_postcard):
        text = "".join(block.html() for block in formula_blocks(plan(box())))
        assert "None" not in text
        assert text.count("<math") >= 10
    assert any("the bottom swells" in block.heading for block in formula_blocks(plan(lift_off())))


def test_every_drawing_is_the_edition_for_paper(whole: str) -> None:
    seen = 0
    for drawing in re.findall(r'<svg[^>]*viewBox="0 [\d.]+ 540 .*?</svg>', whole, re.DOTALL):
        seen += 1
        # 11 pt where 540 pt become 180 mm.
        assert min(map(float, re.findall(r'font-size="([\d.]+)"', drawing))) >= 11.65
    assert seen >= 15
