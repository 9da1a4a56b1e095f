"""Markings as tables: the student's sheet, the class's table, a blank rubric."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.classroom.assessment import (
    BANDS,
    PLAY,
    PLAY_LEAST,
    PLAY_MOST,
    PLAY_PASS,
    Assessment,
    Band,
    assess,
    limits,
    word_rows,
)
from toolkit.files import Measured
from toolkit.measures import Rule
from toolkit.results import Table

NOTE = "Bands are customs: common practice, no source. On a limit the better band counts."


def student_sheet(marked: Assessment, *, student: int, title: str = "Postcard box") -> Table:
    """One student's marks."""
    rows = tuple((mark.what, mark.value, mark.band or "", mark.remedy) for mark in marked.marks)
    return Table(
        f"{title}, student {student}",
        ("what", "measured", "band", "what would mend it"),
        rows,
        note=f"{marked.sentence} {NOTE}",
    )


def class_table(marked: Sequence[tuple[int, Assessment]]) -> Table:
    """The whole class, a row for each student."""
    marks = assess(Measured(), rule=Rule.millimetres()).marks
    heads = [mark.key.replace("_", " ") for mark in marks]
    letter: dict[Band | None, str] = {None: "", **dict(zip(BANDS, "EPNR", strict=True))}
    rows = [
        (f"student {number}", *(letter[mark.band] for mark in box.marks)) for number, box in marked
    ]
    # A sheet to be filled by hand has no noughts in it.
    measured = any(box.worst is not None for _, box in marked)
    columns = zip(*(box.marks for _, box in marked), strict=True)
    again = [sum(mark.band == "Rework" for mark in column) for column in columns]
    rows.append(("to rework", *(str(count) if measured else "" for count in again)))
    words = "E excellent, P pass, N acceptable after a note, R rework, empty not measured."
    return Table("The class", ("student", *heads), tuple(rows), note=f"{words} {NOTE}")


def blank_rubric(
    rule: Rule, *, size: tuple[float, float] | None = None, has_lid: bool = True
) -> Table:
    """The rubric with its limits on somebody's rule and room to write."""
    rows: list[tuple[str, ...]] = []
    for row in limits():
        best, good, bad = (
            row.show(v, rule, size=size) for v in (row.excellent, row.passing, row.rework)
        )
        between = f"over {good}, up to {bad}"
        rows.append((row.what, row.measured, f"≤ {best}", f"≤ {good}", between, f"> {bad}", ""))
    least, most, passing = (rule.exact(v) for v in (PLAY_LEAST, PLAY_MOST, PLAY_PASS))
    outside = f"under {least} or over {passing}"
    lid = (PLAY, "push it over, half of the whole", f"{least} to {most}", f"≤ {passing}", outside)
    if has_lid:
        rows.append((*lid, "binds, or drops out", ""))
    for seen in word_rows():
        words = {band: word for word, band in seen.words}
        rows.append((seen.what, "look", *(words.get(band, "") for band in BANDS), ""))
    return Table("Rubric", ("what", "how", *BANDS, "measured"), tuple(rows), note=NOTE)
