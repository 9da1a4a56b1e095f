"""Draws the README's picture anew: ``python -m tests.house.readme_picture``."""

from pathlib import Path

from toolkit.files import read_box
from toolkit.pictures import box_apart
from toolkit.plan import plan

ROOT = Path(__file__).parents[2]
PICTURE = ROOT / "instructor_notes" / "box.svg"


def drawn() -> str:
    """The picture as it should be."""
    return box_apart(plan(read_box(ROOT / "lessons" / "box.toml"))).svg + "\n"


if __name__ == "__main__":
    PICTURE.write_text(drawn(), encoding="utf-8")
