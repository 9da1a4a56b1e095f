"""Whether the libraries that the workbook stands on can be loaded.

It needs none of them itself, so that it can still speak where one of them is broken.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from importlib import import_module
from importlib.metadata import PackageNotFoundError, distribution, requires, version

PROJECT = "hand-tool-workbook"
AGAIN = "type: python -m pip install --force-reinstall -e ."


@dataclass(frozen=True, slots=True)
class Check:
    """One thing looked at: whether it is right, and what was found."""

    name: str
    right: bool
    found: str


def in_short(error: BaseException) -> str:
    """An error's kind and words on one line."""
    return textwrap.shorten(f"{type(error).__name__}: {error}", 200, placeholder=" …")


def _required() -> list[str]:
    """The projects that the installed workbook names, without those of its tests."""
    named = [text for text in requires(PROJECT) or () if "extra ==" not in text]
    return [re.split(r"[^\w.-]", text, maxsplit=1)[0] for text in named]


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).casefold()


def _module(name: str) -> str:
    """The module that has the project's own name, in the letters it is installed with, or else
    the first one: Pillow's has another."""
    files = distribution(name).files or ()
    alone = ((), ("__init__.py",))
    found = [file.parts[0].split(".")[0] for file in files if file.parts[1:] in alone]
    return next((each for each in found if _plain(each) == _plain(name)), next(iter(found), name))


def _library(name: str) -> Check:
    try:
        found = version(name)
        import_module(_module(name))
    except PackageNotFoundError:
        return Check(name, False, f"is not installed; {AGAIN}")
    except KeyboardInterrupt:
        raise
    except BaseException as error:  # a library built for another raises what it likes
        return Check(name, False, f"can't be loaded ({in_short(error)}); {AGAIN}")
    return Check(name, True, found)


def library_checks() -> Iterator[Check]:
    """Load every library that the workbook asks for when it is installed.

    Yields
    ------
    Check
        One for each, in the order of the project's own list.
    """
    try:
        names = _required()
    except PackageNotFoundError:
        yield Check(PROJECT, False, f"is not installed; {AGAIN}")
        return
    for name in names:
        yield _library(name)


def report(checks: Iterable[Check]) -> bool:
    """Print one line for each check and a last one for all.

    Parameters
    ----------
    checks : iterable of Check
        What was looked at; each is printed as it comes.

    Returns
    -------
    bool
        Whether everything is right.
    """
    good = True
    for check in checks:
        good = good and check.right
        print(f"{'✓' if check.right else '✗'} {check.name}: {check.found}", flush=True)
    print(
        "Everything is in place."
        if good
        else "Something is missing or broken: see the lines with ✗."
    )
    return good
