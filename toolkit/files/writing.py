"""Writes files so that none is ever half written, and nobody's change is lost to another's."""

from __future__ import annotations

import os
import re
import secrets
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from datetime import datetime
from math import inf
from os import PathLike
from pathlib import Path as FilePath
from typing import NoReturn

from filelock import FileLock, Timeout

from toolkit.files.errors import FileError, Problem, plain

BACKUPS_KEPT = 20
BACKUP_FOLDER = ".backup"
# A change takes hundredths of a second; who waits this long waits for something that hangs.
PATIENCE = 10.0
# No writer takes this long; what is older was left behind by one who was killed. [s]
_STALE = 3600.0


@contextmanager
def locked(
    path: str | PathLike[str], *, error: type[FileError], patience: float | None = None
) -> Iterator[FilePath]:
    """Hold a file, which need not exist yet, against other writers; gives the file behind any link.

    ``patience`` is how long to wait for another writer. [s]

    Raises
    ------
    FileError
        Somebody else holds the file for longer, or the folder cannot be written to.
    """
    target = FilePath(os.path.realpath(path))
    if not target.parent.is_dir():
        said = f"there is no folder {target.parent}; make it first or check its name"
        raise error(target.name, [Problem("", plain(said, longest=200))])
    lock = FileLock(target.with_name(f".{target.name}.lock"), poll_interval=0.01)
    try:
        lock.acquire(timeout=PATIENCE if patience is None else patience)
    except Timeout:
        said = "another program is changing it just now; close that or try again in a moment"
        raise error(target.name, [Problem("", said)]) from None
    except (OSError, ValueError) as problem:
        _not_written(target, problem, error)
    try:
        clear_left(target)
        yield target
    finally:
        lock.release()


def write_file(path: FilePath, content: bytes, *, error: type[FileError], called: str = "") -> None:
    """Put something in the place of a file, wholly or not at all; its rights are kept.

    Hold its lock where others write to it too. ``called`` is the file that it belongs to, by the
    name that the reader of a message knows.

    Raises
    ------
    FileError
        It could not be written; the old file is as it was.
    """
    new = path.with_name(f".{path.name}.{secrets.token_hex(6)}.tmp")
    try:
        # Made with the rights of any new file, which the folder and the user's mask decide.
        with open(new, "xb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        _sweep(path, older_than=_STALE, now=new.stat().st_mtime)
        if path.exists():
            new.chmod(path.stat().st_mode & 0o7777)
        os.replace(new, path)
        _settle(path.parent)
    except OSError as problem:
        _not_written(path, problem, error, called=called)
    finally:
        with suppress(OSError):
            new.unlink(missing_ok=True)


def clear_left(path: FilePath) -> None:
    """Clear what killed writers left of a file: nobody else writes to it, for we hold its lock."""
    _sweep(path, older_than=-inf, now=0.0)


def keep_backup(path: FilePath, *, error: type[FileError]) -> None:
    """Keep a file, whose lock is held, in the folder of backups, and let go of the oldest."""
    kept = backups(path)
    # A running number orders them, for clocks are set back.
    number = 1 + (_number(path, kept[-1]) if kept else 0)
    stamp = datetime.now().strftime("%Y%m%dT%H%M%S")
    folder = path.parent / BACKUP_FOLDER
    try:
        folder.mkdir(exist_ok=True)
        name = f"{path.stem}-{number:06d}-{stamp}{path.suffix}"
        write_file(folder / name, path.read_bytes(), error=error, called=path.name)
        for old in kept[: max(len(kept) + 1 - BACKUPS_KEPT, 0)]:
            old.unlink(missing_ok=True)
    except OSError as problem:
        _not_written(path, problem, error, called=path.name)


def backups(path: FilePath) -> list[FilePath]:
    """The backups of a file, oldest first."""
    folder = path.parent / BACKUP_FOLDER
    if not folder.is_dir():
        return []
    mine = [kept for kept in folder.iterdir() if _number(path, kept)]
    return sorted(mine, key=lambda kept: _number(path, kept))


def _number(path: FilePath, kept: FilePath) -> int:
    """The running number of one of a file's backups; 0 for anything else."""
    match = re.fullmatch(_backup_pattern(path), kept.name)
    return int(match[1]) if match else 0


def _backup_pattern(path: FilePath) -> str:
    """The names of a file's backups, with their number as a group."""
    return rf"{re.escape(path.stem)}-(\d{{6,}})-\d{{8}}T\d{{6}}{re.escape(path.suffix)}"


def _sweep(path: FilePath, *, older_than: float, now: float) -> None:
    """Clear what was left half written of a file and of its backups. [s]"""
    undone = re.escape(f"{path.stem}-undone{path.suffix}")
    for folder, names in (
        (path.parent, re.escape(path.name)),
        (path.parent / BACKUP_FOLDER, f"{_backup_pattern(path)}|{undone}"),
    ):
        pattern = re.compile(rf"\.(?:{names})\.[0-9a-f]{{12}}\.tmp")
        # To clear up is not what was asked for: where it can't be done, it stays undone.
        with suppress(OSError):
            for left in folder.iterdir():
                if pattern.fullmatch(left.name) and now - left.stat().st_mtime > older_than:
                    left.unlink(missing_ok=True)


def _settle(folder: FilePath) -> None:
    """Have the folder's new entry reach the disk, where the system can do that."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def _not_written(
    path: FilePath, problem: Exception, error: type[FileError], *, called: str = ""
) -> NoReturn:
    why = getattr(problem, "strerror", None) or str(problem)
    said = f"it could not be written ({why}) and is as it was; check its folder and try again"
    if called:
        said = f"its backup could not be written ({why}), so it is as it was; check its folder"
    raise error(called or path.name, [Problem("", said)]) from problem


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
