"""Clients of several logs: one code is one client unless something speaks against it."""

import datetime as dt

from reporter.compute.clients.days import LogClients
from reporter.compute.clients.join import join_logs
from reporter.compute.clients.known import Known
from reporter.compute.clients.model import Day


def log(days: dict[str, list[dt.date]], **known: Known) -> LogClients:
    made = {
        code: tuple(Day(date, 360.0, "", 4.0, alone=True) for date in dates) for code, dates in days.items()
    }
    return LogClients(made, {**{code: Known() for code in days}, **known}, {}, (), ())


OLD, NEW = dt.date(2025, 5, 1), dt.date(2026, 5, 1)
ANNE = Known("Anne", consent=True)


def test_one_name_under_one_code_is_one_client_with_all_days_in_order() -> None:
    joined = join_logs(
        [log({"C1": [OLD]}, C1=ANNE), log({"c-1": [NEW]}, **{"c-1": Known("anne", consent=False)})]
    )
    assert [day.date for day in joined.copies["C1"].days] == [OLD, NEW]
    assert joined.copies["C1"].name == ""
    assert joined.by_code_alone == ()


def test_what_the_latest_log_says_of_a_client_counts() -> None:
    joined = join_logs([log({"C1": [OLD]}, C1=Known("Anne")), log({"C1": [NEW]}, C1=ANNE)])
    assert joined.copies["C1"].name == "Anne"


def test_two_names_under_one_code_give_no_copy() -> None:
    joined = join_logs([log({"C1": [OLD]}, C1=ANNE), log({"C1": [NEW]}, C1=Known("Bert"))])
    assert joined.copies == {}
    assert joined.two_names == {"C1": ("Anne", "Bert")}
    assert joined.refused == ("C1",)


def test_a_day_that_two_logs_tell_alike_gives_no_copy() -> None:
    joined = join_logs([log({"C1": [OLD, NEW]}, C1=ANNE), log({"C1": [NEW]}, C1=ANNE)])
    assert joined.copies == {}
    assert joined.same_day["C1"].date == NEW


def test_two_trips_of_one_log_at_one_hour_are_no_copies_of_each_other() -> None:
    assert set(join_logs([log({"C1": [NEW, NEW]})]).copies) == {"C1"}


def test_code_without_a_name_in_one_log_is_joined_and_said() -> None:
    joined = join_logs([log({"C1": [OLD]}), log({"C1": [NEW]}, C1=ANNE)])
    assert len(joined.copies["C1"].days) == 2
    assert joined.by_code_alone == ("C1",)


def test_client_without_a_trip_has_no_copy() -> None:
    joined = join_logs([log({"C1": [OLD]}, C2=ANNE), log({}, C3=ANNE)])
    assert set(joined.copies) == {"C1"}
    assert joined.no_trip == ("C2", "C3")
