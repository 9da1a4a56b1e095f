"""Lesson 5: what its scenes, tables and workings say."""

import pytest

from tests.boxes import lift_off, postcard
from tests.lesson.showing import both_ends_show, can_be_made
from toolkit.box import Choices
from toolkit.explore import lesson5
from toolkit.lesson.lesson5_box import OILED, finish_table
from toolkit.lesson.scene import ImpossibleError
from toolkit.plan import plan
from toolkit.shape import finishing_areas
from toolkit.smoothing import FinishPlan, check_finish


def test_every_slider_shows_something_at_both_ends(choices: Choices) -> None:
    both_ends_show(lesson5.scenes.values(), choices)


def test_too_little_camber_lets_the_corners_dig() -> None:
    light = lesson5.scenes["light"]
    dug = light.view(postcard(), {"try.camber": 0.02, "try.shaving": 0.1})
    assert any(row.level == "care" for row in dug.findings)
    clean = light.view(postcard(), {"try.camber": 0.2, "try.shaving": 0.02})
    rows = {row[0]: row[1] for row in clean.numbers.rows}
    assert rows["corners of the iron dig"] == "0 mm"


def test_ridges_by_the_arc() -> None:
    rows = {row[0]: row[1] for row in lesson5.scenes["light"].view(postcard()).numbers.rows}
    # 0.06 of camber over 50 is a radius of 5208 mm on the iron, 7365 in the wood at 45°; a shaving
    # of 0.03 is √(8 × 7365 × 0.03) = 42 wide, its tracks 60 % of that apart: 25.2² / 8 / 7365.
    assert rows["ridges between tracks"] == "0.011 mm"


def test_flushing_takes_it_off_the_lap() -> None:
    view = lesson5.scenes["skim"].view(postcard(), {"try.skim": 0.3})
    rows = {row[0]: row[1:3] for row in view.numbers.rows}
    assert rows["lap"] == ("4 mm", "3.7 mm")
    assert rows["lid length"] == ("168 mm", "167.7 mm")
    assert "lap-thin" in {
        row.code for row in lesson5.scenes["skim"].view(postcard(), {"try.skim": 1.5}).findings
    }


def test_a_wall_that_would_be_planed_away_is_a_sentence() -> None:
    thin = postcard().having({"thickness.side": 1.5, "corner.lap": 0.5, "groove.depth": 0.4})
    with pytest.raises(ImpossibleError, match="leaves nothing of a wall"):
        lesson5.scenes["skim"].view(thin, {"try.skim": 2.0})


def test_oil_inside_a_box_for_paper_is_spoken_against() -> None:
    usual, oiled = (
        " ".join(row.sentence for row in check_finish(finish)) for finish in (FinishPlan(), OILED)
    )
    assert "in an order that holds" in usual
    assert "in an order that holds" not in oiled
    assert "paper" in oiled
    assert "rags" in oiled
    note = finish_table(plan(postcard())).note
    assert "Oil marks paper" in note
    assert "catch fire" in note


def test_curly_wood_asks_for_a_closer_cap_iron() -> None:
    edge = lesson5.scenes["cap_iron"]
    assert any(row.level == "care" for row in edge.view(postcard()).findings)
    close = edge.view(postcard(), {"try.setback": 0.2})
    assert all(row.level == "good" for row in close.findings)


def test_everything_on_paper_can_be_made(choices: Choices) -> None:
    cells = "worked light_still edge_still start finish carry"
    can_be_made(lesson5, cells, choices)


def test_a_thinner_tongue_gives_the_lid_play() -> None:
    fit = lesson5.scenes["fit"]
    view = fit.view(postcard(), {"try.tongue": 0.4, "try.edge": 0.5})
    rows = {row[0]: row[1:3] for row in view.numbers.rows}
    assert rows["play up and down"] == ("0.3 mm", "0.7 mm")
    assert rows["play from side to side"] == ("2 mm", "3 mm")
    assert "lid-rattles" in {row.code for row in view.findings}
    snug = fit.view(postcard(), {"try.tongue": 0.2})
    assert "lid-rattles" not in {row.code for row in snug.findings}
    far = fit.view(postcard(), {"try.edge": 2.5})
    assert "drops-out" in {row.code for row in far.findings}
    loose = fit.view(lift_off(), {"try.tongue": 0.4})
    assert [row[0] for row in loose.numbers.rows] == ["the lid"]


def test_a_back_bevel_raises_the_cut_and_a_honed_bevel_only_on_an_iron_turned_over() -> None:
    def cut(**values: object) -> str:
        tried = {f"try.{name}": value for name, value in values.items()}
        rows = lesson5.scenes["edge"].view(postcard(), {"try.bed": 45, **tried}).numbers.rows
        return {row[0]: row[1] for row in rows}["cutting angle"]

    assert cut() == "45°"
    assert cut(back=10) == "55°"
    assert cut(honed=35) == "45°"
    assert cut(bevel="up", bed=12, honed=35) == "47°"
    assert cut(bevel="up", bed=12, honed=35, back=5) == "47°"


def test_a_finish_for_a_class_and_what_is_said_against_it() -> None:
    scene = lesson5.scenes["finishes"]
    usual = scene.view(postcard(), {"try.boxes": 12})
    assert [row[0] for row in usual.numbers.rows] == [
        "shellac, outside and lid",
        "wax, outside and lid",
        "shellac, inside",
        "flakes for the shellac",
    ]
    assert all("for 12 boxes" in row[2] for row in usual.numbers.rows[:3])
    assert {row.code for row in usual.findings} == {"good-finish", "solvents"}
    oiled = scene.view(postcard(), {"try.outside": "oil, then wax", "try.inside": "oil"})
    assert {"oil-beside-paper", "oily-rags"} <= {row.code for row in oiled.findings}
    bare = scene.view(postcard(), {"try.outside": "wax alone", "try.inside": "bare wood"})
    assert [row[0] for row in bare.numbers.rows] == ["wax, outside and lid"]


def test_oil_is_offered_instead_of_shellac_for_the_whole_class() -> None:
    table = finish_table(plan(postcard()))
    oil = next(row for row in table.rows if "oil" in row[0])
    # 0.0538 mL a square centimetre and coat, three coats, a tenth to spare or more.
    area = finishing_areas(plan(postcard()).design).total("outside", "lid")
    assert f"{3 * 53.8196 * area / 1e6:.0f} mL a box" in oil[2]
    assert "for 10 boxes" in oil[2]
