"""The commands as a person types them: what is printed, and the exit status."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from toolkit.cli import main

ROOT = Path(__file__).parents[2]
EXAMPLE = str(ROOT / "lessons" / "box.toml")

MINIMAL = """
format = 1
[size]
inside_length = "152 mm"
inside_width = "110 mm"
inside_height = "38 mm"
[thickness]
side = "12 mm"
end = "12 mm"
bottom = "8 mm"
lid = "9 mm"
"""


@pytest.fixture
def box(tmp_path: Path):  # type: ignore[no-untyped-def]
    def write(text: str, name: str = "box.toml") -> str:
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def test_check_says_what_a_maker_would(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", EXAMPLE]) == 0
    printed = capsys.readouterr().out
    assert printed.startswith("Postcard box: outside 176 × 134 × 66 mm")
    assert "every groove lies inside a tail" in " ".join(printed.split())


def test_plan_prints_the_cut_list_in_the_students_units(
    capsys: pytest.CaptureFixture[str], box
) -> None:  # type: ignore[no-untyped-def]
    assert main(["plan", EXAMPLE]) == 0
    printed = capsys.readouterr().out
    assert "168 mm" in printed
    assert "152 inside length + 4 back groove + 12 front thickness" in printed
    assert main(["plan", box(MINIMAL + '[rule]\nunits = "in"\n')]) == 0
    assert "6 39/64 in" in capsys.readouterr().out  # 167.97 mm, a panel rounded down


def test_plan_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", EXAMPLE, "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    lid = next(part for part in data["parts"] if part["name"] == "lid")
    assert lid["finished"] == {"length": 168.0, "width": 116.0, "thickness": 9.0}


def test_a_box_that_wont_work_exits_1_with_findings(
    capsys: pytest.CaptureFixture[str], box
) -> None:  # type: ignore[no-untyped-def]
    path = box(MINIMAL.replace('inside_length = "152 mm"', 'outside_length = "20 mm"'))
    for command in (["check", path], ["plan", path], ["plan", path, "--json"]):
        assert main(command) == 1
    assert "inside-negative" in capsys.readouterr().out


def test_compare_tells_what_moved_and_why(capsys: pytest.CaptureFixture[str], box) -> None:  # type: ignore[no-untyped-def]
    one = box(MINIMAL)
    two = box(MINIMAL.replace('side = "12 mm"', 'side = "13 mm"'), "thicker.toml")
    assert main(["compare", one, two]) == 0
    printed = capsys.readouterr().out
    line = next(line for line in printed.splitlines() if line.startswith("outside width"))
    assert "+2 mm" in line
    assert "side thickness + 2 mm" in line
    assert main(["compare", one, one]) == 0
    assert "the same in every size" in capsys.readouterr().out


# One of each kind; files/ refuses them row by row.
BAD = {
    "no unit": (MINIMAL.replace('"12 mm"', '"12"', 1), "thickness.side"),
    "unknown key": (MINIMAL + '[groove]\ndeph = "4 mm"\n', "depth"),
    "unknown wood": (MINIMAL + '[wood]\nwalls = "blak cherry"\n', "black cherry"),
    "not TOML": ("format = = 1", "line 1"),
}


@pytest.mark.parametrize("name", BAD)
def test_a_file_that_cant_be_read_is_one_line_and_exits_2(
    name: str, capsys: pytest.CaptureFixture[str], box
) -> None:  # type: ignore[no-untyped-def]
    text, named = BAD[name]
    path = box(text)
    before = sorted(Path(path).parent.iterdir())
    for command in (["check", path], ["plan", path], ["handout", path, "-o", path + ".html"]):
        assert main(command) == 2
        told = capsys.readouterr()
        assert told.out == ""
        assert len(told.err.splitlines()) == 1, told.err
        assert "box.toml" in told.err
        assert named in told.err
    assert sorted(Path(path).parent.iterdir()) == before, "something was written"


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        (["check", "nowhere.toml"], "nowhere.toml"),
        (["check", "."], "."),
        (["chekc", "box.toml"], "chekc"),
        (["plan"], "BOX.toml"),
        (["open", "9"], "9"),
        (["show", "9"], "9"),
        ([], "COMMAND"),
    ],
)
def test_wrong_arguments_are_one_line_and_exit_2(
    arguments: list[str], named: str, capsys: pytest.CaptureFixture[str]
) -> None:
    try:
        status = main(arguments)
    except SystemExit as stopped:
        status = stopped.code  # type: ignore[assignment]
    told = capsys.readouterr()
    assert status == 2
    assert len(told.err.splitlines()) == 1, told.err
    assert named in told.err


def test_a_reader_that_has_seen_enough_is_no_error() -> None:
    done = subprocess.run(
        f"{sys.executable} -m toolkit.cli plan {EXAMPLE} | head -n 1",
        shell=True,
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert "Traceback" not in done.stderr
    assert done.stdout.startswith("Postcard box")


def test_a_handout_never_replaces_what_it_is_made_from(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("toolkit.cli.read_plan", lambda choices: pytest.fail("work was done"))
    read, boards = tmp_path / "box.toml", tmp_path / "boards.html"
    read.write_text(MINIMAL, encoding="utf-8")
    boards.write_text("", encoding="utf-8")
    for place, words in (
        (read, "box.toml: this file is read here"),
        (boards, "boards.html: this file is read here"),
        (tmp_path / "box.pdf", "ends in .html"),
        (tmp_path / "nowhere" / "box.html", "there is no folder"),
    ):
        assert main(["handout", str(read), "--boards", str(boards), "-o", str(place)]) == 2
        told = capsys.readouterr()
        assert told.out == ""
        assert len(told.err.splitlines()) == 1 and words in told.err, told.err
    assert sorted(tmp_path.iterdir()) == [boards, read]
    assert read.read_text(encoding="utf-8") == MINIMAL and boards.read_bytes() == b""
