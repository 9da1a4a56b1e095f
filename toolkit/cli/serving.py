"""Starts JupyterLab or the lessons without code, on this machine only."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from toolkit.study import lesson_files, lessons_folder, student_folder

# JupyterLab asks a newcomer whether it may fetch news; a class in a shop without a network need
# not meet that question, nor the check for updates behind it.
QUIET = {
    "@jupyterlab/apputils-extension/notification.jupyterlab-settings": {
        "fetchNews": "false",
        "checkForUpdates": False,
    }
}


def lesson_file(lesson: str) -> Path:
    """A lesson's notebook by its number or a piece of its name.

    Raises
    ------
    ValueError
        No lesson answers to that; the message lists those there are.
    """
    files = lesson_files()
    wanted = lesson.strip().lower()
    for file in files:
        number = file.name[:2].lstrip("0")
        if wanted == number or (not wanted.isdigit() and wanted and wanted in file.stem):
            return file
    names = ", ".join(f"{file.name[:2].lstrip('0')} ({file.stem[3:]})" for file in files)
    raise ValueError(f"there is no lesson {lesson!r}; type one of {names}")


def settings_folder(folder: Path | None = None) -> Path:
    """JupyterLab's settings for the lessons, kept beside the student's own work."""
    folder = folder or student_folder() / ".lab"
    for name, values in QUIET.items():
        plugin, _, file = name.rpartition("/")
        path = folder / plugin / file
        if not path.exists():
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(json.dumps(values), encoding="utf-8")
    return folder


def lab_command(
    *, lesson: str | None, browser: bool, port: int, notebooks: Path | None = None
) -> list[str]:
    """The command that starts JupyterLab on the lessons, or on a folder of copies of them."""
    url = f"/lab/tree/{lesson_file(lesson).name}" if lesson else "/lab"
    command = [
        sys.executable,
        "-m",
        "jupyterlab",
        "--ServerApp.ip=127.0.0.1",
        f"--ServerApp.root_dir={notebooks or lessons_folder()}",
        f"--LabApp.default_url={url}",
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        # In a container everybody is root; the server listens to this machine alone.
        command.append("--allow-root")
    if port:
        command.append(f"--ServerApp.port={port}")
    if not browser:
        command.append("--no-browser")
    return command


def _run(command: list[str], **environment: str) -> int:
    try:
        return subprocess.run(command, env=os.environ | environment, check=False).returncode
    except KeyboardInterrupt:
        return 0


def open_lessons(lesson: str | None, *, browser: bool = True, port: int = 0) -> int:
    """Open the lessons in JupyterLab until it is closed.

    Parameters
    ----------
    lesson : str, optional
        A lesson's number; all of them if left out.
    browser : bool
        Whether to open a browser.
    port : int
        A port, or 0 for JupyterLab's own choice.

    Raises
    ------
    ValueError
        No such lesson.
    """
    command = lab_command(lesson=lesson, browser=browser, port=port)
    print("Opening the lessons. To close them, come back here and press Ctrl-C twice.")
    return _run(command, JUPYTERLAB_SETTINGS_DIR=str(settings_folder()))


def show_environment() -> dict[str, str]:
    """What the server of lessons without code needs to find the workbook's own page template."""
    own = str(Path(__file__).parent / "share")
    return {"JUPYTER_PATH": os.pathsep.join(filter(None, [own, os.environ.get("JUPYTER_PATH")]))}


def show_command(
    *, lesson: str | None, browser: bool, port: int, notebook: Path | None = None
) -> list[str]:
    """The command that serves the lessons, or one notebook, without the code."""
    target = notebook or (lesson_file(lesson) if lesson else lessons_folder())
    command = [
        sys.executable,
        "-m",
        "voila",
        str(target),
        # A lesson keeps the student's own box: it listens to this machine alone.
        "--Voila.ip=127.0.0.1",
        "--VoilaConfiguration.show_tracebacks=True",
        "--VoilaConfiguration.theme=light",
        "--VoilaConfiguration.template=bench",
        "--VoilaConfiguration.classic_tree=True",
    ]
    if port:
        command.append(f"--port={port}")
    if not browser:
        command.append("--no-browser")
    return command


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

    Raises
    ------
    ValueError
        No such lesson.
    """
    command = show_command(lesson=lesson, browser=browser, port=port)
    print("Showing the lessons without code. To close them, press Ctrl-C here.")
    return _run(command, **show_environment())
