"""Which keys of a box file exclude or need one another."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from toolkit.files.checking import Fault
from toolkit.files.errors import shown

_EXAMPLES = {"length": "152 mm", "width": "110 mm", "height": "38 mm"}


def faults_between(values: dict[str, Any]) -> Iterator[Fault]:
    """Everything wrong between keys that may each be right, as (path, what to say).

    Parameters
    ----------
    values : dict
        What the file says, as plain values.

    Returns
    -------
    iterator of (path, str)
        The key to change and the sentence.

    Source
    ------
    The workbook's own.
    """
    if "size" in values:
        yield from _size(_section(values, "size"))
    yield from _corner(_section(values, "corner"))
    yield from _whole_or_each(_section(values, "panels"), "panels", "across", _ACROSS)
    wood = _section(values, "wood")
    for whole, each in (("walls", ("sides", "ends")), ("panels", ("bottom", "lid"))):
        yield from _whole_or_each(wood, "wood", whole, each)
        yield from _both_or_neither(wood, "wood", each)


_ACROSS = ("bottom_across", "lid_across")


def _section(values: dict[str, Any], name: str) -> dict[str, Any]:
    section = values.get(name)
    # A section that is none is the schema's to refuse.
    return section if isinstance(section, dict) else {}


def _size(size: dict[str, Any]) -> Iterator[Fault]:
    for axis, example in _EXAMPLES.items():
        inside, outside = f"inside_{axis}", f"outside_{axis}"
        if inside in size and outside in size:
            yield (
                ("size", outside),
                f"read {shown(size[outside])}: {inside} is given too; keep one of the two",
            )
        if {inside, outside}.isdisjoint(size) and (axis == "height" or "contents" not in size):
            yield (
                ("size", inside),
                f'it is missing, and so is {outside}; type one, {inside} = "{example}"',
            )
    if "ease" in size and "contents" not in size:
        yield (
            ("size", "ease"),
            f"read {shown(size['ease'])}: ease is room beside contents, and there are none; "
            'type contents = "A6 cards" too',
        )


def _corner(corner: dict[str, Any]) -> Iterator[Fault]:
    if corner.get("joint") == "through":
        for key in ("lap", "tail_length"):
            if key in corner:
                yield (
                    ("corner", key),
                    f"read {shown(corner[key])}: a through joint has no lap and its tails are as "
                    'long as the wall is thick; take it out or type joint = "half-blind"',
                )
    elif "lap" in corner and "tail_length" in corner:
        yield (
            ("corner", "tail_length"),
            f"read {shown(corner['tail_length'])}: lap is given too, and each follows from the "
            "other; keep one of the two",
        )


def _whole_or_each(
    section: dict[str, Any], name: str, whole: str, each: tuple[str, str]
) -> Iterator[Fault]:
    """Either one key for both or a key for each."""
    for key in each:
        if whole in section and key in section:
            yield (
                (name, key),
                f"read {shown(section[key])}: {whole} is given too and stands for "
                f"{each[0]} and {each[1]}; keep {whole} or these two",
            )


def _both_or_neither(section: dict[str, Any], name: str, each: tuple[str, str]) -> Iterator[Fault]:
    for key, other in (each, each[::-1]):
        if key in section and other not in section:
            yield (
                (name, key),
                f"read {shown(section[key])}: {other} is missing beside it; "
                f'type {other} = "…" too, or one wood for both',
            )
