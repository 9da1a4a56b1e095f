"""House rules of the code: names at the top, imports, sizes, docstrings, and README's promises."""

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


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_modules_stay_small(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LONGEST


def test_imports_run_one_way() -> None:
    done = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert done.returncode == 0, done.stdout


def test_ruff() -> None:
    for arguments in (["check"], ["format", "--check"]):
        done = subprocess.run(
            [sys.executable, "-m", "ruff", *arguments, "."],
            capture_output=True,
            text=True,
            check=False,
            cwd=ROOT,
        )
        assert done.returncode == 0, done.stdout + done.stderr


def test_types() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "mypy"], capture_output=True, text=True, check=False, cwd=ROOT
    )
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize(
    ("module", "heavy"),
    [
        ("toolkit.box", "matplotlib ipywidgets pydantic scipy pint manifold3d"),
        ("toolkit.plan", "matplotlib ipywidgets pydantic scipy pint manifold3d"),
        ("toolkit.files", "matplotlib ipywidgets scipy manifold3d"),
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


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda row: row[0])
def test_public_functions_describe_what_they_take(function: tuple[str, FunctionType]) -> None:
    where, thing = function
    words = inspect.getdoc(thing)
    assert words, f"{where} has no docstring"
    described = re.findall(r"^(\w+(?:, \w+)*) : ", words, flags=re.MULTILINE)
    documented = {name for row in described for name in row.split(", ")}
    if documented:
        arguments = set(inspect.signature(thing).parameters)
        assert arguments <= documented, f"{where}: {arguments - documented} not described"


def _is_number(annotation: object) -> bool:
    return str(annotation) in ("float", "float | None")


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda row: row[0])
def test_every_public_number_has_a_unit(function: tuple[str, FunctionType]) -> None:
    where, thing = function
    signature = inspect.signature(thing)
    numbers = [p for p in signature.parameters.values() if _is_number(p.annotation)]
    if numbers or _is_number(signature.return_annotation):
        words = inspect.getdoc(thing) or ""
        assert re.search(r"\[[^\]]+\]| in mm", words), f"{where}: a number without a unit"


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda row: row[0])
def test_keyword_only_after_the_first_argument(function: tuple[str, FunctionType]) -> None:
    """Two lengths that can be swapped by place are the oldest mistake there is."""
    where, thing = function
    later = list(inspect.signature(thing).parameters.values())[1:]
    swapped = [p.name for p in later if p.kind is p.POSITIONAL_OR_KEYWORD]
    numbers = [p.name for p in later if p.name in swapped and _is_number(p.annotation)]
    assert not numbers, f"{where}: {numbers} must be keyword-only"


def test_continuous_integration_runs_the_readmes_test_command() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    command = re.search(r"^(python -m pip install .*pytest)$", readme, flags=re.MULTILINE)
    assert command
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8").replace(" --quiet", "")
    assert command[1] in script


def test_readme_names_every_command() -> None:
    from toolkit.cli import _parser

    choices = _parser()._subparsers._group_actions[0].choices  # type: ignore[union-attr]
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for command in choices:
        assert f"workbook {command}" in readme, command


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
