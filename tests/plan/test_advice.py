"""Every remedy is true: made as a change to the box it is given for, it cures its finding."""

import os
from collections import Counter

from tests.oracle.designs import ARRANGEMENTS, random_box
from toolkit.box import told
from toolkit.measures import Rule
from toolkit.plan import Plan, plan
from toolkit.results import Place

MANY = 1000 if os.environ.get("WORKBOOK_MANY_BOXES") == "1" else 100


def bad(made: Plan, *levels: str) -> set[tuple[str, Place]]:
    return {(row.code, row.place) for row in made.found if row.level in levels}


def test_each_remedy_cures_its_finding_and_makes_nothing_impossible() -> None:
    said, in_words = Counter[str](), Counter[str]()
    for seed in range(MANY):
        box = random_box(ARRANGEMENTS[seed % len(ARRANGEMENTS)], seed)
        if seed % 2:
            box = box.having({"rule": Rule.inches()})
        made = plan(box)
        for row in made.findings:
            if row.level == "good":
                continue
            said[row.code] += 1
            assert row.remedy, (seed, row)
            if not row.cures:
                in_words[row.code] += 1
                continue
            (change,) = row.cures
            assert row.remedy == told(change, rule=box.rule)
            there = plan(box.having(change))
            assert (row.code, row.place) not in bad(there, "wont_work", "care"), (seed, row)
            assert bad(there, "wont_work") <= bad(made, "wont_work"), (seed, row)
    # Where a part is made already no key helps, and the remedy says so in words.
    assert in_words.total() < 0.05 * said.total(), in_words
    assert len(said) > 15
