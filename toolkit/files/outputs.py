"""Checks where a command is to write before it works: no output replaces what the command reads."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from contextlib import suppress
from os import PathLike
from pathlib import Path as FilePath

from toolkit.files.errors import FileError, Problem, plain

Place = str | PathLike[str]


def check_output(path: Place, *, inputs: Iterable[Place], endings: Sequence[str]) -> None:
    """Refuse an output that is an input, no ordinary file, in no folder to write to or misnamed."""
    place = FilePath(path)
    instead = f"type another name that ends in {' or '.join(endings)}"
    spare_inputs([place], inputs=inputs, instead=instead)
    if place.is_dir():
        _refuse(place, f"this is a folder; {instead}")
    if os.path.lexists(place) and not place.is_file():
        kind = "a link to no file" if place.is_symlink() else "not an ordinary file"
        _refuse(place, f"this is {kind}; {instead}")
    if place.suffix.lower() not in endings:
        _refuse(place, f"what is written here has another ending; {instead}")
    _check_parent(place)


def check_output_folder(path: Place) -> None:
    """Refuse an output folder that is a file, or that can't be made where it is wanted."""
    place = FilePath(path)
    if place.is_dir():
        return
    if os.path.lexists(place):
        _refuse(place, "this is no folder; type the name of a folder, which may be new")
    _check_parent(place)


def spare_inputs(outputs: Iterable[Place], *, inputs: Iterable[Place], instead: str) -> None:
    """Refuse to go on where one of the outputs would replace one of the inputs."""
    read = set().union(*map(_identity, inputs))
    for output in outputs:
        if read & _identity(output):
            _refuse(FilePath(output), f"this file is read here and must stay as it is; {instead}")


def _identity(path: Place) -> set[object]:
    """What two names of one file have in common, through links of both kinds."""
    # The real name counts too: an input that is missing today may be there tomorrow.
    found: set[object] = {os.path.realpath(path)}
    with suppress(OSError):
        status = os.stat(path)
        found.add((status.st_dev, status.st_ino))
    return found


def _check_parent(place: FilePath) -> None:
    folder = place.parent
    if not folder.is_dir():
        _refuse(place, f"there is no folder {folder}; make it first or check its name")
    if not os.access(folder, os.W_OK):
        _refuse(place, f"the folder {folder} can't be written to; choose another")


def _refuse(place: FilePath, said: str) -> None:
    raise FileError(str(place), [Problem("", plain(said, longest=300))])
