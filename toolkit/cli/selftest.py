"""A quick check that everything is installed and reckons right, for the evening before class."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from importlib import import_module

from toolkit.files import read_box
from toolkit.plan import plan
from toolkit.study import example_path

LIBRARIES = ("jupyterlab", "ipywidgets", "voila", "matplotlib", "pint", "numpy", "scipy")


@dataclass(frozen=True, slots=True)
class Check:
    """One thing looked at: whether it is right, and what was found."""

    name: str
    right: bool
    found: str


def _library(name: str) -> Check:
    try:
        module = import_module(name)
    except ImportError as error:
        return Check(name, False, f"can't be imported ({error}); install the workbook again")
    return Check(name, True, str(getattr(module, "__version__", "found")))


def selftest() -> Iterator[Check]:
    """Look at the libraries, the example box and a sum that is known.

    Yields
    ------
    Check
        One line each, in order.
    """
    for name in LIBRARIES:
        yield _library(name)
    try:
        made = plan(read_box(example_path()))
        length = made.part("lid").length.value
    except (ValueError, OSError, KeyError) as error:
        yield Check("the example box", False, str(error))
        return
    yield Check(
        "the example box", made.works and abs(length - 168.0) < 1e-9, f"lid {length:g} mm long"
    )
