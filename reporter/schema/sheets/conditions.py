"""Conditions: one row is a further reading on a trip or a day."""

from reporter.schema.column import Column, Sheet
from reporter.schema.sheets.common import NOTES
from reporter.schema.sheets.readings import (
    AIR_TEMP,
    BAROMETER,
    CLEARNESS,
    DEW_POINT,
    LEVEL,
    SKY_SEEN,
    WATER_TEMP,
    WIND_FROM,
    WIND_SPEED,
)

CONDITIONS = Sheet(
    "conditions",
    "Conditions",
    "a further reading; write only what changed",
    "rates by conditions, front days",
    one_of=(("trip",), ("date",)),
    columns=(
        Column(
            "trip", "Trip", "ref", "The trip's number, or give the date.", refers="trips", example="T-001"
        ),
        Column("date", "Date", "date", "A date serves every trip of that day that has no reading."),
        Column("time", "Time", "time", "When you looked. Blank: at the trip's start.", example="09:30"),
        WATER_TEMP,
        CLEARNESS,
        Column(
            "visibility_m",
            "Visibility",
            "number",
            "How deep you can see a light lure.",
            quantity="depth",
            possible=(0.0, 50.0),
            example=3,
            example_metric=1,
        ),
        SKY_SEEN,
        WIND_FROM,
        WIND_SPEED,
        BAROMETER,
        AIR_TEMP,
        DEW_POINT,
        LEVEL,
        NOTES,
    ),
)
