"""Sunrise, sunset and the moon's quarters against published almanacs.

USNO: the Astronomical Applications Department of the US Naval Observatory, which prints whole minutes for a
level horizon. Its year tables and one-day pages are at aa.usno.navy.mil/data, the same figures by address at
aa.usno.navy.mil/api; they were read where public pages and public test data quote them.
"""

import datetime as dt
import math
from itertools import cycle, pairwise

import pytest

from reporter.compute.almanac import moon_quarters, sun_minutes
from reporter.schema.bands import MOON

QUARTERS = [band.label for band in MOON]

UTC = "UTC"
SUN_WITHIN = 2.0  # minutes, half of one being the table's own rounding
SKIMMING_WITHIN = 6.0  # minutes, on days on which the sun barely clears or touches the horizon
# The module halves the angle between two phases, not the time. The moon's pace varies, so that the middles
# lie up to 5 hours apart; a noon this near to the middle in time may fall to either phase.
HALFWAY_WITHIN = dt.timedelta(hours=6)

TROMSO = (69.65, 18.96)
SEVENTY_NORTH = (70.0, 0.0)
SAN_FRANCISCO = (37 + 46 / 60, -(122 + 26 / 60))

SunRow = tuple[str, float, float, str, str, str]

# USNO, Sun and Moon Data for One Day, printed in the zone's own time. 2009: Atlanta, as quoted on
# rhodesmill.org/pyephem/rise-set.html. 2002: quoted on a teacher's page about the equinox. 2024 and 2026:
# aa.usno.navy.mil/api/rstt/oneday with these dates and places, quoted in public tests.
IN_LOCAL_TIME: list[SunRow] = [
    ("2009-09-06", 33.8, -84.4, "America/New_York", "07:15", "19:56"),  # Atlanta, daylight time
    ("2002-03-20", 38.9, -74.9, "America/New_York", "06:04", "18:12"),  # Cape May
    ("2002-03-20", 38.9, -77.0, "America/New_York", "06:12", "18:21"),  # Washington
    ("2024-03-05", 38.889444, -77.035278, "America/New_York", "06:34", "18:06"),  # Washington
    ("2026-10-10", 38.57, -109.55, "America/Denver", "07:23", "18:47"),  # Moab, daylight time
    ("2026-06-21", 51.5, -0.12, "Europe/London", "04:43", "21:21"),  # London, summer time
    ("2026-07-22", 35.68, 139.69, "Asia/Tokyo", "04:41", "18:54"),
    ("2026-04-01", -33.87, 151.21, "Australia/Sydney", "07:07", "18:51"),  # daylight time
    ("2026-12-21", -42.88, 147.33, "Australia/Hobart", "05:28", "20:49"),  # daylight time
]

# USNO, aa.usno.navy.mil/api/rstt/oneday, tz=0: all that happens on that date of universal time, so that at
# Sydney the evening comes before the morning.
IN_UNIVERSAL_TIME: list[SunRow] = [
    ("2026-06-21", 44.82, 20.46, UTC, "02:52", "18:28"),  # Belgrade
    ("2026-12-21", 44.82, 20.46, UTC, "06:12", "15:00"),
    ("2026-03-20", *TROMSO, UTC, "04:44", "17:01"),
    ("2026-10-15", *TROMSO, UTC, "05:55", "15:03"),
    ("2026-01-01", -0.18, -78.47, UTC, "11:13", "23:22"),  # Quito
    ("2026-06-21", -0.18, -78.47, UTC, "11:12", "23:19"),
    ("2026-03-20", -33.87, 151.21, UTC, "19:59", "08:07"),  # Sydney
    ("2026-06-21", -33.87, 151.21, UTC, "21:00", "06:54"),
    ("2026-12-21", -33.87, 151.21, UTC, "18:41", "09:05"),
    ("2026-03-20", 64.15, -21.94, UTC, "07:29", "19:43"),  # Reykjavik
    ("2026-06-21", 64.15, -21.94, UTC, "02:55", "00:04"),  # sets after midnight, then rises
    ("2026-12-21", 64.15, -21.94, UTC, "11:22", "15:29"),
]

