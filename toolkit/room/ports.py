"""The port of this machine that a server listens on."""

from __future__ import annotations

import errno
from socket import socket

from tornado.netutil import bind_sockets

# A lesson keeps the student's own box: servers listen to this machine alone.
HERE = "127.0.0.1"


def listening(port: int) -> list[socket]:
    """Listen on a port of this machine; 0 is whichever is free.

    Raises
    ------
    ValueError
        There is no such port, or it can't be had; the message says what to type.
    """
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
