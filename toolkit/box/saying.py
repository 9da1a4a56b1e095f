"""What is said of a box: each finding is a row of a table, and a check fills its numbers in."""

from __future__ import annotations

from functools import cache
from typing import Any, Self

from toolkit.box.customs import cite
from toolkit.box.design import Design
from toolkit.results import Finding, Place, read_table, said


@cache
def _rows() -> dict[str, dict[str, Any]]:
    return {row["finding"]: row for row in read_table("box/findings.csv")}


class Said(list[Finding]):
    """Findings of one box, in the order in which they are said."""

    def __init__(self, d: Design) -> None:
        super().__init__()
        self._rule = d.choices.rule

    def say(
        self,
        finding: str,
        *,
        at: Place | str | None = None,
        part: str = "",
        corner: str = "",
        where: str = "",
        custom: str = "",
        **values: Any,
    ) -> Self:
        """Say a finding of the table; a number without a format is written as a length. [mm]

        ``custom`` is the key of the custom that it goes against, where that depends on the box.
        """
        row = _rows()[finding]
        if at is None:
            at = Place(row["spot"], part or row["part"], corner, where or row["where"])
        if custom := custom or row["custom"]:
            values["source"] = cite(custom)
        values |= {"part": part, "corner": corner}
        self.append(said(row, at, rule=self._rule, values=values))
        return self
