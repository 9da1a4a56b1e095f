"""The five changes that DEVELOPERS.md begins with, each made on a copy of the toolkit.

A change touches the files that its row names and no other, and shows where people would see it.
"""

import csv
import filecmp
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
OF_A_COPY = shutil.ignore_patterns("__pycache__")
BOX = "from tests.boxes import postcard\nfrom toolkit.plan import plan\n"


def _after(text: str, found: str, added: str) -> str:
    """A text with something put in behind the one place where it has something else."""
    assert text.count(found) == 1, f"{found!r} stands {text.count(found)} times"
    return text.replace(found, found + added)


def _edit(path: Path, found: str, added: str) -> None:
    path.write_text(_after(path.read_text("utf-8"), found, added), "utf-8")


def species(toolkit: Path) -> str:
    """Cherry's numbers under another name."""
    table = toolkit / "wood" / "species.csv"
    rows = list(csv.reader(table.read_text("utf-8").splitlines()))
    cherry = next(row for row in rows if row[0] == "black cherry")
    with table.open("a", encoding="utf-8", newline="") as end:
        csv.writer(end).writerow(["lakeside cherry", "", "", "Prunus lacustris", *cherry[4:]])
    return f"""{BOX}
made = plan(postcard().having({{"wood.walls": "lakeside cherry", "wood.lid": "Prunus lacustris"}}))
assert made.works and made.design.lid.season == plan(postcard()).design.lid.season
"""


def finding(toolkit: Path) -> str:
    """A maker who likes an even number of tails: said in lesson 3, marked in its drawing."""
    table = toolkit / "box" / "findings.csv"
    head = table.read_text("utf-8").splitlines()[0].split(",")
    row = {
        "finding": "tails-odd",
        "level": "care",
        "topic": "corner",
        "spot": "pin",
        "message": "{many:g} tails are an odd number.",
        "remedy": "Leave one out.",
        "seen": "none",
        "brief": "tails are odd",
        "note": "odd",
    }
    with table.open("a", encoding="utf-8", newline="") as end:
        csv.DictWriter(end, head).writerow(row)
    checks = toolkit / "box" / "joint_checks.py"
    text = checks.read_text("utf-8")
    check = """
def check_even(d: Design) -> list[Finding]:
    found = Said(d)
    for corner, *_ in corners(d):
        if len(corner.tails) % 2:
            found.say("tails-odd", corner=corner.name, many=len(corner.tails))
    return found


"""
    text = re.sub(r"^CHECKS = \(", lambda _: f"{check}CHECKS = (check_even, ", text, flags=re.M)
    checks.write_text(text, "utf-8")
    return f"""{BOX}
from toolkit.lesson import lesson
from toolkit.pictures import corner_picture
shown = lesson(3).scenes["corner"].shown(postcard(), {{}})
assert "tails-odd" in [row.code for row in shown.verdict()]
assert any("odd" in one.text for one in corner_picture(plan(postcard())).drawn.labels)
"""


def slider(toolkit: Path) -> str:
    """A fifth slider in lesson 3's first scene."""
    _edit(
        toolkit / "lesson" / "lesson3_corner.py",
        "CORNER_CONTROLS = (",
        '\n    LengthControl(("corner.half_pin",), "half pins", 2.0, 12.0, "sizes", start=5.0),',
    )
    return f"""{BOX}
from toolkit.explore import Explorer
from toolkit.lesson import lesson
explorer = Explorer(lesson(3).scenes["corner"])
assert "half pins" in [one.label for one in explorer.controls]
wider = explorer.scene.at(postcard(), {{"corner.half_pin": 8.0}})
assert wider.choices.corner.half_pin == 8.0
"""


