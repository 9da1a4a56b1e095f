"""Shows the lessons without code, on this machine only."""

from __future__ import annotations

import errno
import os
from pathlib import Path
from socket import socket

from tornado.netutil import bind_sockets

from toolkit.study import lesson_file, lessons_folder

USUAL_PORT = 8866


def show_lessons(lesson: str | None, *, browser: bool = True, port: int = 0) -> int:
    """Serve the lessons without code cells until stopped; an error in a cell is shown at once.

    Parameters
    ----------
    lesson : str, optional
        A lesson's number; a list of them if left out.
    browser : bool
        Whether to open a browser.
    port : int
        A port, or 0 for the server's own choice.

    Returns
    -------
    int
        The exit status, 0.

    Raises
    ------
    ValueError
        No such lesson, or a port that can't be had.
    """
    page = lesson_file(lesson).name if lesson else ""
    serve(lessons_folder(), page=page, browser=browser, port=port)
    return 0


def serve(folder: Path, *, page: str = "", browser: bool = False, port: int = 0) -> None:
    """Serve a folder's notebooks without their code until stopped.

    Parameters
    ----------
    folder : Path
        Where the notebooks are.
    page : str
        The notebook to open; the list of them if left out.
    browser : bool
        Whether to open a browser.
    port : int
        A port; 0 for the usual one, or another if that is busy.

    Raises
    ------
    ValueError
        The port can't be had.
    """
    try:
        sockets = listening(port or USUAL_PORT)
    except ValueError:
        if port:
            raise
        sockets = listening(0)
    print("Showing the lessons without code. To close them, press Ctrl-C here.", flush=True)
    # Where Voilà looks for page templates.
    places = str(Path(__file__).parent / "share"), os.environ.get("JUPYTER_PATH", "")
    os.environ["JUPYTER_PATH"] = os.pathsep.join(filter(None, places))
    try:
        from toolkit.room.server import LessonServer

        server = LessonServer.instance(folder=folder, sockets=sockets, browser=browser)
        server.initialize([])
        server.serve(page)
    except KeyboardInterrupt:
        return  # pressed while it was still starting


# A lesson keeps the student's own box: servers listen to this machine alone.
HERE = "127.0.0.1"


def listening(port: int) -> list[socket]:
    """Listen on a port of this machine; 0 is whichever is free."""
    if not 0 <= port <= 65535:
        raise ValueError(
            f"there is no port {port}; type a number from 1 to 65535, or leave --port out"
        )
    try:
        return bind_sockets(port, HERE)
    except OSError as problem:
        taken = problem.errno == errno.EADDRINUSE
        why = "is in use by another program" if taken else f"can't be had ({problem.strerror})"
        raise ValueError(f"port {port} {why}; type another, or leave --port out") from problem
