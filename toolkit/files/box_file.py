"""Reads a box file into choices."""

from __future__ import annotations

from dataclasses import replace
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.box.choices import (
    Allowance,
    Allowances,
    Choices,
    CornerChoice,
    GrooveChoice,
    LidChoice,
    Made,
    Panels,
    Rooms,
    Size,
    Thickness,
    Tools,
    Wood,
)
from toolkit.box.customs import Customs
from toolkit.files.checking import checked, problems_at
from toolkit.files.errors import BoxFileError, measure_said, shown
from toolkit.files.formats import bring_up
from toolkit.files.kinds import Section
from toolkit.files.sections import (
    ALLOWED_PARTS,
    AllowancesSection,
    BoxFile,
    RoomsSection,
    RuleSection,
)
from toolkit.files.syntax import file_text, values_of
from toolkit.files.together import faults_between
from toolkit.measures import MeasureError, Rule


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
        What was chosen; what the file leaves out is left out, or has its default.

    Raises
    ------
    BoxFileError
        The file cannot be read or says what it cannot say; one line, and all in ``problems``.

    Source
    ------
    The workbook's own.
    """
    return box_from_text(file_text(path, error=BoxFileError), name=FilePath(path).name)


def box_from_text(text: str, *, name: str = "box.toml") -> Choices:
    """A box from the text of a box file.

    Parameters
    ----------
    text : str
        The text.
    name : str
        Name of the file in messages.

    Returns
    -------
    Choices
        What was chosen.

    Raises
    ------
    BoxFileError
        As for a file.

    Source
    ------
    The workbook's own.

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
    box = checked(BoxFile, values, text=text, name=name, error=BoxFileError, faults=faults)
    rule = _rule(box.rule, values["rule"], text=text, name=name) if box.has("rule") else None
    return _choices(box, rule)


def _choices(box: BoxFile, rule: Rule | None) -> Choices:
    """The choices of a file that is in order."""
    made_of: dict[str, Any] = {}
    if box.has("title"):
        made_of["title"] = box.title
    if rule is not None:
        made_of["rule"] = rule
    if box.has("panels"):
        made_of["panels"] = Panels(**_each(box.panels, across=("bottom_across", "lid_across")))
    if box.has("wood"):
        made_of["wood"] = Wood(**_each(box.wood, walls=("sides", "ends"), panels=("bottom", "lid")))
    if box.has("rooms"):
        made_of["rooms"] = _rooms(box.rooms)
    if box.has("allowances"):
        made_of["allowances"] = _allowances(box.allowances)
    for key, record in _PLAIN.items():
        if box.has(key):
            made_of[key] = record(**getattr(box, key).given())
    return Choices(**made_of)


_PLAIN: dict[str, type[Any]] = {
    "size": Size,
    "thickness": Thickness,
    "corner": CornerChoice,
    "groove": GrooveChoice,
    "lid": LidChoice,
    "tools": Tools,
    "customs": Customs,
    "made": Made,
}


def _each(section: Section, **whole: tuple[str, str]) -> dict[str, Any]:
    """Keys as given, with one for both written as one for each."""
    given = section.given()
    for key, parts in whole.items():
        if key in given:
            value = given.pop(key)
            given.update(dict.fromkeys(parts, value))
    return given


def _rule(section: RuleSection, typed: dict[str, Any], *, text: str, name: str) -> Rule:
    """The rule of a file; which marks there are depends on the units, so it is checked here."""
    given = section.given()
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


def _rooms(section: RoomsSection) -> Rooms:
    usual = Rooms()
    rooms = section.given().items()
    changed = {key: replace(getattr(usual, key), **room.given()) for key, room in rooms}
    return replace(usual, **changed)


def _allowances(section: AllowancesSection) -> Allowances:
    given = section.given()
    parts = tuple(
        (part, Allowance(**given.pop(part).given())) for part in ALLOWED_PARTS if part in given
    )
    return Allowances(**given, parts=parts)
