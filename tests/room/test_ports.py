"""What can't be had is told in one line: a port before anything is started, an extension beside."""

import socket
import sys
from pathlib import Path

import pytest

from toolkit.cli import main
from toolkit.room import lab


@pytest.mark.parametrize("command", ["open", "show"])
def test_a_port_that_cannot_be_had(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        taken = other.getsockname()[1]
        for port, why in ((-1, "no port -1"), (65536, "no port 65536"), (taken, "in use")):
            assert main([command, "--no-browser", "--port", str(port)]) == 2
            told = capsys.readouterr()
            assert told.out == ""
            assert len(told.err.splitlines()) == 1, told.err
            assert why in told.err and "--port" in told.err


def test_an_extension_that_is_missing(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(lab, "lab_command", lambda **_: [sys.executable, "-c", ""])
    for missing in (False, True):
        if missing:
            monkeypatch.setattr(lab, "STARTS", tmp_path / "package.json")
        assert main(["open", "--no-browser"]) == 0
        told = capsys.readouterr().err
        assert told.count("\n") == missing
    assert str(tmp_path) in told and "Run All Cells" in told
