"""Guess first: kept, compared, taken back, never lost."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from toolkit.files import FileError
from toolkit.measures import MeasureError, Rule
from toolkit.study import guess, guess_count, reveal, reveal_count, undo_guess
from toolkit.study.guesses import about, bench_things

MM, INCH = Rule.millimetres(), Rule.inches()
LID = "lesson4.lid-length"
ROOT = Path(__file__).resolve().parents[2]


def written(folder: Path) -> dict:
    return json.loads((folder / "guesses.json").read_text(encoding="utf-8"))["guesses"]


def that_counts(folder: Path) -> float | None:
    rows = [row for row in written(folder)[LID]["said"] if not row.get("taken_back")]
    return rows[0]["value"] if rows else None


def test_a_guess_is_read_by_the_door_and_kept(folder):
    kept = guess(LID, '6 5/8"', what="lid length")
    assert kept.sentence == 'Kept: 6 5/8". Now look.'
    assert kept.guess is not None and kept.guess.value == pytest.approx(168.275)
    assert that_counts(folder) == kept.guess.value


def test_a_guess_that_is_no_length_is_refused_and_not_kept(folder):
    with pytest.raises(MeasureError, match='lid length: "170" has no unit'):
        guess(LID, "170", what="lid length")
    assert not (folder / "guesses.json").exists()


def test_the_first_guess_stays_and_later_ones_are_kept_beside_it(folder):
    guess(LID, "160 mm", what="lid length")
    later = guess(LID, "170 mm", what="lid length")
    assert later.guess is not None and later.guess.value == 160.0
    assert "beside your first guess, 160 mm" in later.sentence
    rows = written(folder)[LID]["said"]
    assert [row["said"] for row in rows] == ["160 mm", "170 mm"]
    assert all(re.match(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]", row["when"]) for row in rows)


def test_a_guess_for_the_earlier_example_says_so(folder):
    guess(LID, "160 mm", what="lid length")
    assert "earlier example" not in reveal(LID, answer=168, rule=MM).sentence
    path = folder / "guesses.json"
    kept = json.loads(path.read_text(encoding="utf-8"))
    del kept["guesses"][LID]["said"][0]["example"]
    path.write_text(json.dumps(kept), encoding="utf-8")
    again = guess(LID, "160 mm", what="lid length").sentence
    shown = reveal(LID, answer=168, rule=MM).sentence
    assert all("for the workbook's earlier example" in said for said in (again, shown))
    guess(LID, "170 mm", what="lid length")
    assert [row["example"] for row in written(folder)[LID]["said"]] == [1, 2]


def test_running_the_cell_again_is_no_second_guess(folder):
    for _ in range(3):
        guess(LID, "160 mm", what="lid length")
    assert len(written(folder)[LID]["said"]) == 1


def test_a_slip_of_the_keyboard_can_be_taken_back_but_is_not_rubbed_out(folder):
    guess(LID, "16 mm", what="lid length")
    assert undo_guess(LID).sentence == "Taken back: 16 mm."
    assert that_counts(folder) is None
    assert undo_guess(LID).sentence == "There is no guess to take back."
    guess(LID, "160 mm", what="lid length")
    assert that_counts(folder) == 160.0
    assert [row.get("taken_back", False) for row in written(folder)[LID]["said"]] == [True, False]


def test_undo_takes_the_last_guess_first():
    guess(LID, "160 mm", what="lid length")
    guess(LID, "170 mm", what="lid length")
    left = undo_guess(LID)
    assert left.sentence == "Taken back: 170 mm."
    assert left.guess is not None and left.guess.value == 160.0


def test_once_the_answer_was_shown_the_guess_stays():
    guess(LID, "160 mm", what="lid length")
    reveal(LID, answer=168.0, rule=MM)
    assert "stays as it was" in undo_guess(LID).sentence
    guess(LID, "168 mm", what="lid length")
    again = reveal(LID, answer=168.0, rule=MM)
    assert again.guess is not None and again.guess.value == 160.0 and not again.right


def test_the_answer_is_kept_back_until_there_is_a_guess():
    shown = reveal(LID, answer=168.0, rule=MM)
    assert shown.guess is None and not shown.right
    assert "168" not in shown.sentence and "Guess first" in shown.sentence
    guess(LID, "160 mm", what="lid length")
    assert undo_guess(LID).sentence == "Taken back: 160 mm."


@pytest.mark.parametrize(
    ("typed", "rule", "answer", "far"),
    [
        ("168.2 mm", MM, "168 mm", "0.2 mm too much, about 2 sheets of copy paper."),
        ("167.2 mm", MM, "168 mm", "0.8 mm too little, about the thickness of a bank card."),
        ("170.3 mm", MM, "168 mm", "2.3 mm too much, about the thickness of a 1 euro coin."),
        ("168 mm", MM, "168 mm", "right, as near as your rule can be read."),
        ("6 1/2 in", INCH, "6.614 in", "0.114 in too little, about 4 bank cards."),
    ],
)
def test_a_reveal_says_how_far_off_in_lengths_and_in_things(typed, rule, answer, far):
    guess(LID, typed, what="lid length")
    said = reveal(LID, answer=168.0, rule=rule).sentence
    assert said == f"You guessed {typed} and it is {answer}: {far}"


def test_a_reveal_tells_how_far_off_as_a_number():
    guess(LID, "170 mm", what="lid length")
    shown = reveal(LID, answer=168.0, rule=MM)
    assert shown.off == pytest.approx(2.0) and not shown.right


def test_counts():
    with pytest.raises(MeasureError, match='passes: "a few" is not a count'):
        guess_count("passes", "a few", what="passes")
    guess_count("passes", "12 passes", what="passes")
    shown = reveal_count("passes", answer=16, noun="passes")
    assert shown.sentence == "You guessed 12 and it is 16 passes: 4 too few."
    assert (shown.right, shown.off) == (False, -4.0)
    guess_count("tails", "3", what="tails")
    assert reveal_count("tails", answer=3, noun="tails").right


def test_a_guess_of_another_kind_is_not_compared():
    guess_count("q", "2", what="tails")
    assert reveal("q", answer=2.0, rule=MM).guess is None


DAMAGE = [
    b"",
    b"{",
    b"\xff\xfe",
    b"[]",
    b'{"format": 1}',
    b'{"format": 2, "guesses": {}}',
    b'{"format": 1, "guesses": {"q": {"said": [{"kind": "length"}]}}}',
    b'{"format": 1, "guesses": {"q": {"said": [3]}}}',
    b'{"format": 1, "guesses": {"q": []}}',
    b'{"format": 1, "guesses": {"q": {"said": [], "revealed": 3}}}',
    b'{"format": 1, "guesses": {"q": {"said": '
    b'[{"kind": "length", "said": "", "value": NaN, "when": ""}]}}}',
    b"[" * 100_000,
]


@pytest.mark.parametrize("raw", DAMAGE)
def test_a_damaged_file_of_guesses_is_set_aside_and_a_new_one_begun(folder, raw):
    (folder / "guesses.json").write_bytes(raw)
    kept = guess(LID, "160 mm", what="lid length")
    asides = list(folder.glob("guesses.damaged-*.json"))
    assert [aside.read_bytes() for aside in asides] == [raw]
    assert asides[0].name in kept.notice
    assert that_counts(folder) == 160.0
    assert guess(LID, "170 mm", what="lid length").notice == ""


def test_half_a_character_stops_no_guess(folder):
    lone, sign = "\\ud83d", "\\ud83d\\ude42"
    row = f'{{"kind": "word", "said": "w{lone}", "value": "w{lone}", "when": "{lone}"}}'
    text = f'{{"format": 1, "guesses": {{"q{lone}": {{"said": [{row}], "revealed": "{sign}"}}}}}}'
    (folder / "guesses.json").write_text(text, encoding="utf-8")
    assert guess(LID, "160 mm", what="lid length").notice == ""
    assert written(folder)["q\ufffd"]["said"][0]["said"] == "w\ufffd"
    assert written(folder)["q\ufffd"]["revealed"] == "\N{SLIGHTLY SMILING FACE}"
    typed = guess_count("tails", "3 tails\ud83d", what="tails")
    assert typed.sentence == "Kept: 3 tails\ufffd. Now look."


def test_a_damaged_file_of_guesses_that_nobody_can_move_is_told(folder, monkeypatch):
    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    (folder / "guesses.json").write_bytes(b"{")
    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(FileError, match=r"not the text that the workbook wrote.*Permission denied"):
        guess(LID, "160 mm", what="lid length")


WORKER = """
import sys
from toolkit.study import guess
for number in range(30):
    question = "both" if number % 2 else f"only {sys.argv[1]} {number}"
    guess(question, f"{number + int(sys.argv[1])} mm", what="guess")
