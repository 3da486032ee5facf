"""The demo season with its hourly weather: the fronts that were made are those that are found."""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import pytest

from reporter.schema.tables import TABLES
from tests.demo import make
from tests.demo.hourly import ZONE, hourly_weather
from tests.demo.log import demo_log
from tests.run.test_weather_by_hand import Row, built_with, read_rows

DAY = dt.timedelta(days=1)
COLUMNS = {
    *("date", "call", "verdict", "final", "day_type", "source", "points", "pressure_change_hpa"),
    *("wind_before_deg", "wind_after_deg", "air_change_c", "dew_point_change_c", "passage_time_utc"),
}
"""Columns that front_days.csv has at least, as the task of this table names them."""

VERDICTS = {"yes_clear", "yes_weak", "possible", "no", "not_enough_data"}
DAY_TYPES = {
    *("ordinary", "ahead", "passing", "day_1", "day_2", "day_3"),
    *("behind_low", "possible", "not_known"),
}
CALLS = {"ahead", "front today", "day after", "second day", "no front"}
AMOUNTS = ("trips", "rod_hours", "fish")


@pytest.fixture(scope="module")
def tables(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo")
    log = folder / make.CLEAN
    log.write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    _, made = built_with(log, [make.SAMPLES / make.HOURLY])
    return made


@pytest.fixture(scope="module")
def days(tables: Path) -> list[Row]:
    return read_rows(tables / "front_days.csv")


@pytest.fixture(scope="module")
def passages() -> list[dt.datetime]:
    """When the fronts went through, UTC, as the season was made."""
    return list(hourly_weather(demo_log().season.weather).passages)


def found_passages(days: list[Row]) -> list[dt.datetime]:
    found = {row["passage_time_utc"] for row in days} - {""}
    return sorted(dt.datetime.fromisoformat(text) for text in found)


def test_two_of_three_fronts_are_found_within_three_hours_and_none_that_was_not_made(
    days: list[Row], passages: list[dt.datetime]
) -> None:
    found = found_passages(days)
    for moment in found:
        assert min(abs(moment - passage) for passage in passages) <= dt.timedelta(hours=3)
    # Up to a third of the summer's fronts are made without a clear turn of the wind; one lies in a gap.
    assert len(found) >= 2 / 3 * len(passages)


def test_every_flagged_date_is_the_first_or_second_behind_a_front_that_was_made(
    days: list[Row], passages: list[dt.datetime]
) -> None:
    local = [passage.astimezone(ZONE).date() for passage in passages]
    behind = {"day_1": {date + DAY for date in local}, "day_2": {date + 2 * DAY for date in local}}
    flagged = [row for row in days if row["verdict"].startswith("yes")]
    assert len(flagged) > 50
    for row in flagged:
        assert dt.date.fromisoformat(row["date"]) in behind[row["day_type"]], row["date"]


def test_front_days_have_the_columns_and_words_that_were_agreed(days: list[Row]) -> None:
    assert set(days[0]) >= COLUMNS
    assert {row["verdict"] for row in days} <= VERDICTS
    assert {row["day_type"] for row in days} <= DAY_TYPES
    assert {row["source"] for row in days} <= {"hourly", "daily", "trip", ""}
    (schema,) = [table for table in TABLES if table.name == "front_days"]
    assert [field.name for field in schema.fields] == list(days[0])


def test_every_date_from_the_first_to_the_last_has_one_row(days: list[Row]) -> None:
    dates = [dt.date.fromisoformat(row["date"]) for row in days]
    assert dates == [dates[0] + place * DAY for place in range(len(dates))]
    fished = [day.date for day in demo_log().days]
    assert dates[0] <= min(fished)
    assert dates[-1] >= max(fished)


def test_final_word_is_the_call_where_there_is_one(days: list[Row]) -> None:
    for row in days:
        assert row["final"] == (row["call"] if row["call"] in CALLS else row["verdict"])
    assert {row["final"] for row in days} > CALLS


def test_hour_of_a_passage_stands_only_where_hours_made_the_verdict(days: list[Row]) -> None:
    told = [row for row in days if row["passage_time_utc"]]
    assert {row["source"] for row in told} == {"hourly"}
    assert {row["source"] for row in days} == {"hourly", "daily"}  # a gap is read by the sheet Weather


def test_verdict_is_that_of_the_best_source_that_can_decide(days: list[Row]) -> None:
    for row in days:
        own = [row[f"{source}_verdict"] for source in ("hourly", "daily", "trip")]
        decided = [verdict for verdict in own if verdict not in ("", "not_enough_data")]
        assert row["verdict"] == (decided[0] if decided else "not_enough_data")


Key = tuple[str, str, str, str, str]
"""by, of, name, day_type, strength."""


def added_up(tables: Path) -> dict[Key, tuple[set[str], float, float]]:
    """Trips, rod-hours and fish by type of day, from the rows of trip_techniques.csv and trips.csv."""
    trips = {row["trip"]: row for row in read_rows(tables / "trips.csv")}
    sums: dict[Key, tuple[set[str], float, float]] = defaultdict(lambda: (set(), 0.0, 0.0))
    for pair in read_rows(tables / "trip_techniques.csv"):
        if pair["in_rates"] != "true" or float(pair["rod_hours"]) == 0:
            continue
        for key in keys_of(pair, trips[pair["trip"]]):
            numbers, rod_hours, fish = sums[key]
            more = rod_hours + float(pair["rod_hours"]), fish + float(pair["fish"])
            sums[key] = (numbers | {pair["trip"]}, *more)
    return sums


def keys_of(pair: Row, trip: Row) -> Iterator[Key]:
    behind = trip["day_type"] in ("day_1", "day_2")
    strength = trip["verdict"].removeprefix("yes_") if behind else ""
    for of, name in (("season", "season"), ("style", pair["style"]), ("technique", pair["technique"])):
        yield "verdict", of, name, trip["day_type"], strength
        yield "call", of, name, trip["call_day_type"], ""


def test_types_of_day_are_what_the_trips_and_their_techniques_add_up_to(tables: Path) -> None:
    expected = added_up(tables)
    rows = read_rows(tables / "by_day_type.csv")
    made = {(row["by"], row["of"], row["name"], row["day_type"], row["strength"]): row for row in rows}
    assert len(made) == len(rows)
    assert set(made) == set(expected)
    for key, (trips, rod_hours, fish) in expected.items():
        row = made[key]
        assert int(row["trips"]) == len(trips)
        assert float(row["rod_hours"]) == pytest.approx(rod_hours, rel=1e-9)
        assert float(row["fish"]) == pytest.approx(fish, rel=1e-9, abs=1e-9)
        assert float(row["fish_per_rod_hour"]) == pytest.approx(fish / rod_hours, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("by", ["verdict", "call"])
@pytest.mark.parametrize(
    ("of", "table"), [("season", "season"), ("style", "styles"), ("technique", "techniques")]
)
def test_types_of_day_add_up_to_the_totals_of_every_season_style_and_technique(
    by: str, of: str, table: str, tables: Path
) -> None:
    rows = [row for row in read_rows(tables / "by_day_type.csv") if (row["by"], row["of"]) == (by, of)]
    totals = {row[of]: row for row in read_rows(tables / f"{table}.csv") if float(row["rod_hours"])}
    assert {row["name"] for row in rows} == set(totals)
    for name, total in totals.items():
        for amount in AMOUNTS:
            parts = sum(float(row[amount]) for row in rows if row["name"] == name)
            assert parts == pytest.approx(float(total[amount]), rel=1e-9, abs=1e-9)


def test_call_of_a_trip_is_its_own_type_of_day(tables: Path) -> None:
    as_day = {
        "ahead": "ahead",
        "front today": "passing",
        "day after": "day_1",
        "second day": "day_2",
        "no front": "ordinary",
    }
    trips = read_rows(tables / "trips.csv")
    assert {trip["front_call"] for trip in trips} >= set(as_day) | {"can't say", ""}
    for trip in trips:
        assert trip["call_day_type"] == as_day.get(trip["front_call"], "not_known")
