"""Which rows are rows: read = used + set aside + blank + not rows, on every sheet, counted by hand."""

import datetime as dt

import pytest

from reporter.run.season import Reading
from tests.conftest import clean_sheets
from tests.tidy.shared import Find, Read, rates

HEADINGS = ["Trip", "Technique", "Species", "Count", "Length (in)", "Notes"]
FISH = ["T-001", "Drop shot", "LMB", 1, 15]


def counted(reading: Reading, sheet: str) -> tuple[int, int, int, int, int]:
    count = reading.counts[sheet]
    return count.read, count.used, count.set_aside, count.blank, count.not_rows


def catch(*rows: list[object]) -> dict[str, list[list[object]]]:
    return {"Catch": [HEADINGS, *rows]}


def test_every_kind_of_row_is_counted_once(read: Read) -> None:
    reading = read(
        catch(
            FISH,
            [],
            ["T-045", "Drop shot", "LMB"],
            ["Trip", "Technique", "Species"],
            [],
            FISH,
            ["T-001", None, "unicorn"],
            ["TOTAL", None, None, 2],
        )
    )
    assert counted(reading, "Catch") == (8, 2, 2, 2, 2)


def test_rows_below_the_last_value_are_not_read(read: Read) -> None:
    reading = read(catch(FISH, [None] * 5, ["   "], [" \u00a0"]))
    assert counted(reading, "Catch") == (1, 1, 0, 0, 0)


def test_row_whose_only_value_stands_under_no_heading_is_blank(read: Read) -> None:
    reading = read(catch(FISH, [None] * 7 + ["windy"], FISH))
    assert counted(reading, "Catch") == (3, 2, 0, 1, 0)
    assert [problem.code for problem in reading.problems] == ["beyond_headings"]


def test_row_whose_only_value_stands_in_a_column_that_is_not_read_is_blank(read: Read) -> None:
    rows = [[*HEADINGS, "Tip"], FISH, [None] * 6 + [50], [None] * 6 + ["#REF!"], [None] * 6 + ["=1+1"]]
    reading = read({"Catch": rows})
    assert counted(reading, "Catch") == (4, 1, 0, 3, 0)
    assert [problem.code for problem in reading.problems] == ["column_not_read"]


def test_row_that_holds_only_an_error_is_a_row(read: Read) -> None:
    reading = read(catch(FISH, [None, None, None, "#REF!"]))
    assert counted(reading, "Catch") == (2, 1, 1, 0, 0)


@pytest.mark.parametrize(
    "word", ["TOTAL", "Total:", "totals", "Grand total", "Season Total", "Sum", "subtotal"]
)
def test_totals_line_is_no_row(word: str, read: Read) -> None:
    for line in ([word, None, None, 9], [None, None, None, 9, word]):
        reading = read(catch(FISH, line))
        assert counted(reading, "Catch") == (2, 1, 0, 0, 1)
        assert [(p.row, p.code) for p in reading.problems] == [(3, "totals_row")]


@pytest.mark.parametrize(
    "line",
    [
        ["T-001", "Total", "LMB", 1, 15],
        ["T-001", "Drop shot", "LMB", 1, 15, "total"],
        ["T-001", "Drop shot", "LMB", 1, 15, "in total 3 casts"],
    ],
)
def test_complete_row_that_says_total_somewhere_is_a_row(line: list[object], read: Read) -> None:
    reading = read({**catch(FISH, line), "Techniques": None})
    assert counted(reading, "Catch") == (2, 2, 0, 0, 0)


@pytest.mark.parametrize(
    "line",
    [
        HEADINGS,
        ["Trip", "Technique", "Species"],
        [None, None, "Species", "Count"],
        ["TRIP #", "method", "fish"],
        [None, None, None, None, "in", "text"],
        ["text", None, None, "number", "(inches)"],
    ],
)
def test_heading_again_and_a_line_of_units_are_no_rows(line: list[object], read: Read) -> None:
    reading = read(catch(line, FISH))
    assert counted(reading, "Catch") == (2, 1, 0, 0, 1)
    assert [(p.row, p.code) for p in reading.problems] == [(2, "second_heading")]