"""


def test_two_lessons_at_once_lose_no_guess(folder):
    workers = [
        subprocess.Popen(
            [sys.executable, "-c", WORKER, *job], cwd=ROOT, stderr=subprocess.PIPE, text=True
        )
        for job in (("0",), ("100",))
    ]
    said = [worker.communicate(timeout=60)[1] for worker in workers]
    assert [worker.returncode for worker in workers] == [0, 0], said
    pages = written(folder)
    assert len(pages) == 1 + 2 * 15
    assert len(pages["both"]["said"]) == 2 * 15
    assert not list(folder.glob("*damaged*"))


@pytest.mark.parametrize(
    ("amount", "words"),
    [
        (0.02, "less than the thickness of a sheet of copy paper"),
        (0.1, "about the thickness of a sheet of copy paper"),
        (-0.5, "about 5 sheets of copy paper"),
        (0.76, "about the thickness of a bank card"),
        (1.5, "about 2 bank cards"),
        (7.0, "about the thickness of a pencil"),
        (2000.0, "more than 3 A4 sheets end to end"),
    ],
)
def test_a_length_in_things_on_the_bench(amount, words):
    assert about(amount) == words


def test_the_coin_is_the_reader_s_own():
    assert "euro" in about(2.33, units="mm")
    assert "quarter" in about(1.75, units="in")


def test_every_thing_has_a_size_and_a_source():
    for thing in bench_things():
        assert thing.thickness > 0 and str(thing.source)
        if thing.source.seen == "memory":
            assert "from memory" in str(thing.source)


@given(st.floats(0.05, 900))
def test_what_is_said_is_near_what_it_is(amount):
    words = about(amount)
    found = [
        count * thing.thickness
        for thing in bench_things()
        for count in range(1, thing.most + 1)
        if words == (f"about {thing.name}" if count == 1 else f"about {count} {thing.plural}")
    ]
    assert len(found) == 1
    # The coarsest steps of the table: half a sheet of paper, and beyond the length of two cards.
    assert 0.5 <= amount / found[0] <= 2
    if amount >= 0.15:
        assert found[0] == pytest.approx(amount, rel=0.36)
