"""How front days are worked out: rules, limits and sources."""

from collections.abc import Sequence

from reporter.books.blocks import Cell, Field, Line, Table, Text
from reporter.compute.report import Report
from reporter.schema import fronts
from reporter.tidy.weather.hours import WeatherFile

_SIGNS: tuple[tuple[str, str, str], ...] = (
    (
        "Pressure rose",
        "hours: in 12 hours, which cancels the twice-daily tide. days: over the lower of the two days "
        "before, and none while it is falling off already. readings: over the lowest of 12 to 60 hours "
        "before",
        f"{fronts.PRESSURE_RISE_HPA[0]:g} hPa (0.09 inHg); {fronts.PRESSURE_RISE_HPA[1]:g} hPa (0.18 inHg)",
    ),
    (
        "Wind turned",
        "into 250° to 45°, clockwise; or its northerly part grew by 2 m/s without backing; or it was light "
        "before. hours: vector mean of 2 to 9 hours after against 1 to 6 before. days, readings: the better "
        "of those before",
        f"{fronts.TURN_DEG[0]:g}°; {fronts.TURN_DEG[1]:g}° or more",
    ),
    (
        "Air cooler",
        "hours: 3 to 18 hours after against the same clock hours the day before. days: against the warmer of "
        "the two days before. readings: against the warmest near the same clock time",
        f"{fronts.AIR_FALL_C[0]:g} °C (4.5 °F); {fronts.AIR_FALL_C[1]:g} °C (9 °F)",
    ),
    (
        "Air drier",
        "dew point. hours: 3 to 12 hours after against 1 to 6 before. days: against the moister of the two "
        "days before",
        f"{fronts.DEW_FALL_C[0]:g} °C (5.4 °F); {fronts.DEW_FALL_C[1]:g} °C (12.6 °F)",
    ),
    (
        "Sky cleared",
        "a bonus, never required: where the sky is known it cleared in about every third passage",
        "5 eighths of cloud or more, then 3 or fewer: one point",
    ),
)

_RULES: tuple[tuple[str, str, str], ...] = (
    (
        "Verdict",
        "YES: pressure, wind, and air or dew point each earn a point, four in all (three where one of air "
        "and dew point is not known). Six or more: clear; fewer: weak. NO: one of the three is known to "
        "fail. POSSIBLE: all pass, too few points. Otherwise NOT ENOUGH DATA: pressure and wind are never "
        "assumed",
        "Ours; the signs are those of published tables of cold fronts (wind, temperature, pressure, dew "
        "point before and after). Wind shift of 45°: federal surface observing handbook FMH-1 1995, 5.4.6. "
        "No published standard defines a post-frontal day.",
    ),
    (
        "By hours",
        "Hours of YES no more than six apart are one passage; its hour is the sharpest change of wind, "
        "pressure and dew point among them, or what an observer wrote (WSHFT FROPA). Passages within 18 "
        "hours are one. A date is NO only where no four hours in a row that nobody can decide, in the 48 "
        "hours to 06, could hide a front",
        "Ours. Held to this: on the open hourly data of three airports in 2013 flagged dates agree with "
        "kappa 0.75 or better. That is consistency, and no measure of truth.",
    ),
    (
        "By a line a day",
        "Day 1 is the first date of YES. The hour of the passage is not known, so the date before counts as "
        "ahead of the front, and no date as front passing",
        "Ours; against hours kappa is 0.5 or better on the same data: moderate, and not interchangeable.",
    ),
    (
        "By your readings",
        "Pressure, wind and air each against every reading 12 to 60 hours before; all three must earn a "
        "point. One reading of north-west wind, clear sky and high pressure proves nothing. A barometer "
        "that is not set to sea level is compared on one water only",
        "Ours. Fishing four days a week, about half the dates read NOT ENOUGH DATA.",
    ),
    (
        "Day 1, 2, 3",
        "Day 1: the first date whose 06 to 18 lies wholly behind the passage; day 2 the next, unless two of "
        "three are back by then: wind from the south, warmth and moisture as before, pressure 3 hPa off its "
        "peak. Day 3 is shown and never flagged. A new front starts again at day 1",
        "Ours: in 181 passages pressure had dropped 3 hPa after a median of 35 hours, southerly wind was "
        "back after 45.",
    ),
    (
        "Ahead, front passing",
        "ahead: half the day from 06 to 18 lies in the 24 hours before the passage. front passing: it passed "
        "between 06 and 18; a trip that ended before it counts as ahead",
        "Ours.",
    ),
    (
        "Behind a low",
        "Pressure up by 6 hPa and air cooler, wind in the sector but backed or steady, three hours at "
        "least, no front within 36 hours: clearing behind a coastal low. Printed as POSSIBLE, not flagged",
        "Ours.",
    ),
    (
        "Which source",
        "The best that can decide: hours, then a line a day, then your readings. Your call never changes the "
        "tool's verdict; it stands in the final word",
        "Ours.",
    ),
    (
        "Days 1 and 2 against ordinary",
        "rate over rate; the variances of the two logarithms add up, each as its own printed range has it",
        "Delta method, standard; the ranges as above.",
    ),
    (
        "Kappa",
        "(agreement - chance) / (1 - chance); its range by the large-sample variance",
        "From memory: Cohen 1960, Educ. Psychol. Meas. 20:37-46; Fleiss, Cohen and Everitt 1969, Psychol. "
        "Bull. 72:323-327.",
    ),
    (
        "Barometer, 3 h before the start",
        "rise or fall in two halves, 0.1 hPa is steady",
        "Published: WMO-306 Manual on Codes I.1, code table 0200. The halves are ours.",
    ),
)


