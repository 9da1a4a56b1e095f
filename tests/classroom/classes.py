"""Class files that several tests start from, written beside the boxes that they name."""

from pathlib import Path

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "instructor_notes" / "class.toml"

BOX = """
title = "Postcard box"
[size]
inside_length = "152 mm"
inside_width = "110 mm"
inside_height = "38 mm"
[thickness]
side = "12 mm"
end = "12 mm"
bottom = "8 mm"
lid = "9 mm"
[corner]
lap = "4 mm"
"""

HEAD = """format = 2
title = "Three at a lake"
box = "box.toml"

[hours]
dates = ["2027-06-05", "2027-06-06"]
start = "09:00"
end = "16:30"
"""

BOARDS = """
[[board]]
name = "walls"
species = "black cherry"
length = "2400 mm"
width = "155 mm"
thickness = "18 mm"

[[board]]
name = "panels"
species = "black cherry"
length = "1300 mm"
width = "140 mm"
thickness = "14 mm"
"""

THREE = """
[[student]]
number = 1

[[student]]
number = 2
units = "in"
words = "us"
paper = "letter"
hand = "left"
pace = "slow"

[[student]]
number = 3
[student.changes.thickness]
side = "13 mm"
"""


def write(folder: Path, text: str = HEAD + THREE + BOARDS, *, box: str = BOX) -> Path:
    """A class file with its box beside it."""
    (folder / "box.toml").write_text(box, encoding="utf-8")
    path = folder / "class.toml"
    path.write_text(text, encoding="utf-8")
    return path
