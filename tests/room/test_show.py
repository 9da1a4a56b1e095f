"""The lessons without code: who is let in, what a page may do, and which kernels are kept."""

import asyncio
import json
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path
from uuid import uuid4

import nbformat
import pytest
from jupyter_client.session import Session
from tornado.httpclient import HTTPClientError, HTTPRequest
from tornado.websocket import websocket_connect

# A busy machine is many times slower than an idle one. [s]
PATIENCE = 90.0
# The same server with less patience for pages that are closed or never opened.
START = """
import sys
from pathlib import Path
from toolkit.room import kernels, serve
kernels.OPENING, kernels.CLOSED, kernels.EVERY = 15, 1, 1
serve(Path(sys.argv[1]))
"""
SESSION = Session(session="a")
PAGE = "/voila/render/01_small.ipynb"
CELL = (
    "import os, ipywidgets; print(f'pid={os.getpid()}'); ipywidgets.IntSlider(description='secret')"
)


@dataclass
class Shown:
    """A server that is up, with its process, its address and the cookie of whoever is let in."""

    process: subprocess.Popen[str]
    home: Path
    address: str
    cookie: str = ""
    never_opened: tuple[str, int] = ("", 0)

    @property
    def port(self) -> int:
        return int(re.search(r":(\d+)/", self.address)[1])  # type: ignore[index]

    @property
    def token(self) -> str:
        return self.address.partition("?")[2]

    def get(self, path: str, *, name: str = "127.0.0.1", cookie: str = "") -> HTTPResponse:
        """An answer, read to its end."""
        asked = HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        asked.request("GET", path, headers={"Host": f"{name}:{self.port}", "Cookie": cookie})
        answer = asked.getresponse()
        answer.text = answer.read().decode()  # type: ignore[attr-defined]
        return answer

    def page(self) -> tuple[str, int]:
        """Open a lesson: its kernel, and that kernel's process."""
        text = self.get(PAGE, cookie=self.cookie).text  # type: ignore[attr-defined]
        kernel = re.search(r'"kernelId": "([\w-]+)"', text)
        process = re.search(r"pid=(\d+)", text)
        assert kernel and process, text[-2000:]
        return kernel[1], int(process[1])

    def has(self, kernel: str) -> bool:
        return self.get(f"/api/kernels/{kernel}", cookie=self.cookie).status == 200

    def channels(self, kernel: str, **headers: str) -> HTTPRequest:
        host = headers.setdefault("Host", f"127.0.0.1:{self.port}")
        headers.setdefault("Origin", f"http://{host}")
        url = f"ws://127.0.0.1:{self.port}/api/kernels/{kernel}/channels?session_id=a"
        return HTTPRequest(url, headers={k: v for k, v in headers.items() if v})


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shown]:
    home = tmp_path_factory.mktemp("show")
    book = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(CELL)])
    (home / "lessons").mkdir()
    nbformat.write(book, home / "lessons" / "01_small.ipynb")
    (home / "lessons" / "my_box.toml").write_text("", encoding="utf-8")
    nbformat.write(book, home / "outside.ipynb")
    temporary = home / "temporary"
    temporary.mkdir()
    with subprocess.Popen(
        [sys.executable, "-c", START, str(home / "lessons")],
        stdout=subprocess.PIPE,
        text=True,
        env=os.environ | {"TMPDIR": str(temporary)},
    ) as process:
        assert process.stdout
        assert "Ctrl-C" in process.stdout.readline()
        server = Shown(process, home, process.stdout.readline().strip())
        try:
            first = server.get(f"/?{server.token}")
            assert first.status == 200
            server.cookie = first.headers["Set-Cookie"].partition(";")[0]
            server.never_opened = server.page()
            yield server
        finally:
            process.terminate()


