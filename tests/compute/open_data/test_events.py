"""Events: one a trip, one an outing of several; where and when and how much, as far as it may be told."""

import datetime as dt

import pytest

from reporter.compute.open_data.archive import open_data
from reporter.run.season import read_season
from tests.compute.open_data.archives import TRIPS, WATERS, Row, data_of
from tests.conftest import Change, WriteLog

SIX, TEN = dt.time(6), dt.time(10)
APRIL, MAY = dt.date(2026, 4, 18), dt.date(2026, 5, 2)
PLAIN = ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"]


def log_of(trips: list[Row], more: Row | None = None, **sheets: Change) -> dict[str, Change]:
    """A log of these trips, an hour of one technique on each; their fish none of our business."""
    effort: list[Row] = [PLAIN, *([row[0], "Drop shot", 60, 2, None] for row in trips)]
    heading: Row = [*TRIPS, *(more or [])]
    catch: list[Row] = [["Trip", "Technique", "Species"]]
    return {"Trips": [heading, *trips], "Effort": effort, "Catch": catch, **sheets}


def only(rows: list[dict[str, object]]) -> dict[str, object]:
    (row,) = rows
    return row


def events(write_log: WriteLog, changes: dict[str, Change]) -> list[dict[str, object]]:
    return data_of(write_log(changes)).events.to_dict("records")


def test_effort_is_anglers_times_hours_fished(write_log: WriteLog) -> None:
    # The example of the specification: 06:15 to 13:45 is 7.5 h; 3 anglers make 22.5 angler-hours.
    trip: Row = ["T-1", APRIL, "Lake Arden", dt.time(6, 15), dt.time(13, 45), 3]
    event = only(events(write_log, log_of([trip])))
    assert event["samplingProtocol"] == "angling"
    assert event["samplingEffort"] == "22.5 angler-hours"
    assert (event["sampleSizeValue"], event["sampleSizeUnit"]) == (7.5, "hour")


def test_hours_off_are_no_effort_and_a_guide_who_fishes_is_an_angler(write_log: WriteLog) -> None:
    # 4 h less .5 h are 3.5 h; 2 anglers and the guide make 10.5 angler-hours.
    trip: Row = ["T-1", APRIL, "Lake Arden", SIX, TEN, 2, 0.5, "yes"]
    event = only(events(write_log, log_of([trip], ["Hours off", "Guide fished"])))
    assert event["samplingEffort"] == "10.5 angler-hours"
    assert event["sampleSizeValue"] == 3.5
    assert "counts as an angler" in str(event["eventRemarks"])


def test_trip_without_an_angler_has_no_effort(write_log: WriteLog) -> None:
    event = only(events(write_log, log_of([["T-1", APRIL, "Lake Arden", SIX, TEN, 0]])))
    assert event["samplingEffort"] == ""


@pytest.mark.parametrize(
    ("start", "end", "date"),
    [
        (SIX, TEN, "2026-04-18"),
        (dt.time(20), dt.time(1, 30), "2026-04-18/2026-04-19"),
        (dt.time(20), dt.time(0), "2026-04-18"),  # out at midnight: no minute of the next day was fished
    ],
)
def test_night_trip_is_an_interval(write_log: WriteLog, start: dt.time, end: dt.time, date: str) -> None:
    event = only(events(write_log, log_of([["T-1", APRIL, "Lake Arden", start, end, 2]])))
    assert event["eventDate"] == date


def test_long_trip_ends_on_its_end_date(write_log: WriteLog) -> None:
    trip: Row = ["T-1", APRIL, "Lake Arden", SIX, TEN, 2, dt.date(2026, 4, 20)]
    event = only(events(write_log, log_of([trip], ["End date"])))
    assert event["eventDate"] == "2026-04-18/2026-04-20"


def test_only_guided_trips_that_were_fished_are_told(write_log: WriteLog) -> None:
    kinds = [("guided", None), (None, "cut short"), (None, "log not finished")]
    left_out = [("scouting", None), ("own", None), (None, "cancelled"), (None, "void")]
    trips: list[Row] = [
        [f"T-{number}", APRIL + dt.timedelta(number), "Lake Arden", SIX, TEN, 2, kind, status]
        for number, (kind, status) in enumerate([*kinds, *left_out])
    ]
    told = events(write_log, log_of(trips, ["Kind", "Status"]))
    assert [event["eventDate"] for event in told] == ["2026-04-18", "2026-04-19", "2026-04-20"]
    assert "not finished" in str(told[2]["eventRemarks"])


def test_period_has_both_its_ends(write_log: WriteLog) -> None:
    days = [dt.date(2026, 4, day) for day in (30, 29)] + [dt.date(2026, 5, day) for day in (1, 31)]
    days.append(dt.date(2026, 6, 1))
    trips: list[Row] = [[f"T-{number}", day, "Lake Arden", SIX, TEN, 2] for number, day in enumerate(days)]
    reading = read_season(write_log(log_of(trips)))
    assert reading.season is not None
    may = open_data(reading.season, reading.log, dt.date(2026, 5, 1), dt.date(2026, 5, 31))
    assert may.events["eventDate"].tolist() == ["2026-05-01", "2026-05-31"]
    assert (may.first, may.last) == (dt.date(2026, 5, 1), dt.date(2026, 5, 31))
    nothing = open_data(reading.season, reading.log, dt.date(2026, 9, 1))
    assert (len(nothing.events), len(nothing.occurrences), len(nothing.measurements)) == (0, 0, 0)
    assert (nothing.first, nothing.last) == (None, None)


OUTING_WATERS: list[Row] = [
    WATERS,
    ["Lake Arden", "US-MI", "Fulton", "0042", "yes", None],
    ["Bell River", "US-MI", "Fulton", "0043", "yes", None],
    ["Otter Mere", "US-MI", "Dale", "0044", "no", None],
]


