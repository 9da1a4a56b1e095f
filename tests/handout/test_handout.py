"""The handout: one file that needs nothing else, in order, readable by everyone."""

import re
from datetime import date
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.handout import handout, write_handout
from toolkit.plan import plan

DAY = date(2026, 11, 25)
BOXES = {"mm": postcard, "in": inch_postcard, "ears": ears, "lift-off": lift_off}


class Page(HTMLParser):
    """What a reader meets: tags in order, and the text."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.text += data

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.tags if name == tag]


@pytest.fixture(scope="module", params=BOXES)
def page(request: pytest.FixtureRequest) -> Page:
    return Page(handout(plan(BOXES[request.param]()), day=DAY))


def test_nothing_is_asked_from_outside(page: Page) -> None:
    for tag, attributes in page.tags:
        assert tag not in ("script", "link", "iframe", "object", "embed")
        for name in ("src", "href", "xlink:href"):
            value = attributes.get(name) or ""
            assert value.startswith(("#", "data:")) or not value, (tag, value)


def test_safety_comes_first_and_local_rules_before_it(page: Page) -> None:
    words = " ".join(page.text.split())
    assert words.index("Before you touch a tool") < words.index("Cut list")
    assert "Local rules and the shop's licensed or insured practice come first." in words
    assert "Oily rags" in words


def test_headings_skip_no_level_and_there_is_one_first(page: Page) -> None:
    levels = [int(tag[1]) for tag, _ in page.tags if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_every_picture_says_its_finding(page: Page) -> None:
    pictures = page.all("svg")
    assert len(pictures) == len(page.all("figcaption")) == 5
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


def test_date_and_fingerprint_stand_on_every_page() -> None:
    made = plan(postcard())
    html = handout(made, day=DAY)
    margin = html[html.index("@bottom-left") :].split("}")[0]
    assert made.fingerprint in margin
    assert "2026-11-25" in margin


def test_the_students_own_numbers_are_in_it(page: Page) -> None:
    assert "168 mm" in page.text or "in" in page.text
    html = handout(plan(postcard().having(made__side_thickness=11.4)), day=DAY)
    assert "124.8 mm" in html


@pytest.mark.parametrize(
    "title",
    [
        "<script>alert(1)</script>",
        'a "quoted" box',
        "</style><b>x",
        "шкатулка 🧰",
        "תיבה",
        "a\\b;}",
    ],
)
def test_any_title_is_shown_as_text(title: str) -> None:
    page = Page(handout(plan(postcard().having(title=title)), day=DAY))
    assert title in page.text
    assert "script" not in {tag for tag, _ in page.tags}
    assert len(page.all("style")) == 1


def test_a_box_that_cannot_exist_still_gets_its_findings() -> None:
    made = plan(postcard().having(corner__tails_back=24))
    page = Page(handout(made, day=DAY))
    assert "find no room" in page.text
    assert "Look at these before anyone saws" in page.text
    assert not page.all("svg")


def test_changed_customs_are_told() -> None:
    html = handout(plan(postcard().having(customs__lap_least=2.5)), day=DAY)
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
    monkeypatch.setattr("toolkit.handout.page.box_apart", lambda plan: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        write_handout(plan(postcard()), target)
    assert target.read_text(encoding="utf-8") == "the old one"
    assert [path.name for path in tmp_path.iterdir()] == ["box.html"]


def test_it_is_light(page: Page) -> None:
    assert len(handout(plan(postcard()), day=DAY).encode()) < 1_000_000
