"""Weather: one row is a day, fished or not."""

from dataclasses import replace

from reporter.schema.column import Column, Sheet
from reporter.schema.sheets.readings import AIR_TEMP, BAROMETER, DEW_POINT, SKY_SEEN, WIND_FROM, WIND_SPEED

WEATHER = Sheet(
    "weather",
    "Weather",
    "a day, fished or not",
    "front days: a line a day shows which days followed a front",
    columns=(
        Column("date", "Date", "date", "The day.", required=True, example="2026-04-18", also=("Day",)),
        replace(
            AIR_TEMP,
            key="high_c",
            heading="High",
            help="The day's high.",
            example=68,
            example_metric=20,
            also=(),
        ),
        replace(
            AIR_TEMP, key="low_c", heading="Low", help="The day's low.", example=47, example_metric=8, also=()
        ),
        BAROMETER,
        WIND_FROM,
        WIND_SPEED,
        DEW_POINT,
        SKY_SEEN,
    ),
)
