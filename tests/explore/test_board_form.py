"""The form for one's own boards: what is typed is kept, or refused in a sentence; never lost."""

import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Any

import ipywidgets as widgets
import pytest

from tests.files.written import typed_board
from toolkit.explore.board_form import ANOTHER, BoardForm
from toolkit.explore.engine import followed
from toolkit.files import read_boards
from toolkit.stock import Defect
from toolkit.study import OwnBoards, OwnBox


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The student's folder, empty."""
    own = tmp_path / "student"
    own.mkdir()
    monkeypatch.setenv("WORKBOOK_FOLDER", str(own))
    return own


class Page:
    """A form with hands: finds its parts by what a reader sees, and counts what it tells others."""

    def __init__(self) -> None:
        self.told: list[list[str]] = []
        self.form = BoardForm(changed=self._tell)

    def _tell(self) -> None:
        # Whoever is told reads the disk, so that is what counts.
        self.told.append([board.name for board in OwnBoards().load().boards])

    def parts(self, within: Any = None) -> Iterator[Any]:
        part = self.form.widget if within is None else within
        yield part
        for child in getattr(part, "children", ()):
            yield from self.parts(child)

    def box(self, name: str) -> Any:
        """A box by its label."""
        found = [
            part
            for part in self.parts()
            if isinstance(part, widgets.Text | widgets.Dropdown) and part.description == name
        ]
        assert len(found) == 1, f"{len(found)} boxes are called {name}"
        return found[0]

    def button(self, name: str) -> Any:
        found = [
            part
            for part in self.parts()
            if isinstance(part, widgets.Button) and name in (part.description, part.tooltip)
        ]
        assert len(found) == 1, f"{len(found)} buttons are called {name}"
        return found[0]

    def press(self, name: str) -> str:
        assert not self.button(name).disabled
        self.button(name).click()
        return self.said

    def type(self, **values: str) -> None:
        for name, value in values.items():
            self.box(name).value = value

    def corners(self, number: int, *places: str) -> None:
        columns = ("from along", "from across", "to along", "to across")
        for column, place in zip(columns, places, strict=True):
            self.box(f"defect {number}, {column}").value = place

    @property
    def said(self) -> str:
        """The sentence below the buttons, without its dress."""
        return unescape(re.sub(r"<[^>]+>", " ", self.form.said.value)).strip()

    @property
    def kinds(self) -> list[str]:
        return [
            part.value
            for part in self.parts()
            if isinstance(part, widgets.Dropdown) and part.description.endswith(", kind")
        ]


@pytest.fixture
def page() -> Page:
    return Page()


KEEP, REMOVE = "Keep this board", "Remove this board"


def own(folder: Path) -> list[Any]:
    return list(read_boards(folder / "my_boards.toml"))


def test_it_begins_with_the_first_board_of_the_workbook_s_rack(page: Page, folder: Path) -> None:
    assert page.box("board").options == ("long cherry", "short cherry", "panel cherry", ANOTHER)
    assert [page.box(name).value for name in ("name", "species", "length", "width")] == [
        "long cherry",
        "black cherry",
        "2200 mm",
        "225 mm",
    ]
    assert page.kinds[:3] == ["end check", "end check", "knot"] and len(page.kinds) == 8
    assert page.box("defect 7, to across").value == "225 mm"
    assert page.box("heart line, point 4, across").value == "201 mm"
    assert page.said.startswith("This is the workbook's rack.")
    assert any("lower left corner" in getattr(part, "value", "") for part in page.parts()
               if isinstance(part, widgets.HTML))  # fmt: skip
    assert not list(folder.iterdir())


def test_nothing_to_keep(page: Page, folder: Path) -> None:
    assert page.press(KEEP) == "Nothing to keep: long cherry is as it was."
    assert page.told == [] and not list(folder.glob("*.toml"))


def test_a_changed_length_is_kept_and_told(page: Page, folder: Path) -> None:
    page.type(length="7 ft 6 in")
    assert page.press(KEEP) == "Kept long cherry. This is your own rack, my_boards.toml."
    assert own(folder)[0].length == 2286.0
    assert page.form.board == own(folder)[0]
    assert page.box("length").value == "2286 mm"
    assert page.told == [["long cherry", "short cherry", "panel cherry"]]
    assert 'length = "7 ft 6 in"' in (folder / "my_boards.toml").read_text(encoding="utf-8")