def test_settings_left_blank_and_void_rows_are_used(read: Read) -> None:
    trips = {"G1": "Status", "A5": "T-004", "G5": "void"}
    reading = read({"Season": {"A7": "Latitude", "A8": "Longitude"}, "Trips": trips})
    assert counted(reading, "Season") == (7, 7, 0, 0, 0)
    assert counted(reading, "Trips") == (4, 4, 0, 0, 0)


def test_rows_count_from_below_the_heading(read: Read) -> None:
    reading = read({"Trips": [["My season"], [], *clean_sheets()["Trips"]]})
    assert counted(reading, "Trips") == (3, 3, 0, 0, 0)


def test_empty_sheets_read_no_rows(read: Read) -> None:
    reading = read({"Conditions": [["Trip", "Time", "Sky"]], "Weather": [["Date", "Sky"]]})
    assert counted(reading, "Conditions") == (0, 0, 0, 0, 0)
    assert counted(reading, "Weather") == (0, 0, 0, 0, 0)


def test_stints_set_aside_for_their_effort_are_counted_as_set_aside(read: Read) -> None:
    reading = read({"Effort": {"D4": 4}})
    assert counted(reading, "Effort") == (4, 3, 1, 0, 0)
    assert rates(reading) == (5, 16.0)


def test_row_is_set_aside_for_one_reason_only(found: Find) -> None:
    assert found(catch(FISH, [None, "Drop shot", None, "lots", 1650], ["T-045", None, "unicorn", 2.5])) == [
        ("Catch", 3, "cell_impossible"),
        ("Catch", 3, "cell_unread"),
        ("Catch", 3, "required_blank"),
        ("Catch", 4, "cell_unread"),
        ("Catch", 4, "species_unknown"),
    ]


def test_heading_on_every_page_is_one_note(read: Read) -> None:
    heading = ["Trip", "Technique", "Species", "Length (in)", "Fate"]
    fish = ["T-003", "Jerkbait", "LMB", 14, "kept"]
    catch = {
        f"{chr(65 + column)}{number}": cell
        for number, line in ((5, heading), (6, fish), (7, heading), (9, heading))
        for column, cell in enumerate(line)
    }
    reading = read({"Catch": catch})
    (problem,) = reading.problems
    assert (problem.code, problem.rows) == ("second_heading", (5, 7, 9))
    assert "as do rows 7 and 9. Skipped." in problem.text
    assert reading.counts["Catch"].not_rows == 3


@pytest.mark.parametrize(
    ("line", "skipped"),
    [
        ({"D2": "(in)"}, True),
        ({"A2": "no.", "D2": "in"}, True),
        ({"A2": "T-001", "D2": "in"}, False),
        ({"A2": "trip", "C2": "LMB", "D2": "in"}, False),
        ({"E2": "kept"}, False),
    ],
)
def test_line_below_the_headings_that_names_a_unit_and_no_fish_is_no_row(
    line: dict[str, object], skipped: bool, read: Read
) -> None:
    blank = dict.fromkeys(("A2", "B2", "C2", "D2", "E2"))
    problems = read({"Catch": blank | line}).problems
    assert ("second_heading" in [problem.code for problem in problems]) == skipped


def test_merge_over_many_rows_is_one_problem(read: Read) -> None:
    weather = [["Date", "Sky"], [dt.date(2026, 5, 1), "clear"], *([None, "rain"] for _ in range(3))]
    reading = read({"Weather": weather}, merged={"Weather": "A2:A5"})
    (problem,) = reading.problems
    assert (problem.code, problem.rows) == ("merged", (3, 4, 5))
    assert "The rows below it are not used" in problem.text
    assert reading.counts["Weather"].set_aside == 3
