"""Reports owed: due dates, nil months, and months of which rows were not read."""

import datetime as dt

import pandas as pd
import pytest

from reporter.compute.paperwork.nil_months import read_nil_months
from reporter.compute.paperwork.period import OPEN, Period
from reporter.compute.paperwork.reports import Owed
from tests.compute.paperwork.logs import Row, day, read, season_sheet, trips_sheet
from tests.conftest import Change, WriteLog

HEADINGS = ["Report", "Document", "Period", "Nil months", "Due days", "Basis", "Last checked"]
Z1 = [("T-001", day(6, 5)), ("T-002", day(8, 5)), ("T-003", day(12, 5))]


def owed(
    write_log: WriteLog,
    *reports: Row,
    trips: list[list[object]] | None = None,
    period: Period = OPEN,
    **more: Change,
) -> Owed:
    changes = {"Trips": trips or trips_sheet([], *Z1), "Reports": [HEADINGS, *map(list, reports)], **more}
    made, _ = read(write_log, changes, period)
    return made.owed


def states(found: Owed) -> dict[str, str]:
    return dict(zip(found.table["name"], found.table["state"], strict=True))


def monthly(nil: object, *more: object) -> Row:
    return ["Log", None, "month", nil, *more]


# Test L3: the report of July 2026, due 10 days after the month's end, is due on 10 August 2026.
def test_report_is_due_so_many_days_after_its_period_ends(write_log: WriteLog) -> None:
    found = owed(write_log, monthly("always", 10, "postmarked", dt.date(2026, 2, 1)))
    july = found.table[found.table["name"] == "2026-07"].iloc[0]
    assert july["due"] == pd.Timestamp(2026, 8, 10)
    assert july["due_words"] == "postmarked by 2026-08-10"
    assert july["last_checked"] == pd.Timestamp(2026, 2, 1)


@pytest.mark.parametrize(
    ("period", "names", "due"),
    [
        ("quarter", ["2026 Q1", "2026 Q2", "2026 Q3", "2026 Q4"], ["04-30", "07-30", "10-30", "01-30"]),
        ("year", ["2026"], ["01-30"]),
        ("season", ["season"], ["12-30"]),
    ],
)
def test_other_periods_end_with_the_calendar_and_a_season_on_its_last_day(
    period: str, names: list[str], due: list[str], write_log: WriteLog
) -> None:
    season = season_sheet(First_day=day(3, 1), Last_day=day(11, 30))
    season = [row for row in season if row[1] not in (day(1, 1), day(12, 31))]
    trips = trips_sheet([], *Z1[:2])
    found = owed(write_log, ["R", None, period, "always", 30, "received"], trips=trips, Season=season)
    assert found.table["name"].tolist() == names
    assert found.table["due"].dt.strftime("%m-%d").tolist() == due


# Test Z1: trips in June, August and December. One state's list (a nil report from May to October; from
# November to April only if guided): May nil, June, July nil, August, September nil, October nil, December.
# Another's (only months with activity): June, August, December.
@pytest.mark.parametrize(
    "typed", ["May to Oct", "5-10", "May–Oct; Nov-Apr if guided", "may, june, July; August and Sept; oct."]
)
def test_nil_months_of_a_range_are_owed_and_other_months_with_trips(typed: str, write_log: WriteLog) -> None:
    found = owed(write_log, monthly(typed))
    assert {name[5:]: state for name, state in states(found).items() if state != "not owed"} == {
        "05": "nil",
        "06": "trips",
        "07": "nil",
        "08": "trips",
        "09": "nil",
        "10": "nil",
        "12": "trips",
    }
    assert found.problems == ("Log: Due days is blank on Reports, so no due date is known.",)


def test_months_without_trips_are_never_owed_or_always(write_log: WriteLog) -> None:
    never = states(owed(write_log, monthly("never")))
    assert [name for name, state in never.items() if state == "trips"] == ["2026-06", "2026-08", "2026-12"]
    assert {never[name] for name in never} == {"trips", "not owed"}
    always = states(owed(write_log, monthly("Always")))
    assert [always[name] for name in always].count("nil") == 9


@pytest.mark.parametrize(
    ("typed", "months"),
    [
        ("always", range(1, 13)),
        ("every month", range(1, 13)),
        ("Never.", ()),
        ("none", ()),
        ("May", (5,)),
        ("Nov to Feb", (11, 12, 1, 2)),
        ("from March through May", (3, 4, 5)),
        ("March - May only", (3, 4, 5)),
        ("11-2", (11, 12, 1, 2)),
        ("5; 7", (5, 7)),
        ("May-Oct (Nov-Apr only if guided)", None),
        ("May to Oct, Nov to Apr with trips", range(5, 11)),
        ("only in May", None),
        ("13-14", None),
        ("summer", None),
        ("May to", None),
    ],
)
def test_months_are_read_as_typed_or_not_at_all(typed: str, months: object, write_log: WriteLog) -> None:
    found = read_nil_months(typed)
    if months is None:
        assert isinstance(found, str)
        assert f"Nil months '{typed}' can't be read" in found
    else:
        assert found == frozenset(months)  # type: ignore[call-overload]


