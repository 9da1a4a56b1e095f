"""``workbook layout`` as a person types it, and its JSON as another program reads it."""

import json
from pathlib import Path

import pytest

from tests.stock.checks import assert_legal
from toolkit.cli import main
from toolkit.files import read_boards
from toolkit.stock import Laid, LaidPart, LaidSection, Strip

ROOT = Path(__file__).parents[2]
BOX = str(ROOT / "lessons" / "box.toml")
BOARDS = str(ROOT / "lessons" / "boards.toml")
NAMES = {"side 1", "side 2", "back", "front", "bottom", "lid"}

STUB = """
[[board]]
name = "stub"
species = "black cherry"
length = "400 mm"
width = "160 mm"
thickness = "16 mm"
"""


@pytest.fixture
def boards(tmp_path: Path):  # type: ignore[no-untyped-def]
    def write(text: str) -> str:
        path = tmp_path / "boards.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def data_of(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict:
    main(["layout", *arguments, "--json"])
    return json.loads(capsys.readouterr().out)


@pytest.mark.parametrize("looks", ["0", "0.5", "1"])
def test_json(looks: str, capsys: pytest.CaptureFixture[str]) -> None:
    data = data_of(capsys, BOX, BOARDS, "--looks", looks)
    assert set(data) == {"boards", "looks", "proof", "missing"}
    assert set(data["proof"]) == {"least", "best", "text"}
    assert data["missing"] == []
    assert 0 <= data["looks"] <= 1
    assert data["proof"]["least"] <= data["proof"]["best"]
    assert "No layout sawn this way" in data["proof"]["text"]
    main(["plan", BOX, "--json"])
    plan = json.loads(capsys.readouterr().out)
    rough = {part["name"]: part["rough"] for part in plan["parts"]}
    found = set()
    for row, board in zip(data["boards"], read_boards(BOARDS), strict=True):
        assert set(row) == {"name", "used", "pieces", "cuts"}
        assert row["name"] == board.name
        assert (row["used"] == 0) == (not row["pieces"]) == (not row["cuts"])
        pieces = []
        for piece in row["pieces"]:
            assert set(piece) == {"part", "x", "y", "length", "width"}
            found.add(piece["part"])
            size = rough[piece["part"].rstrip(" 12")]
            assert (piece["length"], piece["width"]) == (size["length"], size["width"])
            assert board.thickness >= size["thickness"]
            pieces.append(LaidPart(**piece))
        sections = tuple(
            LaidSection(p.x, p.x + p.length, (Strip(p.y, p.y + p.width, (p,)),)) for p in pieces
        )
        assert_legal(Laid(board, 5.0, 0.0, sections))
    assert found == NAMES


def test_on_paper(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["layout", BOX, BOARDS]) == 0
    printed = capsys.readouterr().out
    words = " ".join(printed.split())
    assert printed.startswith("Postcard box, laid out")
    assert "Parts on short cherry" in printed
    assert "1 Crosscut the board 192.5 mm from its left end" in words
    assert "690 mm of board" in words
    assert "1030 mm of board instead of 690 mm, 61 % more wood" in words
    assert "falls short" not in words


def test_wood_that_falls_short_exits_1_and_says_what_to_buy(
    capsys: pytest.CaptureFixture[str], boards
) -> None:  # type: ignore[no-untyped-def]
    path = boards(STUB)
    assert main(["layout", BOX, path]) == 1
    words = " ".join(capsys.readouterr().out.split())
    assert "The wood falls short." in words
    assert "Missing: bottom and lid; no room is left beside the others." in words
    assert "To buy: For lid, bottom: black cherry at least 385 × 125 × 13 mm" in words
    assert main(["layout", BOX, path, "--json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert data["missing"] == ["bottom", "lid"]


def test_a_box_that_wont_work_exits_1(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    box = tmp_path / "box.toml"
    text = Path(BOX).read_text(encoding="utf-8")
    box.write_text(
        text.replace('inside_length = "152 mm"', 'outside_length = "20 mm"'), encoding="utf-8"
    )
    assert main(["layout", str(box), BOARDS]) == 1
    assert "won't work as it is" in capsys.readouterr().out
    assert main(["layout", str(box), BOARDS, "--json"]) == 1
    json.loads(capsys.readouterr().out)


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        ([BOX, BOARDS, "--looks", "2"], "'2'"),
        ([BOX, BOARDS, "--looks", "handsome"], "handsome"),
        ([BOX, BOARDS, "--looks", "nan"], "nan"),
        ([BOX, "nowhere.toml"], "nowhere.toml"),
        (["nowhere.toml", BOARDS], "nowhere.toml"),
        ([BOX, BOX], "box.toml"),
        ([BOX], "BOARDS.toml"),
    ],
)
def test_what_cant_be_read_is_one_line_and_exits_2(
    arguments: list[str], named: str, capsys: pytest.CaptureFixture[str]
) -> None:
    try:
        status = main(["layout", *arguments])
    except SystemExit as stopped:
        status = stopped.code  # type: ignore[assignment]
    told = capsys.readouterr()
    assert status == 2
    assert told.out == ""
    assert len(told.err.splitlines()) == 1, told.err
    assert named in told.err
