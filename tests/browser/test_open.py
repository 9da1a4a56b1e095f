"""``workbook open``: JupyterLab comes up, and asks no newcomer about news."""

import re
import sys
import time
from pathlib import Path

from playwright.sync_api import BrowserContext

from tests.browser import harness
from tests.browser.harness import PATIENCE

NEWS = "lab/api/settings/@jupyterlab/apputils-extension:notification"


def _address(log: Path) -> str:
    """The address that JupyterLab prints for people to open, token included."""
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        found = re.search(r"http://127\.0\.0\.1:\d+/lab\?token=\w+", log.read_text("utf-8"))
        if found:
            return found[0]
        time.sleep(0.1)
    raise AssertionError(f"no address to open in {log.read_text('utf-8')}")


def test_open_comes_up_and_asks_for_no_news(opened: BrowserContext, tmp_path: Path) -> None:
    port, log = harness.free_port(), tmp_path / "open.log"
    url = f"http://127.0.0.1:{port}"
    command = [sys.executable, "-m", "toolkit.cli", "open", "--no-browser", "--port", str(port)]
    environment = harness.private(tmp_path, folder=tmp_path / "student")
    with (
        harness.running(command, url=f"{url}/api", log=log, environment=environment),
        harness.watched(opened) as watched,
    ):
        page, asked = watched.page, []
        page.on("request", lambda request: asked.append(request.url))
        page.goto(_address(log))
        page.locator("#jp-top-panel").wait_for()
        page.get_by_text("04_groove_layout.ipynb").first.wait_for()
        page.wait_for_load_state("networkidle")
        answer = page.request.get(f"{url}/{NEWS}")
        assert '"fetchNews": "false"' in answer.json()["raw"]
        page.wait_for_timeout(1000)
        assert page.locator(".jp-Dialog, .jp-Notification-Toast").count() == 0
        assert [one for one in asked if "/lab/api/news" in one or "/lab/api/update" in one] == []
        assert watched.outside == []
        assert watched.errors == []