# USNO, Rise and Set for the Sun for 2012, San Francisco (W122 26, N37 46), Pacific Standard Time throughout,
# the first of each month.
SAN_FRANCISCO_2012 = [
    ("07:25", "17:01"),
    ("07:14", "17:33"),
    ("06:40", "18:04"),
    ("05:54", "18:33"),
    ("05:13", "19:01"),
    ("04:49", "19:26"),
    ("04:52", "19:35"),
    ("05:14", "19:18"),
    ("05:40", "18:38"),
    ("06:06", "17:52"),
    ("06:36", "17:10"),
    ("07:07", "16:51"),
]
DAYLIGHT_2012 = range(4, 12)  # the firsts of April to November: 11 March to 4 November in the United States

# USNO, aa.usno.navy.mil/api/rstt/oneday, tz=0: «continuously above» or «continuously below the horizon».
NEITHER = [
    ("2026-06-21", *TROMSO),  # above
    ("2026-01-01", *TROMSO),  # below
    ("2026-12-21", *TROMSO),
    ("2025-06-21", *SEVENTY_NORTH),  # above
    ("2025-11-25", *SEVENTY_NORTH),  # below, from this date
    ("2026-01-16", *SEVENTY_NORTH),  # to this one
]

# The same source, quoted in a public note on the sun's place: the sun's last and first dates by the weeks
# without a rise or a set.
SKIMMING: list[SunRow] = [
    ("2025-05-15", *SEVENTY_NORTH, UTC, "00:37", "23:37"),
    ("2025-07-29", *SEVENTY_NORTH, UTC, "00:57", "23:05"),
    ("2025-11-24", *SEVENTY_NORTH, UTC, "11:14", "12:19"),
    ("2026-01-17", *SEVENTY_NORTH, UTC, "11:41", "12:40"),
]

# USNO, Phases of the Moon, universal time: the year, the quarter it begins with, all its moments in turn.
# 2014: the printed table, quoted in a public program; a second copy differs by a minute in two moments.
# 2018 and 2024: from the USNO service, kept with its leave in a public repository of moon data.
# 2026: aa.usno.navy.mil/api/moon/phases/year, quoted in a public test.
PHASES = {
    2014: (
        "new moon",
        """
        01-01T11:14 01-08T03:39 01-16T04:52 01-24T05:20 01-30T21:38 02-06T19:22 02-14T23:53 02-22T17:15
        03-01T08:00 03-08T13:27 03-16T17:08 03-24T01:46 03-30T18:45 04-07T08:31 04-15T07:42 04-22T07:52
        04-29T06:14 05-07T03:15 05-14T19:16 05-21T12:59 05-28T18:40 06-05T20:39 06-13T04:11 06-19T18:39
        06-27T08:08 07-05T11:59 07-12T11:25 07-19T02:08 07-26T22:42 08-04T00:50 08-10T18:09 08-17T12:26
        08-25T14:13 09-02T11:11 09-09T01:38 09-16T02:05 09-24T06:14 10-01T19:32 10-08T10:51 10-15T19:12
        10-23T21:57 10-31T02:48 11-06T22:23 11-14T15:15 11-22T12:32 11-29T10:06 12-06T12:27 12-14T12:51
        12-22T01:36 12-28T18:31
        """,
    ),
    2018: (
        "full moon",
        """
        01-02T02:24 01-08T22:25 01-17T02:17 01-24T22:20 01-31T13:27 02-07T15:54 02-15T21:05 02-23T08:09
        03-02T00:51 03-09T11:20 03-17T13:12 03-24T15:35 03-31T12:37 04-08T07:17 04-16T01:57 04-22T21:46
        04-30T00:58 05-08T02:09 05-15T11:48 05-22T03:49 05-29T14:19 06-06T18:32 06-13T19:43 06-20T10:51
        06-28T04:53 07-06T07:51 07-13T02:48 07-19T19:52 07-27T20:20 08-04T18:18 08-11T09:58 08-18T07:48
        08-26T11:56 09-03T02:37 09-09T18:01 09-16T23:15 09-25T02:52 10-02T09:45 10-09T03:47 10-16T18:02
        10-24T16:45 10-31T16:40 11-07T16:02 11-15T14:54 11-23T05:39 11-30T00:19 12-07T07:20 12-15T11:49
        12-22T17:49 12-29T09:34
        """,
    ),
    2024: (
        "last quarter",
        """
        01-04T03:30 01-11T11:57 01-18T03:52 01-25T17:54 02-02T23:18 02-09T22:59 02-16T15:01 02-24T12:30
        03-03T15:23 03-10T09:00 03-17T04:11 03-25T07:00 04-02T03:15 04-08T18:21 04-15T19:13 04-23T23:49
        05-01T11:27 05-08T03:22 05-15T11:48 05-23T13:53 05-30T17:13 06-06T12:38 06-14T05:18 06-22T01:08
        06-28T21:53 07-05T22:57 07-13T22:49 07-21T10:17 07-28T02:51 08-04T11:13 08-12T15:19 08-19T18:26
        08-26T09:26 09-03T01:55 09-11T06:05 09-18T02:34 09-24T18:50 10-02T18:49 10-10T18:55 10-17T11:26
        10-24T08:03 11-01T12:47 11-09T05:55 11-15T21:28 11-23T01:28 12-01T06:21 12-08T15:26 12-15T09:02
        12-22T22:18 12-30T22:27
        """,
    ),
    2026: (
        "full moon",
        """
        01-03T10:03 01-10T15:48 01-18T19:52 01-26T04:47 02-01T22:09 02-09T12:43 02-17T12:01 02-24T12:27
        03-03T11:38 03-11T09:38 03-19T01:23 03-25T19:18 04-02T02:12 04-10T04:51 04-17T11:52 04-24T02:32
        05-01T17:23 05-09T21:10 05-16T20:01 05-23T11:11 05-31T08:45 06-08T10:00 06-15T02:54 06-21T21:55
        06-29T23:56 07-07T19:29 07-14T09:43 07-21T11:05 07-29T14:36 08-06T02:21 08-12T17:37 08-20T02:46
        08-28T04:18 09-04T07:51 09-11T03:27 09-18T20:44 09-26T16:49 10-03T13:25 10-10T15:50 10-18T16:12
        10-26T04:12 11-01T20:28 11-09T07:02 11-17T11:48 11-24T14:53 12-01T06:08 12-09T00:52 12-17T05:42
        12-24T01:28 12-30T18:59
        """,
    ),
}

