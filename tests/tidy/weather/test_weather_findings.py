"""Every finding of weather: a file that shows it and nothing else, and what becomes of its hours."""

import textwrap
from pathlib import Path

import pytest

from reporter.schema.findings.weather import WEATHER
from reporter.schema.problems import CATALOGUE, CELL_CODES, FINDINGS, Problem
from reporter.tidy.weather.hours import StationHours
from tests.tidy.weather.finding_cases import CASES, Case
from tests.tidy.weather.shared import lines, tidied, tidied_file

NAME = "en_climate_hourly_ON_6158355_07-2024_P1H.csv"  # as long as the names of such files are


@pytest.fixture(params=CASES, ids=lambda case: case.code)
def case(request: pytest.FixtureRequest) -> Case:
    return request.param


@pytest.fixture
def made(case: Case, tmp_path: Path) -> tuple[list[StationHours], list[Problem]]:
    return tidied(tmp_path, NAME, case.text, case.zone, case.season)


def test_every_weather_finding_has_a_case_and_is_in_the_catalogue() -> None:
    assert [case.code for case in CASES] == [finding.code for finding in WEATHER]
    assert set(WEATHER) <= set(FINDINGS)
    assert all(finding.code.startswith("weather_") for finding in WEATHER)


def test_file_shows_the_finding_and_nothing_else(
    case: Case, made: tuple[list[StationHours], list[Problem]]
) -> None:
    _, problems = made
    assert [(p.code, p.row, p.value) for p in problems] == [*case.found]
    assert CATALOGUE[case.code].effect == case.effect
    assert {p.sheet for p in problems} == {NAME}


def test_hours_that_are_left_are_right(case: Case, made: tuple[list[StationHours], list[Problem]]) -> None:
    stations, _ = made
    assert sum(len(station.table) for station in stations) == case.hours


def test_lines_that_a_problem_takes_are_those_that_are_set_aside(case: Case, tmp_path: Path) -> None:
    file = tidied_file(tmp_path, NAME, case.text, case.zone, case.season)
    taken = [p for p in file.problems if p.effect == "set aside" and p.code not in CELL_CODES]
    assert (file.set_aside > 0) == bool(taken and file.lines)
    assert min(lines(file)) >= 0


def test_message_is_short_names_its_place_and_is_complete(
    made: tuple[list[StationHours], list[Problem]],
) -> None:
    _, problems = made
    for problem in problems:
        place, text = problem.message[: len(problem.where)], problem.text
        assert place.startswith(NAME)
        assert len(textwrap.wrap(text, 110)) <= 2
        assert not {"{", "}"} & set(problem.message)
        assert "  " not in problem.message
        assert "nan" not in problem.message.split()
        assert problem.message.endswith(".")
