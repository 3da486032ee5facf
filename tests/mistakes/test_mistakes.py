"""Each of the 44 entry mistakes is recognised, does what it must and no more, and is said in good words."""

import textwrap
from collections.abc import Iterable
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner

from reporter.cli.main import cli
from reporter.run.season import Reading, read_season
from reporter.schema.problems import CELL_CODES, EFFECTS, Problem
from tests.mistakes.season import write_season
from tests.mistakes.table import MISTAKES, OTHERS, STOPPING, Found, Mistake

Book = tuple[Path, Reading]


def written(mistakes: Iterable[Mistake], path: Path) -> Path:
    mistakes = tuple(mistakes)
    marks = {
        mark: [cell for each in mistakes for cell in getattr(each, mark)]
        for mark in ("merged", "hidden", "struck", "commented")
    }
    return write_season(path, [each.typed for each in mistakes], **marks)


@pytest.fixture(scope="module")
def others(tmp_path_factory: pytest.TempPathFactory) -> Book:
    path = written(OTHERS, tmp_path_factory.mktemp("mistakes") / "log.xlsx")
    return path, read_season(path)


@pytest.fixture(scope="module")
def stopping(tmp_path_factory: pytest.TempPathFactory) -> Book:
    path = written(STOPPING, tmp_path_factory.mktemp("mistakes") / "log.xlsx")
    return path, read_season(path)


def found_in(reading: Reading) -> list[tuple[object, ...]]:
    return sorted((p.sheet, p.rows, p.cell, p.code, p.effect) for p in reading.problems)


def expected_of(mistakes: Iterable[Mistake]) -> list[tuple[object, ...]]:
    found = [found for each in mistakes for found in each.found]
    return sorted((each.sheet, each.rows, each.cell, each.code, each.effect) for each in found)


def test_every_number_from_1_to_44_is_planted_in_order() -> None:
    numbers = [mistake.number for mistake in MISTAKES]
    assert set(numbers) == set(range(1, 45))
    assert numbers == sorted(numbers)


def test_season_without_mistakes_has_no_problem(tmp_path: Path) -> None:
    assert read_season(write_season(tmp_path / "log.xlsx")).problems == []


def test_all_mistakes_at_once_are_found_and_nothing_else(others: Book) -> None:
    _, reading = others
    assert found_in(reading) == expected_of(OTHERS)
    assert reading.season is not None


def test_all_stops_are_found_at_once_with_what_follows_and_nothing_else(stopping: Book) -> None:
    _, reading = stopping
    assert found_in(reading) == expected_of(STOPPING)
    assert reading.season is None


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda mistake: f"{mistake.number} {mistake.name}")
def test_mistake_alone_is_found_and_nothing_else(mistake: Mistake, tmp_path: Path) -> None:
    reading = read_season(written([mistake], tmp_path / "log.xlsx"))
    assert found_in(reading) == expected_of([mistake])
    assert (reading.season is None) == (mistake in STOPPING)


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda mistake: f"{mistake.number} {mistake.name}")
def test_message_says_where_what_and_what_was_done_in_two_lines(
    mistake: Mistake, others: Book, stopping: Book
) -> None:
    _, reading = stopping if mistake in STOPPING else others
    for found in mistake.found:
        problem = _problem(reading, found)
        assert len(textwrap.wrap(problem.message, 110)) <= 2, problem.message
        assert problem.message.startswith(f"{found.sheet} row {found.rows[0]}" if found.rows else found.sheet)
        for words in found.says:
            assert words in problem.message


def _problem(reading: Reading, found: Found) -> Problem:
    (problem,) = [p for p in reading.problems if (p.sheet, p.rows, p.cell, p.code) == _place(found)]
    return problem


def _place(found: Found) -> tuple[object, ...]:
    return found.sheet, found.rows, found.cell, found.code


def test_rows_of_every_sheet_add_up_and_those_set_aside_are_the_ones_that_are_said(others: Book) -> None:
    _, reading = others
    names = {"trips": "Trips", "effort": "Effort", "catch": "Catch", "conditions": "Conditions"}
    for key, count in reading.counts.items():
        assert count.read == count.used + count.set_aside + count.blank + count.not_rows
        if key in names:
            of_sheet = [found for each in OTHERS for found in each.found if found.sheet == names[key]]
            taken = [f for f in of_sheet if f.effect == "set aside" and f.code not in CELL_CODES]
            assert count.set_aside == len({row for found in taken for row in found.rows})


def test_check_says_the_stops_first_then_what_is_set_aside_then_the_notes(stopping: Book) -> None:
    path, reading = stopping
    result = CliRunner().invoke(cli, ["check", str(path)])
    assert result.exit_code == 1
    places = [result.output.index(f"\n{heading}: ") for heading in ("Stop", "Set aside", "Note")]
    assert all(before < after for before, after in pairwise(places))
    stops = result.output[places[0] : places[1]]
    assert f"({len(reading.stops)})" in stops
    for mistake in STOPPING:
        for found in mistake.found:
            place = f"{found.sheet} row {found.rows[0]}" if found.rows else f"{found.sheet}:"
            assert found.effect != EFFECTS[0] or place in stops


def test_mistakes_that_stop_nothing_leave_a_report(others: Book, tmp_path: Path) -> None:
    path, _ = others
    result = CliRunner().invoke(cli, ["build", str(path), "--out", str(tmp_path), "--quiet"])
    assert result.exit_code == 0, result.output
    assert (tmp_path / "log report.xlsx").exists()
