"""The box itself must not wait for what only files need."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def loaded_by(module):
    code = f"import sys, {module}; print('\\n'.join(sys.modules))"
    run = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return {name.split(".")[0] for name in run.stdout.split("\n")}


def test_boards_load_no_files():
    assert loaded_by("toolkit.stock.boards").isdisjoint({"pydantic", "tomlkit", "filelock"})


def test_files_load_no_drawing_and_no_notebook():
    loaded = loaded_by("toolkit.files")
    assert {"pydantic", "tomlkit", "filelock"} <= loaded
    assert loaded.isdisjoint({"matplotlib", "ipywidgets", "scipy", "pint", "rich"})


def test_pages_load_rich_only_when_they_lay_out_a_table():
    assert "rich" not in loaded_by("toolkit.document")
