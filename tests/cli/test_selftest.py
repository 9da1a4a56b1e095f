"""``workbook selftest``: all libraries are looked at, and a broken one is told, not met."""

import os
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from toolkit.cli import main

ROOT = Path(__file__).parents[2]
EXAMPLE = str(ROOT / "lessons" / "box.toml")
WORKBOOK = str(Path(sys.executable).with_name("workbook"))
# What is installed, as the test would have it: short, and with a library that nobody has.
METADATA = """Metadata-Version: 2.1
Name: hand-tool-workbook
Version: 0
Provides-Extra: test
Requires-Dist: pydantic<3,>=2
Requires-Dist: tomlkit>=0.13
Requires-Dist: numpy (>=1)
Requires-Dist: manifold3d
Requires-Dist: nobody-has-this>=1
Requires-Dist: nor-this>=1; extra == "test"
"""


def _workbook(first: Path, *arguments: str) -> "subprocess.CompletedProcess[str]":
    """The installed command, where a folder's modules come before the installed ones."""
    (first / "hand_tool_workbook-0.dist-info").mkdir()
    (first / "hand_tool_workbook-0.dist-info" / "METADATA").write_text(METADATA, "utf-8")
    return subprocess.run(
        [WORKBOOK, *arguments],
        capture_output=True,
        text=True,
        check=False,
        env=os.environ | {"PYTHONPATH": str(first)},
    )


def test_every_library_that_is_asked_for_is_looked_at(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["selftest"]) == 0
    said = capsys.readouterr().out
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    asked = [re.split(r"[<>=]", text)[0] for text in project["dependencies"]]
    assert re.findall(r"^✓ (\S+): \d", said, flags=re.MULTILINE) == asked
    assert "Everything is in place." in said


@pytest.mark.parametrize(
    ("library", "raises", "told"),
    [
        ("pydantic", "TypeError('built for\\nanother')", "TypeError: built for another"),
        ("tomlkit", "SystemExit(3)", "SystemExit: 3"),
        ("manifold3d", "OSError('no such symbol')", "OSError: no such symbol"),
        ("numpy", "ModuleNotFoundError('no half of it')", "ModuleNotFoundError: no half of it"),
    ],
)
def test_a_broken_library_is_told(library: str, raises: str, told: str, tmp_path: Path) -> None:
    """The first two are loaded as the commands start, the last as the example is reckoned."""
    (tmp_path / f"{library}.py").write_text(f"raise {raises}\n", encoding="utf-8")
    done = _workbook(tmp_path, "selftest")
    assert done.returncode == 1
    assert f"✗ {library}: can't be loaded ({told}); type: python -m pip install" in done.stdout
    assert "✗ nobody-has-this: is not installed" in done.stdout
    assert done.stdout.count("✓ ") >= 2
    assert "nor-this" not in done.stdout
    assert "Something is missing or broken" in done.stdout
    assert done.stderr == ""


def test_a_command_that_cannot_start_says_what_to_type(tmp_path: Path) -> None:
    (tmp_path / "filelock.py").write_text("raise RuntimeError('torn')\n", encoding="utf-8")
    done = _workbook(tmp_path, "plan", EXAMPLE)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == (
        "workbook: can't be started (RuntimeError: torn); "
        "'workbook selftest' shows what is broken\n"
    )
