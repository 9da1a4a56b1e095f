"""``workbook rescue``: words as typed, the page, and the exit status."""

import json
from pathlib import Path

import pytest

from toolkit.cli import main
from toolkit.files import read_box
from toolkit.files.editing import edited
from toolkit.plan import plan
from toolkit.results import AXES

CLASS = str(Path(__file__).parents[2] / "instructor_notes" / "class.toml")
BOX = str(Path(__file__).parents[2] / "lessons" / "box.toml")


@pytest.mark.parametrize(
    "words",
    [
        ["front_length=125.2mm"],
        ["front_length=125.2 mm"],
        ["front_length", "125.2 mm"],
        ["front-length", "125.2", "mm"],
        ["front", "length", "125.2 mm"],
        ["Front end length 125.2 mm"],
    ],
)
def test_all_ways_to_type_a_size(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rescue", BOX, *words, "--stage", "jointed"]) == 0
    page = " ".join(capsys.readouterr().out.split())
    assert "Front length 125.2 mm, meant 126 mm: 0.8 mm under." in page
    assert "lid width 116 mm → 115.2 mm" in page
    assert 'made.front_length = "125.2 mm"' in page
    assert page.index("1. ") < page.index("2. ")
    assert "customs, no source" in page


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["frnt_length=125mm"], "front_length"),
        (["front"], "type front_length or front_thickness or front_width\n"),
        (["front", "end", "long"], "type front_length or front_thickness or front_width\n"),
        (["left", "side", "lid", "tight"], "leave the part out"),
        (["front_length=125 mm", "--stage", "glued"], "type fitted or an earlier one"),
        (["thickness=11mm"], "back_thickness or bottom_thickness or front_thickness"),
        (
            ["lid"],
            "type lid_cupped or lid_length or lid_play or lid_rattle or lid_thickness or lid_tight",
        ),
        (["lap", "--json"], "type lap_through\n"),
        (["front_length=125"], '"125 mm"'),
        (["front_length"], "needs its length"),
        (["lap_through", "3 mm"], "without a length"),
        (["lid_tight", "--stage", "rough"], "type fitted"),
        (["tail_wrong_side=1mm", "--tail", "9"], "3 tails"),
    ],
)
def test_what_cannot_be_read(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["rescue", BOX, *words]) == 2
    out, err = capsys.readouterr()
    assert not out and said in err and err.count("\n") == 1


def test_a_box_that_is_none(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bad = tmp_path / "box.toml"
    text = Path(BOX).read_text(encoding="utf-8").replace('inside_length = "152 mm"',
                                                         'outside_length = "10 mm"')  # fmt: skip
    bad.write_text(text, encoding="utf-8")
    assert main(["rescue", str(bad), "lid_tight"]) == 1
    assert "no such box" in capsys.readouterr().err


def test_one_of_a_pair_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    told = [
        data(capsys, *words)["mishap"]
        for words in (
            ["left side thickness 11.4 mm"],
            ["left_side_thickness=11.4mm"],
            ["left-side-thickness", "11.4 mm"],
            ["sides thickness 11.4 mm"],
            ["left side lap through"],
            ["back end tear-out 0.4 mm"],
        )
    ]
    side = ("side_thickness", "left side", 11.4)
    rows = [(row["what"], row["part"], row["value"]) for row in told]
    assert rows == [side, side, side, ("side_thickness", "", 11.4),
                    ("lap_through", "left side", None), ("tear_out", "back end", 0.4)]  # fmt: skip


def test_a_students_box_of_a_class(capsys: pytest.CaptureFixture[str]) -> None:
    """Student 4 of the example class measures in inches; each line says one thing that follows."""
    assert main(["rescue", CLASS, "--student", "4", "front length 4 7/8 in"]) == 0
    page = capsys.readouterr().out
    assert "Front length 4 7/8 in, meant 5 in" in page and " mm" not in page
    lines = [line for line in page.splitlines() if line.startswith("   Then: ")]
    assert len(lines) > 3 and all(line.count("→") == 1 for line in lines)
    assert main(["rescue", CLASS, "--student", "99", "lid_tight"]) == 2
    assert "the class has 1, 2" in capsys.readouterr().err
    assert main(["rescue", CLASS, "lid_tight"]) == 2
    assert capsys.readouterr().err.endswith("is a class file; type --student and a number\n")


def data(capsys: pytest.CaptureFixture[str], *words: str) -> dict:  # type: ignore[type-arg]
    main(["rescue", BOX, *words, "--json"])
    return json.loads(capsys.readouterr().out)  # type: ignore[no-any-return]


def test_data_in_millimetres(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, "front_length=4 59/64 in", "--stage", "jointed")
    told = found["mishap"]
    assert told["what"] == "front_length" and told["stage"] == "jointed"
    assert told["meant"] == 126.0 and told["value"] == pytest.approx(125.015625)
    assert found["saved"] and found["options"][0]["works"]
    assert [option["rank"] for option in found["options"]] == [1, 2]
    first, second = found["options"]
    assert first["costs"]["total"] < second["costs"]["total"]
    sizes = {row["name"]: (row["meant"], row["now"]) for row in first["sizes"]}
    assert sizes["lid width"] == (116.0, pytest.approx(116 - 0.984375))
    assert first["changes"]["made.front_length"] == told["value"]
    assert first["changes"]["made.side_length"] == pytest.approx(176.4)
    assert second["costs"]["parts"] == 1 and second["changes"] == {} and second["sizes"] == []


def test_what_the_data_writes_into_a_file_makes_that_box(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = data(capsys, "side_thickness=11.4 mm", "--stage", "grooved")
    text = Path(BOX).read_text(encoding="utf-8")
    for option in found["options"]:
        path = tmp_path / f"{option['code']}.toml"
        path.write_text(edited(text, option["box_file"], name=path.name), encoding="utf-8")
        made = plan(read_box(path))
        assert made.works == option["works"]
        new = {row.code for row in made.findings if row.level != "good"}
        assert {row["code"] for row in option["findings"]} <= new
        for row in option["sizes"]:
            part, _, axis = row["name"].rpartition(" ")
            if part in ("side", "back", "front", "bottom", "lid"):
                assert made.part(part).cut[AXES.index(axis)].value == pytest.approx(row["now"])


def test_what_wont_work_is_in_the_data_too(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, "side_thickness=4 mm")
    bad = [option for option in found["options"] if not option["works"]]
    assert bad and all(
        any(row["level"] == "wont_work" for row in option["findings"]) for option in bad
    )
    assert [option["works"] for option in found["options"]] == sorted(
        (option["works"] for option in found["options"]), reverse=True
    )
