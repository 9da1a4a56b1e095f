"""The command ``workbook``; where its own libraries are broken, it says which."""

from __future__ import annotations

import sys
from collections.abc import Iterator

from toolkit.libraries import AGAIN, Check, in_short, library_checks, report

BROKEN, CANT_START = 1, 2


def _checks(error: BaseException) -> Iterator[Check]:
    yield from library_checks()
    yield Check("the commands", False, f"can't be loaded ({in_short(error)}); {AGAIN}")


def main() -> int:
    """Run one command, or tell why none can be run.

    Returns
    -------
    int
        The exit status.
    """
    try:
        from toolkit.cli import main as run
    except KeyboardInterrupt:
        raise
    except BaseException as error:  # whatever a broken library raises
        if sys.argv[1:2] == ["selftest"]:
            report(_checks(error))
            return BROKEN
        words = f"can't be started ({in_short(error)}); 'workbook selftest' shows what is broken"
        print(f"workbook: {words}", file=sys.stderr)
        return CANT_START
    return run()


if __name__ == "__main__":
    raise SystemExit(main())