# USNO, aa.usno.navy.mil/api/rstt/oneday: the phase the almanac itself calls closest to the date.
CLOSEST = [
    ("2024-03-05", "last quarter"),
    ("2026-01-01", "full moon"),
    ("2026-03-20", "new moon"),
    ("2026-06-21", "first quarter"),
    ("2026-09-23", "full moon"),
    ("2026-10-15", "first quarter"),
    ("2026-12-21", "full moon"),
]

# J. Meeus, Astronomical Algorithms, 2nd ed., examples 49.a and 49.b: 1977 February 18, 3h 38m, and 2044
# January 21, 23h 48m, dynamical time (a minute or so ahead of universal time).
MEEUS = [("1977-02-18", "new moon"), ("2044-01-21", "last quarter")]


def minutes(clock: str) -> int:
    hour, minute = clock.split(":")
    return int(hour) * 60 + int(minute)


def on_date(date: str, latitude: float, longitude: float, zone: str) -> tuple[float, float]:
    rises, sets = sun_minutes([dt.date.fromisoformat(date)], latitude, longitude, zone)
    return float(rises[0]), float(sets[0])


def phases_of(year: int) -> list[tuple[dt.datetime, int]]:
    first, moments = PHASES[year]
    begin = QUARTERS.index(first)
    turns = cycle([(begin + step) % 4 for step in range(4)])
    return [(dt.datetime.fromisoformat(f"{year}-{at}"), next(turns)) for at in moments.split()]


def noon_of(date: dt.date) -> dt.datetime:
    return dt.datetime.combine(date, dt.time(12))


def dates_between(first: dt.datetime, last: dt.datetime) -> list[dt.date]:
    return [first.date() + dt.timedelta(days) for days in range((last.date() - first.date()).days + 1)]


@pytest.mark.parametrize(
    ("date", "latitude", "longitude", "zone", "rises", "sets"), IN_LOCAL_TIME + IN_UNIVERSAL_TIME
)
def test_sun_rises_and_sets_when_the_almanac_says(
    date: str, latitude: float, longitude: float, zone: str, rises: str, sets: str
) -> None:
    expected = (minutes(rises), minutes(sets))
    assert on_date(date, latitude, longitude, zone) == pytest.approx(expected, rel=0, abs=SUN_WITHIN)


