"""Nothing is said of seasons in which everything is right, however they are kept."""

import pytest

from reporter.run.season import Reading, read_season
from tests.mistakes.other_habits import write_other_habits


@pytest.fixture(scope="module")
def reading(tmp_path_factory: pytest.TempPathFactory) -> Reading:
    return read_season(write_other_habits(tmp_path_factory.mktemp("habits") / "log.xlsx"))


def test_season_of_other_habits_has_no_problem_at_all(reading: Reading) -> None:
    assert [problem.message for problem in reading.problems] == []


def test_season_of_other_habits_is_read_to_the_last_row(reading: Reading) -> None:
    """Hours and fish counted by hand: 4.5 + 5.75 + 4.75 + 5 + 4.5 h, with 2, 2, 2, 1 and 3 rods."""
    assert reading.season is not None
    season = reading.season
    assert season.trips["boat_hours"].tolist() == [4.5, 5.75, 4.75, 5.0, 4.5]
    assert season.pairs["rod_hours"].sum() == pytest.approx(2 * (4.5 + 5.75 + 4.75) + 5 + 3 * 4.5)
    assert season.pairs["landed"].sum() == 2 + 1 + 1 + 0 + 2
    assert season.fish["length_mm"].dropna().tolist() == [415, 380, 445, 520, 250]
    assert season.techniques["technique"].tolist() == [
        *("Swim jig", "Swing jig", "Ned rig", "Neko rig", "Crankbait 5", "Crankbait 10", "Tube"),
    ]


def test_blank_rows_between_are_counted_as_blank(reading: Reading) -> None:
    blank = {key: count.blank for key, count in reading.counts.items()}
    assert blank == {"Season": 0, "Trips": 2, "Effort": 1, "Catch": 1, "Documents": 0}