def outing(write_log: WriteLog, waters: list[str]) -> list[dict[str, object]]:
    trips: list[Row] = [
        [f"T-{number}", APRIL + dt.timedelta(number), water, SIX, TEN, 2, code]
        for number, (water, code) in enumerate(
            zip([*waters, "Lake Arden"], [*["camp"] * len(waters), "day"], strict=True)
        )
    ]
    return events(write_log, log_of(trips, ["Outing"], Waters=OUTING_WATERS))


def test_outing_of_several_trips_is_their_parent(write_log: WriteLog) -> None:
    parent, *trips = outing(write_log, ["Lake Arden", "Lake Arden", "Lake Arden"])
    assert parent["eventDate"] == "2026-04-18/2026-04-20"
    assert [trip["parentEventID"] for trip in trips] == [parent["eventID"]] * 3 + [""]
    assert parent["parentEventID"] == ""
    assert (parent["waterBody"], parent["locationID"], parent["county"]) == ("Lake Arden", "0042", "Fulton")
    # Effort stands with the trips: at the outing it would count twice.
    assert (parent["samplingEffort"], parent["sampleSizeUnit"]) == ("", "")


def test_outing_is_placed_by_what_its_trips_share(write_log: WriteLog) -> None:
    parent, *_ = outing(write_log, ["Lake Arden", "Bell River"])
    assert (parent["stateProvince"], parent["county"], parent["waterBody"]) == ("US-MI", "Fulton", "")
    parent, *_ = outing(write_log, ["Lake Arden", "Otter Mere"])
    assert (parent["stateProvince"], parent["county"], parent["waterBody"]) == ("US-MI", "", "")
    assert parent["dataGeneralizations"] == "Place given by county and state only."
    assert "Name of the water" in str(parent["informationWithheld"])


@pytest.mark.parametrize("share", ["masked", "no", None])
def test_water_that_is_not_shared_is_named_nowhere(write_log: WriteLog, share: str | None) -> None:
    waters: list[Row] = [WATERS, ["Otter Mere", "US-MI", "Fulton", "0042", share, "a northern lake"]]
    trip: Row = ["T-1", APRIL, "Otter Mere", SIX, TEN, 2]
    event = only(events(write_log, log_of([trip], Waters=waters)))
    assert (event["waterBody"], event["locationID"]) == ("", "")
    assert (event["countryCode"], event["stateProvince"], event["county"]) == ("US", "US-MI", "Fulton")
    assert event["dataGeneralizations"] == "Place given by county and state only."
    assert event["informationWithheld"] == "Name of the water, names of people, and where on the water."


def test_shared_water_is_named_with_its_number(write_log: WriteLog) -> None:
    waters: list[Row] = [WATERS, ["Lake Arden", "ca-bc", "Fulton", "0042", "yes", None]]
    trip: Row = ["T-1", APRIL, "Lake Arden", SIX, TEN, 2]
    event = only(events(write_log, log_of([trip], Waters=waters)))
    assert (event["waterBody"], event["locationID"]) == ("Lake Arden", "0042")
    assert (event["countryCode"], event["stateProvince"]) == ("CA", "CA-BC")
    assert event["dataGeneralizations"] == ""


def test_water_of_no_list_has_no_place(write_log: WriteLog) -> None:
    event = only(events(write_log, log_of([["T-1", APRIL, "Elsewhere", SIX, TEN, 2]])))
    assert [event[key] for key in ("countryCode", "stateProvince", "county", "waterBody")] == [""] * 4
    assert event["dataGeneralizations"] == "Place not given."


@pytest.mark.parametrize("region", ["Michigan", "US", "US-", "USA-MI", "US-MICH", "US MI", "1S-MI"])
def test_region_of_another_form_is_left_out(write_log: WriteLog, region: str) -> None:
    waters: list[Row] = [WATERS, ["Lake Arden", region, "Fulton", "0042", "no", None]]
    event = only(events(write_log, log_of([["T-1", APRIL, "Lake Arden", SIX, TEN, 2]], Waters=waters)))
    assert (event["countryCode"], event["stateProvince"]) == ("", "")
    assert event["dataGeneralizations"] == "Place given by county only."


def test_county_that_names_a_hidden_water_is_left_out(write_log: WriteLog) -> None:
    waters: list[Row] = [WATERS, ["Otter Mere", "US-MI", "Fulton, at Otter Mere", None, "no", None]]
    event = only(events(write_log, log_of([["T-1", APRIL, "Otter Mere", SIX, TEN, 2]], Waters=waters)))
    assert event["county"] == ""
    assert event["dataGeneralizations"] == "Place given by state only."


def test_coordinates_are_left_blank(write_log: WriteLog) -> None:
    table = data_of(write_log()).events
    assert table[["decimalLatitude", "decimalLongitude"]].isna().all(axis=None)


@pytest.mark.parametrize(
    ("name", "title"),
    [("Season 2026", "Season 2026"), ("A year on Otter Mere", ""), ("With C07 and others", "")],
)
def test_title_gives_no_client_and_no_hidden_water_away(write_log: WriteLog, name: str, title: str) -> None:
    waters: list[Row] = [WATERS, ["Otter Mere", "US-MI", "Fulton", "0042", "no", None]]
    trip: Row = ["T-1", APRIL, "Otter Mere", SIX, TEN, 2, "C07"]
    settings: list[Row] = [["Setting", "Value"], ["Season name", name], ["Last day", MAY]]
    data = data_of(write_log(log_of([trip], ["Client"], Waters=waters, Season=settings)))
    assert data.title == title
