"""Servers and a browser for the tests: private, on loopback, never left running.

Nothing of the machine's own Jupyter settings is read, and no notebook of the project is written:
JupyterLab works on a copy of the lessons.
"""

import os
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from urllib.error import HTTPError, URLError
from urllib.request import urlopen

from playwright.sync_api import BrowserContext, Page, sync_playwright

from toolkit.room import lab_command, settings_folder
from toolkit.study import lesson_file, lesson_files

ROOT = Path(__file__).parents[2]
PICTURES = ROOT / ".artefacts" / "browser"
# Set to anything, this variable has the tests keep pictures of the pages there.
PHOTOGRAPHS = "WORKBOOK_PHOTOGRAPHS"
NAMES = ("chromium", "chromium-browser", "google-chrome")
# A browser that looks for its maker's servers is noise on a network, and slow without one.
FLAGS = (
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
HERE = ("http://127.0.0.1:", "ws://127.0.0.1:", "data:", "blob:")
# A machine that runs other tests beside these is many times slower than an idle one. [s]
PATIENCE = 90.0


class NoBrowserError(RuntimeError):
    """This machine has no browser to test with; the message says what would do."""


def browser_path() -> str:
    """The system's own browser; none is ever downloaded."""
    for name in NAMES:
        found = shutil.which(name)
        if found:
            return found
    raise NoBrowserError(
        f"no browser to test in: none of {', '.join(NAMES)} is on the PATH; install the system's "
        "package chromium"
    )


def free_port() -> int:
    """A port that nobody listens on at this moment."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@dataclass(frozen=True, slots=True)
class Server:
    """A server that is up: where it answers, its notebooks, the student's folder."""

    url: str
    notebooks: Path
    folder: Path

    def copied(self, name: str) -> str:
        """Lesson 4 under another name: JupyterLab gives each notebook a kernel of its own."""
        shutil.copy(lesson_file("4"), self.notebooks / name)
        return name


def private(home: Path, *, folder: Path) -> dict[str, str]:
    """An environment in which nothing of the user's own Jupyter or IPython is read or written."""
    places = {
        "JUPYTER_CONFIG_DIR": home / "config",
        "JUPYTER_DATA_DIR": home / "data",
        "JUPYTER_RUNTIME_DIR": home / "runtime",
        "JUPYTERLAB_WORKSPACES_DIR": home / "workspaces",
        "IPYTHONDIR": home / "ipython",
        "WORKBOOK_FOLDER": folder,
    }
    for place in places.values():
        place.mkdir(parents=True, exist_ok=True)
    quiet = {"JUPYTER_PLATFORM_DIRS": "1", "JUPYTER_PREFER_ENV_PATH": "1", "NO_COLOR": "1"}
    return os.environ | quiet | {name: str(place) for name, place in places.items()}


def answers(url: str) -> bool:
    """Whether a server answers there by now, be it only to say that one may not come in."""
    try:
        with urlopen(url, timeout=5) as reply:
            return bool(reply.status < 500)
    except HTTPError as error:
        return error.code < 500
    except (URLError, OSError):
        return False


@contextmanager
def running(
    command: Sequence[str], *, url: str, log: Path, environment: dict[str, str]
) -> Iterator[subprocess.Popen[bytes]]:
    """Run a server until the block ends, then end it and the kernels that it started.

    Being ended by another program counts as Ctrl-C meanwhile, so that none is left behind.
    """
    usual = signal.signal(signal.SIGTERM, signal.default_int_handler)
    with log.open("wb") as stream:
        process = subprocess.Popen(
            command, env=environment, stdout=stream, stderr=stream, start_new_session=True, cwd=ROOT
        )
        try:
            until = time.monotonic() + PATIENCE
            while not answers(url):
                if process.poll() is not None or time.monotonic() > until:
                    said = log.read_text(encoding="utf-8", errors="replace")
                    raise RuntimeError(f"no answer from {url}:\n{said[-4000:]}")
                time.sleep(0.1)
            yield process
        finally:
            _end(process)
            signal.signal(signal.SIGTERM, usual)


def _end(process: subprocess.Popen[bytes]) -> None:
    """End a whole group of processes: asked first, then without asking."""
    for how, patience in ((signal.SIGTERM, 8.0), (signal.SIGKILL, 8.0)):
        with suppress(ProcessLookupError):
            os.killpg(process.pid, how)
        with suppress(subprocess.TimeoutExpired):
            process.wait(patience)
    process.wait()


def teaching_files() -> list[Path]:
    """The lessons, and the teacher's own notebook."""
    return [*lesson_files(), ROOT / "instructor_notes" / "class_plan.ipynb"]


@contextmanager
def lab(home: Path) -> Iterator[Server]:
    """JupyterLab on a copy of the lessons, with a student's folder of its own."""
    notebooks, folder = home / "notebooks", home / "student"
    notebooks.mkdir(parents=True)
    for path in teaching_files():
        shutil.copy(path, notebooks)
    environment = private(home, folder=folder)
    environment["JUPYTERLAB_SETTINGS_DIR"] = str(settings_folder(home / "settings"))
    port = free_port()
    command = [
        *lab_command(lesson=None, browser=False, port=port, notebooks=notebooks),
        "--IdentityProvider.token=",
        "--LabApp.expose_app_in_browser=True",
    ]
    url, log = f"http://127.0.0.1:{port}", home / "lab.log"
    with running(command, url=f"{url}/api", log=log, environment=environment):
        yield Server(url, notebooks, folder)


@contextmanager
def shown(home: Path, notebook: Path) -> Iterator[Server]:
    """A notebook or a folder of them without code, with a student's folder of its own."""
    student, port, token = home / "student", free_port(), "by-heart"
    folder, page = (notebook, "") if notebook.is_dir() else (notebook.parent, notebook.name)
    start = (
        "import sys; from pathlib import Path; from toolkit.room import serve; "
        "serve(Path(sys.argv[1]), port=int(sys.argv[2]))"
    )
    url, log = f"http://127.0.0.1:{port}", home / "show.log"
    environment = private(home, folder=student) | {"JUPYTER_TOKEN": token}
    with running(
        [sys.executable, "-c", start, str(folder), str(port)],
        url=f"{url}/voila/static/",
        log=log,
        environment=environment,
    ):
        place = f"voila/render/{page}" if page else ""
        yield Server(f"{url}/{place}?token={token}", folder, student)


@contextmanager
def browser() -> Iterator[BrowserContext]:
    """The system's browser, without a window, as on a laptop of the class."""
    root = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    with sync_playwright() as engine:
        opened = engine.chromium.launch(
            executable_path=browser_path(), headless=True, args=[*FLAGS, *root]
        )
        try:
            # One context for all pages: JupyterLab's scripts are fetched once, as at home.
            yield opened.new_context(viewport={"width": 1280, "height": 900})
        finally:
            opened.close()


@dataclass(slots=True)
class Watched:
    """A page, with what went wrong on it and what it asked of other machines."""

    page: Page
    errors: list[str]
    outside: list[str]


@contextmanager
def watched(opened: BrowserContext) -> Iterator[Watched]:
    """A page of its own."""
    page = opened.new_page()
    seen = Watched(page, [], [])
    page.set_default_timeout(PATIENCE * 1000)
    page.on("pageerror", lambda error: seen.errors.append(str(error)))
    page.on(
        "request",
        lambda request: None if request.url.startswith(HERE) else seen.outside.append(request.url),
    )
    try:
        yield seen
    finally:
        page.close()
