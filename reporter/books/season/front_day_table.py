"""The evidence of front days: a row a date."""

import math

import pandas as pd

from reporter.books.blocks import Field, Look, Table, Value
from reporter.books.season.front_words import REMARKS, SOURCES, VERDICTS, wind_turn
from reporter.books.season.numbers import live_where_known, numbers
from reporter.compute.report import Report
from reporter.schema.fronts import CALL_DAY_TYPES, DAYS, FLAGGED, LEGS
from reporter.schema.units import Quantity, System, usual_unit

_SIGNS = {
    "pressure": ("P", "Pressure rose."),
    "wind": ("W", "Wind turned into the north-west."),
    "air": ("T", "Air grew cooler."),
    "dew": ("D", "Air grew drier: the dew point fell."),
    "sky": ("S", "Sky cleared: a bonus."),
}
"""Sign -> its heading, and what earns its points."""

_BY_SOURCE = {
    "hourly": ("Hours", "hourly weather"),
    "daily": ("Days", "a line a day"),
    "trip": ("Readings", "your own readings"),
}
_SHORT = {
    "yes_clear": "YES clear",
    "yes_weak": "YES weak",
    "possible": "POSSIBLE",
    "no": "NO",
    "not_enough_data": "–",
}
_NOTE = (
    "P pressure, W wind, T air temperature, D dew point, S sky: points earned. Points, changes and passage "
    "are those of the front that the word is about; on other dates the most that the days before showed. "
    "Your call stands in the final word; it never changes the verdict."
)
_ALL_POINTS = "+".join(f"{{row.{leg}_points}}" for leg in LEGS)


def front_day_table(report: Report, table: pd.DataFrame) -> Table:
    """Return the evidence, a row a date of a table of front days."""
    system = report.season.system
    flagged = table["verdict"].isin(FLAGGED)
    pressure = _shown(table["pressure_hpa"], "pressure", system, difference=False)
    columns = {
        "date": [date.date() for date in table["date"]],
        "fished": ["yes" if fished else None for fished in table["fished"]],
        "call": [
            "calls differ" if differ else call or None
            for call, differ in zip(table["call"], table["calls_differ"], strict=True)
        ],
        "verdict": [VERDICTS[verdict] for verdict in table["verdict"]],
        "day": [DAYS[day_type] for day_type in table["day_type"]],
        "final": _final(table),
        "source": _sources(report, table),
        **{f"{leg}_points": numbers(table[f"{leg}_points"]) for leg in LEGS},
        "points": live_where_known(_ALL_POINTS, table["points"]),
        "pressure_change": _shown(table["pressure_change_hpa"], "pressure", system),
        "turn": [
            wind_turn(before, after) or None
            for before, after in zip(table["wind_before_deg"], table["wind_after_deg"], strict=True)
        ],
        "air_change": _shown(table["air_change_c"], "temperature", system),
        "dew_change": _shown(table["dew_point_change_c"], "temperature", system),
        "passage": _passages(report, table),
        "water_change": _shown(table["water_temp_change_c"], "temperature", system),
        **{f"by_{source}": _in_short(table[f"{source}_verdict"]) for source in _BY_SOURCE},
        "remark": [REMARKS[remark] or None for remark in table["remark"]],
        "pressure": pressure,
        "flagged": [value if flag else None for value, flag in zip(pressure, flagged, strict=True)],
    }
    return Table(
        "front_day",
        _day_fields(system),
        columns,
        note=_NOTE,
        filtered=True,
        flagged={"verdict": flagged.tolist()},
    )


def _day_fields(system: System) -> tuple[Field, ...]:
    degrees, gauge = usual_unit("temperature", system).label, usual_unit("pressure", system).label
    change_look: Look = "two" if system == "us" else "one"
    pressure_look: Look = "two" if system == "us" else "whole"
    return (
        Field("date", "Date", "date"),
        Field("fished", "Fished", width=13),
        Field("call", "Your call", width=13),
        Field(
            "verdict",
            "Tool's verdict",
            width=19,
            help="clear: 6 points or more. weak: 4 or 5; 3 with one air sign.",
        ),
        Field("day", "Day", width=22, help="The tool's word for the date."),
        Field("final", "Final word", width=19, help="Your call where you made one, else the verdict."),
        Field("source", "Verdict by", width=17, help="The best source that could decide."),
        *(
            Field(f"{leg}_points", letter, "plain", width=6, help=f"{words} Points earned; blank: not known.")
            for leg, (letter, words) in _SIGNS.items()
        ),
        Field("points", "All", "plain", width=6, help="Points in all."),
        Field("pressure_change", f"Pressure change ({gauge})", change_look, width=9),
        Field("turn", "Wind, before → after", width=15),
        Field("air_change", f"Air change ({degrees})", "one", width=8),
        Field("dew_change", f"Dew point change ({degrees})", "one", width=10),
        Field("passage", "Front passed", width=20, help="To about three hours; by hourly weather only."),
        Field(
            "water_change",
            f"Your water change ({degrees})",
            "one",
            width=10,
            help="Your water temperature since your last trip on that water, within three days. No points.",
        ),
        *(
            Field(f"by_{source}", heading, width=12, help=f"What {words} says by itself.")
            for source, (heading, words) in _BY_SOURCE.items()
        ),
        Field(
            "remark",
            "Remark",
            "wrapped",
            width=17,
            help="easterly surge: as behind a front, but wind from north-east or east: no cold front.",
        ),
        Field("pressure", f"Pressure ({gauge})", pressure_look, width=10, help="Average of the day."),
        Field("flagged", "Of flagged days", pressure_look, width=9, help="For the chart."),
    )


def _sources(report: Report, table: pd.DataFrame) -> list[Value]:
    """Return the source of each verdict, with its station where there are several of the kind."""
    calendars = report.season.fronts.calendars
    kinds = [calendar.source for calendar in calendars]
    names = [
        f"{SOURCES[calendar.source]}, {calendar.station.station}"
        if calendar.station is not None and kinds.count(calendar.source) > 1
        else SOURCES[calendar.source]
        for calendar in calendars
    ]
    return [names[place] if place >= 0 else None for place in table["calendar"].tolist()]


def _final(table: pd.DataFrame) -> list[Value]:
    return [
        call if call in CALL_DAY_TYPES else VERDICTS[verdict]
        for call, verdict in zip(table["call"], table["verdict"], strict=True)
    ]


def _in_short(verdicts: pd.Series) -> list[Value]:
    return [_SHORT.get(verdict) for verdict in verdicts]


def _shown(values: pd.Series, quantity: Quantity, system: System, *, difference: bool = True) -> list[Value]:
    unit = usual_unit(quantity, system)
    convert = unit.difference if difference else unit.shown
    return [round(convert(value), 6) if math.isfinite(value) else None for value in values.tolist()]


def _passages(report: Report, table: pd.DataFrame) -> list[Value]:
    """Return the day and hour of each passage in local time, about."""
    zone = report.season.settings["time_zone"]
    known = table["passage"].notna()
    if not zone or not known.any():
        return [None] * len(table)
    local = table["passage"].dt.tz_localize("UTC").dt.tz_convert(zone).dt.tz_localize(None)
    return [_about(at) if told else None for at, told in zip(local, known, strict=True)]


def _about(at: pd.Timestamp) -> str:
    return f"{at:%b} {at.day}, about {at:%H:%M}"
