"""``workbook sheets``: the box at full size on paper, to cut out and lay on the wood."""

from __future__ import annotations

import argparse
import re
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from toolkit.cli.common import DONE, WONT_WORK, read_plan, tell
from toolkit.files import FileError, check_output, write_file
from toolkit.plan import Plan

if TYPE_CHECKING:
    from toolkit.pictures import SheetPage

ENDINGS = (".pdf", ".svg")


def add_arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("box", metavar="BOX.toml")
    command.add_argument(
        "-o",
        "--output",
        type=Path,
        required=True,
        metavar="FILE.pdf",
        help="a PDF; or FILE.svg, for FILE-1.svg, FILE-2.svg and so on",
    )
    command.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="a4 (unless given) or letter"
    )


def run(args: argparse.Namespace) -> int:
    """Write the sheets; 1 where the box won't work, and nothing where there is no such box."""
    check_output(args.output, inputs=[args.box], endings=ENDINGS)
    # The pages that lie there already are written over, too.
    for _, page in _numbered(args.output) if args.output.suffix.lower() == ".svg" else ():
        check_output(page, inputs=[args.box], endings=ENDINGS)
    plan = read_plan(args.box)
    if not plan.design.exists:
        _say(plan, "No sheets are written")
        return WONT_WORK
    from toolkit.pictures import sheet_pages, sheets_pdf

    pages = sheet_pages(plan, paper=args.paper)
    count = f"{len(pages)} page" + ("s" if len(pages) > 1 else "")
    if args.output.suffix.lower() == ".pdf":
        write_file(args.output, sheets_pdf(pages), error=FileError)
        print(f"Written: {args.output}, {count}")
    else:
        written = _svg_files(pages, args.output)
        print(f"Written: {written[0]} to {written[-1].name}, {count}")
        old = [path for number, path in _numbered(args.output) if number > len(pages)]
        if old:
            print(f"Of an earlier plan, and not touched: {', '.join(path.name for path in old)}")
    print("Print at 100 %, “actual size”, and measure the bars before you trust the print.")
    if not plan.works:
        _say(plan, "Don't cut from these sheets")
        return WONT_WORK
    return DONE


def _say(plan: Plan, what: str) -> None:
    """That the box won't work, and why, in one line on standard error."""
    wrong = [row for row in plan.findings if row.level == "wont_work"]
    more = f" ({len(wrong)} findings in all: 'workbook check')" if len(wrong) > 1 else ""
    line = f"{what}: {plan.choices.title} won't work as it is: {wrong[0].message}{more}"
    tell(" ".join(line.split()))


def _svg_files(pages: Sequence[SheetPage], path: Path) -> list[Path]:
    """A file for each page, its number in its name."""
    from toolkit.pictures import svg_with_face

    written = []
    for page in pages:
        file = path.with_name(f"{path.stem}-{page.number}{path.suffix}")
        write_file(file, svg_with_face(page.svg).encode(), error=FileError)
        written.append(file)
    return written


def _numbered(path: Path) -> list[tuple[int, Path]]:
    """The pages that lie there under a name already, with their numbers."""
    pattern = re.compile(rf"{re.escape(path.stem)}-(\d+){re.escape(path.suffix)}")
    found = ((pattern.fullmatch(file.name), file) for file in path.parent.iterdir())
    return sorted((int(match[1]), file) for match, file in found if match)
