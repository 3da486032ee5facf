"""The name of a file from what somebody typed."""

import re

import pytest

from reporter.files.file_name import file_name

DIGITS = re.compile(r" ?[0-9a-f]{6}(?=\.xlsx$)")


@pytest.mark.parametrize("typed", ["C01", "Zoë 🎣", "a-b c", "12"])
def test_what_every_file_system_takes_is_kept(typed: str) -> None:
    assert file_name(typed, ".xlsx") == f"{typed}.xlsx"


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("a/b\\c:d", "a-b-c-d.xlsx"),
        ("../up", "up.xlsx"),
        ("  .hidden. ", "hidden.xlsx"),
        ("~$lock", "lock.xlsx"),
        ("con", "con.xlsx"),
        ("LPT1", "LPT1.xlsx"),
        ("=A1", "A1.xlsx"),
        ("?", ".xlsx"),
        ("...", ".xlsx"),
        ("a\nb", "a-b.xlsx"),
    ],
)
def test_any_other_name_is_changed_and_carries_digits_of_its_own(typed: str, named: str) -> None:
    made = file_name(typed, ".xlsx")
    assert DIGITS.search(made)
    assert DIGITS.sub("", made) == named


def test_no_two_words_share_a_file_whatever_others_there_are() -> None:
    words = ["~", "$", "a/b", "a\\b", "a-b", "é" * 200, "é" * 201]
    assert len({file_name(word, ".xlsx") for word in words}) == len(words)


@pytest.mark.parametrize("letter", ["a", "é", "🎣"])
def test_long_name_is_cut(letter: str) -> None:
    name = file_name(letter * 300, ".xlsx")
    assert 100 < len(name.encode()) <= 255
    assert set(DIGITS.sub("", name).removesuffix(".xlsx")) == {letter}
