"""Clients of several logs: one code is one client unless something speaks against it."""

import datetime as dt
from pathlib import Path

import pytest

from reporter.compute.clients.join import Joined
from reporter.run.clients import plan_copies, read_logs
from tests.conftest import WriteLog

OLD, NEW = dt.date(2025, 5, 1), dt.date(2026, 5, 1)
HEADING = ["Client", "Name on summary", "Consent to name", "Youth"]
Rows = list[list[object]]


def one_log(
    write_log: WriteLog,
    trips: Rows,
    clients: Rows | None = None,
    waters: Rows | None = None,
) -> Path:
    """Write a log from trips (date, client, words for the client) and the rows of Clients and Waters."""
    heading = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Client", "For the client"]
    rows: Rows = [heading]
    effort: Rows = [["Trip", "Technique", "Minutes", "Landed"]]
    for number, (date, client, *words) in enumerate(trips, start=1):
        start = dt.time(5 + number)
        rows.append([f"T-{number}", date, "Lake Arden", start, dt.time(17), 1, client, *words])
        effort.append([f"T-{number}", "Tube", 60, number])
    return write_log(
        {
            "Season": [["Setting", "Value"], ["Units", "us"]],
            "Trips": rows,
            "Effort": effort,
            "Catch": [["Trip", "Technique", "Species"]],
            "Clients": None if clients is None else [HEADING, *clients],
            "Waters": None if waters is None else [["Water", "Share name"], *waters],
        }
    )


def joined(*logs: Path) -> Joined:
    copies = plan_copies(read_logs(list(logs)), Path("out"))
    assert copies is not None
    return copies.joined


def test_one_name_under_one_code_is_one_client_with_all_days_in_order(write_log: WriteLog) -> None:
    old = one_log(write_log, [[OLD, "C1"]], [["C1", "Anne", "yes", None]])
    new = one_log(write_log, [[NEW, "c-1"]], [["c-1", "anne", "no", None]])
    made = joined(new, old)
    assert [day.date for day in made.copies["C1"].days] == [OLD, NEW]
    assert (made.copies["C1"].name, made.by_code_alone) == ("", ())


def test_last_log_that_lists_a_client_says_whether_the_name_is_printed(write_log: WriteLog) -> None:
    old = one_log(write_log, [[OLD, "C1"]], [["C1", "Anne", "yes", None]])
    new = one_log(write_log, [[NEW, "C1"]])
    made = joined(old, new)
    assert made.copies["C1"].name == "Anne"
    assert made.by_code_alone == ("C1",)


def test_youth_of_one_log_is_one_in_all(write_log: WriteLog) -> None:
    old = one_log(write_log, [[OLD, "C1", "Tommy rocks"]], [["C1", "Tommy Lee", "no", "yes"]])
    new = one_log(write_log, [[NEW, "C1", "Well done Tommy"]], [["C1", None, None, None]])
    client = joined(old, new).copies["C1"]
    assert (client.name, client.youth) == ("", True)
    assert [day.words for day in client.days] == ["", ""]


def test_name_or_water_that_one_log_keeps_is_kept_in_all(write_log: WriteLog) -> None:
    old = one_log(write_log, [[OLD, "C1", "With Zeb on Hidden"]], waters=[["Lake Arden", "yes"]])
    new = one_log(
        write_log,
        [[NEW, "C1"]],
        [["C1", "Anne", "yes", None], ["C3", "Zeb Pike", "yes", None]],
        [["Lake Arden", "no"]],
    )
    days = joined(old, new).copies["C1"].days
    assert [(day.water, day.words) for day in days] == [("", ""), ("", "")]


def test_two_names_under_one_code_give_no_copy(write_log: WriteLog) -> None:
    old = one_log(write_log, [[OLD, "C1"]], [["C1", "Anne", "yes", None]])
    new = one_log(write_log, [[NEW, "C1"]], [["C1", "Bert", "yes", None]])
    made = joined(old, new)
    assert made.copies == {}
    assert made.two_names == {"C1": ("Anne", "Bert")}
    assert made.refused == ("C1",)


@pytest.mark.parametrize("fish", [0, 1])
def test_trip_that_two_logs_tell_alike_gives_no_copy(write_log: WriteLog, fish: int) -> None:
    """Both logs have a trip of one hour; alike in fish too it is one trip, written twice."""
    both = one_log(write_log, [[OLD, "C1"], [NEW, "C1"]])
    new = one_log(write_log, [[OLD, "C9"]] * (1 - fish) + [[NEW, "C1"]])
    made = joined(both, new)
    assert (set(made.same_day) == {"C1"}) is (fish == 0)


def test_client_without_a_trip_has_no_copy(write_log: WriteLog) -> None:
    made = joined(one_log(write_log, [[OLD, "C1"]], [["C1"], ["C2"]]))
    assert set(made.copies) == {"C1"}
    assert made.no_trip == ("C2",)


def test_client_of_a_trip_that_is_set_aside_is_told_to_have_none(write_log: WriteLog) -> None:
    made = joined(one_log(write_log, [[OLD, "C1"], ["31 June 2025", "C2"]]))
    assert made.no_trip == ("C2",)
