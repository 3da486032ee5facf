"""How text is broken into lines: a number keeps its unit, and nothing typed gives orders."""

from pathlib import Path

import pytest

from reporter.cli.lines import clean, cut, quoted, wrapped

SENTENCES = {
    "409 fish in 697 rod-hours on 59 trips: one fish per rod every 1 h 42.": (
        "409 fish",
        "697 rod-hours",
        "59 trips:",
        "every 1 h 42.",
    ),
    "25 of 60 fished dates lay behind a front (day 1 or 2).": ("25 of 60 fished", "(day 1 or 2)."),
    "Row not used; rows 68, 70 and 71 of Effort (3 of them) are 50 to 60 °F.": (
        "rows 68,",
        "70 and 71 of",
        "(3 of",
        "50 to 60 °F.",
    ),
    "its stints add to 24.8 rod-hours; 2 rods in 7 h give 14.0.": (
        "24.8 rod-hours;",
        "2 rods",
        "in 7 h",
        "give 14.0.",
    ),
}
"""Sentence -> what belongs together in it, by reading."""


@pytest.mark.parametrize("columns", range(30, 81))
@pytest.mark.parametrize("sentence", SENTENCES)
def test_number_stands_on_one_line_with_the_words_beside_it(sentence: str, columns: int) -> None:
    lines = wrapped(sentence, columns)
    assert " ".join(lines) == sentence
    assert max(map(len, lines)) <= columns
    for together in SENTENCES[sentence]:
        assert any(together in line for line in lines), (together, lines)


def test_row_of_numbers_without_end_is_broken_where_the_line_ends() -> None:
    text = " ".join(str(number) for number in range(100, 200))
    lines = wrapped(text, 40)
    assert " ".join(lines) == text
    assert max(map(len, lines)) <= 40


def test_further_lines_are_indented_and_a_long_path_stays_whole() -> None:
    path = "/a/path/that/is/longer/than/the/window/report.xlsx"
    assert wrapped(f"It is in {path} now.", 30, "  ", "    ") == ["  It is in", f"    {path}", "    now."]


def test_nothing_gives_an_empty_line() -> None:
    assert wrapped("", 80) == [""]
    assert wrapped("", 80, "  label") == ["  label"]


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("red \x1b[31mfish", "red [31mfish"),
        ("\x9b2Jbass", "2Jbass"),
        ("two\nlines\tand a\rreturn", "two lines and areturn"),
        ("turned \u202efish\u202c", "turned fish"),
        ("name \udcff.xlsx", "name �.xlsx"),
        ("Łódź 鱸 “jig”", "Łódź 鱸 “jig”"),
    ],
)
def test_what_a_terminal_would_obey_is_taken_out(typed: str, shown: str) -> None:
    assert clean(typed) == shown


def test_text_is_cut_with_a_sign_that_says_so() -> None:
    assert cut("Mushroom-head rig", 17) == "Mushroom-head rig"
    assert cut("Mushroom-head rig", 9) == "Mushroom…"


@pytest.mark.parametrize(
    ("system", "name", "typed"),
    [
        ("posix", "my season.xlsx", '"my season.xlsx"'),
        ("posix", "guide's log.xlsx", '"guide\'s log.xlsx"'),
        ("posix", "cost $5.xlsx", "'cost $5.xlsx'"),
        ("nt", "cost $5.xlsx", '"cost $5.xlsx"'),
    ],
)
def test_path_is_quoted_as_it_is_typed(
    system: str, name: str, typed: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = Path(name)
    monkeypatch.setattr("reporter.cli.lines.os.name", system)
    assert quoted(path) == typed
