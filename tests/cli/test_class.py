"""``workbook class`` as a person types it: exit codes, what is said where, and a terminal."""

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from tests.classroom.classes import HEAD, write
from toolkit.cli import main
from toolkit.cli.classes import BROKEN_OFF

ROOT = Path(__file__).parents[2]
ONE = "\n[[student]]\nnumber = 1\n"
TWO_BAD = """
[[student]]
number = 2
[student.changes.thickness]
side = "13"

[[student]]
number = 5
[student.changes.groove]
depth = "12 mm"
"""


def run(path: Path, *more: str) -> int:
    return main(["class", str(path), "-o", str(path.parent / "out"), "--lessons", "none", *more])


def test_done_and_then_nothing_to_do(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = write(tmp_path, HEAD + ONE)
    assert run(path) == 0
    said = capsys.readouterr()
    assert "11 of 11 pages made" in said.out and "index.html" in said.out
    lines = said.err.splitlines()
    assert lines[0] == "workbook: 1 of 9: Handout, student 1" and "9 of 9" in lines[-1]
    assert run(path) == 0
    said = capsys.readouterr()
    assert said.out.startswith("Nothing has changed: all 11 pages") and said.err == ""
    rubric = tmp_path / "out" / "rubrics" / "student_01.html"
    rubric.write_text("a note", encoding="utf-8")
    assert run(path) == 0
    kept = "rubrics/student_01-set-aside-1.html"
    assert f"and is kept as {kept}\n" in capsys.readouterr().err
    assert (tmp_path / "out" / kept).read_text(encoding="utf-8") == "a note"


def test_bad_boxes_are_told_by_number_and_the_rest_is_made(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = write(tmp_path, HEAD + ONE + TWO_BAD)
    assert run(path) == 1
    said = capsys.readouterr()
    told = [line for line in said.err.splitlines() if line.startswith("workbook: student")]
    assert len(told) == 2
    assert told[0].startswith("workbook: student 2: class.toml, student 2.changes.thickness.side")
    assert told[1].startswith("workbook: student 5: the box won't work: ")
    assert (tmp_path / "out" / "handouts" / "student_01.html").exists()
    assert "11 of 11 pages made" in said.out
    # A second run has nothing to make, and still says whose box won't work.
    assert run(path) == 1
    said = capsys.readouterr()
    assert "Nothing has changed" in said.out and said.err.count("workbook: student") == 2


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (HEAD, "student: the section is missing; type [[student]]"),
        (HEAD + ONE.replace("number", "numbr"), "numbr is no key here; type number"),
        (HEAD + ONE + "[", "class.toml"),
        (HEAD.replace("box.toml", "bx.toml") + ONE, "bx.toml: there is no such file"),
    ],
)
def test_what_cant_be_read_is_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, words: str
) -> None:
    assert run(write(tmp_path, text)) == 2
    said = capsys.readouterr()
    assert said.out == "" and said.err.count("\n") == 1 and words in said.err
    assert not (tmp_path / "out").exists()


def test_wrong_arguments(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = write(tmp_path, HEAD + ONE)
    with pytest.raises(SystemExit) as status:
        main(["class", str(path)])
    assert status.value.code == 2
    with pytest.raises(SystemExit) as status:
        run(path, "--lessons", "one")
    assert status.value.code == 2 and "or none" in capsys.readouterr().err
    assert run(path, "--lessons", "17") == 2
    assert "there is no lesson 17" in capsys.readouterr().err
    (tmp_path / "out").write_text("a file", encoding="utf-8")
    assert run(path) == 2
    said = capsys.readouterr().err
    assert len(said.splitlines()) == 1 and "out: this is no folder; type" in said
    assert (tmp_path / "out").read_text(encoding="utf-8") == "a file"


def test_broken_off(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def stops(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("toolkit.classroom.make_class", stops)
    assert run(write(tmp_path, HEAD + ONE)) == BROKEN_OFF
    assert "goes on from there" in capsys.readouterr().err


def test_a_lesson_in_every_handout(tmp_path: Path) -> None:
    path = write(tmp_path, HEAD + ONE)
    assert main(["class", str(path), "-o", str(tmp_path / "out"), "--lessons", "3"]) == 0
    text = (tmp_path / "out" / "handouts" / "student_01.html").read_text("utf-8")
    assert 'id="lesson-3"' in text and 'id="lesson-2"' not in text


def test_a_bar_on_a_terminal(tmp_path: Path) -> None:
    path = write(tmp_path, HEAD + ONE)
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "toolkit.cli", "class", str(path), "-o", str(tmp_path / "o")]
    with subprocess.Popen(
        [*command, "--lessons", "none"],
        stdout=subprocess.PIPE,
        stderr=theirs,
        cwd=ROOT,
        env={**os.environ, "TERM": "xterm", "COLUMNS": "100"},
    ) as done:
        os.close(theirs)
        seen = b""
        while True:
            try:
                some = os.read(ours, 4096)
            except OSError:  # the terminal is gone with the program
                break
            if not some:
                break
            seen += some
        out = done.stdout.read() if done.stdout else b""
    os.close(ours)
    assert done.returncode == 0 and b"11 of 11 pages made" in out
    text = seen.decode("utf-8", "replace")
    assert "━" in text and "/9" in text and "Handout, student 1" in text
