"""The trip ledger, effort and harvest, rows set aside, and the tables that leave as CSV."""

import datetime as dt

import pandas as pd
import pytest

from reporter.compute.paperwork.outputs import paperwork_outputs
from reporter.compute.paperwork.period import Period
from reporter.schema.paperwork_tables import PAPERWORK_TABLES
from tests.compute.paperwork import keystone
from tests.compute.paperwork.logs import day, read, season_sheet, trips_sheet
from tests.conftest import Change, WriteLog

CATCH = ["Trip", "Technique", "Species", "Count", "Fate"]
EFFORT = ["Trip", "Technique", "Minutes", "Landed"]
LMB, SMB, PIKE = "largemouth bass", "smallmouth bass", "northern pike"
SIX = dt.time(6)


# Test L1: 9 caught = 4 kept + 5 released -> 0.40 fish per angler-hour of 22.5.
def test_line_of_the_ledger_has_two_durations_and_its_fish(write_log: WriteLog) -> None:
    headings = ["Anglers", "Lines", "Start", "End", "Left dock", "Back at dock"]
    clocks = [dt.time(*at) for at in ((6, 15), (13, 45), (5, 40), (14, 10))]
    catch = [
        CATCH,
        ["T-001", "Drop shot", LMB, 4, "kept"],
        ["T-001", "Drop shot", SMB, 2, "released"],
        ["T-001", "Drop shot", LMB, 3, "released"],
    ]
    trips = trips_sheet(headings, ("T-001", day(6, 3), 3, 4, *clocks))
    effort = [EFFORT, ["T-001", "Drop shot", 450, None]]
    made, _ = read(write_log, {"Trips": trips, "Catch": catch, "Effort": effort})
    (line,) = made.ledger.to_dict("records")
    assert (line["dock_hours"], line["hours"]) == (8.5, 7.5)
    assert (line["angler_hours"], line["line_hours"]) == (22.5, 30.0)
    assert (line["kept"], line["released"], line["unknown"], line["caught"]) == (4, 5, 0, 9)
    assert line["fish_per_angler_hour"] == pytest.approx(0.40)


def season_of_two_waters() -> dict[str, Change]:
    trips = trips_sheet(
        ["Water", "Anglers", "Kind", "Status"],
        ("T-001", day(6, 3), "Lake Arden", 2, None, None),
        ("T-002", day(6, 30), "Lake Arden", 3, None, "log not finished"),
        ("T-003", day(7, 1), "Lake Arden", 1, None, None),
        ("T-004", day(7, 2), "Bell River", 2, "scouting", None),
        ("T-005", day(7, 3), "Bell River", 2, None, None),
        ("T-006", day(7, 4), "Bell River", 2, None, "cancelled"),
    )
    catch = [
        CATCH,
        ["T-001", "Drop shot", LMB, 2, "kept"],
        ["T-001", "Drop shot", PIKE, 1, None],  # not a species counted, its fate not told
        ["T-002", "Drop shot", SMB, 3, "released"],
        ["T-004", "Drop shot", LMB, 7, "released"],  # scouting
        ["T-005", "Drop shot", "none", None, None],
    ]
    effort = [
        EFFORT,
        ["T-001", "Drop shot", 240, 6],  # 2 on a row, 4 beyond it
        *([f"T-00{number}", "Drop shot", 240, None] for number in (2, 3, 4)),
        ["T-005", "Drop shot", 240, 0],
    ]
    season = season_sheet(Species_counted="black bass")
    return {"Trips": trips, "Catch": catch, "Effort": effort, "Season": season}


def test_harvest_adds_up_by_water_and_month_with_fish_of_no_kind_apart(write_log: WriteLog) -> None:
    made, _ = read(write_log, season_of_two_waters())
    columns = ["water", "month", "trips", "unfinished", "anglers", "angler_hours", "species"]
    found = made.harvest[[*columns, "kept", "released", "unknown", "caught"]].to_numpy().tolist()
    # 4 hours a trip. June at Lake Arden: 2 + 3 anglers, 20 angler-hours.
    assert found == [
        ["Bell River", "2026-07", 1, 0, 2, 8, "no fish", 0, 0, 0, 0],
        ["Lake Arden", "2026-06", 2, 1, 5, 20, LMB, 2, 0, 0, 2],
        ["Lake Arden", "2026-06", 2, 1, 5, 20, PIKE, 0, 0, 1, 1],
        ["Lake Arden", "2026-06", 2, 1, 5, 20, SMB, 0, 3, 0, 3],
        ["Lake Arden", "2026-06", 2, 1, 5, 20, "tallied, kind not written", 0, 0, 4, 4],
        ["Lake Arden", "2026-07", 1, 0, 1, 4, "no fish", 0, 0, 0, 0],
    ]
    of_guided = made.ledger[made.ledger["counts"]]
    assert made.harvest["caught"].sum() == of_guided["caught"].sum() == 10


