"""Papers on the days of trips, clients' licences, passengers and sea days."""

import datetime as dt

import pandas as pd
import pytest

from reporter.compute.paperwork.period import OPEN, Period
from tests.compute.paperwork.logs import Row, day, read, season_sheet, trips_sheet
from tests.conftest import WriteLog

PAPERS = ["Document", "Kind", "Valid from", "Valid to"]
SIX, TEN = dt.time(6), dt.time(10)


def documents(write_log: WriteLog, *papers: Row, trips: list[list[object]] | None = None) -> pd.DataFrame:
    trips = trips or trips_sheet([], ("T-001", day(7, 1)), ("T-002", day(7, 2)))
    made, _ = read(write_log, {"Trips": trips, "Documents": [PAPERS, *map(list, papers)]})
    return made.documents.set_index("document")


# Test U2: a credential expires on 1 Jul 2026: the trip of 1 July is covered, that of 2 July is not.
def test_paper_covers_its_last_day_and_not_the_day_after(write_log: WriteLog) -> None:
    paper = documents(write_log, ["Credential", "licence", None, day(7, 1)]).loc["Credential"]
    assert (paper["trips"], paper["trips_outside"], paper["trip"]) == (2, 1, "T-002")
    assert paper["day"] == pd.Timestamp(2026, 7, 2)


def test_every_day_of_a_trip_needs_the_paper(write_log: WriteLog) -> None:
    trips = trips_sheet(["End date"], ("T-001", day(6, 29), day(7, 2)))
    paper = documents(write_log, ["Credential", "licence", None, day(7, 1)], trips=trips).loc["Credential"]
    assert (paper["trips_outside"], paper["day"]) == (1, pd.Timestamp(2026, 7, 2))


# The season is the year 2026 and its as-of date the last day; the next season is the year 2027.
@pytest.mark.parametrize(
    ("valid_to", "state"),
    [
        (None, "no end written"),
        (day(12, 30), "ran out"),
        (day(12, 31), "runs out before next season"),
        (dt.date(2027, 1, 1), "runs out during next season"),
        (dt.date(2027, 12, 30), "runs out during next season"),
        (dt.date(2027, 12, 31), "lasts"),
    ],
)
def test_what_runs_out_before_and_in_next_season_is_told(
    valid_to: dt.date | None, state: str, write_log: WriteLog
) -> None:
    assert documents(write_log, ["Card", "card", None, valid_to]).loc["Card", "state"] == state


# Seven years after the season's end, 31 December 2026, or three after the paper's, whichever is later.
@pytest.mark.parametrize(
    ("valid_to", "until"),
    [
        (None, dt.date(2033, 12, 31)),
        (dt.date(2030, 12, 31), dt.date(2033, 12, 31)),
        (dt.date(2031, 1, 1), dt.date(2034, 1, 1)),
        (dt.date(2032, 2, 29), dt.date(2035, 2, 28)),
    ],
)
def test_records_are_kept_for_years_after_season_and_paper(
    valid_to: dt.date | None, until: dt.date, write_log: WriteLog
) -> None:
    found = documents(write_log, ["Permit", "permit", None, valid_to]).loc["Permit", "keep_until"]
    assert found == pd.Timestamp(until)


def test_paper_followed_by_one_alike_is_renewed_and_the_first_to_run_out_stands_first(
    write_log: WriteLog,
) -> None:
    made = documents(
        write_log,
        ["Open", "card", None, None],
        ["CPR 2026", "card", day(7, 2), dt.date(2028, 7, 1)],
        ["CPR 2025", "card", None, day(7, 1)],
    )
    assert made["state"].to_dict() == {"CPR 2025": "renewed", "CPR 2026": "lasts", "Open": "no end written"}
    assert list(made.index) == ["CPR 2025", "CPR 2026", "Open"]
    assert made["trips_outside"].tolist() == [0, 0, 0]


def test_what_runs_out_is_not_checked_without_a_day_to_count_from(write_log: WriteLog) -> None:
    made, _ = read(
        write_log,
        {
            "Season": [["Setting", "Value"], ["Units", "us"]],
            "Trips": trips_sheet([], ("T-001", day(7, 1))),
            "Documents": [PAPERS, ["Card", "card", None, day(12, 1)]],
        },
    )
    assert made.documents["state"].tolist() == ["not checked"]


# Client, licence from, licence to; trips: C01 and C02 on 1 July, C01 from 3 to 5 July, C03 and C04 on 6 July.
CLIENTS = [
    ["Client", "Licence from", "Licence to", "Youth"],
    ["C01", day(7, 1), day(7, 4), None],
    ["C02", day(7, 1), day(7, 1), None],
    ["C03", None, None, "yes"],
    ["C04", day(7, 7), None, None],
]


@pytest.mark.parametrize(("period", "clients"), [(OPEN, 4), (Period(None, day(7, 2)), 2)])
def test_clients_licences_are_held_against_the_days_of_their_trips(
    period: Period, clients: int, write_log: WriteLog
) -> None:
    trips = trips_sheet(
        ["Client", "End date"],
        ("T-001", day(7, 1), "C01; C02", None),
        ("T-002", day(7, 3), "C01", day(7, 5)),
        ("T-003", day(7, 6), "C03; C04", None),
    )
    made, _ = read(write_log, {"Trips": trips, "Clients": CLIENTS}, period)
    found = made.licences.set_index("client")
    assert len(found) == clients
    assert found["state"].to_dict() == dict(
        list(
            {
                "C01": "outside" if period == OPEN else "valid",
                "C02": "valid",
                "C03": "not written",
                "C04": "outside",
            }.items()
        )[:clients]
    )
    if period == OPEN:
        first = found.loc["C01"]
        assert (first["trips"], first["days"], first["days_outside"]) == (2, 4, 1)
        assert (first["trip"], first["day"]) == ("T-002", pd.Timestamp(2026, 7, 5))
        assert found["youth"].tolist() == [False, False, True, False]


