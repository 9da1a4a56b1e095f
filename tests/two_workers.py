"""The whole suite runs in two workers at once; anything smaller runs where it is called.

What is driven in a browser mostly waits and keeps one event loop going, so that all of it is one
piece of work, begun first; every other file is another. ``-n 0`` runs everything in one process.
"""

from __future__ import annotations

from typing import Any

import pytest

BROWSER = "tests/browser"
# Options that ask for a part of the suite, or for one process to look into.
PARTS = ("keyword", "markexpr", "collectonly", "usepdb", "lf", "failedfirst", "stepwise")


def pytest_configure(config: pytest.Config) -> None:
    """Share the work between two where the whole suite was asked for, and nothing else."""
    if hasattr(config, "workerinput"):
        from hypothesis import settings  # slow to load, and not every test needs it

        # What the other worker keeps the machine busy with is no fault of a test.
        settings.register_profile("shared", settings(), deadline=None)
        settings.load_profile("shared")
        return
    if config.args_source is not config.ArgsSource.TESTPATHS:
        return
    if getattr(config.option, "numprocesses", 0) is not None:
        return
    if not any(getattr(config.option, name, None) for name in PARTS):
        config.option.numprocesses, config.option.dist = 2, "loadscope"
        config.option.tx = ["popen"] * 2


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """What takes longest is begun first."""
    if hasattr(config, "workerinput"):
        items.sort(key=lambda item: not item.nodeid.startswith(BROWSER))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """Hand out the browser's tests whole, and the others file by file in their order."""
    from xdist.scheduler import LoadScopeScheduling

    class OneBrowser(LoadScopeScheduling):
        def _split_scope(self, nodeid: str) -> str:
            file = nodeid.partition("::")[0]
            return BROWSER if file.startswith(BROWSER) else file

    config.option.loadscopereorder = False
    return OneBrowser(config, log)
