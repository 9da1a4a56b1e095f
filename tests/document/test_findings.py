"""Findings as text and HTML: the level is told by words and a shape."""

import pytest

from tests.document.test_tables import read_html
from toolkit.document import findings_html, findings_text
from toolkit.results import Finding

FOUND = [
    Finding("good", "lap", "corner", "the lap is a third."),
    Finding(
        "wont_work",
        "tails-dont-fit",
        "back <end>",
        "the tails need 64.5 mm and the end has 64 mm.",
        "Use fewer tails, or a wider end.",
        "custom: common practice, no source; edit customs.tail_least",
    ),
    Finding("care", "lap-thin", "side", "the lap is 2 mm; 3 mm are usual."),
]


def test_what_wont_work_comes_first_with_its_remedy_and_source():
    assert findings_text(FOUND, width=60) == (
        "1 won't work, 1 take care, 1 good\n"
        "✗ won't work: back <end>: the tails need 64.5 mm and the end\n"
        "  has 64 mm. [tails-dont-fit]\n"
        "  What to do: Use fewer tails, or a wider end.\n"
        "  Source: custom: common practice, no source; edit\n"
        "    customs.tail_least\n"
        "! take care: side: the lap is 2 mm; 3 mm are usual.\n"
        "  [lap-thin]\n"
        "✓ good: corner: the lap is a third. [lap]"
    )


@pytest.mark.parametrize("width", [24, 33, 80])
def test_no_line_is_too_long_and_no_word_lost(width):
    text = findings_text(FOUND, width=width)
    assert all(len(line) <= width for line in text.split("\n"))
    for finding in FOUND:
        for word in f"{finding.message} {finding.remedy} {finding.source}".split():
            assert word in text


def test_html_says_the_level_in_words_and_hides_the_shape_from_readers():
    html = findings_html(FOUND)
    reader = read_html(html)
    items = [attrs for tag, attrs in reader.elements if tag == "li"]
    assert [item["class"] for item in items] == [
        "finding wont-work", "finding care", "finding good",
    ]  # fmt: skip
    assert [item["data-code"] for item in items] == ["tails-dont-fit", "lap-thin", "lap"]
    strong = [words for tag, words in reader.words if tag == "strong"]
    assert strong == ["won't work", "take care", "good"]
    shapes = [attrs for tag, attrs in reader.elements if attrs.get("class") == "shape"]
    assert all(shape["aria-hidden"] == "true" for shape in shapes)
    assert [words for tag, words in reader.words if words in "✗!✓"] == ["✗", "!", "✓"]
    assert "style=" not in html
    assert "color" not in html
    assert "back &lt;end&gt;" in html


def test_nothing_in_a_finding_becomes_html():
    html = findings_html([Finding("care", '"><i>', "<i>", "<i>", "<i>", "<i>")])
    assert "i" not in {tag for tag, _ in read_html(html).elements}


def test_at_most_four_lines_stand_before_the_fold_the_gravest_first():
    few = [Finding("care", f"care-{i}", f"place {i}", f"care {i}.") for i in range(3)]
    many = [FOUND[0], *few, Finding("care", "care-3", "lid", "care."), FOUND[1]]
    for fold in (False, True):
        before, _, after = findings_html(many, fold=fold).partition("<details>")
        assert before.count("<li") == 4 and before.index("tails-dont-fit") < before.index("care-0")
        assert "Then 1 take care, 1 good" in after and "care-3" in after and "lap" in after
    # What is good stands open where it is all there is to say, and folded where that is asked for.
    assert "<details>" not in findings_html(FOUND[:1])
    assert "1 checked and good" in findings_html(FOUND, fold=True)


def test_no_findings():
    assert findings_text([], width=60) == "There is nothing to say of it."
    assert "<ul>" not in findings_html([])
