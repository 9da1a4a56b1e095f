"""Reads a box file into choices."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.box import Choices
from toolkit.files.checking import checked, problems_at
from toolkit.files.errors import BoxFileError, measure_said, shown
from toolkit.files.formats import bring_up
from toolkit.files.records import FileSection, file_of, record_of
from toolkit.files.syntax import KindOfFile, file_text, values_of
from toolkit.files.together import faults_between
from toolkit.measures import MeasureError, Rule


@cache
def box_schema() -> type[FileSection]:
    """The schema of a box file; made when one is read."""
    return file_of(Choices, name="BoxFile", kind="box")


def read_box(path: str | PathLike[str]) -> Choices:
    """A box as its file has it.

    A file of an older format is read as if it had been brought up; it is not written to.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    Choices
        What was chosen; what the file leaves out is left out, or has its default. [mm]

    Raises
    ------
    BoxFileError
        The file cannot be read or says what it cannot say; one line, and all in ``problems``.
    """
    return box_from_text(file_text(path, error=BoxFileError), name=FilePath(path).name)


def box_from_text(text: str, *, name: str = "box.toml") -> Choices:
    """A box from the text of a box file, called ``name`` in messages; raises as for a file.

    >>> text = "size = {inside_length='152 mm', inside_width='110 mm', inside_height='38 mm'}\\n"
    >>> text += "thickness = {side = '12 mm', end = '12 mm', bottom = '8 mm', lid = '9 mm'}"
    >>> box_from_text(text).size.inside_length
    152.0
    """
    text = text.replace("\r\n", "\n")
    values = values_of(text, name=name, error=BoxFileError)
    return box_from_values(values, text=text, name=name)


def box_from_values(values: dict[str, Any], *, text: str, name: str) -> Choices:
    """A box from what a file says, as plain values; the text is for the numbers of lines."""
    bring_up(values)
    faults = list(faults_between(values))
    read = checked(box_schema(), values, text=text, name=name, error=BoxFileError, faults=faults)
    given = read.given()
    rule = {}
    if "rule" in given:
        rule["rule"] = _rule(given["rule"].given(), values["rule"], text=text, name=name)
    choices: Choices = record_of(Choices, read, **rule)
    return choices


def _rule(given: dict[str, Any], typed: dict[str, Any], *, text: str, name: str) -> Rule:
    """The rule of a file; which marks there are depends on the units, so it is checked here."""
    rule = Rule.inches() if given.pop("units", "mm") == "in" else Rule.millimetres()
    faults = []
    # One mark at a time, so that a complaint lands on its own line.
    for key, mark in given.items():
        try:
            rule = replace(rule, **{key: mark})
        except MeasureError as error:
            said = f"read {shown(typed[key])}: {measure_said(error)}, or leave the key out"
            faults.append((("rule", key), said))
    if faults:
        raise BoxFileError(name, problems_at(faults, text))
    return rule


BOX = KindOfFile(BoxFileError, box_from_text)
