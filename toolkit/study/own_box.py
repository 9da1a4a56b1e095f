"""The student's own box, of which all five lessons speak."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from toolkit.box import Choices
from toolkit.files import BOX, as_toml, edited
from toolkit.measures import Fineness, Rule, Units
from toolkit.study.box_names import current_name, spelled_name
from toolkit.study.folder import example_path, student_folder
from toolkit.study.own_file import OwnFile, bound

_FINENESSES: tuple[Fineness, ...] = ("joints", "sizes", "rough")


@dataclass(frozen=True, slots=True)
class Loaded:
    """A box as the lessons use it.

    ``path`` is the student's own file, or None while it is the workbook's example; ``notice``
    is a sentence to show above the lesson, or empty.
    """

    choices: Choices
    path: Path | None
    notice: str = ""


class OwnBox(OwnFile[Choices, Loaded]):
    """One of the student's own boxes, by its name; without a name, the one chosen last.

    Parameters
    ----------
    name : str, optional
        Letters, digits, ``-`` and ``_``, at most 40; the first one is called ``box``.

    Raises
    ------
    BoxNameError
        No box can have that name.
    """

    kind = BOX

    def __init__(self, name: str | None = None) -> None:
        self.name = current_name() if name is None else spelled_name(name)

    @property
    def path(self) -> Path:
        """The student's own file, whether or not it exists yet."""
        return student_folder() / f"my_{self.name}.toml"

    @property
    def example(self) -> Path:
        """The workbook's example box, or the one that is bound, written out."""
        if self._bound is None:
            return example_path()
        written = student_folder() / "bound.toml"
        written.write_text(as_toml(self._bound), encoding="utf-8")
        return written

    def _given(self, what: Choices, path: Path | None, notice: str = "") -> Loaded:
        return Loaded(what, path, notice)

    def keep(self, changes: Mapping[str, Any]) -> Loaded:
        """Keep changes in the student's own file, which the first change makes.

        Parameters
        ----------
        changes : mapping of str to value
            By key, such as ``groove.depth``; values as in the file, so lengths are text with a
            unit. None takes a key out.

        Raises
        ------
        BoxFileError
            A value can't be read, or the file can't; the file is then as it was.
        """
        return self._change(lambda text: edited(text, changes, name=self.path.name))

    def switch_units(self, units: Units) -> Loaded:
        """Read and write lengths on the other rule, with its usual finenesses; sizes stay."""
        own = self.load()
        if own.choices.rule.units == units:
            return own
        usual = Rule.inches() if units == "in" else Rule.millimetres()
        # Refuses what is no unit at all.
        rule = replace(usual, units=units)
        marks = {f"rule.{name}": rule.exact(rule.mark(name)) for name in _FINENESSES}
        return self.keep({"rule.units": units, **marks})


def bound_to(choices: Choices) -> AbstractContextManager[None]:
    """Inside, this box is the student's own, and the rack is the workbook's example."""
    return bound({OwnBox.__name__: choices})
