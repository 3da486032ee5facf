"""Which trip a row belongs to: by number, as above, or by a date that says one trip."""

import datetime as dt

import pytest

from tests.tidy.shared import Find, Read, rates, triples

AUGUST = dt.date(2026, 8, 1)
SEPTEMBER_12 = dt.date(2026, 9, 12)
TIMES = (dt.time(6), dt.time(10), 2)


def row(number: int, *cells: object) -> dict[str, object]:
    return {f"{chr(65 + index)}{number}": cell for index, cell in enumerate(cells)}


def test_blank_trip_is_the_trip_of_the_row_above(read: Read) -> None:
    reading = read({"Effort": {"A3": None}, "Catch": row(5, None, "Jerkbait", "spotted bass")})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)
    assert reading.season is not None
    assert reading.season.from_above == 2
    assert reading.season.fish["trip_no"].tolist() == [1, 2, 3, 3]


def test_blank_row_between_does_not_break_as_above(read: Read) -> None:
    fish = [["T-001", "Drop shot", "LMB"], [], [None, "Drop shot", "SMB"]]
    reading = read({"Catch": [["Trip", "Technique", "Species"], *fish]})
    assert reading.problems == []
    assert reading.season is not None
    assert reading.season.fish["trip_no"].tolist() == [1, 1]
    assert reading.counts["Catch"].blank == 1


def test_totals_line_between_does_not_break_as_above(read: Read) -> None:
    fish = [["T-001", "Drop shot", "LMB"], ["TOTAL", None, None], [None, "Drop shot", "SMB"]]
    reading = read({"Catch": [["Trip", "Technique", "Species"], *fish]})
    assert [problem.code for problem in reading.problems] == ["totals_row"]
    assert reading.season is not None
    assert reading.season.fish["trip_no"].tolist() == [1, 1]


def test_as_above_follows_a_row_that_is_set_aside_for_its_own_fault(read: Read) -> None:
    reading = read({"Effort": {"B2": None, "A3": None}})
    assert triples(reading) == [("Catch", 2, "fish_without_effort"), ("Effort", 2, "required_blank")]
    assert reading.season is not None
    stints = reading.season.stints
    assert stints.loc[stints["row"] == 3, "trip"].tolist() == ["T-001"]


def test_as_above_follows_a_row_whose_trip_is_not_there(found: Find) -> None:
    catch = (
        row(5, "T-045", "Jerkbait", "LMB") | row(6, None, "Jerkbait", "LMB") | row(7, "T-003", None, "LMB")
    )
    assert found({"Catch": catch}) == [("Catch", 5, "trip_unknown"), ("Catch", 6, "trip_unknown")]


def test_rows_astray_through_one_cell_are_one_problem_with_all_their_fish(read: Read) -> None:
    rows = [(5, "T-045", 2), (6, None, 3), (7, None, None), (8, "T-045", 1)]
    catch: dict[str, object] = {"F1": "Count"}
    for number, trip, count in rows:
        catch |= row(number, trip, "Jerkbait", "LMB", None, None, count)
    first, second = read({"Catch": catch}).problems
    assert (first.rows, second.rows) == ((5, 6, 7), (8,))
    assert "Its 6 fish on 3 rows are not in any total" in first.text
    assert "Its 1 fish is not in any total" in second.text


def test_rows_of_a_trip_that_is_set_aside_are_one_problem_a_sheet(read: Read) -> None:
    effort = row(6, "T-004", "Jerkbait", 60, 2, 0) | row(7, "T-003", "Drop shot", 5, 1, 0)
    effort |= row(8, "T-004", "Drop shot", 60, 2, 0)
    problems = read({"Trips": row(5, "T-004", AUGUST, None, *TIMES), "Effort": effort}).problems
    (of_effort,) = [problem for problem in problems if problem.sheet == "Effort"]
    assert (of_effort.code, of_effort.rows) == ("trip_set_aside", (6, 8))
    assert "Its effort on 2 rows is in no rate" in of_effort.text


def test_as_above_follows_a_row_whose_trip_is_set_aside(found: Find) -> None:
    log = {
        "Trips": row(5, "T-004", AUGUST, None, *TIMES),
        "Effort": row(6, "T-004", "Jerkbait", 120, 2, 1) | row(7, None, "Drop shot", 120, 2, 0),
        "Catch": row(5, "T-004", "Jerkbait", "LMB") | row(6, None, "Jerkbait", "LMB"),
    }
    assert found(log) == [
        ("Catch", 5, "trip_set_aside"),
        ("Catch", 6, "trip_set_aside"),
        ("Effort", 6, "trip_set_aside"),
        ("Effort", 7, "trip_set_aside"),
        ("Trips", 5, "required_blank"),
    ]


def test_as_above_never_reaches_over_a_trip_that_cannot_be_read(found: Find) -> None:
    catch = row(5, "#REF!", "Jerkbait", "LMB") | row(6, None, "Jerkbait", "LMB")
    assert found({"Catch": catch}) == [
        ("Catch", 5, "error_cells"),
        ("Catch", 5, "required_unread"),
        ("Catch", 6, "trip_not_given"),
    ]


