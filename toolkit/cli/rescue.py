"""``workbook rescue``: what was made against what was meant, and what can still be done."""

from __future__ import annotations

import argparse
import json
from contextlib import suppress
from functools import partial
from pathlib import Path

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
from toolkit.files import BoxFileError, ClassFileError, read_class
from toolkit.measures import length
from toolkit.plan import (
    PARTS,
    STAGES,
    WITH_LENGTH,
    WITHOUT,
    Mishap,
    Option,
    Plan,
    Rescue,
    parts_of,
    plan,
    rescue,
    rescue_data,
)

_wrapped = partial(paragraphs, hanging="   ")


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.formatter_class = argparse.RawDescriptionHelpFormatter
    command.add_argument("box", metavar="BOX.toml", help="or a class file, with --student")
    command.add_argument(
        "mishap",
        nargs="+",
        metavar='WHAT="LENGTH"',
        help='such as front_length="125.2 mm", left_side_thickness="11.4 mm" or, in words, '
        "left side lap through",
    )
    command.add_argument(
        "--student", type=int, metavar="N", help="of a class file: whose box it is, by number"
    )
    command.add_argument(
        "--stage",
        choices=tuple(STAGES),
        help="how far the work has come; left out, as early as such a thing is found",
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


# What a part may be called, and the beginning of the names that are its own.
_CALLED: dict[str, str] = {part: part.split()[1 if "side" in part else 0] for part in PARTS}
_CALLED |= {"both sides": "side", "sides": "side"}


def _named(words: str) -> tuple[str, str, str]:
    """Part, mishap and the rest of words such as ``left side length 175 mm``."""
    called = next((part for part in _CALLED if f"{words} ".startswith(f"{part} ")), "")
    rest = words.removeprefix(called).strip()
    known = sorted((*WITH_LENGTH, *WITHOUT), key=len, reverse=True)
    for said in (f"{_CALLED.get(called, '')} {rest}".strip(), rest):
        for what in known:
            spoken = what.replace("_", " ")
            if f"{said} ".startswith(f"{spoken} "):
                part = called if called in parts_of(what) else ""
                if called and not part and not what.startswith(f"{_CALLED[called]}_"):
                    raise ValueError(f"{what}: read {called!r}; leave the part out")
                return part, what, said.removeprefix(spoken).strip()
    what, _, text = (_CALLED.get(called) or rest).partition(" ")
    return "", what, text


def _mishap(words: list[str], args: argparse.Namespace) -> Mishap:
    """``front_length=125.2mm``, ``front length 125.2 mm`` and ``lap_through`` alike."""
    name, equals, text = " ".join(words).partition("=")
    name = "".join(" " if sign in "-_" else sign for sign in name) if equals else name
    if not equals:
        # A hyphen before a figure is a minus; in a name it is a space.
        parts = name.split(" ")
        name = " ".join(p if p[1:2].isdigit() else p.replace("-", " ") for p in parts)
        name = name.replace("_", " ")
    part, what, text = _named(" ".join(f"{name.lower()} {text}".split()))
    if text and what in WITHOUT:
        raise ValueError(f"read {text!r} after {what}, which goes without a length; leave it out")
    wanted = text and what in WITH_LENGTH
    value = length(text, what=what, allow="zero") if wanted else None
    return Mishap(
        what,
        value,
        stage=args.stage,
        corner=args.corner,
        tail=args.tail,
        part=part,  # type: ignore[arg-type]
    )


def _plan(args: argparse.Namespace) -> Plan:
    """The plan of a box file, or of a student's box in a class file."""
    if args.student is None:
        try:
            return read_plan(args.box)
        except BoxFileError as error:
            # A class file is no box; what is wrong with either is said by its own reader.
            with suppress(ClassFileError):
                read_class(Path(args.box))
                name = Path(args.box).name
                raise ValueError(f"{name} is a class file; type --student and a number") from None
            raise error from None
    taught = read_class(Path(args.box))
    for student in taught.students:
        if student.number == args.student:
            if student.choices is None:
                raise ValueError(f"student {student.number} has no box: {student.fault}")
            return plan(student.choices)
    numbers = ", ".join(str(student.number) for student in taught.students)
    raise ValueError(f"read --student {args.student}; the class has {numbers}")


def run(args: argparse.Namespace) -> int:
    """Print the ways out; 1 where none leads to a box that works."""
    made = _plan(args)
    mishap = _mishap(args.mishap, args)
    if not made.design.exists:
        why = made.findings[0].sentence if made.findings else ""
        tell(f"there is no such box to rescue: {why}")
        return WONT_WORK
    found = rescue(made, mishap=mishap)
    if args.json:
        print_json(rescue_data(found), indent=2)
    else:
        print(spelling_of(made)("\n\n".join(_page(found))))
    return DONE if found.saved else WONT_WORK


def _page(found: Rescue) -> list[str]:
    """The rescue as a person reads it, a block for each way out."""
    rule = found.plan.choices.rule
    blocks = [_wrapped(found.sentence(rule))]
    for number, option in enumerate(found.options, 1):
        lines = [f"{number}. {option.words}", *(f"   {line}" for line in option.lines(rule))]
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
