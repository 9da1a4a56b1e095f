"""The command line: ``workbook …``.

Exit status: 0 done; 1 a finding says that the box won't work; 2 a file or an argument can't be
read, told in one line on standard error.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import NoReturn

from toolkit.cli import classes, layout, rescue, sheets
from toolkit.cli.common import (
    CANT_READ,
    DONE,
    WONT_WORK,
    dated,
    lesson_numbers,
    print_json,
    read_plan,
    spelling_of,
    status,
    tell,
)
from toolkit.files import FileError, check_output, read_boards, write_file
from toolkit.libraries import Check, in_short, library_checks, report
from toolkit.plan import as_data, compare, tables


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one line, and where help is."""

    def error(self, message: str) -> NoReturn:
        print(f"{self.prog}: {message}; try '{self.prog} --help'", file=sys.stderr)
        raise SystemExit(CANT_READ)


def _plan(args: argparse.Namespace) -> int:
    """Of ``check`` the findings alone, of ``plan`` the tables too."""
    from toolkit.document import as_text, findings_text

    plan = read_plan(args.box)
    if args.json:
        print_json(as_data(plan))
        return status(plan)
    spell = spelling_of(plan)
    shown = tables.whole_plan(plan) if args.lists else ()
    lists = [as_text(table, spell=spell) for table in shown]
    heading = dated(f"{plan.choices.title}: outside {plan.outside}", plan)
    print("\n\n".join([heading, *lists, spell(findings_text(plan.findings))]))
    return status(plan)


def _compare(args: argparse.Namespace) -> int:
    from toolkit.document import as_text, findings_text

    before, after = read_plan(args.before), read_plan(args.after)
    changed, spell = compare(before, after), spelling_of(after)
    if not changed.changes:
        print("The two boxes come out the same in every size.")
    else:
        print(as_text(tables.comparison(changed, after.choices.rule), spell=spell))
    for words, rows in (("New", changed.new_findings), ("No longer", changed.gone_findings)):
        if rows:
            print(f"\n{words}:")
            print(spell(findings_text(rows)))
    return status(after)


def _checks() -> Iterator[Check]:
    """Look at the libraries, the example box and a sum that is known."""
    yield from library_checks()
    try:
        # A broken library is told by its own check before anything of the workbook loads it.
        from toolkit.study import example_path

        plan = read_plan(example_path())
        length = plan.part("lid").length.value if plan.works else 0.0
    except Exception as error:  # whatever a broken library raises
        yield Check("the example box", False, in_short(error))
        return
    yield Check("the example box", abs(length - 168.0) < 1e-9, f"lid {length:g} mm long")


def _selftest(args: argparse.Namespace) -> int:
    return DONE if report(_checks()) else WONT_WORK


def _lessons(args: argparse.Namespace) -> int:
    from toolkit.room import open_lessons, show_lessons

    serve = show_lessons if args.without_code else open_lessons
    return serve(args.lesson, browser=not args.no_browser, port=args.port)


def _handout(args: argparse.Namespace) -> int:
    read = [args.box, args.boards] if args.boards else [args.box]
    check_output(args.output, inputs=read, endings=(".html", ".htm"))
    plan = read_plan(args.box)
    from toolkit.handout import handout

    made = handout(
        plan,
        paper=args.paper,
        name=args.name,
        words=args.words,
        lessons=args.lessons,
        boards=read_boards(Path(args.boards)) if args.boards else (),
        told=tell,
    )
    write_file(Path(args.output), made.encode(), error=FileError)
    print(f"Written: {args.output}")
    return status(plan)


Command = Callable[[argparse.Namespace], int]


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="workbook", description="One small dovetailed box, by hand.")
    commands = parser.add_subparsers(metavar="COMMAND", required=True)

    def add(name: str, run: Command, words: str, **values: bool) -> argparse.ArgumentParser:
        command = commands.add_parser(name, help=words, description=words)
        command.set_defaults(run=run, **values)
        return command

    for command in (
        add("open", _lessons, "open the lessons in JupyterLab", without_code=False),
        add("show", _lessons, "the same lessons without code", without_code=True),
    ):
        command.add_argument("lesson", nargs="?", help="a lesson's number, 1 to 5")
        command.add_argument("--port", type=int, default=0, help="a port of your own, 1 to 65535")
        command.add_argument("--no-browser", action="store_true", help="start without a browser")
    words = "what an experienced maker would say of a box"
    add("check", _plan, words, lists=False, json=False).add_argument("box", metavar="BOX.toml")
    command = add("plan", _plan, "cut list, rough list, settings and findings", lists=True)
    command.add_argument("box", metavar="BOX.toml")
    command.add_argument("--json", action="store_true", help="as data, lengths in mm")
    command = add("compare", _compare, "what changed between two boxes, and why")
    command.add_argument("before", metavar="A.toml")
    command.add_argument("after", metavar="B.toml")
    words = "what went wrong at the bench, and what can still be done"
    rescue.add_arguments(add("rescue", rescue.run, words))
    layout.add_arguments(add("layout", layout.run, "the parts on the boards, with the saw cuts"))
    command = add("handout", _handout, "the handout: one HTML file to print")
    command.add_argument("box", metavar="BOX.toml")
    command.add_argument("-o", "--output", required=True, metavar="FILE.html")
    command.add_argument("--paper", choices=("a4", "letter"), default="a4")
    command.add_argument(
        "--lessons", type=lesson_numbers, metavar="1,3,4", help="all, unless given"
    )
    command.add_argument("--name", default="", help="whose handout it is")
    command.add_argument(
        "--words", choices=("us", "british"), help="if left out: by the box's units"
    )
    command.add_argument("--boards", metavar="BOARDS.toml", help="lay the parts out on these")
    words = "everything for a class: handouts, wood, kits, timetable, tools"
    classes.add_arguments(add("class", classes.run, words))
    sheets.add_arguments(add("sheets", sheets.run, "full-size sheets to print and cut out"))
    add("selftest", _selftest, "check that everything is installed and right")
    return parser


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    argv : sequence of str, optional
        Arguments without the program's name; those of the process if left out.

    Returns
    -------
    int
        The exit status.
    """
    args = _parser().parse_args(argv)
    try:
        status: int = args.run(args)
    except BrokenPipeError:
        # The reader (head, a pager) has seen enough; that is no error of the plan.
        sys.stderr.close()
        return DONE
    except (ValueError, OSError) as error:
        tell(" ".join(str(error).split()))
        return CANT_READ
    return status
