"""Reads the sums that a page prints, as somebody with a pocket calculator would."""

import math
import re
from itertools import pairwise

_UNITS = r"(?:mm²|ft²|sq in|ft|mm|in|%|°|deg|g/L|mL|cm²|g)"
_NUMBER = r"\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
_WORDS = {"rounded up": "^", "rounded down": "_"}
_DEGREES = {
    "sin": lambda a: math.sin(math.radians(a)),
    "cos": lambda a: math.cos(math.radians(a)),
    "tan": lambda a: math.tan(math.radians(a)),
    "arcsin": lambda s: math.degrees(math.asin(s)),
    "arctan": lambda s: math.degrees(math.atan(s)),
}


def _number(text: str) -> str:
    return "(" + "+".join(f"({part})" for part in text.split()) + ")"


def value_of(text: str) -> float | None:
    """What one side of a printed sum comes to; None where it is no sum."""
    away = next((way for way in _WORDS if text.rstrip().endswith(way)), "")
    text = text.rstrip().removesuffix(away).rstrip(" ,")
    text = text.replace("half of", "0.5 ×").replace("−", "-")
    text = re.sub(rf"({_NUMBER})(?: ?{_UNITS}(?![a-z²]))?", lambda m: _number(m[1]), text)
    # A function is kept, every other word is the name of what stands before it.
    text = re.sub(r"(?<![a-z])(arcsin|sin|cos|tan) (\([^()]*\([^()]*\)[^()]*\))", r"\1\2", text)
    text = re.sub(
        r"(?<![A-Za-z])(?!(?:arcsin|arctan|sin|cos|tan)\b)[A-Za-z’'-]*[A-Za-z]{2,}[A-Za-z’']*"
        r"|\b[a-z]\b",
        " ",
        text,
    )
    text = text.replace("²", "**2").replace("×", "*").replace("÷", "/")
    try:
        found = float(eval(text, {"__builtins__": {}}, _DEGREES))
    except (SyntaxError, TypeError, NameError, ZeroDivisionError):
        return None
    found = math.ceil(found - 1e-9) if away == "rounded up" else found
    return math.floor(found + 1e-9) if away == "rounded down" else found


def last_place(text: str) -> float:
    """Half of the last place that a side is written to; lengths are written to 0.01 mm."""
    number = re.findall(_NUMBER, text)[0]
    if (unit := re.search(r"\d (mm|in)\b", text)) is not None:
        return {"mm": 0.005, "in": 0.0005}[unit[1]]
    return 0.5 * 10.0 ** -len(number.partition(".")[2])


def untrue(said: str) -> list[str]:
    """The sums in a text that do not come out as written."""
    wrong = []
    for sentence in re.split(r"; |(?<=[a-z%\d])\. ", said):
        sides = re.split(r" = ", sentence)
        for left, right in pairwise(sides):
            # A share of a length; of shares alone a sum goes on in percent.
            if "%" not in right:
                left = re.sub(rf"({_NUMBER}) %", r"\1 ÷ 100", left)
            numbers = re.findall(_NUMBER, right)
            one, other = value_of(left), value_of(right.split(":")[0].split(", ")[0])
            if one is None or other is None or not numbers or len(re.findall(_NUMBER, left)) < 2:
                continue
            # A bare share may be told in percent.
            comes_to = (one, 100 * one) if "%" in right and "%" not in left else (one,)
            room = last_place(right) * (1 + 1e-6) + 1e-9
            if all(abs(each - other) > room for each in comes_to):
                wrong.append(f"{left} = {right}: {one:g}")
    return wrong


def from_latex(line: str) -> str:
    """A line of a formula as it would be typed."""
    line = re.sub(r"\\text\{([^{}]*)\}", r"\1", line).replace("\N{NO-BREAK SPACE}", " ")
    line = re.sub(r"\\(begin|end)\{array\}(\{rll\})?", "", line)
    line = re.sub(r" & |\\\\|\\[,;]", " ", line).replace(r"\%", "%").replace(r"\times", "×")
    line = re.sub(r"\\(sin|cos)\^2 (\d+°)", r"(\1(\2))²", line)
    while (flat := re.sub(r"\\frac\s*\{([^{}]*)\}\s*\{([^{}]*)\}", r"((\1) ÷ (\2))", line)) != line:
        line = flat
    line = re.sub(r"\\arctan\s*", "arctan ", line).replace("-", "−")
    return " ".join(line.split())
