"""Trips: one line a trip, its effort, its fish and its plain rate."""

import math
from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.data_sheets import cells
from reporter.books.season.front_words import day_group_words
from reporter.books.season.numbers import numbers
from reporter.books.season.row_fields import season_fields, with_season
from reporter.books.words import one_fish_every
from reporter.compute.fronts.rates import day_group
from reporter.compute.glance import every_client_caught
from reporter.compute.report import Report
from reporter.schema.units import System, usual_unit
from reporter.tidy.trips import clock

_TECHNIQUES = 'COUNTIFS({pair.trip_no},{row.no},{pair.technique_no},">0")'
_OF_TRIP = "SUMIFS({{pair.{source}}},{{pair.trip_no}},{{row.no}}{rated})"

_FIELDS: tuple[Field, ...] = (
    Field("no", "No.", "plain"),
    Field("trip", "Trip"),
    Field("date", "Date", "date"),
    Field("water", "Water"),
    Field("kind", "Kind"),
    Field("status", "Status"),
    Field("clients", "Client"),
    Field("anglers", "Anglers", "plain"),
    Field("start", "Start"),
    Field("end", "End"),
    Field("boat_hours", "Hours fished", "two", help="Lines in to lines out, less hours off."),
    Field("rods", "Rods in the water", "plain"),
    Field("techniques", "Techniques", "plain"),
    Field("rod_hours", "Rod-hours", "one", help="Usable effort."),
    Field("landed", "Landed", "whole", help="All fish landed, of the species counted."),
    Field("kept", "Kept", "whole"),
    Field("released", "Released", "whole"),
    Field("unknown", "Fate not known", "whole"),
    Field(
        "outside",
        "Of them outside the rates",
        "whole",
        help="Fish without usable effort: see Trip techniques.",
    ),
    Field("big", "Big fish", "whole", help="In the rates; as long as Big fish from on Season, or longer."),
    Field(
        "every_client",
        "Every client caught one",
        help="yes: each named client had a fish. no: one of them had none. Blank: the log cannot tell.",
    ),
    Field("rated", "Finished", "plain", help="1: yes. 0: its log is not finished, so it is in no rate."),
    Field("rate", "Fish per rod-hour", "two", help="Fish in the rates / rod-hours, of this trip alone."),
    Field("every", "One fish per rod every"),
    Field("day", "Type of day", help="By the tool's verdict: see Front days."),
    Field(
        "since",
        "Hours since the front passed",
        "plain",
        help="To the start of the trip, by hourly weather; below 0: before it passed.",
    ),
    Field("tendency", "Barometer, 3 h before the start", help="By hourly weather."),
)


def trips(report: Report) -> Sheet:
    """Return the sheet Trips."""
    table = with_season(report.season, report.season.trips)
    outside = table["fish"] - table["fish_in_rates"]
    columns: dict[str, Sequence[Cell]] = {
        "no": cells(table["trip_no"]),
        **{field.key: cells(table[field.key]) for field in season_fields(report.season)},
        "trip": cells(table["trip"]),
        "date": cells(table["date"]),
        "water": cells(table["water"]),
        "kind": cells(table["kind"]),
        "status": cells(table["status"]),
        "clients": ["; ".join(clients) for clients in table["clients"]],
        "anglers": cells(table["anglers"]),
        "start": [_time(value) for value in table["begin_min"]],
        "end": [_time(value) for value in table["end_min"]],
        "boat_hours": cells(table["boat_hours"]),
        "rods": cells(table["rods"].where(table["fished"])),
        "techniques": [Live(_TECHNIQUES, value) for value in table["techniques"].tolist()],
        "rod_hours": _live("rod_hours", table["rod_hours"], rated=True),
        "landed": _live("landed", table["fish"]),
        "kept": _live("kept", table["kept"]),
        "released": _live("released", table["released"]),
        "unknown": _live("unknown", table["fate_unknown"]),
        "outside": [
            Live(f"{{row.landed}}-{_formula('landed', rated=True)}", value) for value in outside.tolist()
        ],
        "big": _live("big", _big(report), rated=True),
        "every_client": _every_client(report),
        "rated": cells(table["in_rates"].astype(float).where(table["fished"])),
        "rate": [
            Live('IF({row.rod_hours}>0,({row.landed}-{row.outside})/{row.rod_hours},"")', value)
            for value in numbers(table["fish_per_rod_hour"], blank="")
        ],
        "every": [one_fish_every(rate) for rate in table["fish_per_rod_hour"]],
        "day": [
            day_group_words(group) if fished else None
            for group, fished in zip(day_group(table), table["fished"], strict=True)
        ],
        "since": cells(table["hours_since_passage"].where(table["fished"]).round()),
        "tendency": _tendencies(table, report.season.system),
    }
    fields = _fields(report)
    blocks = (
        Text(
            (
                Line("Trips", "title"),
                Line("One line a trip. A single trip's rate is a fact, not a forecast.", "lead"),
            )
        ),
        Table("trip", fields, {field.key: columns[field.key] for field in fields}, filtered=True),
    )
    return Sheet("Trips", blocks, group="me", landscape=True, private=True, pages_wide=2)


def _fields(report: Report) -> tuple[Field, ...]:
    """Return the columns of the table, big fish among them where Season says what one is."""
    no, *others = _FIELDS
    unknown = "" if report.season.settings["big_fish_mm"] is not None else "big"
    return (no, *season_fields(report.season), *(field for field in others if field.key != unknown))


def _big(report: Report) -> pd.Series:
    """Return the big fish of each trip."""
    pairs = report.season.pairs
    big = pairs[pairs["in_rates"]].groupby("trip_no")["big"].sum()
    return report.season.trips["trip_no"].map(big).fillna(0.0)


def _every_client(report: Report) -> list[Cell]:
    """Return whether every client caught one, nothing where the log cannot tell."""
    told = every_client_caught(report.season.trips, report.season.fish)
    return [
        None if math.isnan(caught) else "yes" if caught else "no"
        for caught in report.season.trips["trip_no"].map(told).tolist()
    ]


def _tendencies(table: pd.DataFrame, system: System) -> list[Cell]:
    """Return what the barometer did before each trip, as `rising, +0.06 inHg`."""
    gauge = usual_unit("pressure", system)
    decimals = 2 if system == "us" else 1
    changes = (round(gauge.difference(change), decimals) + 0.0 for change in table["tendency_hpa"].tolist())
    columns = (table["tendency"], table["fished"], changes)
    return [
        f"{words}, {change:+.{decimals}f} {gauge.label}" if words and fished else None
        for words, fished, change in zip(*columns, strict=True)
    ]


def _time(minutes: float) -> str:
    return clock(minutes) if math.isfinite(minutes) else ""


def _formula(source: str, *, rated: bool = False) -> str:
    return _OF_TRIP.format(source=source, rated=",{pair.in_rates},1" if rated else "")


def _live(source: str, values: pd.Series, *, rated: bool = False) -> list[Cell]:
    return [Live(_formula(source, rated=rated), value) for value in values.tolist()]
