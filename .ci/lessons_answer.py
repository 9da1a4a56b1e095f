"""Sees the lessons that ``workbook open`` serves answer, and stops them.

Usage: ``lessons_answer.py LOG PROCESS``, what the command prints and its process.
"""

import json
import os
import re
import sys
import time
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import Request, urlopen

# Installing comes first, on a machine that may be slow. [s]
PATIENCE = 1200.0


def _address(log: Path, process: int) -> tuple[str, str]:
    """The address that is printed for people to open, and its token."""
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        found = re.search(r"(http://127\.0\.0\.1:\d+)/lab\?token=(\w+)", log.read_text("utf-8"))
        if found:
            return found[1], found[2]
        try:
            os.kill(process, 0)
        except ProcessLookupError:
            raise SystemExit("the command ended before it printed an address") from None
        time.sleep(0.5)
    raise SystemExit(f"no address to open within {PATIENCE:g} s")


def _answer(address: str, token: str = "", method: str = "GET") -> str:
    headers = {"Authorization": f"token {token}"} if token else {}
    with urlopen(Request(address, headers=headers, method=method), timeout=60) as answer:
        text: str = answer.read().decode()
        return text


def main() -> None:
    """Ask as a browser would: the page, the lessons in it, and once without the token."""
    server, token = _address(Path(sys.argv[1]), int(sys.argv[2]))
    if "jupyter-config-data" not in _answer(f"{server}/lab?token={token}"):
        raise SystemExit("the page of the lessons is not JupyterLab's")
    served = {
        file["name"] for file in json.loads(_answer(f"{server}/api/contents", token))["content"]
    }
    missing = {file.name for file in Path("lessons").glob("*.ipynb")} - served
    if missing:
        raise SystemExit(f"not served: {', '.join(sorted(missing))}")
    try:
        _answer(f"{server}/api/contents")
    except HTTPError as error:
        if error.code != 403:
            raise
    else:
        raise SystemExit("the lessons answer without their token")
    _answer(f"{server}/api/shutdown", token, "POST")
    print(f"{len(served)} files served at {server}, and stopped.")


main()
