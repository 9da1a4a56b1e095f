"""``workbook rescue``: words as typed, the page, and the exit status."""

from pathlib import Path

import pytest

from toolkit.cli import main

BOX = str(Path(__file__).parents[2] / "lessons" / "box.toml")


@pytest.mark.parametrize(
    "words",
    [
        ["front_length=125.2mm"],
        ["front_length=125.2 mm"],
        ["front_length", "125.2 mm"],
        ["front-length", "125.2", "mm"],
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
