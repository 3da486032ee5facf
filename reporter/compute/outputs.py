"""The tables that leave as CSV: the columns that the schema names, in its order, from a computed report."""

import numpy as np
import pandas as pd

from reporter.compute.fish_outputs import fish_tables
from reporter.compute.fronts.calendar import CHANGES
from reporter.compute.log_outputs import of_log
from reporter.compute.report import Report
from reporter.compute.tackle.outputs import tackle_outputs
from reporter.schema.csv_table import CsvTable
from reporter.schema.hunch_table import HUNCHES
from reporter.schema.species import BY_CODE
from reporter.schema.tables import TABLES
from reporter.tidy.trips import clock

NOT_GIVEN = "not given"

_DECIMALS = 6  # of changes: a difference of two means that are alike is 0


def output_tables(report: Report) -> dict[str, pd.DataFrame]:
    """Return table name -> table, each with just the columns of `reporter.schema.tables`."""
    made = {
        "techniques": _with_style(report.techniques),
        "styles": _with_style(report.styles),
        "waters": report.waters,
        "months": report.months,
        "season": report.whole,
        "weeks": _weeks(report),
        "trips": _trips(report),
        "side_by_side": report.fair.table,
        "standardised": report.fair.standardised,
        "conditions": _conditions(report.by_condition),
        "hunches": _hunches(report),
        "front_days": _front_days(report),
        "by_day_type": _by_day_type(report),
        "trip_techniques": _pairs(report),
        "stints": _stints(report),
        "fish": _fish(report),
        **_fish_tables(report),
        **tackle_outputs(report.tackle),
    }
    if report.seasons is None:
        made |= of_log(report.season)
    else:
        from reporter.compute.season_outputs import season_outputs

        seasons = report.seasons._replace(techniques=_with_style(report.seasons.techniques))
        made |= season_outputs(report.season, seasons, made)
    return {
        table.name: made[table.name][[field.name for field in table.fields]] for table in tables_of(report)
    }


def tables_of(report: Report) -> tuple[CsvTable, ...]:
    """Return the tables that leave: those of one log, or of several put together."""
    if report.seasons is None:
        return TABLES
    from reporter.schema.seasons_tables import TOGETHER

    return TOGETHER


def _weeks(report: Report) -> pd.DataFrame:
    return report.weeks.astype({"trips": "int64", "hard_trips": "int64"})


def _conditions(table: pd.DataFrame) -> pd.DataFrame:
    return table.assign(band=table["code"], group=table["group"].where(table["group"] != "", NOT_GIVEN))


def _hunches(report: Report) -> pd.DataFrame:
    rows = [
        {
            "hunch": result.hunch.name,
            **result.hunch.words,
            **{name: getattr(result, name) for name in _RESULT},
            "measure": result.hunch.measure,
        }
        for result in report.hunches
    ]
    names = [field.name for field in HUNCHES.fields]
    return pd.DataFrame(rows, columns=names)


_RESULT = (
    "evidence",
    "ratio",
    "low",
    "high",
    "trips",
    "part_this",
    "whole_this",
    "part_against",
    "whole_against",
    "verdict",
    "why",
    "rod_hours_to_settle",
    "left_out",
)


def _with_style(table: pd.DataFrame) -> pd.DataFrame:
    return table.assign(style=table["style"].where(table["style"] != "", NOT_GIVEN))


def _clock(minutes: pd.Series) -> list[str]:
    return [clock(value) if np.isfinite(value) else "" for value in minutes]


def _trips(report: Report) -> pd.DataFrame:
    trips = report.season.trips
    return trips.assign(
        clients=["; ".join(clients) for clients in trips["clients"]],
        start=_clock(trips["begin_min"]),
        end=_clock(trips["end_min"]),
        in_rates=trips["in_rates"] & (trips["rod_hours"] > 0),
    )


def _front_days(report: Report) -> pd.DataFrame:
    days = report.season.fronts.table
    return days.assign(passage_time_utc=days["passage"]).round(dict.fromkeys(CHANGES, _DECIMALS))


def _by_day_type(report: Report) -> pd.DataFrame:
    table = report.by_day_type
    return table.assign(name=table["name"].where(table["name"] != "", NOT_GIVEN))


def _pairs(report: Report) -> pd.DataFrame:
    names = report.season.trips[["trip_no", "trip"]]
    pairs = _with_style(report.season.pairs).rename(columns={"landed": "fish", "unknown": "fate_unknown"})
    return pairs.merge(names, on="trip_no", how="left", sort=False)


def _stints(report: Report) -> pd.DataFrame:
    stints = report.season.stints
    on_clock = stints["timing"] == "clock"
    return stints.assign(
        start=_clock(stints["begin_min"].where(on_clock)), end=_clock(stints["end_min"].where(on_clock))
    )


def _fish(report: Report) -> pd.DataFrame:
    fish = report.season.fish
    names = report.season.trips.set_index("trip_no")["trip"]
    return fish.assign(
        trip=fish["trip_no"].map(names),
        species=[BY_CODE[code].name if code else "" for code in fish["species"]],
        species_code=fish["species"],
        time=_clock(fish["time"]),
    )


def _fish_tables(report: Report) -> dict[str, pd.DataFrame]:
    tables = fish_tables(report.fish, report.season.system)
    return {**tables, "big_fish": _with_style(tables["big_fish"])}
