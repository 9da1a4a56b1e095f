"""Blocks of a document: each shown once, captions heard, typed words left as they are."""

import pytest

from toolkit.document import (
    Block,
    Edition,
    FindingsBlock,
    Heading,
    Listing,
    OtherHtml,
    Prose,
    Section,
    Sentence,
    TableBlock,
    shown_once,
    spelling,
)
from toolkit.results import Finding, Table

SIZES = Table("Sizes", ("part", "length"), (("lid", "168 mm"),))
OTHER = Table("Sizes again", SIZES.columns, SIZES.rows)


def html(*sections: Section) -> list[str]:
    return ["\n".join(block.html() for block in one.blocks) for one in shown_once(sections)]


def section(name: str, *blocks: Block, short: str = "") -> Section:
    return Section(name.lower(), name, "", blocks, short)


def test_a_table_stands_once_and_the_rest_points_to_it() -> None:
    first = section("First", TableBlock(SIZES), TableBlock(OTHER))
    later = section("Later", Prose("## Again\n\nRead *them*."), TableBlock(OTHER), Sentence("End."))
    above, pointed = html(first, later)
    assert above.count("<table") == 1
    assert above.endswith('<p class="see">The table “Sizes again” stands above.</p>')
    assert pointed == (
        "<h3>Again</h3>\n<p>Read <em>them</em>. <em>The table “Sizes again” is in section 1, "
        '<a href="#first">First</a>.</em></p>\n<p>End.</p>'
    )


@pytest.mark.parametrize("before", [Prose("- one\n- two"), Prose("## Sizes"), Heading("Sizes")])
def test_a_pointer_that_ends_no_paragraph_has_its_own(before: Block) -> None:
    first = section("Firsts", TableBlock(SIZES), short="A & B")
    assert html(first, section("Later", before, TableBlock(SIZES)))[1].endswith(
        '>\n<p class="see">The table “Sizes” is in section 1, <a href="#firsts">A &amp; B</a>.</p>'
    )


@pytest.mark.parametrize(
    ("blocks", "heard"),
    [
        ((TableBlock(SIZES),), True),
        ((Prose("## sizes\n\nHere:"), TableBlock(SIZES)), True),
        ((Heading("Others"), TableBlock(SIZES)), False),
        ((Prose("Words only."), TableBlock(SIZES)), True),
    ],
)
def test_a_caption_under_the_same_heading_is_heard_alone(
    blocks: tuple[Block, ...], heard: bool
) -> None:
    page = html(section("Sizes", *blocks))[0]
    assert ('<caption class="heard">Sizes</caption>' in page) is heard
    assert ("<caption><h3>Sizes</h3></caption>" in page) is not heard


def test_our_words_are_respelled_in_every_block_and_typed_ones_in_none() -> None:
    spell = spelling("us", typed=["Grey vice, centre", "plough"])
    edition = Edition(spell)
    finding = Finding("care", "thin", "centre", "a rebate in Grey vice, centre.", "Plough it.")
    for block, said in (
        (
            Sentence("Rebates in Grey vice, centre: a cramp."),
            "Rabbets in Grey vice, centre: a clamp.",
        ),
        (Prose("A *rebate*, `plough()`."), "<em>rabbet</em>, <code>plough()</code>."),
        (Prose("A rebate.", typed=True), "A rebate."),
        (Sentence("A rebate.", typed=True), "A rebate."),
        (Heading("Ploughing"), "Plowing"),
        (TableBlock(Table("Vice", ("cramp",), (("colour",),), "grey")), ">gray<"),
        (FindingsBlock((finding,)), "a rabbet in Grey vice, centre."),
        (OtherHtml("<i>rebate</i>"), "<i>rebate</i>"),
    ):
        assert said in block.html(edition), block
    assert spell("plough ploughs Plough ploughed") == "plough plows Plough plowed"
    with pytest.raises(ValueError, match='type "us" or "british"'):
        spelling("welsh")  # type: ignore[arg-type]


def test_a_section_leaves_out_what_is_empty_and_a_listing_escapes_its_words() -> None:
    listing = Listing((("a < b", "vise"),), "<dt>{}</dt><dd>{}</dd>", "<dl>{}</dl>")
    held = Section.of("one", "One", "", "", SIZES, Table("None", ("part",), ()), "End.", listing)
    assert held.blocks == (TableBlock(SIZES), Sentence("End."), listing)
    british = Edition(spelling("british"))
    assert listing.html(british) == "<dl><dt>a &lt; b</dt><dd>vice</dd></dl>"
