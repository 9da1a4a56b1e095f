"""A table as text and as HTML: nothing cut, nothing unescaped."""

import re
from html.parser import HTMLParser

from hypothesis import given, strategies as st

from tests.files.calm import calm
from toolkit.document import as_html, as_text
from toolkit.results import Table

SIZES = Table(
    "Finished sizes",
    ("part", "length", "how"),
    (
        ("side [b]", "176 mm", "outside length = 152 inside length + 2 × 12 end = 176 mm"),
        ("front <x>", "16½ mm", "short"),
        ("lid", "8 mm", ""),
    ),
    note="Planed clean.",
    numeric=(1,),
)


def test_wide_enough_a_row_is_a_line():
    assert as_text(SIZES, width=100) == (
        "Finished sizes\n"
        "part       length  how\n"
        "───────────────────────────────────────────────────────────────────────────\n"
        "side [b]   176 mm  outside length = 152 inside length + 2 × 12 end = 176 mm\n"
        "front <x>  16½ mm  short\n"
        "lid          8 mm\n"
        "Planed clean."
    )


def test_long_cells_go_on_below_and_names_stay_whole():
    assert as_text(SIZES, width=44) == (
        "Finished sizes\n"
        "part       length  how\n"
        "────────────────────────────────────────────\n"
        "side [b]   176 mm  outside length = 152\n"
        "                   inside length + 2 × 12\n"
        "                   end = 176 mm\n"
        "front <x>  16½ mm  short\n"
        "lid          8 mm\n"
        "Planed clean."
    )


def test_a_number_is_not_parted_from_its_unit():
    long = "a sentence that is far too long for the rest of this page"
    table = Table("", ("length", "how"), (("1 23/32 in", long),), numeric=(0,))
    assert as_text(table, width=20).split("\n")[2] == "1 23/32 in  a"


def test_the_terminal_gives_the_width(monkeypatch):
    monkeypatch.setenv("COLUMNS", "44")
    assert as_text(SIZES) == as_text(SIZES, width=44)


words = st.text("abcdefghij[]<>&*_:½−", min_size=1, max_size=5)
cells = st.lists(words, max_size=8).map(" ".join)


@st.composite
def tables(draw):
    count = draw(st.integers(1, 5))
    row = st.tuples(*[cells] * count)
    numeric = draw(st.sets(st.integers(0, count - 1)))
    rows = tuple(draw(st.lists(row, max_size=5)))
    return Table(draw(cells), draw(row), rows, draw(cells), tuple(numeric))


@calm(60)
@given(tables(), st.integers(20, 120))
def test_no_word_is_lost_and_no_line_too_long(table, width):
    text = as_text(table, width=width)
    heads = table.columns if table.rows else ()
    for cell in [table.title, table.note, *heads, *(cell for row in table.rows for cell in row)]:
        # In plain letters the widest word here has 15, and the narrowest page room for 16 of them.
        assert all(word in text for word in cell.split())
    assert all(len(line) <= width and line == line.rstrip() for line in text.split("\n"))


class Reader(HTMLParser):
    """Collects elements, and complains of what is not closed."""

    def __init__(self):
        super().__init__()
        self.open, self.elements, self.words = [], [], []

    def handle_starttag(self, tag, attrs):
        self.open.append(tag)
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.words.append((self.open[-1] if self.open else "", data))


def read_html(text):
    reader = Reader()
    reader.feed(text)
    reader.close()
    assert reader.open == []
    return reader


@calm(50)
@given(tables())
def test_html_says_what_the_table_says(table):
    html = as_html(table, heard=True)
    reader = read_html(html)
    cells = [words for tag, words in reader.words if tag in ("th", "td", "caption")]
    wanted = [table.title, *table.columns, *(c for row in table.rows for c in row), table.note]
    assert cells == [cell for cell in wanted if cell]
    tags = {tag for tag, _ in reader.elements}
    assert tags <= {"table", "caption", "thead", "tbody", "tfoot", "tr", "th", "td"}
    assert not re.search(r"\bstyle=", " ".join(str(attrs) for _, attrs in reader.elements))
    scopes = [attrs["scope"] for tag, attrs in reader.elements if tag == "th"]
    assert scopes == ["col"] * len(table.columns) + ["row"] * len(table.rows)


def test_nothing_in_a_cell_becomes_html():
    table = Table("<script>", ('"><img src=x>', "b"), (("&amp;", "</td><td>"),), "<b>", (1,))
    reader = read_html(as_html(table))
    assert {tag for tag, _ in reader.elements}.isdisjoint({"script", "img", "b"})
    assert ("th", "&amp;") in reader.words


def test_a_table_is_text_in_a_notebook_too(monkeypatch, capsys):
    monkeypatch.setattr("rich.console._is_jupyter", lambda: True)
    shown = as_text(Table("Sizes", ("part", "length"), (("side", "176 mm"),)))
    assert "side" in shown and "176 mm" in shown
    assert capsys.readouterr().out == ""