def test_harvest_and_ledger_of_a_period_hold_its_days_alone(write_log: WriteLog) -> None:
    made, _ = read(write_log, season_of_two_waters(), Period(day(6, 30), day(7, 1)))
    assert made.ledger["trip"].tolist() == ["T-002", "T-003"]
    assert made.harvest["month"].tolist() == ["2026-06", "2026-07"]
    assert made.account.set_index("sheet")["read"].to_dict() == {"Trips": 2, "Effort": 2, "Catch": 1}


def test_ledger_accounts_for_every_row_void_and_set_aside_ones_too(write_log: WriteLog) -> None:
    trips = trips_sheet(
        ["Start", "End", "Status", "Kind"],
        ("T-003", day(6, 9), SIX, dt.time(10), None, None),
        ("T-001", day(6, 3), SIX, dt.time(10), None, "own"),
        ("T-002", None, None, None, "void", None),
        ("T-004", day(6, 5), SIX, SIX, None, None),  # no length: set aside
    )
    made, _ = read(write_log, {"Trips": trips})
    lines = made.ledger[["trip", "status", "row", "counts"]].to_numpy().tolist()
    assert lines == [
        ["T-001", "done", 3, False],
        ["T-002", "void", 4, False],
        ["T-004", "set aside", 5, False],
        ["T-003", "done", 2, True],
    ]
    void = made.ledger.set_index("trip").loc["T-002"]
    assert void[["anglers", "hours", "caught"]].isna().all()


def test_rows_set_aside_are_counted_with_those_that_may_lie_in_any_period(write_log: WriteLog) -> None:
    trips = trips_sheet(
        ["Start", "End"],
        ("T-001", day(6, 3), SIX, dt.time(10)),
        ("T-002", day(6, 4), SIX, SIX),  # set aside in June
        ("T-003", day(7, 4), SIX, SIX),  # set aside in July
        ("T-004", None, SIX, dt.time(10)),  # on no day that is known
    )
    effort = [
        EFFORT,
        ["T-001", "Drop shot", 200, None],
        ["T-001", "Drop shot", 0, None],  # no time at all
        ["T-001", None, 40, None],  # no technique
        ["T-999", "Drop shot", 40, None],  # no such trip
    ]
    catch = [CATCH, ["T-001", "Drop shot", "bream or so", 2, "kept"], ["T-001", "Drop shot", LMB, 2, "kept"]]
    changes: dict[str, Change] = {"Trips": trips, "Effort": effort, "Catch": catch}
    made, reading = read(write_log, changes, Period(day(6, 1), day(6, 30)))
    rows = made.account.set_index("sheet")[["read", "used", "set_aside", "undated", "rows"]].T.to_dict("list")
    assert rows["Trips"] == [2, 1, 1, 1, (3, 5)]
    assert rows["Effort"] == [3, 1, 2, 1, (3, 4, 5)]
    assert reading.counts["Effort"].set_aside == 3
    assert rows["Catch"] == [2, 1, 1, 0, (2,)]


def test_tables_that_leave_as_csv_have_the_columns_they_promise(write_log: WriteLog) -> None:
    sheets = keystone.keystone_sheets()
    sheets["Reports"] = [
        ["Report", "Document", "Counting rule", "Period", "Nil months"],
        ["Log", keystone.PERMIT, "log trips", "month", "never"],
    ]
    made, _ = read(write_log, sheets, Period(day(6, 13), day(6, 14)))
    tables = paperwork_outputs(made)
    assert {table.name for table in PAPERWORK_TABLES} == set(tables)
    for table in PAPERWORK_TABLES:
        assert {field.name for field in table.fields} <= set(tables[table.name].columns)
    use = tables["use"][["permit", "report", "rule", "count", "season_count", "left"]]
    assert use.fillna(-1).to_numpy().tolist() == [
        [keystone.PERMIT, "", "client-days", 4, 6, 194],
        [keystone.PERMIT, "Log", "log trips", 3, 4, -1],
    ]
    assert pd.api.types.is_integer_dtype(tables["use"]["trips"])
