"""Whose the logs of a folder are, and how many guides there are for it."""

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

import pytest

from tests.rollup_logs import WATERS, Day, GuideLog, save_all
from tests.run.rolled import contents, rolled, table


def logs_of(said: Sequence[tuple[str | None, str | None]]) -> list[GuideLog]:
    """A log with one trip on a day of its own for each code and name."""
    return [
        GuideLog(code, [Day(dt.date(2026, 6, day), "Lake Arden")], WATERS, name=name)
        for day, (code, name) in enumerate(said, start=1)
    ]


def test_guides_are_called_by_code_else_by_the_number_of_a_log(tmp_path: Path) -> None:
    said = [("G 1", None), (None, None), ("g-1", None), (None, "Pat"), ("guide 4", None), (None, "pat.")]
    save_all(logs_of(said), tmp_path / "logs")
    made = rolled(tmp_path / "logs", tmp_path / "out").made
    assert (made.guides, made.unknown) == (3, 1)
    rows = table(tmp_path / "out" / "tables", "guide_effort")
    assert [(row["guide"], row["logs"], row["trips"]) for row in rows] == [
        ("G 1", "2", "2"),
        ("log 2, guide not known", "1", "1"),
        ("guide 4", "2", "2"),
        ("guide 4 (log 5)", "1", "1"),
    ]
    effort = table(tmp_path / "out" / "tables", "rollup_effort")
    assert [(row["by"], row["guides"], row["trips"]) for row in effort if row["by"] in ("all", "water")] == [
        ("all", "3", "6"),
        ("water", "3", "6"),
    ]


def test_guide_is_called_by_a_code_that_a_later_log_of_his_has(tmp_path: Path) -> None:
    save_all(logs_of([(None, "Pat"), ("G7", "Pat")]), tmp_path / "logs")
    rolled(tmp_path / "logs", tmp_path / "out")
    (row,) = table(tmp_path / "out" / "tables", "guide_effort")
    assert (row["guide"], row["logs"], row["trips"]) == ("G7", "2", "2")


@pytest.mark.parametrize(
    "said",
    [
        [(None, "Pat Smith")] * 3,
        [(None, "Pat Smith"), ("G1", "Pat Smith"), ("G1", None), ("G2", None)],
        [(None, None), ("G1", None), ("G2", None), (None, None)],
        [(None, "Outfit"), ("G1", "Outfit"), ("G2", "Outfit")],
    ],
)
def test_logs_of_fewer_than_three_guides_are_told_nowhere(
    said: Sequence[tuple[str | None, str | None]], tmp_path: Path
) -> None:
    save_all(logs_of(said), tmp_path / "logs")
    assert not rolled(tmp_path / "logs", tmp_path / "out").made.told
    assert table(tmp_path / "out" / "tables", "rollup_effort") == []


def test_log_that_says_whose_another_is_changes_the_guides_of_both(tmp_path: Path) -> None:
    """Log 1 is Pat's; once log 5 says that Pat is G1, it is of the guide of log 2."""
    logs = logs_of([(None, "Pat"), ("G1", None), ("G2", None), ("G3", None), ("G1", "Pat")])
    save_all(logs[:4], tmp_path / "logs")
    assert rolled(tmp_path / "logs", tmp_path / "out").made.guides == 4
    logs[4].save(tmp_path / "logs" / "log 05.xlsx")
    done = rolled(tmp_path / "logs", tmp_path / "out")
    assert (done.kept, done.read, done.made.guides) == (4, 1, 3)
    rolled(tmp_path / "logs", tmp_path / "anew")
    assert contents(tmp_path / "out") == contents(tmp_path / "anew")
