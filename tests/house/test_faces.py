"""Nothing for tests alone, and one way into a room: through its face."""

import ast
import json
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import TypeGuard

from toolkit.study.questions import _MODULES, _templates

ROOT = Path(__file__).parents[2]

# They make pages that are committed, and so are no tests.
MAKERS = ("tests/house/instructor_notes.py", "tests/house/readme_picture.py")


@cache
def modules() -> dict[str, ast.Module]:
    """Every module of the toolkit by its dotted name, a face by its room's."""
    found = {}
    for path in sorted((ROOT / "toolkit").rglob("*.py")):
        name = ".".join(path.relative_to(ROOT).with_suffix("").parts)
        tree = ast.parse(path.read_text(encoding="utf-8"))
        found[name.removesuffix(".__init__")] = tree
    return found


@cache
def words_of_notebooks() -> frozenset[str]:
    """What the code cells of lessons and notes name."""
    found: set[str] = set()
    for folder in ("lessons", "instructor_notes"):
        for path in (ROOT / folder).rglob("*.ipynb"):
            cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
            code = "\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "code")
            lines = (line for line in code.splitlines() if not line.startswith(("%", "!")))
            for node in ast.walk(ast.parse("\n".join(lines))):
                if isinstance(node, (ast.Attribute, ast.Name)):
                    found.add(node.attr if isinstance(node, ast.Attribute) else node.id)
    return frozenset(found)


def room_of(module: str) -> str:
    return module.split(".")[1] if "." in module else ""


@cache
def nodes(tree: ast.AST) -> tuple[ast.AST, ...]:
    """Everything in a piece of code: to walk it takes longer than to look at what is there."""
    return tuple(ast.walk(tree))


def imports(tree: ast.Module) -> Iterator[tuple[str, str, str]]:
    """Module, name and the name that it goes by, of all that is imported from the toolkit."""
    for node in nodes(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("toolkit"):
            for alias in node.names:
                yield node.module or "", alias.name, alias.asname or alias.name


def is_read(node: ast.AST) -> TypeGuard[ast.Name]:
    """Whether a name is looked up here, and not only given to a field or a variable."""
    return isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load)


def names_read(tree: ast.AST) -> Counter[str]:
    """How often each name is looked up there."""
    return Counter(node.id for node in nodes(tree) if is_read(node))


def used_names(tree: ast.Module) -> dict[str, set[str]]:
    """Each imported name that the module goes on to use, with the modules it may come from."""
    named = {node.id for node in nodes(tree) if is_read(node)}
    found: dict[str, set[str]] = {}
    attributes = {node.attr for node in nodes(tree) if isinstance(node, ast.Attribute)}
    for module, name, called in imports(tree):
        if called in named:
            found.setdefault(name, set()).add(module)
        if f"{module}.{name}" in modules():
            for attribute in attributes:
                found.setdefault(attribute, set()).add(f"{module}.{name}")
    return found


def test_nothing_is_for_tests_alone() -> None:
    """Each public function and class is named beyond its own lines, faces and tests."""
    used: dict[str, set[str]] = {}
    makers = [ast.parse((ROOT / path).read_text(encoding="utf-8")) for path in MAKERS]
    for tree in (*modules().values(), *makers):
        for name, homes in used_names(tree).items():
            used.setdefault(name, set()).update(homes)
    # A lesson's questions are the public functions of its modules.
    asked = {f"{row.__module__}.{row.__name__}" for n in _MODULES for row in _templates(n)}
    found = []
    for module, tree in modules().items():
        reads = names_read(tree)
        for node in tree.body:
            if not isinstance(node, (ast.FunctionDef, ast.ClassDef)) or node.name.startswith("_"):
                continue
            beside = reads[node.name] > names_read(node)[node.name]
            elsewhere = any(f"{module}.".startswith(f"{m}.") for m in used.get(node.name, ()))
            named = node.name in words_of_notebooks() or f"{module}.{node.name}" in asked
            if not beside and not elsewhere and not named:
                found.append(f"{module}.{node.name}")
    # It is taught, printed or deleted.
    assert found == []


def test_a_module_and_a_class_have_names_of_their_own() -> None:
    """No module is named like its function, and no two classes are called alike."""
    functions, classes = [], []
    for module, tree in modules().items():
        name = module.rpartition(".")[2]
        named = [n.name for n in tree.body if isinstance(n, ast.FunctionDef)]
        functions += [module] if name in named else []
        classes += [n.name for n in nodes(tree) if isinstance(n, ast.ClassDef)]
    assert functions == []
    assert sorted(set(classes)) == sorted(classes)


def test_other_rooms_come_in_through_the_face() -> None:
    found = []
    for module, tree in modules().items():
        for home, name, _ in imports(tree):
            if home.count(".") > 1 and room_of(module) != room_of(home):
                found.append(f"{module}: {home}.{name}")
    assert found == []
