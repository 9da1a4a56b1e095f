"""A quick check that everything is installed and reckons right, for the evening before class."""

from __future__ import annotations

from collections.abc import Iterator

from toolkit.libraries import Check, in_short, library_checks


def _lid_length() -> float:
    """The length of the example's lid, if the example works. [mm]"""
    # A broken library is told by its own check before anything of the workbook loads it.
    from toolkit.files import read_box
    from toolkit.plan import plan as planned
    from toolkit.study import example_path

    plan = planned(read_box(example_path()))
    return plan.part("lid").length.value if plan.works else 0.0


def checks() -> Iterator[Check]:
    """Look at the libraries, the example box and a sum that is known."""
    yield from library_checks()
    try:
        length = _lid_length()
    except Exception as error:  # whatever a broken library raises
        yield Check("the example box", False, in_short(error))
        return
    yield Check("the example box", abs(length - 168.0) < 1e-9, f"lid {length:g} mm long")
