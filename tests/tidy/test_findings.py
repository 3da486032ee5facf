"""Every finding of the catalogue: a log that shows it and nothing else, and what then becomes of the rows."""

import textwrap

import pytest

from reporter.run.season import Reading
from reporter.schema.problems import CATALOGUE, CELL_CODES, FINDINGS
from tests.tidy.finding_cases import CELLS, ROWS, STOPS, Case
from tests.tidy.note_cases import NOTES
from tests.tidy.shared import Read, filled_rows, rates, triples

CASES = (*STOPS, *ROWS, *CELLS, *NOTES)


@pytest.fixture(scope="module", params=CASES, ids=lambda case: case.code)
def case(request: pytest.FixtureRequest) -> Case:
    return request.param


@pytest.fixture(scope="module")
def reading(case: Case, read: Read) -> Reading:
    return read(
        case.changes,
        merged=case.merged,
        hidden=case.hidden,
        struck=case.struck,
        commented=case.commented,
        out_of_sight=case.out_of_sight,
    )


def test_clean_log_has_nothing_to_mend(read: Read) -> None:
    reading = read()
    assert triples(reading) == []
    assert rates(reading) == (6, 24.0)


def test_every_finding_has_a_case_and_every_code_is_there_once() -> None:
    elsewhere = ("weather_", "format_", "own_")  # tested with the files that show them
    of_logs = [finding.code for finding in FINDINGS if not finding.code.startswith(elsewhere)]
    assert sorted(case.code for case in CASES) == sorted(of_logs)
    assert len(CATALOGUE) == len(FINDINGS)


def test_log_shows_the_finding_and_nothing_else(case: Case, reading: Reading) -> None:
    assert triples(reading) == sorted(case.found)
    assert {p.effect for p in reading.problems if p.code == case.code} == {case.effect}


def test_finding_does_what_its_effect_says(case: Case, reading: Reading) -> None:
    if case.rates is None:
        assert reading.season is None
        return
    assert rates(reading) == case.rates
    set_aside = {name: count.set_aside for name, count in reading.counts.items()}
    assert {sheet: rows for sheet, rows in set_aside.items() if rows} == case.aside


def test_rows_read_are_used_set_aside_blank_or_no_rows_on_every_sheet(reading: Reading) -> None:
    assert reading.counts
    for name, count in reading.counts.items():
        filled, last = filled_rows(reading.path, name)
        of_sheet = [problem for problem in reading.problems if problem.sheet == name]
        aside = [p for p in of_sheet if p.effect == "set aside" and p.code not in CELL_CODES]
        aside += [p for p in of_sheet if p.code == "date_order_unknown"]  # it stands for each of its rows
        taken = {row for p in aside for row in p.rows}
        skipped = [row for p in of_sheet if p.code in ("totals_row", "second_heading") for row in p.rows]
        expected = (last - 1, filled - len(taken) - len(skipped), len(taken), last - 1 - filled, len(skipped))
        assert (count.read, count.used, count.set_aside, count.blank, count.not_rows) == expected


def test_message_is_short_names_its_place_and_is_complete(reading: Reading) -> None:
    for problem in reading.problems:
        assert len(textwrap.wrap(problem.message, 110)) <= 2
        assert problem.message.startswith(problem.sheet)
        assert not problem.row or f"row {problem.row}" in problem.message
        assert not {"{", "}"} & set(problem.message)
        assert "  " not in problem.message
        assert "nan" not in problem.message.split()
        assert problem.message.endswith((".", "?"))
