"""Lid and bottom by stage: blanks now, and the sums that fit them later."""

from tests.boxes import postcard
from toolkit.plan import panel_stages, plan


def test_panels_are_fitted_from_the_box_as_it_is() -> None:
    rows = {row[0]: row for row in panel_stages(plan(postcard())).rows}
    assert rows["lid length"][2] == "168 mm"
    ends = postcard().having({"made.back_length": 125.0, "made.groove_depth": 4.2})
    fitted = {row[0]: row for row in panel_stages(plan(ends)).rows}
    # An end of 125 with tails of 8 leaves 109; two grooves of 4.2, less 2.
    assert fitted["lid width"][2] == "115.4 mm"
    assert "109 inside width" in fitted["lid width"][3]


def test_a_panel_that_is_made_keeps_its_size() -> None:
    table = panel_stages(plan(postcard().having({"made.lid_width": 115.0})))
    assert "keeps its size" in table.note
    assert next(row for row in table.rows if row[0] == "lid width")[2] == "115 mm"
