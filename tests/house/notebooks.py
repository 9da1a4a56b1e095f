"""Tidies the notebooks: ``python -m tests.house.notebooks`` rewrites them, ``--check`` only looks.

A tidy notebook holds outputs only where a test reads them, and no widget state, execution times or
editor's metadata. The outputs of checked cells are made afresh, in a student's folder of its own,
so that nobody's own box can come into the project. What JupyterLab knows the lessons' code by is
made anew as well.
"""

import argparse
import json
import os
import sys
import tempfile
from hashlib import sha256
from pathlib import Path

import nbformat
from nbconvert.preprocessors import ExecutePreprocessor

from toolkit.handout.page import OURS, SCREEN, prose_mark

ROOT = Path(__file__).parents[2]
DELIVERED = ROOT / "toolkit/room/share/lab/workbook-lessons/delivered.json"
CHECKED = "nbval-check-output"
CELL_METADATA = ("tags", "jupyter")


def notebooks() -> list[Path]:
    """Every notebook of the project."""
    return sorted(
        path
        for folder in ("lessons", "instructor_notes")
        for path in (ROOT / folder).glob("**/*.ipynb")
        if ".ipynb_checkpoints" not in path.parts
    )


def _plain(output: dict) -> dict:
    """An output without what changes from run to run."""
    kept = {key: value for key, value in output.items() if key != "transient"}
    kept["metadata"] = {}
    if "execution_count" in kept:
        kept["execution_count"] = 1
    return kept


def tidied(path: Path, *, afresh: bool = True) -> str:
    """What a tidy notebook looks like, the outputs of its checked cells made afresh or kept."""
    book = nbformat.read(path, as_version=4)
    with tempfile.TemporaryDirectory() as folder:
        before = os.environ.get("WORKBOOK_FOLDER")
        os.environ["WORKBOOK_FOLDER"] = folder
        try:
            runner = ExecutePreprocessor(timeout=120, kernel_name="python3")
            if afresh:
                runner.preprocess(book, {"metadata": {"path": str(path.parent)}})
        finally:
            if before is None:
                del os.environ["WORKBOOK_FOLDER"]
            else:
                os.environ["WORKBOOK_FOLDER"] = before
    marks = []
    for cell in book.cells:
        printed = path.parent.name == "lessons" and SCREEN not in cell.metadata.get("tags", [])
        if cell.cell_type == "markdown" and printed:
            # Prose without it is a teacher's, and no rule of spelling is applied to it.
            marks.append(prose_mark(cell.source))
        cell.metadata = nbformat.from_dict(
            {key: cell.metadata[key] for key in CELL_METADATA if key in cell.metadata}
        )
        if cell.cell_type != "code":
            continue
        if CHECKED in cell.metadata.get("tags", []):
            cell.execution_count = 1
            cell.outputs = [nbformat.from_dict(_plain(output)) for output in cell.outputs]
        else:
            cell.execution_count, cell.outputs = None, []
    book.metadata = nbformat.from_dict(
        {
            "kernelspec": {"display_name": "Python 3 (ipykernel)", "name": "python3"},
            "language_info": {"name": "python"},
            **({OURS: " ".join(marks)} if marks else {}),
        }
    )
    return nbformat.writes(book, indent=1) + "\n"


def delivered() -> str:
    """The digests by which JupyterLab knows that a lesson's code is as we wrote it."""
    marks = {}
    for path in notebooks():
        if path.parent.name == "lessons":
            cells = nbformat.read(path, as_version=4).cells
            sources = [cell.source for cell in cells if cell.cell_type == "code"]
            text = json.dumps(sources, ensure_ascii=False, separators=(",", ":"))
            marks[path.name] = sha256(text.encode()).hexdigest()
    return json.dumps(marks, indent=1) + "\n"


def main() -> int:
    """Tidy every notebook, or with ``--check`` say which are not tidy."""
    parser = argparse.ArgumentParser(description="Tidy the notebooks.")
    parser.add_argument("--check", action="store_true", help="change nothing, fail on untidy ones")
    check = parser.parse_args().check
    untidy = 0
    for path in notebooks():
        text = tidied(path)
        if path.read_text(encoding="utf-8") == text:
            continue
        untidy += 1
        print(f"{'untidy' if check else 'tidied'}: {path.relative_to(ROOT)}")
        if not check:
            path.write_text(text, encoding="utf-8")
    if not check:
        DELIVERED.write_text(delivered(), encoding="utf-8")
    return 1 if check and untidy else 0


if __name__ == "__main__":
    sys.exit(main())
