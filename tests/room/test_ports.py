"""A port that can't be had is told in one line, before anything is started."""

import socket

import pytest

from toolkit.cli import main


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
