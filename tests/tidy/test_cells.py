"""What becomes of a cell: an unreadable one is left out alone, or takes its row where it is needed."""

import datetime as dt

import pytest

from tests.tidy.shared import Find, Read, Tidy, rates, triples, with_season

TEMPERATURE = {"G1": "Water temp (°F)"}


@pytest.mark.parametrize(
    ("column", "typed", "code"),
    [
        ("Clarity", "pea soup", "cell_unread"),
        ("Sky", "#N/A", "cell_unread"),
        ("Wind from", "everywhere", "cell_unread"),
        ("Hours off", "some", "cell_unread"),
        ("Water temp (°C)", 68, "cell_impossible"),
        ("Water temp (°F)", 20, "cell_unusual"),
        ("Guide fished", "maybe", "cell_unread"),
        ("End date", "soon", "cell_unread"),
        ("Left dock", "dawn", "cell_unread"),
        ("Lines", "2 or 3", "cell_unread"),
        ("Lines", 99, "cell_impossible"),
        ("Wind speed (mph)", 70, "cell_unusual"),
    ],
)
def test_unreadable_cell_of_an_optional_column_leaves_its_row_in(
    column: str, typed: object, code: str, read: Read
) -> None:
    reading = read({"Trips": {"G1": column, "G3": typed}})
    assert triples(reading) == [("Trips", 3, code)]
    assert reading.counts["Trips"].used == 3
    assert rates(reading) == (6, 24.0)
    assert reading.season is not None


@pytest.mark.parametrize(
    ("cell", "typed"),
    [("B3", "someday"), ("B3", "31 June 2026"), ("D3", "early"), ("E3", "late"), ("F3", "two"), ("F3", 99)],
)
def test_unreadable_cell_of_a_required_column_takes_its_row(cell: str, typed: object, read: Read) -> None:
    reading = read({"Trips": {cell: typed}})
    assert ("Trips", 3, "required_unread") in triples(reading)
    assert reading.counts["Trips"].set_aside == 1
    assert rates(reading) == (5, 16.0)


@pytest.mark.parametrize("dash", ["-", "--", "–", "n/a", "N/A"])
def test_dash_is_a_blank_cell_and_no_zero(dash: str, read: Read) -> None:
    reading = read({"Trips": {"G1": "Sky", "G2": dash}, "Effort": {"E2": dash, "F1": "Missed", "F2": dash}})
    assert reading.problems == []
    assert reading.season is not None
    assert reading.season.stints["landed"].isna().tolist() == [True, False, False, False]


def test_value_of_another_unit_is_offered_and_never_converted(read: Read) -> None:
    (problem,) = read({"Trips": {"G1": "Water temp (°C)", "G3": 68}}).problems
    assert problem.cell == "G3"
    assert "Did you mean °F?" in problem.text


def test_words_of_one_choice_are_offered_where_none_is_known(read: Read) -> None:
    (problem,) = read({"Trips": {"G1": "Clarity", "G3": "pea soup"}}).problems
    assert "clear, lightly stained, stained, muddy" in problem.text


@pytest.mark.parametrize("typed", ["Lightly-Stained", "light stain", "SLIGHTLY  STAINED"])
def test_choice_is_known_by_its_other_words(typed: str, found: Find) -> None:
    assert found({"Trips": {"G1": "Clarity", "G3": typed}}) == []


@pytest.mark.parametrize(("typed", "rod_hours"), [("yes", 12), ("Y", 12), (True, 12), ("no", 8), (False, 8)])
def test_guide_fished_adds_his_rod(typed: object, rod_hours: float, read: Read) -> None:
    effort = [["Trip", "Technique", "Parts"], ["T-001", "Drop shot", 1]]
    status = {"G1": "Guide fished", "G2": typed, "H1": "Status", "H3": "void", "H4": "void"}
    reading = read({"Trips": status, "Effort": effort, "Catch": [["Trip", "Species"], ["T-001", "LMB"]]})
    assert reading.problems == []
    assert rates(reading) == (1, rod_hours)


def test_count_that_cannot_be_read_stands_for_one_fish_and_says_so(read: Read) -> None:
    reading = read({"Catch": {"F1": "Count", "F4": "a few"}, "Effort": {"E5": None}})
    (problem,) = reading.problems
    assert problem.code == "cell_unread"
    assert "counted as 1" in problem.text
    assert rates(reading) == (5, 24.0)


