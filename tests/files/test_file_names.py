"""Names of files from what people typed."""

import pytest

from reporter.files.file_names import file_names


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("C01", "C01.xlsx"),
        ("a/b\\c:d", "a-b-c-d.xlsx"),
        ("../up", "up.xlsx"),
        ("  .hidden. ", "hidden.xlsx"),
        ("~$lock", "lock.xlsx"),
        ("con", "con-.xlsx"),
        ("LPT1", "LPT1-.xlsx"),
        ("=A1", "A1.xlsx"),
        ("?", "client.xlsx"),
        ("...", "client.xlsx"),
        ("Zoë 🎣", "Zoë 🎣.xlsx"),
        ("a\nb", "a-b.xlsx"),
    ],
)
def test_name_is_one_that_every_file_system_takes(typed: str, named: str) -> None:
    assert file_names([typed], ".xlsx") == {typed: named}


def test_no_two_differ_only_by_case() -> None:
    made = file_names(["c1", "C1", "c1?", "C1/"], " x.xlsx")
    assert made == {"c1": "c1 x.xlsx", "C1": "C1 2 x.xlsx", "c1?": "c1- x.xlsx", "C1/": "C1- 2 x.xlsx"}


@pytest.mark.parametrize("letter", ["a", "é", "🎣"])
def test_long_name_is_cut(letter: str) -> None:
    (name,) = file_names([letter * 300], ".xlsx").values()
    assert 100 < len(name.encode()) <= 255
    assert set(name.removesuffix(".xlsx")) == {letter}
