"""A rescue as plain data: what ``workbook rescue --json`` prints, for other programs to read."""

from __future__ import annotations

from typing import Any

from toolkit.box import written
from toolkit.measures import Rule
from toolkit.plan.contract import finding_data
from toolkit.plan.rescue.option import Option, Weights
from toolkit.plan.rescue.rescue import Rescue


def rescue_data(found: Rescue) -> dict[str, Any]:
    """A rescue as dictionaries and lists of numbers and text.

    Every length is in mm, unrounded, but for ``box_file``: there each is text as a file has it, and
    a key that is to be taken out of the file is None.
    """
    mishap, rule = found.mishap, found.plan.choices.rule
    return {
        "title": found.plan.choices.title,
        "fingerprint": found.plan.fingerprint,
        "mishap": {
            "what": mishap.what,
            "value": mishap.value,
            "meant": found.meant,
            "stage": mishap.reached,
            "corner": mishap.corner,
            "tail": mishap.tail,
        },
        "message": found.sentence(rule),
        "saved": found.saved,
        "weights": {"part": found.weights.part, "looks": found.weights.looks},
        "options": [
            {"rank": rank, **_option(option, rule, found.weights)}
            for rank, option in enumerate(found.options, 1)
        ],
    }


def _option(option: Option, rule: Rule, weights: Weights) -> dict[str, Any]:
    costs = option.costs
    return {
        "code": option.code,
        "words": option.words,
        "works": option.works,
        "sizes": [
            {"name": name, "meant": before, "now": after} for name, before, after in option.sizes
        ],
        "changes": dict(option.changes),
        "box_file": written(option.changes, rule=rule),
        "findings": [finding_data(row) for row in option.news("wont_work", "care")],
        "costs": {
            "minutes": costs.minutes,
            "parts": costs.parts,
            "looks": costs.looks,
            "wait": costs.wait,
            "total": costs.total(weights),
        },
        "source": option.source,
    }