# Test U1: 5 who pay and 1 comped are 6 -> all right; 5 who pay and 2 comped children are 7 -> said. The
# guide and his paid mate are not counted.
def test_everybody_but_guide_and_crew_is_a_passenger(write_log: WriteLog) -> None:
    trips = trips_sheet(
        ["Anglers", "Passengers", "Boat"],
        ("T-001", day(7, 1), 5, 6, "Skiff"),
        ("T-002", day(7, 2), 5, 7, "skiff"),
        ("T-003", day(7, 3), 7, None, "Skiff"),  # Anglers where Passengers is blank
        ("T-004", day(7, 4), 5, 9, "Canoe"),
    )
    papers = [["Document", "Kind", "Holder", "Allowed"], ["Certificate", "licence", "Skiff", 6]]
    made, _ = read(write_log, {"Trips": trips, "Documents": papers})
    assert made.passengers["trip"].tolist() == ["T-001", "T-002", "T-003"]
    assert made.passengers["aboard"].tolist() == [6, 7, 7]
    assert made.passengers["over"].tolist() == [False, True, True]


def docks(*spans: tuple[dt.date, dt.time | None, dt.time | None, str | None]) -> list[list[object]]:
    rows = [(f"T-{n:03d}", date, left, back, kind) for n, (date, left, back, kind) in enumerate(spans, 1)]
    season = trips_sheet(["Left dock", "Back at dock", "Kind", "Start", "End"], *rows)
    for row in season[1:]:
        start = row[season[0].index("Left dock")]
        row[season[0].index("Start")] = start or SIX
        row[season[0].index("End")] = row[season[0].index("Back at dock")] or TEN
    return season


# Test U3: under way 6.0, 9.0, 4.0 and 3.5 h -> 3 sea days.
def test_day_with_four_hours_under_way_is_a_sea_day(write_log: WriteLog) -> None:
    six = dt.time(6)
    trips = docks(
        (day(7, 1), six, dt.time(12), None),
        (day(7, 2), six, dt.time(15), None),
        (day(7, 3), six, dt.time(10), None),
        (day(7, 4), six, dt.time(9, 30), None),
    )
    made, _ = read(write_log, {"Trips": trips})
    assert made.sea_days["sea_days"].tolist() == [3]
    assert made.sea_days["hours"].tolist() == [22.5]


def test_hours_of_a_day_add_up_by_guide_and_scouting_days_stand_beside(write_log: WriteLog) -> None:
    trips = docks(
        (day(7, 1), dt.time(6), dt.time(8), None),  # 2 h and 2 h: a sea day
        (day(7, 1), dt.time(16), dt.time(18), None),
        (day(7, 2), dt.time(6), dt.time(10), "scouting"),
        (day(7, 3), None, None, None),
    )
    made, _ = read(write_log, {"Trips": trips})
    (row,) = made.sea_days.to_dict("records")
    assert (row["sea_days"], row["sea_days_all"], row["trips"], row["untimed"]) == (1, 2, 4, 1)
    guides = [[*row, guide] for row, guide in zip(trips, ("Guide", "Ben", "Anna", "Ben", "Ben"), strict=True)]
    apart, _ = read(write_log, {"Trips": guides})
    assert apart.sea_days["guide"].tolist() == ["Anna", "Ben"]
    assert apart.sea_days["sea_days"].tolist() == [0, 0]
    assert apart.sea_days["sea_days_all"].tolist() == [0, 1]


@pytest.mark.parametrize(
    ("left", "back", "hours"),
    [
        (dt.time(5, 40), dt.time(14, 10), 8.5),
        (dt.time(23, 30), dt.time(14, 10), 14 + 10 / 60 + 0.5),  # cast off the evening before
        (dt.time(7), dt.time(14, 10), None),  # at the dock while lines were in
        (dt.time(5, 40), dt.time(13), None),
        (dt.time(17), dt.time(4), None),  # 13 h before and 14 h after: on the wrong half of the clock
        (None, dt.time(14, 10), None),
    ],
)
def test_dock_hours_hold_the_hours_with_lines_in_or_are_not_known(
    left: dt.time | None, back: dt.time, hours: float | None, write_log: WriteLog
) -> None:
    headings = ["Start", "End", "Left dock", "Back at dock"]
    row = ("T-001", day(7, 1), dt.time(6, 15), dt.time(13, 45), left, back)
    made, _ = read(write_log, {"Trips": trips_sheet(headings, row)})
    (found,) = made.ledger["dock_hours"].tolist()
    assert found == (pytest.approx(hours) if hours else pytest.approx(float("nan"), nan_ok=True))


def test_night_trip_comes_home_the_next_day(write_log: WriteLog) -> None:
    row = ("T-001", day(7, 1), dt.time(20, 30), dt.time(1, 15), dt.time(20), dt.time(1, 30))
    headings = ["Start", "End", "Left dock", "Back at dock"]
    made, _ = read(write_log, {"Trips": trips_sheet(headings, row), "Season": season_sheet()})
    assert made.ledger["dock_hours"].tolist() == [5.5]