def test_hours_off_as_long_as_the_trip_are_left_out_and_shorter_ones_taken_off(read: Read) -> None:
    off = {"G1": "Hours off", "G2": "0:15", "G3": 4, "G4": 3.99}
    season = read({"Trips": off}).season
    assert season is not None
    assert season.trips["boat_hours"].round(6).tolist() == [3.75, 4.0, 0.01]


def test_formula_with_a_result_is_its_result_and_one_without_stops(found: Find) -> None:
    assert found({"Trips": {"F2": "=1+1"}}) == [("Trips", 2, "not_calculated")]


@pytest.mark.parametrize(("errors", "stops"), [(1, False), (2, True)])
def test_errors_in_over_a_twentieth_of_the_dates_stop_the_report(
    errors: int, stops: bool, read: Read
) -> None:
    days = [[dt.date(2026, 4, 1) + dt.timedelta(index), "clear"] for index in range(20)]
    for index in range(errors):
        days[index][0] = "#REF!"
    codes = [problem.code for problem in read({"Weather": [["Date", "Sky"], *days]}).problems]
    assert codes.count("required_unread") == errors
    assert ("error_cells" in codes) == stops


def test_merged_cells_of_a_needed_column_are_not_filled_down(read: Read) -> None:
    reading = read({"Trips": {"C4": None}}, merged={"Trips": "C3:C4"})
    (merged,) = [problem for problem in reading.problems if problem.code == "merged"]
    assert (merged.row, merged.cell) == (4, "C4")
    assert "Rows 3-4" in merged.text


def test_sideways_merge_is_no_matter(found: Find) -> None:
    assert found({"Trips": {"G1": "Sky", "H1": "Notes", "G2": "clear"}}, merged={"Trips": "G2:H2"}) == []


def test_text_number_follows_the_decimal_mark_of_the_log(read: Read) -> None:
    settings = {"Units": "us", "Last day": "2026-11-30", "Time zone": "UTC", "Decimal mark": "comma"}
    reading = read(
        {"Season": with_season(settings), "Catch": {"D2": "15,5", "D3": "1.400", "D4": "18,25 in"}}
    )
    assert triples(reading) == [("Catch", 3, "cell_unread")]
    assert reading.season is not None
    assert reading.season.fish["length_mm"].round(4).fillna(0).tolist() == [393.7, 0, 463.55]


def test_every_day_of_the_dates_is_read_by_one_order(read: Read) -> None:
    settings = {"Units": "us", "Last day": "2026-11-30", "Time zone": "UTC", "Date order": "day first"}
    reading = read({"Season": with_season(settings), "Trips": {"B2": "4/5/2026", "B3": "04.07.26"}})
    assert reading.problems == []
    assert reading.season is not None
    days = reading.season.trips["date"].dt.strftime("%m-%d").tolist()
    assert days == ["05-04", "07-04", "09-12"]


def test_dates_of_two_readings_are_asked_about_once_for_the_whole_log(read: Read) -> None:
    reading = read({"Trips": {"B2": "03/04/2026", "B3": "07/04/2026", "B4": "09/04/2026"}})
    (problem,) = [problem for problem in reading.problems if problem.sheet == "Trips"]
    assert (problem.code, problem.effect, problem.rows) == ("date_order_unknown", "stop", (2, 3, 4))
    assert "Such dates: 3. Set Date order on Season" in problem.text


def test_date_of_two_readings_where_none_is_needed_is_left_out_alone(read: Read) -> None:
    problems = read({"Trips": {"G1": "End date", "G3": "07/04/2026"}}).problems
    assert [(p.code, p.cell) for p in problems] == [("cell_unread", "G3")]
    assert "Set Date order on Season" in problems[0].text


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("05-01", None),
        ("5-1", None),
        ("02-end", None),
        ("2-29", None),
        ("02-30", "keep_rule_unread"),
        ("13-01", "keep_rule_unread"),
        ("፩-05", "keep_rule_unread"),
        ("9" * 5000, "keep_rule_unread"),
        ("May 1", "keep_rule_unread"),
    ],
)
def test_day_of_a_rule_is_month_and_day(typed: str, code: str | None, tidied: Tidy) -> None:
    rules = [["Rule", "From"], ["R1", typed]]
    assert triples(tidied({"Keep rules": rules})) == ([("Keep rules", 2, code)] if code else [])


def test_very_long_trip_number_is_a_text_like_any_other(found: Find) -> None:
    number = "9" * 5000
    assert found({"Trips": {"A4": number}, "Effort": {"A5": number}, "Catch": {"A4": number}}) == []
