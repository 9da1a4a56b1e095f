"""Keys of a box file of which a section has one or the other; ``Key.of`` tells of the rest."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.choices import CornerChoice, Size


@dataclass(frozen=True, slots=True)
class Either:
    """Two keys of a section, of which a file has one.

    Attributes
    ----------
    section : type
        The section's record.
    keys : (str, str)
        The two.
    why : str
        Why there can't be both, if that needs saying.
    example : str
        A value of the first; where there is one, one of the two is needed.
    unless : str
        A key that stands in for either.
    never : (str, str, str), optional
        A key, the value with which there is neither, and why.
    """

    section: type
    keys: tuple[str, str]
    why: str = ""
    example: str = ""
    unless: str = ""
    never: tuple[str, str, str] | None = None


EITHER = (
    Either(Size, ("inside_length", "outside_length"), example="152 mm", unless="contents"),
    Either(Size, ("inside_width", "outside_width"), example="110 mm", unless="contents"),
    Either(Size, ("inside_height", "outside_height"), example="38 mm"),
    Either(
        CornerChoice,
        ("lap", "tail_length"),
        why=", and each follows from the other",
        never=(
            "joint",
            "through",
            "a through joint has no lap and its tails are as long as the wall is thick; "
            'take it out or type joint = "half-blind"',
        ),
    ),
)