def test_another_board_with_a_defect_and_a_heart_line(page: Page, folder: Path) -> None:
    page.type(board=ANOTHER)
    assert page.form.board is None and page.button(REMOVE).disabled
    assert page.said == "Say what the board is like, then keep it."
    assert page.kinds == [] and page.box("length").value == ""
    assert page.box("length").placeholder == "such as 2200 mm"
    page.type(name=" oak offcut ", species="white oak")
    page.type(length="35 in", width="165 mm", thickness="7/8 in")
    page.press("Add a defect")
    page.type(**{"defect 1, kind": "worm holes"})
    page.corners(1, "280 mm", "80 mm", "250 mm", "50 mm")
    page.press("Add a point")
    page.press("Add a point")
    page.type(**{"heart line, point 1, along": "0 mm", "heart line, point 1, across": "90 mm"})
    page.type(**{"heart line, point 2, along": "30 in", "heart line, point 2, across": "100 mm"})
    assert page.press(KEEP).startswith("Kept oak offcut.")
    board = own(folder)[-1]
    assert (board.name, board.species) == ("oak offcut", "white oak")
    assert (board.length, board.width) == (889.0, 165.0)
    assert board.defects == (Defect("worm holes", 250.0, 50.0, 280.0, 80.0),)
    assert board.heart_line == ((0.0, 90.0), (762.0, 100.0))
    assert page.box("board").value == "oak offcut"
    assert page.told[-1][-1] == "oak offcut"


@pytest.mark.parametrize(
    ("box", "text", "said"),
    [
        ("length", "2200", 'This board, length: read "2200": it has no unit; type'),
        ("thickness", "", 'This board, thickness: read "": it is empty'),
        ("species", "chery", "or 'red maple'? The rack"),
        ("name", "short cherry", "board 1 has this name already"),
        ("defect 5, to along", "1158 m", "This board, defect 5, to along: read"),
        ("defect 5, to across", "540 mm", "the loose knot reaches 540 mm across"),
        ("heart line, point 2, along", "2150 mm", "heart line: point 3 of the heart line"),
    ],
)
def test_what_cannot_be_is_a_sentence_beside_what_was_last_good(
    page: Page, folder: Path, box: str, text: str, said: str
) -> None:
    page.type(**{box: text})
    told = page.press(KEEP)
    assert told.startswith("Not kept.")
    assert said in told
    assert told.endswith(
        "The rack still has long cherry: black cherry, 2200 × 225 × 25 mm, 8 defects."
    )
    assert not list(folder.glob("*.toml")) and page.told == []
    # What was typed is still there to be put right.
    assert page.box(box).value == text
    page.type(**{box: "long cherry"} if box == "name" else {})
    assert page.form.board is not None and page.form.board.length == 2200.0


def test_a_row_is_taken_out_and_the_others_keep_what_was_typed(page: Page, folder: Path) -> None:
    page.type(**{"defect 4, to along": "840 mm"})
    page.press("takes defect 3 out")
    assert len(page.kinds) == 7
    assert page.box("defect 3, to along").value == "840 mm"
    page.press("takes heart line, point 2 out")
    assert page.box("heart line, point 2, along").value == "1600 mm"
    page.press(KEEP)
    kept = own(folder)[0]
    assert [each.kind for each in kept.defects][:3] == ["end check", "end check", "gum pocket"]
    assert kept.defects[2].to_along == 840.0
    assert [along for along, _ in kept.heart_line] == [0.0, 1600.0, 2200.0]


def test_empty_rows_are_no_defects(page: Page, folder: Path) -> None:
    page.press("Add a defect")
    page.press("Add a point")
    assert page.press(KEEP) == "Nothing to keep: long cherry is as it was."
    assert len(page.kinds) == 8
    page.press("Add a defect")
    page.press("Add a defect")
    page.corners(10, "9 mm", "9 mm", "20 mm", "20 mm")
    page.press(KEEP)
    assert own(folder)[0].defects[-1] == Defect("knot", 9.0, 9.0, 20.0, 20.0)


