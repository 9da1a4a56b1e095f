"""Reads a PDF's pages back: their size and the lines on them, by the file's own operators.

Written for the tests alone, from the standard: it shares nothing with what writes the file.

Source
------
ISO 32000-1: objects and streams; path construction (m, l, h), painting (S), line width (w),
dash pattern (d); a unit is 1/72 in.
"""

import re
import zlib
from dataclasses import dataclass
from itertools import pairwise

MM = 25.4 / 72


@dataclass(frozen=True)
class Read:
    """A straight line as the file has it, from the page's lower left corner. [mm]"""

    x0: float
    y0: float
    x1: float
    y1: float
    width: float
    dashed: bool

    @property
    def long(self) -> float:
        """Its length. [mm]"""
        return ((self.x1 - self.x0) ** 2 + (self.y1 - self.y0) ** 2) ** 0.5

    @property
    def level(self) -> bool:
        """Whether it runs along the page."""
        return abs(self.y1 - self.y0) < 1e-4

    @property
    def upright(self) -> bool:
        """Whether it runs up the page."""
        return abs(self.x1 - self.x0) < 1e-4


@dataclass(frozen=True)
class ReadPage:
    """One page: its size, and every line on it. [mm]"""

    width: float
    height: float
    lines: tuple[Read, ...]


def read_pdf(data: bytes) -> list[ReadPage]:
    """The pages of a file, in order."""
    objects = {
        int(match[1]): match[2]
        for match in re.finditer(rb"(?<!\d)(\d+) 0 obj\b(.*?)\bendobj", data, flags=re.DOTALL)
    }
    listed = re.search(rb"/Kids \[([^\]]*)\]", data)
    assert listed
    pages = []
    for number in re.findall(rb"(\d+) 0 R", listed[1]):
        page = objects[int(number)]
        box = re.search(rb"/MediaBox \[([^\]]*)\]", page)
        content = re.search(rb"/Contents (\d+) 0 R", page)
        assert box and content
        assert b"/Rotate" not in page and b"/UserUnit" not in page and b"/CropBox" not in page
        x0, y0, x1, y1 = map(float, box[1].split())
        assert x0 == y0 == 0
        stream = objects[int(content[1])].split(b"stream", 1)[1].lstrip(b"\r\n")
        text = zlib.decompressobj().decompress(stream).decode("latin-1")
        pages.append(ReadPage(x1 * MM, y1 * MM, tuple(_lines(text))))
    return pages


def _stroked(subpaths: list[list[tuple[float, float]]], width: float, dashed: bool) -> list[Read]:
    pieces = [piece for points in subpaths for piece in pairwise(points)]
    return [Read(*(v * MM for v in (*a, *b)), width * MM, dashed) for a, b in pieces]


def _further(subpaths: list[list[tuple[float, float]]], word: str, numbers: list[float]) -> None:
    if word == "m":
        subpaths.append([])
    subpaths[-1].append(subpaths[-1][0] if word == "h" else (numbers[-2], numbers[-1]))


def _only_turned(numbers: list[float]) -> None:
    # Only letters that stand upright are turned.
    turned = [round(value, 6) for value in numbers[-6:-2]]
    assert turned in ([1, 0, 0, 1], [0, 1, -1, 0]), turned


def _lines(text: str) -> list[Read]:
    """Stroked lines; the file must neither scale nor move what is drawn."""
    found: list[Read] = []
    numbers: list[float] = []
    subpaths: list[list[tuple[float, float]]] = []
    state: tuple[float, bool] = (1.0, False)
    saved: list[tuple[float, bool]] = []
    # Words have a matrix of their own, and strings hold anything.
    text = re.sub(r"\bBT\b.*?\bET\b", " ", text, flags=re.DOTALL)
    # A letter beyond a font's first 256 is an object of its own, set in its size by its matrix.
    text = re.sub(r"\bq\s+[-\d.\s]+\bcm\s+/F\S+\s+Do\s+Q\b", " ", text)
    for word in re.findall(r"\[[^\]]*\]|[^\s\[\]]+", text):
        if re.fullmatch(r"[-+]?\d*\.?\d+", word):
            numbers.append(float(word))
            continue
        if word.startswith("["):
            state = (state[0], bool(word.strip("[] ")))
            continue
        match word:
            case "m" | "l" | "h":
                _further(subpaths, word, numbers)
            case "w":
                state = (numbers[-1], state[1])
            case "q":
                saved.append(state)
            case "Q":
                state = saved.pop()
            case "S" | "f" | "n" | "W":
                found += _stroked(subpaths, *state) if word == "S" else []
                subpaths = []
            case "cm":
                _only_turned(numbers)
        numbers = []
    return found
