"""For every finding of weather a file that shows it, what is found, and what becomes of its hours."""

import datetime as dt
from dataclasses import dataclass

from reporter.schema.problems import Effect

Found = tuple[str, int, str]
"""Code, line, value as found."""

NEW_YORK = "America/New_York"
MARCH = (dt.date(2024, 3, 1), dt.date(2024, 3, 20))

ASOS = "station,valid,elev,tmpf,dwpf,drct,sknt,alti\n"
NETWORK = (
    "# STATION: KDSM\n"
    "Station_ID,Date_Time,air_temp_set_1,wind_speed_set_1,wind_direction_set_1,pressure_set_1\n"
)
WALL = "origin,year,month,day,hour,temp,dewp,wind_dir,wind_speed,pressure\n"
FINE = "DSM,2024-03-05 10:54,292,50,41,270,10,30.00\n"
LCD = "STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindDirection,HourlyWindSpeed\n"


@dataclass(frozen=True)
class Case:
    """A file, the zone and days on Season; what is found, notes among it; hours that are left."""

    code: str
    effect: Effect
    text: str
    found: tuple[Found, ...]
    hours: int
    zone: str | None = None
    season: tuple[dt.date | None, dt.date | None] = (None, None)


def aside(
    code: str, text: str, found: Found | tuple[Found, ...], hours: int = 2, zone: str | None = None
) -> Case:
    every = found if isinstance(found[0], tuple) else (found,)
    return Case(code, "set aside", text, every, hours, zone)  # type: ignore[arg-type]


ZONE_NOTE = ("weather_zone_from_season", 0, "")

CASES: tuple[Case, ...] = (
    aside(
        "weather_value_unread",
        ASOS + FINE + "DSM,2024-03-05 11:54,292,fifty,41,270,10,30.00\n",
        ("weather_value_unread", 3, "fifty"),
    ),
    aside(
        "weather_value_impossible",
        ASOS + FINE + "DSM,2024-03-05 11:54,292,50,41,270,1048,30.00\n",
        ("weather_value_impossible", 3, "1048"),
    ),
    aside(
        "weather_dew_above",
        ASOS + FINE + "DSM,2024-03-05 11:54,292,50,60,270,10,30.00\n",
        ("weather_dew_above", 3, "60"),
    ),
    aside(
        "weather_unit_unknown",
        NETWORK + ",,Reaumur,m/s,Degrees,Pascals\nKDSM,2024-03-05T11:54:00Z,8.0,5.1,270.0,98131.0\n",
        (("weather_unit_unknown", 0, "Reaumur"), ("weather_lacks", 0, "")),
        1,
    ),
    aside(
        "weather_sea_level_high",
        "station,valid,elev,tmpf,drct,sknt,mslp\nDEN,2024-03-05 10:54,1655,50,270,10,1016.2\n",
        (("weather_sea_level_high", 0, ""), ("weather_lacks", 0, "")),
        1,
    ),
    aside(
        "weather_lines_left_out",
        ASOS + FINE + "DSM,2024-03-05 11:54,292,50,41\n",
        ("weather_lines_left_out", 3, "DSM,2024-03-05 11:54,292,50,41"),
        1,
    ),
    aside(
        "weather_time_unread",
        ASOS + FINE + "DSM,5 March noon,292,50,41,270,10,30.00\n",
        ("weather_time_unread", 3, "5 March noon"),
        1,
    ),
    aside(
        "weather_clock_skipped",
        WALL
        + "EWR,2013,3,10,1,50,41,270,10,1012\nEWR,2013,3,10,2,50,41,270,10,1012\n"
        + "EWR,2013,3,10,3,50,41,270,10,1012\n",
        (ZONE_NOTE, ("weather_clock_skipped", 3, "2013 3 10 2")),
        zone=NEW_YORK,
    ),
    aside(
        "weather_clock_twice",
        WALL
        + "EWR,2013,11,3,0,50,41,270,10,1012\nEWR,2013,11,3,1,50,41,270,10,1012\n"
        + "EWR,2013,11,3,1,50,41,280,10,1012\nEWR,2013,11,3,2,50,41,270,10,1012\n",
        (ZONE_NOTE, ("weather_clock_twice", 3, "2013 11 3 1")),
        zone=NEW_YORK,
    ),
    aside("weather_no_zone", WALL + "EWR,2013,7,3,2,50,41,270,10,1012\n", ("weather_no_zone", 0, ""), 0),
    aside(
        "weather_no_month",
        "KDSM 051154Z 27010KT 10SM CLR 10/05 A3000\n",
        ("weather_no_month", 0, ""),
        0,
    ),
    aside(
        "weather_no_units",
        LCD + "725,2024-07-01T13:51:00,FM-15,20,270,5\n",
        ("weather_no_units", 0, ""),
        0,
        zone=NEW_YORK,
    ),
    aside("weather_no_hours", ASOS, ("weather_no_hours", 0, ""), 0),
    Case(
        "weather_zone_from_season",
        "note",
        WALL + "EWR,2013,7,3,2,50,41,270,10,1012\n",
        (ZONE_NOTE,),
        1,
        NEW_YORK,
    ),
    Case(
        "weather_month_from_season",
        "note",
        "KDSM 051154Z 27010KT 10SM CLR 10/05 A3000\nKDSM 051254Z 27010KT 10SM CLR 10/05 A3000\n",
        (("weather_month_from_season", 0, ""),),
        2,
        season=MARCH,
    ),
    Case(
        "weather_gaps",
        "note",
        ASOS + FINE + "DSM,2024-03-05 14:54,292,50,41,270,10,30.00\n",
        (("weather_gaps", 0, ""),),
        2,
    ),
    Case(
        "weather_lacks",
        "note",
        "station,valid,tmpf,dwpf,drct,sknt\nDSM,2024-03-05 10:54,50,41,270,10\n",
        (("weather_lacks", 0, ""),),
        1,
    ),
)
