"""``workbook rescue``: what was made against what was meant, and what can still be done."""

from __future__ import annotations

import argparse
import json
from functools import partial

from toolkit.box import written
from toolkit.cli.common import (
    DONE,
    WONT_WORK,
    paragraphs,
    print_json,
    read_plan,
    spelling_of,
    tell,
)
from toolkit.measures import length
from toolkit.plan import STAGES, WITH_LENGTH, WITHOUT, Mishap, Option, Rescue, rescue, rescue_data

_wrapped = partial(paragraphs, hanging="   ")


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.formatter_class = argparse.RawDescriptionHelpFormatter
    command.add_argument("box", metavar="BOX.toml")
    command.add_argument(
        "mishap", nargs="+", metavar='WHAT="LENGTH"', help='such as front_length="125.2 mm"'
    )
    command.add_argument(
        "--stage",
        choices=tuple(STAGES),
        help="how far the work has come; left out, the first at which such a thing happens",
    )
    command.add_argument(
        "--corner", choices=("back", "front"), default="back", help="of a tail: back"
    )
    command.add_argument("--tail", type=int, default=1, help="its number from the bottom edge: 1")
    command.add_argument(
        "--json", action="store_true", help="as data for other programs, all lengths in mm"
    )
    known = {**{f"{name}=LENGTH": words for name, words in WITH_LENGTH.items()}, **WITHOUT}
    rows, stages = ([f"  {n}  {words}" for n, words in of.items()] for of in (known, STAGES))
    command.epilog = "\n".join(["what went wrong:", *rows, "", "stages:", *stages])


def _mishap(words: list[str], args: argparse.Namespace) -> Mishap:
    """``front_length=125.2mm``, ``front_length 125.2 mm`` and ``lap_through`` alike."""
    what, _, text = " ".join(words).replace("=", " ", 1).partition(" ")
    what, text = what.strip().replace("-", "_"), text.strip()
    if text and what in WITHOUT:
        raise ValueError(f"read {text!r} after {what}, which goes without a length; leave it out")
    wanted = text and what in WITH_LENGTH
    value = length(text, what=what, allow="zero") if wanted else None
    return Mishap(what, value, stage=args.stage, corner=args.corner, tail=args.tail)


def run(args: argparse.Namespace) -> int:
    """Print the ways out; 1 where none leads to a box that works."""
    plan = read_plan(args.box)
    mishap = _mishap(args.mishap, args)
    if not plan.design.exists:
        why = plan.findings[0].sentence if plan.findings else ""
        tell(f"there is no such box to rescue: {why}")
        return WONT_WORK
    found = rescue(plan, mishap=mishap)
    if args.json:
        print_json(rescue_data(found), indent=2)
    else:
        print(spelling_of(plan)("\n\n".join(_page(found))))
    return DONE if found.saved else WONT_WORK


def _page(found: Rescue) -> list[str]:
    """The rescue as a person reads it, a block for each way out."""
    rule = found.plan.choices.rule
    blocks = [_wrapped(found.sentence(rule))]
    for number, option in enumerate(found.options, 1):
        lines = [f"{number}. {option.sentence(rule)}"]
        if option.changes:
            lines.append(f"   In the box file: {_keys(option, found)}")
        lines.append(f"   ({option.source})")
        blocks.append("\n".join(_wrapped(line) for line in lines))
    blocks.append(_wrapped(found.weights.sentence))
    return blocks


def _keys(option: Option, found: Rescue) -> str:
    keys = written(option.changes, rule=found.plan.choices.rule).items()
    return "; ".join(
        f"{key} left out" if value is None else f"{key} = {json.dumps(value, ensure_ascii=False)}"
        for key, value in keys
    )