def _alive(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def test_who_has_not_the_address_is_told_what_to_open(shown: Shown) -> None:
    for path in ("/", PAGE, f"{PAGE}?token=0123456789abcdef", f"/api/kernels/{uuid4()}"):
        for cookie in ("", "username-127-0-0-1=forged", shown.cookie[:-3]):
            answer = shown.get(path, cookie=cookie)
            assert answer.status in (302, 403), (path, cookie)
            assert "Set-Cookie" not in answer.headers or "expires" in answer.headers["Set-Cookie"]
    closed = shown.get(shown.get("/").headers["Location"])
    assert closed.status == 403
    assert "workbook show" in closed.text  # type: ignore[attr-defined]


def test_the_list_and_nothing_else_of_the_folder(shown: Shown) -> None:
    listed = shown.get("/", cookie=shown.cookie)
    assert listed.status == 200
    assert PAGE in listed.text  # type: ignore[attr-defined]
    for path in (
        "/voila/files/my_box.toml",
        "/voila/api/contents/",
        "/api/contents/",
        "/api/kernels",
        "/api/sessions",
        "/voila/render/02_none.ipynb",
        "/voila/render/..%2foutside.ipynb",
        "/voila/render/../outside.ipynb",
        "/voila/static/../my_box.toml",
    ):
        assert shown.get(path, cookie=shown.cookie).status in (403, 404), path
    missing = shown.get("/voila/render/02_none.ipynb", cookie=shown.cookie)
    assert "https://" not in missing.text  # type: ignore[attr-defined]


def test_another_name_for_this_machine_is_not_answered(shown: Shown) -> None:
    kernel, _ = shown.page()
    for path in (
        "/",
        f"/?{shown.token}",
        PAGE,
        "/login",
        "/voila/static/voila.js",
        "/api/kernels/" + kernel,
    ):
        assert shown.get(path, name="localhost", cookie=shown.cookie).status != 404, path
        for name in (
            "rebound.example",
            "127.0.0.1.rebound.example",
            "localhost.example",
            "10.0.0.7",
        ):
            assert shown.get(path, name=name, cookie=shown.cookie).status == 404, (path, name)


def test_only_its_own_page_reads_the_sliders_and_it_runs_no_code(shown: Shown) -> None:
    kernel, _ = shown.page()
    proof = shown.home / "proof"

    def message(kind: str, channel: str = "shell", **content: object) -> str:
        return json.dumps(SESSION.msg(kind, content) | {"channel": channel}, default=str)

    async def refused(**headers: str) -> int:
        try:
            (await websocket_connect(shown.channels(kernel, **headers))).close()
        except HTTPClientError as problem:
            return problem.code
        return 101

    async def told(connection, kind: str) -> dict:  # type: ignore[no-untyped-def, type-arg]
        while True:
            text = await asyncio.wait_for(connection.read_message(), PATIENCE)
            read = json.loads(text)
            assert read["header"]["msg_type"] not in ("execute_reply", "error", "stream")
            if read["header"]["msg_type"] == kind:
                return read

    async def talk() -> None:
        assert await refused() == 403
        assert await refused(Cookie="username-127-0-0-1=forged") == 403
        assert await refused(Cookie=shown.cookie, Origin="http://other.example") == 403
        assert (
            await refused(Cookie=shown.cookie, Origin=f"http://127.0.0.1:{shown.port + 1}") == 403
        )
        assert await refused(Cookie=shown.cookie, Origin="null") == 403
        assert await refused(Cookie=shown.cookie, Host="rebound.example") == 404
        own = await websocket_connect(shown.channels(kernel, Cookie=shown.cookie))
        code = f"open({str(proof)!r}, 'w')"
        for channel in ("shell", "control", "stdin"):
            run = {"silent": False, "store_history": False, "user_expressions": {}}
            own.write_message(message("execute_request", channel, code=code, **run))
            asked = {"command": "evaluate", "arguments": {"expression": code}}
            own.write_message(message("debug_request", channel, **asked))
        own.write_message(message("comm_info_request"))
        reply = await told(own, "comm_info_reply")
        assert len(reply["content"]["comms"]) >= 3  # the slider, its layout and its style
        own.close()

    asyncio.run(talk())
    assert not proof.exists()


def test_kernels_end_with_their_pages(shown: Shown) -> None:
    never_opened, first = shown.never_opened
    closed, second = shown.page()
    kept, third = shown.page()

    async def gone(kernel: str) -> float:
        started = time.monotonic()
        while shown.has(kernel):
            assert time.monotonic() < started + PATIENCE
            await asyncio.sleep(0.2)
        return time.monotonic() - started

    async def visit() -> None:
        staying = await websocket_connect(shown.channels(kept, Cookie=shown.cookie))
        leaving = await websocket_connect(shown.channels(closed, Cookie=shown.cookie))
        leaving.close()
        assert await gone(closed) < 12  # sooner than a page that may still be opened
        await gone(never_opened)
        assert shown.has(kept)
        staying.close()

    asyncio.run(visit())
    assert not _alive(first)
    assert not _alive(second)
    assert _alive(third)


def test_ctrl_c_leaves_nothing_behind(shown: Shown) -> None:
    _, kernel = shown.page()
    shown.process.send_signal(signal.SIGINT)
    assert shown.process.wait(PATIENCE) == 0
    assert not _alive(kernel)
    assert list((shown.home / "temporary").iterdir()) == []
