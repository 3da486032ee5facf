"""The tables of front days that `--tables` writes."""

from reporter.schema.csv_table import RATE_FIELDS, CsvField, CsvTable

_VERDICTS = "yes_clear, yes_weak, possible, no or not_enough_data"
_DAY_TYPES = "ordinary, ahead, passing, day_1, day_2, day_3, behind_low, possible or not_known"

_EVIDENCE_FIELDS: tuple[CsvField, ...] = (
    CsvField("points", "number", "Points of all signs; of the front that day_type is about, else the most."),
    CsvField("pressure_points", "number", "Points of the rise of pressure, 0 to 2; empty: not known."),
    CsvField("wind_points", "number", "Points of the turn of the wind, 0 to 2."),
    CsvField("air_points", "number", "Points of cooler air, 0 to 2."),
    CsvField("dew_points", "number", "Points of drier air, 0 to 2."),
    CsvField("sky_points", "number", "The bonus point of a sky that cleared."),
    CsvField(
        "pressure_change_hpa",
        "number",
        "Rise of pressure, as the points have it.",
        "hPa",
    ),
    CsvField("wind_before_deg", "number", "Where the wind came from before; empty: light, unknown.", "deg"),
    CsvField("wind_after_deg", "number", "Where it came from after.", "deg"),
    CsvField("air_change_c", "number", "Change of air temperature.", "°C"),
    CsvField("dew_point_change_c", "number", "Change of the dew point.", "°C"),
    CsvField("passage_time_utc", "datetime", "Hour of the passage, about; by hourly weather only."),
)

TRIP_FRONT_FIELDS: tuple[CsvField, ...] = (
    CsvField("front_call", "string", "The guide's own call, as typed."),
    CsvField("verdict", "string", f"The tool's verdict on the date: {_VERDICTS}."),
    CsvField("day_type", "string", f"The tool's day type for the trip: {_DAY_TYPES}."),
    CsvField("call_day_type", "string", "The call as a day type."),
    CsvField("hours_since_passage", "number", "Passage to trip's start; below 0: before it.", "hour"),
    CsvField("tendency", "string", "What the barometer did in the three hours before the start."),
    CsvField("tendency_hpa", "number", "By how much.", "hPa"),
)
"""What the table of trips says of a trip's front day."""

FRONT_DAYS = CsvTable(
    "front_days",
    "a date of the season",
    (
        CsvField("date", "date", "The local date."),
        CsvField("fished", "boolean", "Whether a trip was fished."),
        CsvField("call", "string", "The guide's own call; empty where none, or several that differ."),
        CsvField("verdict", "string", f"The tool's verdict: {_VERDICTS}."),
        CsvField("final", "string", "The call where there is one, else the verdict."),
        CsvField("day_type", "string", f"The tool's word for the date: {_DAY_TYPES}."),
        CsvField("source", "string", "What the verdict rests on: hourly, daily or trip; empty: nothing."),
        *_EVIDENCE_FIELDS,
        CsvField(
            "remark",
            "string",
            "easterly_surge, recovered (no day 2), consistent (not shown), or empty.",
        ),
        CsvField("hourly_verdict", "string", "What hourly weather says by itself; empty: no hours."),
        CsvField("daily_verdict", "string", "What daily weather says by itself."),
        CsvField("trip_verdict", "string", "What the trips' own readings say by themselves."),
        CsvField(
            "water_temp_change_c",
            "number",
            "Change of the water temperature since the last trip on that water within three days.",
            "°C",
        ),
        CsvField("pressure_hpa", "number", "Mean pressure of the date, of one source throughout.", "hPa"),
    ),
)

BY_DAY_TYPE = CsvTable(
    "by_day_type",
    "a type of day for the season, a style or a technique",
    (
        CsvField("by", "string", "Whose word: verdict (the tool's) or call (the guide's)."),
        CsvField("of", "string", "season, style or technique."),
        CsvField("name", "string", "Which of them."),
        CsvField("day_type", "string", f"{_DAY_TYPES}."),
        CsvField("strength", "string", "clear or weak, on days 1 and 2 of the tool's verdict."),
        *RATE_FIELDS,
    ),
)
