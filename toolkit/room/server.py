"""The lessons without code: a server on this machine, for whoever has its address."""

from __future__ import annotations

import logging
import signal
import socket
import webbrowser
from collections.abc import Sequence
from dataclasses import asdict
from html import escape
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Thread
from typing import Any
from urllib.parse import quote

from jupyter_server.auth.decorator import allow_unauthenticated
from jupyter_server.auth.identity import IdentityProvider
from jupyter_server.base.handlers import FileFindHandler, JupyterHandler
from jupyter_server.services.kernels.handlers import KernelHandler
from jupyterlab_server.themes_handler import ThemesHandler
from tornado.httpserver import HTTPServer
from tornado.ioloop import IOLoop
from tornado.web import Application, authenticated
from traitlets.config import Config
from voila.app import Voila
from voila.handler import BaseVoilaHandler
from voila.static_file_handler import MultiStaticFileHandler, TemplateStaticFileHandler
from voila.tornado.handler import TornadoVoilaHandler
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler

from toolkit.room.kernels import EVERY, OPENING, LessonKernels
from toolkit.room.show import HERE
from toolkit.study import so_far

# A name that somebody else's page has bound anew to this machine is none of ours.
HOSTS = r"(127\.0\.0\.1|localhost)$"
# What a lesson's page asks for. Nothing else that Voilà offers is served: no list of what is in
# the folder, and no file of it.
ASKED_FOR = (
    KernelHandler,
    VoilaKernelWebsocketHandler,
    TemplateStaticFileHandler,
    MultiStaticFileHandler,
    ThemesHandler,
    FileFindHandler,
    TornadoVoilaHandler,
)
SETTINGS = {
    "VoilaConfiguration": {
        "template": "bench",
        "theme": "light",
        "allow_template_override": "NO",
        "allow_theme_override": "NO",
        "classic_tree": True,
        "show_tracebacks": True,
        "http_header_envs": ["User-Agent"],  # a phone gets drawings of its own
        "multi_kernel_manager_class": LessonKernels,
    },
    "LessonKernels": {"cull_idle_timeout": OPENING, "cull_interval": EVERY},
    # The cookie ends with the browser: each start has a token of its own.
    "Door": {"cookie_options": {"samesite": "Lax", "expires_days": None}},
}
# Ctrl-C, another program's wish, and the terminal's window closed.
ENDINGS = [
    getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)
]
OPEN = '<!DOCTYPE html><meta charset="utf-8"><meta http-equiv="refresh" content="0;url={}">'
OUTSIDE = """<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>Closed</title></head>
<body><h1>This page is closed</h1><p>Open the whole address that <code>workbook show</code> has
printed where it was started; it is a new one each time.</p></body></html>
"""


class Outside(JupyterHandler):
    """What is told to those who come without the address."""

    @allow_unauthenticated
    def get(self) -> None:
        """Refuse, and say what would do."""
        self.set_status(403)
        self.finish(OUTSIDE)


class FirstPage(BaseVoilaHandler):  # type: ignore[misc]
    """The lessons in their order, with how far the student is in each."""

    @authenticated
    def get(self) -> None:
        """Read it anew: between two looks a lesson may have been worked on."""
        folder = Path(self.contents_manager.root_dir)
        self.set_header("Cache-Control", "no-store")
        self.finish(self.render_template("lessons.html", **asdict(so_far(folder))))


class Door(IdentityProvider):
    """Lets in whoever brings the token of the address, and knows them by a cookie afterwards."""

    def get_handlers(self) -> list[tuple[str, object]]:
        """Where those are sent who are not let in."""
        return [("/login", Outside)]


class LessonServer(Voila):  # type: ignore[misc]
    """Voilà for the lessons alone, on this machine's own names, behind a door."""

    name = "workbook"

    def __init__(self, *, folder: Path, sockets: Sequence[socket.socket], browser: bool) -> None:
        super().__init__(
            root_dir=str(folder),
            ip=HERE,
            port=sockets[0].getsockname()[1],
            open_browser=browser,
            identity_provider_class=Door,
            auto_token=True,
            # Voilà would read, and run, a voila.py that lies where it is started.
            config_file_paths=[],
            # A page that is closed is no warning, and what a page is refused it is told itself.
            log_level=logging.ERROR,
            config=Config(SETTINGS),
        )
        self.sockets = sockets
        self.ioloop = IOLoop.current()

    def address(self, page: str) -> str:
        """The address of a notebook, or of the list, for those who are to come in."""
        token = quote(self.identity_provider.token)
        place = f"voila/render/{quote(page)}" if page else ""
        return f"http://{HERE}:{self.port}/{place}?token={token}"

    def init_handlers(self) -> list[tuple[Any, ...]]:
        """Voilà's own pages, as far as lessons need them."""
        own = [row for row in super().init_handlers() if row[1] in ASKED_FOR]
        first = (self.server_url, FirstPage, {"voila_configuration": self.voila_configuration})
        return [first, *own, *self.identity_provider.get_handlers()]

    def serve(self, page: str) -> None:
        """Answer until Ctrl-C, or until the terminal is closed; then end every kernel."""
        for ending in ENDINGS:
            signal.signal(ending, self._handle_signal_stop)
        with TemporaryDirectory(prefix="workbook-", ignore_cleanup_errors=True) as private:
            self.connection_dir = private
            self.app = Application(**self.init_settings())
            self.app.add_handlers(HOSTS, self.init_handlers())
            HTTPServer(self.app).add_sockets(self.sockets)
            # Windows hears Ctrl-C only between two events: let there be one every few seconds.
            self.kernel_manager.initialize_culler()
            print(self.address(page), flush=True)
            if self.open_browser:
                self._open(page)
            self.ioloop.start()
            for ending in ENDINGS:
                signal.signal(ending, signal.SIG_IGN)
            self.ioloop.run_sync(self.kernel_manager.shutdown_all)

    def _open(self, page: str) -> None:
        """Open a browser by way of a private file: others may read its command line."""
        way = Path(self.connection_dir, "open.html")
        way.write_text(OPEN.format(escape(self.address(page))), encoding="utf-8")
        # A browser in the terminal would hold the server up until it is closed.
        Thread(target=webbrowser.open, args=[way.as_uri()], daemon=True).start()
