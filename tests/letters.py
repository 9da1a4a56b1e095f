"""What a page carries of letters, and which of those that a reader sees it does not."""

import re
from base64 import b64decode
from html import unescape
from io import BytesIO

from fontTools.ttLib import TTFont

from toolkit.pictures.kit.faces import DRAWINGS, FORMULAS, TEXT

Key = tuple[str, str, str]
_RULE = re.compile(r'font-family:"([^"]+)";font-weight:(\w+);font-style:(\w+);src:url\(([^)]*)\)')
_FORMULA = re.compile(r"<math.*?</math>", re.DOTALL)


def carried(page: str) -> dict[Key, TTFont]:
    """The faces in a page, by family, weight and style."""
    found = {}
    for *key, place in _RULE.findall(unescape(page)):
        assert place.startswith("data:font/woff;base64,")
        found[tuple(key)] = TTFont(BytesIO(b64decode(place.partition(",")[2])))
    return found


def shown(page: str) -> set[str]:
    """The letters and signs that a reader sees."""
    bare = re.sub(r"<(style|script).*?</\1>|<[^>]*>", "", page, flags=re.DOTALL)
    return set("".join(unescape(bare).split()))


def not_carried(page: str) -> list[str]:
    """What a reader sees of a page that the machine would have to lend a face for."""
    has = {key: set(map(chr, font.getBestCmap())) for key, font in carried(page).items()}
    drawn = has[DRAWINGS.family, "normal", "normal"]
    missing = set()
    for face in TEXT:
        missing |= shown(page) - has[face.family, face.weight, face.style] - drawn
    formulas = "".join(_FORMULA.findall(page))
    if formulas:
        missing |= shown(formulas) - has[FORMULAS.family, "normal", "normal"]
    return sorted(missing)
