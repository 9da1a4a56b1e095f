"""Lid and bottom as solids through the year: they neither burst the box nor leave it."""

from dataclasses import replace

import pytest

from tests.boxes import ears, inch_postcard, postcard
from tests.oracle.designs import ARRANGEMENTS
from tests.oracle.faults import VOLUME
from tests.oracle.motion import held
from tests.oracle.shapes import overlap
from tests.oracle.solids import Solids, build
from toolkit.box import Choices
from toolkit.plan import Plan, as_data, plan


def _season(made: Plan, which: str) -> Solids:
    """The box with its grooved panels as wide as they are in the damp or in the dry."""
    design = made.design
    s = build(as_data(made), design.choices)
    panels, sizes = dict(s.panels), dict(s.facts.panels)
    middle = s.facts.width / 2
    for panel in design.grooved:
        name = panel.name
        change = panel.swelling if which == "damp" else -panel.shrinking
        share = 1 + change / panel.width.value
        moved = s.panels[name].translate((0, -middle, 0)).scale((1, share, 1))
        panels[name] = moved.translate((0, middle, 0))
        sizes[name] = replace(sizes[name], width=sizes[name].width * share)
    return replace(s, panels=panels, facts=replace(s.facts, panels=sizes))


def _overlaps(s: Solids) -> float:
    names = [name for name in ("bottom", "lid") if name in s.panels]
    return max(overlap(s.panels[name], wall) for name in names for wall in s.walls.values())


@pytest.mark.parametrize("make", [postcard, inch_postcard, ears])
def test_the_examples_hold_through_the_year(make) -> None:  # type: ignore[no-untyped-def]
    made = plan(make())
    assert not {row.code for row in made.findings} & {"swells-tight", "drops-out"}
    damp, dry = _season(made, "damp"), _season(made, "dry")
    assert _overlaps(damp) <= VOLUME
    for name in ("bottom", "lid"):
        assert [text for text in held(dry, name) if "comes" in text] == []
        assert [text for text in held(damp, name) if "comes" in text] == []


def test_a_tight_panel_is_found_by_its_solid() -> None:
    tight = plan(postcard().having({"panels.bottom_across": 1.0, "panels.lid_across": 1.0}))
    assert "swells-tight" in {row.code for row in tight.findings}
    assert _overlaps(_season(tight, "damp")) > VOLUME


def test_a_narrow_panel_leaves_its_groove() -> None:
    loose = plan(postcard().having({"panels.bottom_across": 3.6, "panels.lid_across": 3.6}))
    assert "drops-out" in {row.code for row in loose.findings}
    dry = _season(loose, "dry")
    assert [text for text in held(dry, "bottom") if "comes" in text]


def _works(choices: Choices) -> Plan | None:
    made = plan(choices)
    sliding = made.design.exists and made.design.sliding_lid is not None
    return made if sliding and made.works and made.design.choices.panels.grain == "along" else None


def test_random_boxes_that_are_said_to_hold_do() -> None:
    from tests.oracle.designs import random_box

    seen = 0
    for arrangement in ARRANGEMENTS:
        for seed in range(60):
            made = _works(random_box(arrangement, seed))
            if made is None:
                continue
            seen += 1
            damp, dry = _season(made, "damp"), _season(made, "dry")
            assert _overlaps(damp) <= VOLUME, (arrangement, seed)
            for name in ("bottom", "lid"):
                left = [text for text in held(dry, name) if "comes" in text]
                assert left == [], (arrangement, seed)
    assert seen > 40
