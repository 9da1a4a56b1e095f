"""``workbook sheets`` as a person types it: the files, what is printed, the exit status."""

import os
import subprocess
import sys
from html import unescape
from pathlib import Path

import pytest

from tests.pictures.pdf_reading import read_pdf
from toolkit.cli import main

ROOT = Path(__file__).parents[2]
EXAMPLE = ROOT / "lessons" / "box.toml"


@pytest.fixture
def box(tmp_path: Path):  # type: ignore[no-untyped-def]
    def write(*changed: tuple[str, str]) -> str:
        text = EXAMPLE.read_text(encoding="utf-8")
        for old, new in changed:
            assert text.count(old) == 1, old
            text = text.replace(old, new)
        path = tmp_path / "box.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def _status(arguments: list[str]) -> int:
    try:
        return main(arguments)
    except SystemExit as stopped:
        return int(stopped.code)  # type: ignore[arg-type]


def test_a_pdf_of_the_example(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "sheets.pdf"
    assert main(["sheets", str(EXAMPLE), "-o", str(file)]) == 0
    told = capsys.readouterr()
    assert told.err == ""
    assert told.out.splitlines()[0] == f"Written: {file}, 4 pages"
    assert "measure the bars" in told.out
    pages = read_pdf(file.read_bytes())
    assert len(pages) == 4
    assert (pages[0].width, pages[0].height) == pytest.approx((297.0, 210.0), abs=0.01)


def test_letter(tmp_path: Path) -> None:
    file = tmp_path / "sheets.PDF"
    assert main(["sheets", str(EXAMPLE), "-o", str(file), "--paper", "letter"]) == 0
    page = read_pdf(file.read_bytes())[0]
    assert (page.width, page.height) == pytest.approx((279.4, 215.9), abs=0.01)


def test_a_file_for_each_page(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "sheets-5.svg").write_text("of a longer box")
    (tmp_path / "sheets-old.svg").write_text("nobody's page")
    assert main(["sheets", str(EXAMPLE), "-o", str(tmp_path / "sheets.svg")]) == 0
    told = capsys.readouterr().out
    names = [f"sheets-{number}.svg" for number in (1, 2, 3, 4)]
    for number, name in enumerate(names, 1):
        text = (tmp_path / name).read_text(encoding="utf-8")
        assert 'width="297mm" height="210mm"' in text
        assert f"page {number} of 4" in text
    assert f"Written: {tmp_path / names[0]} to {names[-1]}, 4 pages" in told
    # Pages of another plan must not be printed with these unawares.
    assert "not touched: sheets-5.svg" in told
    assert (tmp_path / "sheets-5.svg").read_text() == "of a longer box"
    assert "sheets-old.svg" not in told


def test_a_box_that_wont_work_is_said_and_told_on_the_sheets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], box
) -> None:  # type: ignore[no-untyped-def]
    file = tmp_path / "sheets.svg"
    path = box(('depth = "4 mm"', 'depth = "12 mm"'))
    assert main(["sheets", path, "-o", str(file)]) == 1
    told = capsys.readouterr().err
    assert len(told.splitlines()) == 1
    assert "won't work as it is" in told
    assert "Don't cut from these sheets" in told
    page = unescape((tmp_path / "sheets-1.svg").read_text(encoding="utf-8"))
    assert "don't cut from this sheet" in page


def test_a_box_that_cannot_be_has_no_sheets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], box
) -> None:  # type: ignore[no-untyped-def]
    file = tmp_path / "sheets.pdf"
    path = box(("tails_back = 3", "tails_back = 24"))
    assert main(["sheets", path, "-o", str(file)]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert len(told.err.splitlines()) == 1
    assert told.err.startswith("workbook: No sheets are written: Postcard box won't work as it is")
    assert "24 tails" in told.err
    assert not file.exists()


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        ([], "BOX.toml"),
        ([str(EXAMPLE)], "--output"),
        ([str(EXAMPLE), "-o", "sheets.png"], "ends in .pdf"),
        ([str(EXAMPLE), "-o", "sheets"], "ends in .pdf"),
        ([str(EXAMPLE), "-o", ""], "ends in .pdf"),
        ([str(EXAMPLE), "-o", "x.pdf", "--paper", "a3"], "letter"),
        (["nowhere.toml", "-o", "x.pdf"], "nowhere.toml"),
    ],
)
def test_wrong_arguments_are_one_line_and_exit_2(
    arguments: list[str],
    named: str,
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    assert _status(["sheets", *arguments]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert len(told.err.splitlines()) == 1, told.err
    assert named in told.err
    assert not list(tmp_path.iterdir())


def test_an_output_that_is_an_input_or_no_file_is_refused_at_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, box
) -> None:  # type: ignore[no-untyped-def]
    monkeypatch.setattr(
        "toolkit.cli.sheets.read_plan", lambda choices: pytest.fail("work was done")
    )
    read = box()
    (tmp_path / "taken.pdf").mkdir()
    (tmp_path / "linked-2.svg").symlink_to(read)
    os.link(read, tmp_path / "twin-11.svg")
    (tmp_path / "gone-1.svg").symlink_to(tmp_path / "nothing")
    before = sorted(tmp_path.iterdir())
    text = Path(read).read_bytes()
    for place, words in (
        ("box.toml", "is read here"),
        ("linked.svg", "linked-2.svg: this file is read here"),
        ("twin.svg", "twin-11.svg: this file is read here"),
        ("gone.svg", "gone-1.svg: this is a link to no file"),
        ("taken.pdf", "this is a folder"),
        ("nowhere/sheets.pdf", "there is no folder"),
        ("nowhere/sheets.svg", "there is no folder"),
    ):
        assert main(["sheets", read, "-o", str(tmp_path / place)]) == 2, place
        told = capsys.readouterr()
        assert told.out == ""
        assert len(told.err.splitlines()) == 1 and words in told.err, told.err
    assert sorted(tmp_path.iterdir()) == before and Path(read).read_bytes() == text


def test_nothing_is_said_on_the_side_by_the_installed_command(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "toolkit.cli", "sheets", EXAMPLE, "-o", tmp_path / "sheets.pdf"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert done.returncode == 0
    assert done.stderr == ""