def test_range_that_the_spreadsheet_made_a_date_is_not_read(write_log: WriteLog) -> None:
    found = owed(write_log, monthly(dt.date(2026, 10, 5)))
    assert "The spreadsheet turned Nil months into a date" in found.problems[0]
    assert states(found)["2026-07"] == "not known"
    assert states(found)["2026-06"] == "trips"


def test_blank_nil_months_and_period_are_said(write_log: WriteLog) -> None:
    found = owed(write_log, monthly(None, 10), ["No period", None, None, "never", 10])
    assert found.problems[0].startswith("Log: Nil months is blank on Reports")
    assert found.problems[1].startswith("No period: Period is blank on Reports")
    assert set(found.table["report"]) == {"Log"}
    assert states(found)["2026-07"] == "not known"


def broken(*cells: object) -> list[list[object]]:
    """The trips of Z1 and a fourth row whose cells are given."""
    return [*trips_sheet(["Kind", "Status"], *Z1), [*cells]]


SIX, TEN = dt.time(6), dt.time(10)
EMPTY = {f"2026-{month:02d}" for month in range(1, 13)} - {"2026-06", "2026-08", "2026-12"}


@pytest.mark.parametrize(
    ("row", "unread"),
    [
        (["T-004", None, "Lake Arden", SIX, TEN, 2], EMPTY),  # no date: it may lie in any month
        (["T-004", "31 June", "Lake Arden", SIX, TEN, 2], EMPTY),
        (["T-004", day(7, 3), "Lake Arden", SIX, SIX, 2], {"2026-07"}),  # no length
        (["T-004", day(6, 3), "Lake Arden", SIX, SIX, 2], set()),  # June has a trip
        (["T-004", dt.date(2027, 7, 3), "Lake Arden", SIX, TEN, 2], {"2026-07"}),  # the year may be a slip
        (["T-004", day(7, 3), "Lake Arden", SIX, SIX, 2, "scouting"], set()),
        (["T-004", None, "Lake Arden", SIX, TEN, 2, None, "void"], set()),
    ],
)
@pytest.mark.parametrize("nil", ["always", "never"])
def test_month_whose_rows_were_not_read_is_never_nil(
    row: list[object], unread: set[str], nil: str, write_log: WriteLog
) -> None:
    found = owed(write_log, monthly(nil, 10), trips=broken(*row))
    assert {name for name, state in states(found).items() if state == "unread"} == unread
    assert set(found.blocks["name"]) == unread
    for why in found.blocks["why"]:
        assert "row 5 of Trips could not be used and may lie in it" in why


def test_row_of_another_permit_does_not_keep_a_month_from_being_nil(write_log: WriteLog) -> None:
    waters = [["Water", "Permit"], ["Lake Arden", "P"], ["Bell River", "Q"]]
    papers = [["Document", "Kind"], ["P", "permit"], ["Q", "permit"]]
    reports = [["On P", "P", "month", "always", 10], ["On Q", "Q", "month", "always", 10]]
    trips = broken("T-004", day(7, 3), "Bell River", SIX, SIX, 2)
    found = owed(write_log, *reports, trips=trips, Waters=waters, Documents=papers)
    july = found.table[found.table["name"] == "2026-07"]
    assert dict(zip(july["report"], july["state"], strict=True)) == {"On P": "nil", "On Q": "unread"}
    june = found.table[found.table["name"] == "2026-06"]
    assert dict(zip(june["report"], june["trips"], strict=True)) == {"On P": 1, "On Q": 0}
    nowhere = broken("T-004", day(7, 3), None, SIX, TEN, 2)
    found = owed(write_log, *reports, trips=nowhere, Waters=waters, Documents=papers)
    assert set(found.blocks["report"]) == {"On P", "On Q"}


def test_month_that_is_not_over_is_no_nil_month(write_log: WriteLog) -> None:
    season = [
        ["Setting", "Value"],
        ["First day", day(1, 1)],
        ["Last day", day(12, 31)],
        ["As-of date", day(8, 30)],
    ]
    found = owed(write_log, monthly("always", 10), trips=trips_sheet([], *Z1[:2]), Season=season)
    made = states(found)
    assert [made[f"2026-{month:02d}"] for month in (7, 8, 9)] == ["nil", "trips", "not over"]
    assert "Not over on the as-of date, 2026-08-30." in found.table["why"].tolist()


def test_trip_over_the_end_of_a_month_is_activity_of_both(write_log: WriteLog) -> None:
    trips = trips_sheet(["End date"], ("T-001", day(6, 29), day(7, 1)))
    found = owed(write_log, monthly("always", 10), trips=trips)
    assert [states(found)[f"2026-{month:02d}"] for month in (6, 7, 8)] == ["trips", "trips", "nil"]


def test_periods_asked_for_are_whole_ones_that_touch_the_days(write_log: WriteLog) -> None:
    asked = Period(day(6, 20), day(7, 2))
    found = owed(write_log, monthly("always", 10), period=asked)
    assert states(found) == {"2026-06": "trips", "2026-07": "nil"}


def test_season_without_days_lasts_from_its_first_trip_to_its_last(write_log: WriteLog) -> None:
    found = owed(write_log, monthly("always", 10), Season=[["Setting", "Value"], ["Units", "us"]])
    assert list(states(found)) == [f"2026-{month:02d}" for month in range(6, 13)]
