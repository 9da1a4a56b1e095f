"""``workbook class``: everything for a class in one folder."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from toolkit.cli.common import BROKEN_OFF, DONE, WONT_WORK, lesson_numbers, tell

if TYPE_CHECKING:
    from toolkit.classroom import OnProgress


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("class_file", metavar="CLASS.toml")
    command.add_argument("-o", "--output", required=True, metavar="FOLDER")
    command.add_argument(
        "--lessons",
        type=partial(lesson_numbers, or_none=True),
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
        with _progress() as on_progress:
            found = make_class(
                taught,
                folder=Path(args.output),
                lessons=lessons,
                on_progress=on_progress,
                on_notice=tell,
            )
    except KeyboardInterrupt:
        tell("broken off; what was made stays, and the same command goes on from there")
        return BROKEN_OFF
    for number, sentence in found.faults:
        tell(f"student {number}: {sentence}")
    print(found.sentence)
    return WONT_WORK if found.faults else DONE


@contextmanager
def _progress() -> Iterator[OnProgress]:
    """A bar on a terminal; a line for each piece of work anywhere else."""
    if not sys.stderr.isatty():
        yield lambda done, of, what: tell(f"{done + 1} of {of}: {what}")
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

        def moved_on(done: int, of: int, what: str) -> None:
            bar.update(task, completed=done, total=of, description=what)

        yield moved_on