def test_remove_undo_and_start_again(page: Page, folder: Path) -> None:
    page.type(board="short cherry")
    assert page.press(REMOVE).startswith("Removed short cherry.")
    assert page.box("board").value == "panel cherry"
    assert page.press(REMOVE).startswith("Removed panel cherry.")
    assert page.box("board").value == "long cherry"
    assert page.press(REMOVE).startswith(
        'my_boards.toml: "long cherry" is the only board on the rack; put another on it first.'
    )
    assert page.press("Undo").startswith("Taken back.")
    assert page.box("board").options == ("long cherry", "panel cherry", ANOTHER)
    assert page.press("Start again").startswith("Begun again from the workbook's rack.")
    assert len(own(folder)) == 3
    assert page.press("Undo").startswith("Taken back.")
    assert len(own(folder)) == 2
    page.press("Undo")
    assert page.press("Undo").startswith("my_boards.toml: no earlier state of it is kept")
    assert len(page.told) == 6


def test_what_was_typed_for_the_board_before_is_said_to_be_lost(page: Page) -> None:
    page.type(width="200 mm")
    page.type(board="short cherry")
    assert page.said == "What you typed for long cherry was not kept."
    assert page.box("width").value == "180 mm"
    page.type(board="long cherry")
    assert page.said == ""
    assert page.box("width").value == "225 mm"


def test_lengths_are_shown_on_the_student_s_rule_and_kept_to_the_letter(folder: Path) -> None:
    OwnBox().switch_units("in")
    page = Page()
    assert page.box("length").value == "86 39/64 in"
    assert page.box("defect 3, from along").value == "17 29/32 in"
    page.type(thickness="1 in")
    page.press(KEEP)
    kept, example = own(folder)[0], read_boards(OwnBoards().example)[0]
    assert kept.thickness == 25.4
    assert (kept.length, kept.defects) == (example.length, example.defects)
    assert 'length = "2200 mm"' in (folder / "my_boards.toml").read_text(encoding="utf-8")
    page.type(**{"defect 3, to across": "9 in"})
    assert "reaches 9 in across a board of 8.858 in" in page.press(KEEP)
    assert "2200" not in page.said
    page.type(board=ANOTHER)
    assert page.box("width").placeholder == "such as 8 7/8 in"


def test_it_follows_what_another_lesson_kept(page: Page) -> None:
    page.type(board="short cherry")
    short = OwnBoards().load().boards[1]
    OwnBoards().keep(typed_board(short), instead_of="short cherry")
    OwnBoards().remove("long cherry")
    OwnBox().switch_units("in")
    page.form.follow()
    assert page.box("board").options == ("short cherry", "panel cherry", ANOTHER)
    assert page.box("board").value == "short cherry"
    assert page.box("width").value == "7 3/32 in"
    assert page.told == []


def test_it_follows_the_switch_of_units_and_leaves_what_was_typed(page: Page) -> None:
    followed(OwnBox().switch_units("in").choices)
    assert page.box("length").value == "86 39/64 in"
    page.type(width="230 mm")
    followed(OwnBox().switch_units("mm").choices)
    assert page.box("width").value == "230 mm"
    # A length that was left alone is handed on as it was, whatever rule it is shown on.
    page.press(KEEP)
    assert page.box("length").value == "2200 mm"
    assert page.box("width").value == "230 mm"


def test_a_damaged_rack_is_named_and_the_example_shown(folder: Path) -> None:
    (folder / "my_boards.toml").write_text("[[board]]\nname = ", encoding="utf-8")
    page = Page()
    assert page.said.startswith("my_boards.toml (line 2")
    assert "set aside as my_boards.damaged-" in page.said
    assert page.box("name").value == "long cherry"
    page.type(width="230 mm")
    assert page.press(KEEP).startswith("Kept long cherry.")


def test_what_is_typed_is_never_taken_for_markup(page: Page) -> None:
    page.type(name="<b>x</b>", length="<i>9")
    page.press(KEEP)
    assert "<i>" not in page.form.said.value and "&lt;i&gt;9" in page.form.said.value
    page.type(length="2200 mm")
    page.press(KEEP)
    assert "<b>x" not in page.form.said.value and "Kept &lt;b&gt;x" in page.form.said.value


def test_every_box_has_a_label_of_its_own_for_those_who_listen(page: Page) -> None:
    labels = [
        part.description
        for part in page.parts()
        if isinstance(part, widgets.Text | widgets.Dropdown)
    ]
    assert all(labels)
    assert len(set(labels)) == len(labels) > 50