@pytest.mark.parametrize("month", range(1, 13))
def test_sun_keeps_to_the_table_of_a_year_in_standard_time(month: int) -> None:
    expected = [minutes(clock) for clock in SAN_FRANCISCO_2012[month - 1]]
    found = on_date(f"2012-{month:02d}-01", *SAN_FRANCISCO, "Etc/GMT+8")
    assert found == pytest.approx(expected, rel=0, abs=SUN_WITHIN)


@pytest.mark.parametrize("month", range(1, 13))
def test_clock_is_an_hour_ahead_of_the_table_in_daylight_time(month: int) -> None:
    ahead = 60 if month in DAYLIGHT_2012 else 0
    expected = [minutes(clock) + ahead for clock in SAN_FRANCISCO_2012[month - 1]]
    found = on_date(f"2012-{month:02d}-01", *SAN_FRANCISCO, "America/Los_Angeles")
    assert found == pytest.approx(expected, rel=0, abs=SUN_WITHIN)


@pytest.mark.parametrize(("date", "latitude", "longitude"), NEITHER)
def test_sun_that_stays_up_or_down_all_day_has_no_times(date: str, latitude: float, longitude: float) -> None:
    assert all(math.isnan(time) for time in on_date(date, latitude, longitude, UTC))


@pytest.mark.parametrize(("date", "latitude", "longitude", "zone", "rises", "sets"), SKIMMING)
def test_sun_that_skims_the_horizon_is_known_to_a_few_minutes(
    date: str, latitude: float, longitude: float, zone: str, rises: str, sets: str
) -> None:
    expected = (minutes(rises), minutes(sets))
    assert on_date(date, latitude, longitude, zone) == pytest.approx(expected, rel=0, abs=SKIMMING_WITHIN)


def test_sun_that_rises_to_stay_up_has_no_sunset() -> None:
    # USNO, as above: rise 00:15 and no set on the first date of the midnight sun.
    rises, sets = on_date("2025-05-16", *SEVENTY_NORTH, UTC)
    assert rises == pytest.approx(15, rel=0, abs=SKIMMING_WITHIN)
    assert math.isnan(sets)


@pytest.mark.parametrize("year", PHASES)
def test_table_of_a_year_has_all_its_phases(year: int) -> None:
    gaps = [after - before for (before, _), (after, _) in pairwise(phases_of(year))]
    assert len(gaps) == 49
    assert dt.timedelta(days=6.5) < min(gaps) <= max(gaps) < dt.timedelta(days=8.3)


@pytest.mark.parametrize("year", PHASES)
def test_quarter_on_the_date_of_a_phase_is_that_phase(year: int) -> None:
    phases = phases_of(year)
    assert moon_quarters([at.date() for at, _ in phases]).tolist() == [quarter for _, quarter in phases]


@pytest.mark.parametrize(("date", "phase"), CLOSEST + MEEUS)
def test_quarter_is_the_phase_published_as_closest_to_the_date(date: str, phase: str) -> None:
    assert QUARTERS[moon_quarters([dt.date.fromisoformat(date)])[0]] == phase


@pytest.mark.parametrize("year", PHASES)
def test_quarter_is_the_nearest_phase_unless_noon_is_about_halfway(year: int) -> None:
    for (before, earlier), (after, later) in pairwise(phases_of(year)):
        halfway = before + (after - before) / 2
        clear = [
            date for date in dates_between(before, after) if abs(noon_of(date) - halfway) >= HALFWAY_WITHIN
        ]
        nearest = [earlier if noon_of(date) < halfway else later for date in clear]
        assert moon_quarters(clear).tolist() == nearest, f"between {before} and {after}"


@pytest.mark.parametrize("year", PHASES)
def test_quarter_turns_once_to_its_neighbour_within_a_day_of_halfway(year: int) -> None:
    for (before, earlier), (after, later) in pairwise(phases_of(year)):
        dates = dates_between(before, after)
        found = moon_quarters(dates).tolist()
        turn = found.index(later)
        assert found == [earlier] * turn + [later] * (len(found) - turn), f"between {before} and {after}"
        halfway = before + (after - before) / 2
        assert abs((dates[turn] - halfway.date()).days) <= 1
