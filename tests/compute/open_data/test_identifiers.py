"""Identifiers stay from run to run, are unique, and rest on author, year, trip and place on it alone."""

import datetime as dt
import re

from reporter.compute.open_data.archive import OpenData
from tests.compute.open_data.archives import CATCH, TRIPS, Row, data_of
from tests.conftest import Change, WriteLog

SETTINGS: list[Row] = [["Setting", "Value"], ["Guide code", "G01"], ["Last day", dt.date(2027, 12, 31)]]
FISH: list[Row] = [
    ["T-1", "Drop shot", "bluegill"],
    ["T-1", "Drop shot", "walleye"],
    ["T-2", "Drop shot", "sauger"],
]


def log_of(
    fish: list[Row] = FISH, year: int = 2026, settings: list[Row] = SETTINGS, **more: Change
) -> dict[str, Change]:
    six, ten = dt.time(6), dt.time(10)
    trips: list[Row] = [
        [f"T-{day}", dt.date(year, 5, day), "Lake Arden", six, ten, 2, "camp"] for day in (1, 2)
    ]
    effort: list[Row] = [["Trip", "Technique", "Minutes"], *([row[0], "Drop shot", 60] for row in trips)]
    sheets = {"Trips": [[*TRIPS, "Outing"], *trips], "Effort": effort, "Catch": [CATCH, *fish]}
    return {"Season": settings, **sheets, **more}


def identifiers(data: OpenData) -> list[str]:
    return [
        *data.events["eventID"],
        *data.occurrences["occurrenceID"],
        *data.measurements["measurementID"],
        data.key,
    ]


def fish_of(data: OpenData) -> dict[str, str]:
    return dict(zip(data.occurrences["vernacularName"], data.occurrences["occurrenceID"], strict=True))


def test_every_identifier_is_unique_and_of_one_form(write_log: WriteLog) -> None:
    fate: list[Row] = [[*row, None, 9, None, None, "kept"] for row in FISH]
    found = identifiers(data_of(write_log(log_of(fate))))
    assert len(found) == 3 + 3 + 6 + 1
    assert len(set(found)) == len(found)
    # RFC 4122: a name-based UUID of version 5, as a URN.
    form = re.compile(r"urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
    assert all(form.fullmatch(word) for word in found)


def test_same_log_under_another_name_has_the_same_identifiers(write_log: WriteLog) -> None:
    first, second = (data_of(write_log(log_of(), name=name)) for name in ("one.xlsx", "two.xlsx"))
    assert identifiers(first) == identifiers(second)


def test_fish_added_to_one_trip_leaves_all_others_their_identifiers(write_log: WriteLog) -> None:
    more = data_of(write_log(log_of([*FISH[:2], ["T-1", "Drop shot", "bowfin"], FISH[2]])))
    before, after = fish_of(data_of(write_log(log_of()))), fish_of(more)
    assert {name: after[name] for name in before} == before


def test_row_that_is_mended_leaves_all_others_their_identifiers(write_log: WriteLog) -> None:
    broken = data_of(write_log(log_of([["T-1", "Drop shot", "no such fish"], *FISH[1:]])))
    before, after = fish_of(broken), fish_of(data_of(write_log(log_of())))
    assert sorted(before) == ["sauger", "walleye"]
    assert {name: after[name] for name in before} == before


def test_other_guide_and_other_year_have_other_identifiers(write_log: WriteLog) -> None:
    other: list[Row] = [SETTINGS[0], ["Guide code", "G02"], SETTINGS[2]]
    logs = (log_of(), log_of(settings=other), log_of(year=2027))
    events = [set(data_of(write_log(log)).events["eventID"]) for log in logs]
    assert not events[0] & events[1]
    assert not events[0] & events[2]


def test_notes_and_water_and_clients_are_not_in_an_identifier(write_log: WriteLog) -> None:
    six, ten = dt.time(6), dt.time(10)
    columns = [*TRIPS, "Outing", "Client", "Reach", "Notes"]
    changed: list[Row] = [
        columns,
        ["T-1", dt.date(2026, 5, 1), "Bell River", six, ten, 3, "camp", "C9", "north arm", "windy"],
        ["T-2", dt.date(2026, 5, 2), "Bell River", six, ten, 3, "camp", "C8", "south arm", "calm"],
    ]
    before, after = data_of(write_log(log_of())), data_of(write_log(log_of(Trips=changed)))
    assert identifiers(before) == identifiers(after)
