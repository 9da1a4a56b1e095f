"""``workbook class``: everything for a class in one folder."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from toolkit.classroom.folder_run import Told

DONE, WONT_WORK, BROKEN_OFF = 0, 1, 130


def _lessons(text: str) -> list[int]:
    """The argument of ``--lessons``."""
    try:
        return [] if text == "none" else [int(part) for part in text.split(",")]
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"read {text!r}; type lessons' numbers with commas, such as 1,3,4, or none"
        ) from None


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("class_file", metavar="CLASS.toml")
    command.add_argument("-o", "--output", required=True, metavar="FOLDER")
    command.add_argument(
        "--lessons",
        type=_lessons,
        metavar="1,3,4",
        help="in the handouts: all, unless given; or none",
    )


def run(args: argparse.Namespace) -> int:
    """Make what is missing or changed; 1 where a student's box won't work."""
    from toolkit.files import read_class

    taught = read_class(Path(args.class_file))
    from toolkit.classroom import make_class

    lessons = None if args.lessons is None else tuple(args.lessons)
    try:
        with _progress() as told:
            found = make_class(
                taught,
                folder=Path(args.output),
                lessons=lessons,
                told=told,
                on_notice=lambda sentence: print(f"workbook: {sentence}", file=sys.stderr),
            )
    except KeyboardInterrupt:
        print(
            "workbook: broken off; what was made stays, and the same command goes on from there",
            file=sys.stderr,
        )
        return BROKEN_OFF
    for number, sentence in found.faults:
        print(f"workbook: student {number}: {sentence}", file=sys.stderr)
    print(found.sentence)
    return WONT_WORK if found.faults else DONE


@contextmanager
def _progress() -> Iterator[Told]:
    """A bar on a terminal; a line for each piece of work anywhere else."""
    if not sys.stderr.isatty():
        yield lambda done, of, what: print(
            f"workbook: {done + 1} of {of}: {what}", file=sys.stderr, flush=True
        )
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    with Progress(
        BarColumn(),
        MofNCompleteColumn(),
        TextColumn("{task.description}"),
        console=Console(stderr=True),
        transient=True,
    ) as bar:
        task = bar.add_task("reading", total=None)

        def told(done: int, of: int, what: str) -> None:
            bar.update(task, completed=done, total=of, description=what)

        yield told