def front_tables(report: Report) -> tuple[Table | Text, ...]:
    """Return the rules of front days, and where this season's verdicts came from."""
    signs = (("what", "Sign", 24), ("how", "How it is measured", 60), ("points", "One point; two points", 46))
    rules = (("what", "What", 24), ("how", "How", 60), ("source", "Source", 46))
    return (
        _table("front_signs", "Signs of a cold front and their points", signs, _SIGNS),
        _table("front_rules", "Rules of front days", rules, _RULES),
        *_files(report),
    )


def _table(
    key: str, title: str, columns: tuple[tuple[str, str, int], ...], rows: Sequence[tuple[str, ...]]
) -> Table:
    fields = tuple(Field(name, heading, "wrapped", width) for name, heading, width in columns)
    cells = {name: [row[place] for row in rows] for place, (name, _, _) in enumerate(columns)}
    return Table(key, fields, cells, title=title)


def _files(report: Report) -> tuple[Table, ...]:
    """Return the stations that served and where every line of their files went."""
    files = report.season.weather_files
    if not files:
        return ()
    stations = report.season.fronts.stations
    of_stations: dict[str, Sequence[Cell]] = {
        "station": [station.station for station in stations],
        "about": [
            f"{station.format}, first in {station.source}. Pressure: {station.pressure_kind or 'none'}. "
            f"Times: {station.zone_from}."
            for station in stations
        ],
        "hours": [f"{len(station.table):,} hours" for station in stations],
    }
    of_files: dict[str, Sequence[Cell]] = {
        "file": [file.name for file in files],
        "lines": [_account(file) for file in files],
    }
    return (
        Table("weather_station", _STATION_FIELDS, of_stations, title="Hourly weather that was read"),
        Table("weather_file", _FILE_FIELDS, of_files, title="Where every line of the weather files went"),
    )


_STATION_FIELDS = (
    Field("station", "Station", "wrapped", 24),
    Field("about", "What it is", "wrapped", 60),
    Field("hours", "Hours", "wrapped", 46),
)
_FILE_FIELDS = (Field("file", "File", "wrapped", 24), Field("lines", "Lines", "wrapped", 64))


def _account(file: WeatherFile) -> str:
    return (
        f"{file.lines:,} lines = {file.hours:,} hours + {file.same_hour:,} more in the same hours + "
        f"{file.empty:,} without a value + {file.summaries:,} summaries of days or months + "
        f"{file.set_aside:,} set aside"
    )


def fingerprints(report: Report) -> tuple[Line, ...]:
    """Return a line a weather file with its fingerprint."""
    return tuple(
        Line(f"Hourly weather: {file.name}, SHA-256 {file.sha256}") for file in report.season.weather_files
    )
