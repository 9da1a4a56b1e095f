"""A teacher's cells reach the paper, and change nothing of a student's own."""

from pathlib import Path

import nbformat
import pytest

from tests.boxes import postcard
from toolkit.handout import page as on_page
from toolkit.plan import plan
from toolkit.study import OwnBox, folder as places


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A student's empty folder, beside one lesson that a test fills."""
    monkeypatch.setenv("WORKBOOK_FOLDER", str(tmp_path / "own"))
    monkeypatch.setattr(places, "lesson_files", lambda: [tmp_path / "01_mine.ipynb"])
    return tmp_path


def kept(folder: Path) -> dict[Path, bytes]:
    """Everything that lies in the student's folder."""
    return {path: path.read_bytes() for path in (folder / "own").rglob("*") if path.is_file()}


def printed(folder: Path, *cells: str) -> str:
    """The blocks of a lesson with these cells, as HTML."""
    book = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(cell) for cell in cells])
    nbformat.write(book, folder / "01_mine.ipynb")
    box = plan(postcard().having({"size.inside_width": 120.0}))
    (lesson,), _ = on_page.on_paper(box, numbers=None, told=lambda _: None)
    return "\n".join(block.html() for block in lesson.blocks)


def test_what_a_cell_keeps_is_not_kept(folder: Path) -> None:
    OwnBox().keep({"groove.depth": "3 mm"})
    mine = kept(folder)
    said = printed(
        folder,
        "from toolkit.study import OwnBox, choose_box, guess",
        "OwnBox().keep({'groove.depth': '5 mm'}).choices.groove.depth",
        "OwnBox().load().choices.groove.depth + OwnBox().load().choices.size.inside_width",
        "OwnBox().switch_units('in').choices.rule.units",
        "OwnBox().undo() and OwnBox().undo().choices.groove.depth",
        "choose_box('gift') and guess('lesson1.damp-lid', '4 mm', what='guess').sentence",
    )
    # Inside it follows from the plan; outside nothing has moved.
    assert said.startswith("<p>5.0</p>\n<p>125.0</p>\n<p>in</p>\n<p>4.0</p>")
    assert kept(folder) == mine
    assert OwnBox().load().choices.groove.depth == 3.0


@pytest.mark.parametrize("last", ["figure", "axes", "axes.plot([1, 2])"])
def test_a_figure_of_the_drawing_library_is_a_picture(folder: Path, last: str) -> None:
    said = printed(
        folder,
        "from matplotlib.figure import Figure",
        f"figure = Figure()\naxes = figure.subplots()\naxes.set_title('Rings & cup')\n{last}",
    )
    assert said.startswith('<figure><img src="data:image/png;base64,iVBOR')
    assert 'alt="Rings &amp; cup"' in said
    assert "Axes" not in said and "Figure(" not in said
