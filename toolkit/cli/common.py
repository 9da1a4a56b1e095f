"""What all commands share: how they end, read a box, and write to a terminal."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

from toolkit.files import read_box
from toolkit.plan import Plan, plan as planned

DONE, WONT_WORK, CANT_READ, BROKEN_OFF = 0, 1, 2, 130


def read_plan(path: str | Path) -> Plan:
    """The plan of a box file."""
    return planned(read_box(Path(path)))


def status(plan: Plan) -> int:
    """How a command on this plan ends."""
    return DONE if plan.works else WONT_WORK


def dated(text: str, plan: Plan) -> str:
    """A heading that tells which plan it is of, and when it was printed."""
    from datetime import date

    return f"{text}  ·  issue {plan.fingerprint} of {date.today():%Y-%m-%d}"


def spelling_of(plan: Plan, *, typed: Iterable[str] = ()) -> Callable[[str], str]:
    """What puts a text of ours into the English of the box's units."""
    from toolkit.document import spelling

    return spelling(plan.choices.rule.words, typed=(plan.choices.title, *typed))


def tell(sentence: str) -> None:
    """One line on standard error."""
    print(f"workbook: {sentence}", file=sys.stderr, flush=True)


def print_json(data: Mapping[str, object], *, indent: int = 1) -> None:
    """Data for other programs, on standard output."""
    print(json.dumps(data, ensure_ascii=False, indent=indent, allow_nan=False))


def paragraphs(*texts: str, hanging: str) -> str:
    """Sentences as wide as the terminal, each beginning a line."""
    from toolkit.document import width_or_usual, wrapped

    width = width_or_usual(None)
    return "\n".join(line for text in texts for line in wrapped(text, width=width, hanging=hanging))


def lesson_numbers(text: str, *, or_none: bool = False) -> list[int]:
    """The argument of ``--lessons``."""
    try:
        return [] if or_none and text == "none" else [int(part) for part in text.split(",")]
    except ValueError:
        more = ", or none" if or_none else ""
        raise argparse.ArgumentTypeError(
            f"read {text!r}; type lessons' numbers with commas, such as 1,3,4{more}"
        ) from None