def test_merged_trip_cells_mean_as_above(read: Read) -> None:
    reading = read({"Effort": {"A3": None}}, merged={"Effort": "A2:A3"})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)


@pytest.mark.parametrize("typed", [SEPTEMBER_12, "2026-09-12", "12 Sep 2026", "9/13/2026"])
def test_date_serves_where_it_has_one_trip(typed: object, read: Read) -> None:
    reading = read(
        {
            "Trips": {"B4": dt.date(2026, 9, 13) if typed == "9/13/2026" else SEPTEMBER_12},
            "Effort": {"A5": typed},
            "Catch": {"A4": typed},
        }
    )
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)


def test_date_without_a_trip_is_no_trip(found: Find) -> None:
    assert found({"Catch": row(5, AUGUST, "Jerkbait", "LMB")}) == [("Catch", 5, "trip_unknown")]


def test_date_of_two_trips_says_neither_even_where_one_is_set_aside(found: Find) -> None:
    log = {
        "Trips": row(5, "T-004", SEPTEMBER_12, None, *TIMES),
        "Catch": {"A4": SEPTEMBER_12},
    }
    assert found(log) == [("Catch", 4, "trip_date_shared"), ("Trips", 5, "required_blank")]


def test_date_of_a_trip_that_is_set_aside_says_so(read: Read) -> None:
    log = {
        "Trips": row(5, "T-004", AUGUST, None, *TIMES),
        "Catch": row(5, AUGUST, "Jerkbait", "LMB"),
    }
    aside, trip = sorted(read(log).problems, key=lambda problem: problem.sheet)
    assert (trip.code, aside.code) == ("required_blank", "trip_set_aside")
    assert "Trips row 5" in aside.text


def test_date_of_a_trip_written_twice_says_that_trip(found: Find) -> None:
    twice = row(5, "T-003", SEPTEMBER_12, "Bell River", *TIMES)
    assert found({"Trips": twice, "Catch": {"A4": SEPTEMBER_12}}) == [("Trips", 5, "trip_row_twice")]


def test_number_is_looked_up_before_a_date(read: Read) -> None:
    """A guide may number his trips by date."""
    log = {
        "Trips": {"A2": "2026-04-18", "A3": "2026-07-04", "A4": "2026-04-18 pm", "B4": dt.date(2026, 4, 18)},
        "Effort": {"A2": "2026-04-18", "A3": None, "A4": "2026-07-04", "A5": "2026-04-18 pm"},
        "Catch": {"A2": dt.date(2026, 4, 18), "A3": "2026-07-04", "A4": "2026-04-18 pm"},
    }
    reading = read(log)
    assert [problem.code for problem in reading.problems] == []
    assert rates(reading) == (6, 24.0)


@pytest.mark.parametrize("typed", ["t-003", "T-003 ", " T-003"])
def test_case_and_spaces_of_a_trip_number_are_no_matter(typed: str, found: Find) -> None:
    assert found({"Catch": {"A4": typed}}) == []


@pytest.mark.parametrize("typed", ["3", "003", "T-3", "T003"])
def test_trip_number_that_only_looks_alike_is_another_and_is_offered(typed: str, read: Read) -> None:
    (problem,) = read({"Catch": {"A4": typed}}).problems
    assert (problem.sheet, problem.row, problem.code) == ("Catch", 4, "trip_unknown")
    assert "T-003" in problem.text


def test_whole_number_and_its_text_are_one_trip_number(found: Find) -> None:
    log = {"Trips": {"A2": 1, "A3": 2, "A4": "3"}, "Effort": {"A2": "1", "A3": 1.0, "A4": 2, "A5": 3}}
    assert found({**log, "Catch": {"A2": 1, "A3": "2", "A4": 3}}) == []


def test_text_says_how_many_fish_are_lost_with_the_row(read: Read) -> None:
    fish = [["Trip", "Species", "Count"], ["T-045", "LMB", 3], ["T-045", "LMB", None], ["T-045", "LMB", 1]]
    texts = [problem.text for problem in read({"Catch": fish}).problems if problem.code == "trip_unknown"]
    assert [text.split("T-045 on Trips. ")[1].split(" in any")[0] for text in texts] == [
        "Its 3 fish are not",
        "Its 1 fish is not",
        "Its 1 fish is not",
    ]


def test_reading_may_name_its_trip_or_its_date(read: Read) -> None:
    rows = [["T-001", None, 60], [None, SEPTEMBER_12, 62], [None, None, 64], ["T-009", None, 65]]
    reading = read({"Conditions": [["Trip", "Date", "Water temp (°F)"], *rows]})
    assert [(p.row, p.code) for p in reading.problems] == [(4, "required_blank"), (5, "trip_unknown")]
    assert reading.counts["Conditions"].used == 2


def test_readings_may_all_be_dated(read: Read) -> None:
    rows = [[SEPTEMBER_12, 60], [None, 61]]
    reading = read({"Conditions": [["Date", "Water temp (°F)"], *rows]})
    assert [(p.sheet, p.row, p.code) for p in reading.problems] == [("Conditions", 3, "required_blank")]
    assert reading.counts["Conditions"].used == 1
