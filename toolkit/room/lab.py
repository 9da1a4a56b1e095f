"""Starts JupyterLab on the lessons, on this machine only."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from toolkit.room.show import HERE, listening
from toolkit.study import lesson_file, lessons_folder, student_folder

# JupyterLab asks a newcomer whether it may fetch news; a class in a shop without a network need
# not meet that question, nor the check for updates behind it.
QUIET = {"fetchNews": "false", "checkForUpdates": False}
QUIET_FILE = "@jupyterlab/apputils-extension/notification.jupyterlab-settings"
# What has a lesson run when it is opened. It lies apart from the pages without code, which run by
# themselves and would load it too.
EXTENSIONS = Path(__file__).parent / "share" / "lab"
STARTS = EXTENSIONS / "workbook-lessons" / "package.json"
BY_HAND = (
    "no lesson will start by itself. Choose Run, Run All Cells in each; to cure it, fetch the "
    "workbook again, whole, and install it"
)


def settings_folder(folder: Path | None = None) -> Path:
    """JupyterLab's settings for the lessons, kept beside the student's own work."""
    folder = folder or student_folder() / ".lab"
    path = folder / QUIET_FILE
    if not path.exists():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(QUIET), encoding="utf-8")
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
        f"--ServerApp.ip={HERE}",
        f"--ServerApp.root_dir={notebooks or lessons_folder()}",
        f"--LabApp.default_url={url}",
        f"--LabServerApp.extra_labextensions_path={EXTENSIONS}",
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        # In a container everybody is root; the server listens to this machine alone.
        command.append("--allow-root")
    if port:
        # JupyterLab would silently take another if this one is busy.
        command += [f"--ServerApp.port={port}", "--ServerApp.port_retries=0"]
    if not browser:
        command.append("--no-browser")
    return command


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

    Returns
    -------
    int
        JupyterLab's exit status.

    Raises
    ------
    ValueError
        No such lesson, or a port that can't be had.
    """
    command = lab_command(lesson=lesson, browser=browser, port=port)
    for free in listening(port):
        free.close()
    settings = {"JUPYTERLAB_SETTINGS_DIR": str(settings_folder())}
    if not STARTS.is_file():
        print(f"{STARTS} is missing: {BY_HAND}", file=sys.stderr, flush=True)
    print("Opening the lessons. To close them, come back here and press Ctrl-C twice.", flush=True)
    with subprocess.Popen(command, env=os.environ | settings) as lab:
        while True:
            try:
                return lab.wait()
            except KeyboardInterrupt:
                # Meant for JupyterLab, which asks back and ends itself at the second one.
                continue
