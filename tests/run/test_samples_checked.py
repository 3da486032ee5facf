"""The samples through the whole flow: what is planted is found, and nothing else."""

from collections import Counter
from pathlib import Path

import pytest

from reporter.run.season import Reading, read_season
from tests.demo import make
from tests.demo.mistakes import PLANTED, PLANTED_STOPS


def read(name: str) -> Reading:
    return read_season(make.SAMPLES / name)


def found(reading: Reading) -> Counter[tuple[str, int, str]]:
    return Counter((p.sheet, row, p.code) for p in reading.problems for row in p.rows or (0,))


def test_clean_season_has_no_problem_at_all() -> None:
    assert not read(make.CLEAN).problems


def test_season_with_mistakes_shows_every_planted_one_and_only_those() -> None:
    expected = Counter((mistake.sheet, mistake.row, mistake.code) for mistake in PLANTED)
    assert found(read(make.MESSY)) == expected


def test_season_with_mistakes_still_gives_a_season() -> None:
    assert read(make.MESSY).season is not None


def test_season_that_stops_shows_all_its_stops_at_once() -> None:
    reading = read(make.STOPS)
    stops = Counter((problem.sheet, problem.row, problem.code) for problem in reading.stops)
    expected = Counter((m.sheet, m.row, m.code) for m in PLANTED_STOPS if m.effect == "stop")
    assert stops == expected
    assert reading.season is None


def test_log_saved_by_a_real_spreadsheet_program_reads_without_a_problem() -> None:
    reading = read(make.METRIC)
    assert not reading.problems
    assert reading.season is not None
    assert reading.season.system == "metric"


@pytest.mark.parametrize("path", sorted(make.SAMPLES.glob("demo season*.xlsx")), ids=lambda path: path.stem)
def test_every_row_of_every_sheet_is_accounted_for(path: Path) -> None:
    if path.stem.endswith(" report"):
        pytest.skip("a report that someone built beside the samples")
    for count in read_season(path).counts.values():
        assert count.read == count.used + count.set_aside + count.blank + count.not_rows
