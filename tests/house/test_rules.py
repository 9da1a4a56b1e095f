"""House rules of the code: names at the top, sizes, docstrings, and README's promises."""

import ast
import inspect
import re
import subprocess
import sys
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from types import FunctionType

import pytest

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
TOP = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "lessons",
    "toolkit",
    "tests",
    "instructor_notes",
}
MODULES = sorted((ROOT / "toolkit").rglob("*.py"))
LONGEST = 260


def _tracked() -> set[str]:
    listed = subprocess.run(
        ["git", "ls-files"], capture_output=True, text=True, check=True, cwd=ROOT
    ).stdout
    return {line.split("/")[0] for line in listed.splitlines()}


def test_only_the_house_stands_at_the_top_level() -> None:
    assert {name for name in _tracked() if not name.startswith(".")} <= TOP


def test_modules_stay_small() -> None:
    lines = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert [f"{path}: {count}" for path, count in lines.items() if count > LONGEST] == []


@pytest.mark.parametrize(
    ("module", "heavy"),
    [
        ("toolkit.wood", "matplotlib ipywidgets pydantic scipy pint numpy tomlkit"),
        ("toolkit.box", "matplotlib ipywidgets pydantic scipy pint manifold3d"),
        ("toolkit.stock.boards", "pydantic tomlkit filelock"),
        ("toolkit.truing", "scipy"),
        ("toolkit.plan", "matplotlib ipywidgets pydantic scipy pint manifold3d"),
        ("toolkit.files", "matplotlib ipywidgets scipy manifold3d pint rich"),
        ("toolkit.document", "rich"),
        ("toolkit.study", "matplotlib ipywidgets scipy manifold3d"),
        ("toolkit.cli", "matplotlib ipywidgets scipy manifold3d"),
    ],
)
def test_light_rooms_load_nothing_heavy(module: str, heavy: str) -> None:
    code = f"import sys, {module}; print([n for n in {heavy.split()} if n in sys.modules])"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert done.stdout.strip() == "[]"


def test_the_oracle_builds_solids_of_its_own() -> None:
    """A second opinion that asked the first one would always agree."""
    code = "".join(
        path.read_text(encoding="utf-8") for path in (ROOT / "tests/oracle").glob("*.py")
    )
    assert "manifold3d" in code
    assert not re.search(r"toolkit(\.| import )(shape|pictures)", code)


def _public_functions() -> Iterator[tuple[str, FunctionType]]:
    """The functions that a room hands out: those of its own that its face imports."""
    for face in sorted((ROOT / "toolkit").rglob("__init__.py")):
        room = ".".join(face.parent.relative_to(ROOT).parts)
        module = import_module(room)
        for name in dir(module):
            thing = getattr(module, name, None)
            own = isinstance(thing, FunctionType) and thing.__module__.startswith(f"{room}.")
            if own and not name.startswith("_"):
                yield f"{room}.{name}", thing


FUNCTIONS = list(_public_functions())


def test_public_functions_describe_what_they_take() -> None:
    wrong = []
    for where, thing in FUNCTIONS:
        words = inspect.getdoc(thing) or ""
        described = re.findall(r"^(\w+(?:, \w+)*) : ", words, flags=re.MULTILINE)
        documented = {name for row in described for name in row.split(", ")}
        left_out = set(inspect.signature(thing).parameters) - documented
        if not words or (documented and left_out):
            wrong.append(f"{where}: {left_out} not described")
    assert wrong == []


def _is_number(annotation: object) -> bool:
    return str(annotation) in ("float", "float | None")


def test_every_public_number_has_a_unit() -> None:
    wrong = []
    for where, thing in FUNCTIONS:
        signature = inspect.signature(thing)
        numbers = [p for p in signature.parameters.values() if _is_number(p.annotation)]
        if numbers or _is_number(signature.return_annotation):
            words = inspect.getdoc(thing) or ""
            if not re.search(r"\[[^\]]+\]| in mm", words):
                wrong.append(where)
    assert wrong == []


def test_keyword_only_after_the_first_argument() -> None:
    """Two lengths that can be swapped by place are the oldest mistake there is."""
    wrong = []
    for where, thing in FUNCTIONS:
        for p in list(inspect.signature(thing).parameters.values())[1:]:
            if p.kind is p.POSITIONAL_OR_KEYWORD and _is_number(p.annotation):
                wrong.append(f"{where}: {p.name}")
    assert wrong == []


def test_readmes_two_lines_are_what_continuous_integration_runs() -> None:
    blocks = re.findall(r"^```\n(.*?)\n```$", README, flags=re.MULTILINE | re.DOTALL)
    here = [line for line in blocks if line.startswith("python3 ")]
    windows = [line for line in blocks if line.startswith("py ")]
    assert [line.rpartition(" && ")[2] for line in here] == ["workbook open", "python -m pytest"]
    assert windows == [
        line.replace("python3 -m", "py -m").replace(". .venv/bin/", ".venv\\Scripts\\")
        for line in here
    ]
    for line in (here[0], windows[0]):
        _, enter, _, lessons = line.split(" && ")
        assert f"`{enter} && {lessons}`" in README, "the next day's line"
    run = subprocess.run(
        ["bash", ROOT / ".ci" / "run", "lines"], capture_output=True, text=True, check=True
    )
    assert run.stdout.splitlines() == here


def test_readme_names_every_command() -> None:
    from toolkit.cli import _parser

    choices = _parser()._subparsers._group_actions[0].choices  # type: ignore[union-attr]
    for command in choices:
        assert f"workbook {command}" in README, command


def test_every_table_says_where_its_rows_come_from() -> None:
    for path in (ROOT / "toolkit").rglob("*.csv"):
        heading = path.read_text(encoding="utf-8").splitlines()[0]
        assert "source" in heading, path.name
        assert "seen" in heading, path.name


def test_the_readmes_picture_is_the_example_as_it_is_now() -> None:
    from tests.house.readme_picture import PICTURE, drawn

    assert PICTURE.read_text(encoding="utf-8") == drawn(), (
        "the picture is old; run: python -m tests.house.readme_picture"
    )


# What reads text by patterns: what people type, file names, old files. Nothing else may, and this
# list may only become shorter: what the workbook writes itself it keeps as objects.
PATTERNS = frozenset(
    {
        "cli/sheets.py",
        "document/edition.py",
        "files/kinds.py",
        "files/lines.py",
        "files/syntax.py",
        "files/writing.py",
        "libraries.py",
        "measures/angles.py",
        "measures/figures.py",
        "measures/reading.py",
        "measures/refusing.py",
        "measures/text.py",
        "pictures/sheets/marks.py",
        "study/marking.py",
    }
)


def test_text_is_read_by_patterns_in_a_few_modules_only() -> None:
    found = set()
    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom):
                names.append(node.module or "")
            if {"re", "html.parser"} & set(names):
                found.add(path.relative_to(ROOT / "toolkit").as_posix())
    assert found == PATTERNS