def drawing(toolkit: Path) -> str:
    """The lid from above: drawn in pictures/, shown by a block of lesson 4."""
    (toolkit / "pictures" / "lid_above.py").write_text(
        '''"""The lid from above."""

from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import Sheet
from toolkit.plan import Plan


def lid_above(plan: Plan) -> Picture:
    """Draw the lid from above."""
    long, wide = plan.design.lid.length.value, plan.design.lid.width.value
    sheet = Sheet(scale=1.0, height=wide + 40)
    corners = ((0, 0), (long, 0), (long, wide), (0, wide))
    sheet.line("visible", [(20 + x, 20 + y) for x, y in corners], closed=True)
    show = plan.choices.rule.show
    return sheet.picture(f"The lid from above: {show(long)} long and {show(wide)} wide.")
''',
        "utf-8",
    )
    face = toolkit / "pictures" / "__init__.py"
    text = face.read_text("utf-8")
    line = "from toolkit.pictures.lid_above import lid_above as lid_above\n"
    place = text.index("from toolkit.pictures.section")
    face.write_text(text[:place] + line + text[place:], "utf-8")
    with (toolkit / "lesson" / "lesson4.py").open("a", encoding="utf-8") as end:
        end.write(
            "\n\nfrom toolkit.pictures import lid_above\n\n\n"
            'def lid_from_above(plan: Plan) -> Figure:\n    """The lid from above."""\n'
            "    return Figure(lid_above(plan))\n"
        )
    return """
from toolkit.explore import lesson4
shown = lesson4.lid_from_above().html()
assert "<svg" in shown and "168 mm long" in shown
"""


def closure(toolkit: Path) -> str:
    """A tray that a cloth covers."""
    closures = toolkit / "box" / "closures.py"
    _edit(closures, 'LidKind = Literal["sliding", ', '"cloth", ')
    _edit(
        closures,
        "CLOSURES: dict[LidKind, Closure] = {",
        '\n    "cloth": Closure((), remark="a cloth covers this box."),',
    )
    return f"""{BOX}
import runpy
from toolkit.files import box_from_text
runpy.run_module("toolkit.files.schemas", run_name="__main__")
made = plan(postcard().having({{"lid.kind": "cloth"}}))
assert made.works and "lid" not in [part.name for part in made.parts]
assert "a cloth covers this box." in [row.message for row in made.findings]
"""


CHANGES: dict[str, Callable[[Path], str]] = {
    "a species": species,
    "a finding": finding,
    "a slider": slider,
    "a drawing": drawing,
    "a kind of closure": closure,
}


def told() -> Iterator[tuple[str, set[str]]]:
    """The rows of DEVELOPERS.md: what one would add, and the files below toolkit/ it takes."""
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    table = text.partition("## Five first changes")[2].partition("\n## ")[0]
    for what, files in re.findall(r"^\| (a [a-z ]+) \| ([^|]*`[^|]*) \|", table, flags=re.M):
        yield what, set(re.findall(r"`([\w/.]+)`", files))


def differing(old: Path, new: Path) -> set[str]:
    """Files of a copy that are not as they were, by their path in it."""
    found = set()
    for path in new.rglob("*"):
        if path.is_file() and "__pycache__" not in path.parts:
            name = path.relative_to(new)
            if not (old / name).exists() or not filecmp.cmp(old / name, path, shallow=False):
                found.add(name.as_posix())
    return found


def test_each_is_told() -> None:
    assert dict(told()).keys() == CHANGES.keys()


@pytest.mark.parametrize("what", CHANGES)
def test_a_change_touches_the_files_that_are_told_and_is_seen(what: str, tmp_path: Path) -> None:
    copy = tmp_path / "toolkit"
    shutil.copytree(ROOT / "toolkit", copy, ignore=OF_A_COPY)
    shutil.copytree(ROOT / "lessons", tmp_path / "lessons")
    shutil.copytree(ROOT / "tests", tmp_path / "tests", ignore=OF_A_COPY)
    script = f"import toolkit\nassert toolkit.__file__.startswith({str(copy)!r})\n"
    script += CHANGES[what](copy)
    ran = subprocess.run(
        [sys.executable, "-c", script],
        cwd=tmp_path,
        env=os.environ | {"PYTHONPATH": str(tmp_path), "WORKBOOK_FOLDER": str(tmp_path)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.returncode == 0, ran.stderr[-2000:]
    assert differing(ROOT / "toolkit", copy) == dict(told())[what]
