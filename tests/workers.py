"""The whole suite runs in three workers at once; anything smaller runs where it is called.

What is driven in a browser mostly waits and keeps one event loop going, so that all of it is one
piece of work, begun first; every other file is another. It goes before the others, which fill two
cores while it waits: a page that is not drawn in time proves nothing. ``-n 0`` runs everything in
one process.
"""

import os
from functools import cache
from typing import Any

import pytest

BROWSER = "tests/browser"
WORKERS = 3
# Options that ask for a part of the suite, or for one process to look into.
PARTS = ("keyword", "markexpr", "collectonly", "usepdb", "lf", "failedfirst", "stepwise")


def pytest_configure(config: pytest.Config) -> None:
    """Share the work between workers where the whole suite was asked for, and nothing else."""
    if hasattr(config, "workerinput"):
        from hypothesis import settings  # slow to load, and not every test needs it

        # What the other workers keep the machine busy with is no fault of a test.
        settings.register_profile("shared", settings(), deadline=None)
        settings.load_profile("shared")
        return
    if config.args_source is not config.ArgsSource.TESTPATHS:
        return
    if getattr(config.option, "numprocesses", 0) is not None:
        return
    if not any(getattr(config.option, name, None) for name in PARTS):
        config.option.numprocesses, config.option.dist = WORKERS, "loadscope"
        config.option.tx = ["popen"] * WORKERS


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """What takes longest is begun first."""
    if hasattr(config, "workerinput"):
        items.sort(key=lambda item: not item.nodeid.startswith(BROWSER))


@cache
def _give_way() -> None:
    """Let what is driven in a browser go before this process."""
    if hasattr(os, "nice"):
        os.nice(5)


def pytest_runtest_setup(item: pytest.Item) -> None:
    """A worker gives way from its first test without a browser."""
    if hasattr(item.config, "workerinput") and not item.nodeid.startswith(BROWSER):
        _give_way()


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
