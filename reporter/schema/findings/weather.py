"""Findings in files of hourly weather: the sheet of such a problem is the file, its row the line."""

from reporter.schema.finding import Finding

WEATHER_CELLS: tuple[Finding, ...] = (
    Finding(
        "weather_value_unread",
        "set aside",
        "A weather value that cannot be read",
        "{values} not a number to use, the first '{value}'. Not used: those hours have no {what}.",
        "Mend or fetch the file again.",
    ),
    Finding(
        "weather_value_impossible",
        "set aside",
        "An impossible weather value",
        "{values} outside {low} to {high}, the first '{value}'. Not used: those hours have no {what}.",
        "Check them where the file came from.",
    ),
    Finding(
        "weather_dew_above",
        "set aside",
        "Dew points above the temperature",
        "{values} above the temperature, the first '{value}'. Not used: those hours have no dew point.",
        "Check them where the file came from.",
    ),
    Finding(
        "weather_unit_unknown",
        "set aside",
        "A weather column without a known unit",
        "{why}. Column not used: no hour has {what}.",
        "Fetch the file again in metric or US units.",
    ),
    Finding(
        "weather_sea_level_high",
        "set aside",
        "Sea level pressure from high up",
        "{station} stands at {metres} m, where sea level pressure misleads. Not used{instead}.",
        "Fetch the file with altimeter or station pressure.",
    ),
)

WEATHER_LINES: tuple[Finding, ...] = (
    Finding(
        "weather_lines_left_out",
        "set aside",
        "Weather lines that cannot be read",
        "{lines} {why}, the first '{value}'. Not used: their hours are missing.",
        "Mend or fetch the file again.",
    ),
    Finding(
        "weather_time_unread",
        "set aside",
        "Weather times that cannot be read",
        "{lines} without a time that I can read, the first '{value}'. Not used: their hours are missing.",
        "Write times as 2026-04-18 13:51.",
    ),
    Finding(
        "weather_clock_skipped",
        "set aside",
        "Weather at a time that the clock skipped",
        "{lines} at a time that {zone} skipped for summer time, the first '{value}'. Not used.",
        "Fetch the file in UTC.",
    ),
    Finding(
        "weather_clock_twice",
        "set aside",
        "Weather at a time that the clock showed twice",
        "{lines} at a time that the clock of {zone} showed twice, the first '{value}'. Not used.",
        "Fetch the file in UTC.",
    ),
    Finding(
        "weather_no_zone",
        "set aside",
        "A weather file without a time zone",
        "{why}. File not used.",
        "Set Time zone on Season, or fetch the file in UTC.",
    ),
    Finding(
        "weather_no_month",
        "set aside",
        "Report lines without a month",
        "Its lines give the day but no month, and {why}. File not used.",
        "Put the date before each line, as in 2026-04-18 13:51.",
    ),
    Finding(
        "weather_no_units",
        "set aside",
        "A weather file without its units",
        "No pressure in it tells whether temperatures are in °F or °C. File not used.",
        "Fetch it with the pressure columns.",
    ),
    Finding(
        "weather_no_hours",
        "set aside",
        "A weather file without hours",
        "No line of it gives an hour of weather. File not used.",
        "Fetch it again, for the days of the season.",
    ),
)

WEATHER_NOTES: tuple[Finding, ...] = (
    Finding(
        "weather_zone_from_season",
        "note",
        "Time zone of the weather taken from Season",
        "The file doesn't say its time zone; read as {zone}, from Season{how}.",
        "",
    ),
    Finding(
        "weather_month_from_season",
        "note",
        "Month of report lines taken from Season",
        "Its lines give no month; read as beginning in {month}, the only month that fits the season.",
        "Put the date before each line to be sure.",
    ),
    Finding(
        "weather_gaps",
        "note",
        "Gaps in the weather",
        "{station}: {gaps} of more than {limit} hours, the longest from {start} to {end}{zone}.",
        "Days that need those hours cannot be told by them.",
    ),
    Finding(
        "weather_lacks",
        "note",
        "Weather that a station does not report",
        "{station} has no {what} in this file, so by it no day can be shown to lie behind a front.",
        "Fetch it with {what}, or from another station.",
    ),
)

WEATHER: tuple[Finding, ...] = (*WEATHER_CELLS, *WEATHER_LINES, *WEATHER_NOTES)
