"""Front days: which days lay behind a front, why the tool says so, and how sure it is."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import (
    Block,
    Cell,
    Chart,
    Field,
    Figure,
    Figures,
    Line,
    Series,
    Sheet,
    Table,
    Text,
)
from reporter.books.season.calendar_table import season_calendar
from reporter.books.season.front_counts import (
    compared_dates,
    dates_by,
    fished_flagged_dates,
    flagged_dates,
    unknown_dates,
)
from reporter.books.season.front_day_table import front_day_table
from reporter.books.season.front_words import SOURCES
from reporter.books.words import counted
from reporter.compute.fronts.agreement import LEFT_OUT, Agreement, cohen_kappa
from reporter.compute.fronts.days import FrontDays
from reporter.compute.fronts.sources import Calendar
from reporter.compute.report import Report
from reporter.compute.season import Season
from reporter.schema.fronts import FLAGGED, Source
from reporter.schema.units import usual_unit

_LEAD = (
    "Which days lay behind a cold front, with the evidence. No published standard says what a post-frontal "
    "day is: this is a rule of thumb made exact, not a truth about fish."
)
_CAUTION = (
    "This is past weather, not a forecast. Your local weather office, coast guard and lake authority always "
    "come first. Thunder: off the water at once, and 30 minutes after the last. Water under 70 °F (21 °C) "
    "counts as cold: wear the life jacket. Behind a front expect gusts from the north-west and quickly "
    "colder air."
)
MEND = "a row a day on Weather, or a file of hourly weather,"
"""What would tell which days lay behind a front."""

_CHART_DATES = 20  # fewer make no line


def front_days(report: Report) -> Sheet:
    """Return the sheet Front days."""
    fronts = report.season.fronts
    heading = (Line("Front days", "title"), Line(_LEAD, "lead"), *_tropics(fronts), Line(_CAUTION, "caution"))
    table = fronts.table
    gauge = usual_unit("pressure", report.season.system).label
    blocks: list[Block] = [Text(heading), _rests_on(fronts), *_chart(table, gauge)]
    blocks.append(_agreement(fronts.agreement))
    if not table.empty:
        blocks += _calendars(report.season)
    return Sheet("Front days", tuple(blocks), group="me")


def _calendars(season: Season) -> list[Block]:
    """Return a calendar a season, so that no winter stands between them."""
    told = [(place, one) for place, one in enumerate(season.each, start=1) if not one.fronts.table.empty]
    return [
        season_calendar(one.fronts.table, f"front_calendar_{place}", f"Season calendar, {one.label}")
        if season.several
        else season_calendar(one.fronts.table)
        for place, one in told
    ]


def front_days_by_date(report: Report) -> Sheet:
    """Return the sheet Front days by date: the evidence, a row a date that was fished or is known."""
    table = report.season.fronts.table
    told = table[table["fished"] | (table["source"] != "") | (table["call"] != "")]
    lead = Line("Why the tool says so: the evidence, a row a date.", "lead")
    heading = Text((Line("Front days by date", "title"), lead))
    blocks = (heading, front_day_table(report, told))
    return Sheet("Front days by date", blocks, group="me", landscape=True, pages_wide=2)


def front_finding(report: Report) -> str:
    """Return in a sentence how many dates lay behind a front, and on how many nobody can say."""
    table = report.season.fronts.table
    fished = table[table["fished"]]
    known = fished[fished["verdict"] != "not_enough_data"]
    if fished.empty:
        return "no date was fished."
    if known.empty:
        zone = report.season.fronts.stations and not report.season.settings["time_zone"]
        mend = "Time zone on Season" if zone else MEND
        return f"not known on any fished date: {mend} would tell."
    flagged = int(fished["verdict"].isin(FLAGGED).sum())
    unknown = len(fished) - len(known)
    told = "that can be told " if unknown else ""
    said = f"{flagged} of {counted(len(known), 'fished date')} {told}lay behind a front (day 1 or 2)"
    return f"{said}; {unknown} not known: {MEND} would tell." if unknown else f"{said}."


def _tropics(fronts: FrontDays) -> tuple[Line, ...]:
    if not fronts.tropics:
        return ()
    return (Line("Your latitude is in the tropics: these rules were not designed for there.", "note"),)


def _rests_on(fronts: FrontDays) -> Figures:
    """Return how many dates each source decided, and where hourly weather came from."""
    table = fronts.table
    flagged = int(table["verdict"].isin(FLAGGED).sum())
    fished = table[table["fished"]]
    items = [
        Figure(
            "flagged",
            "Dates flagged: day 1 or 2 behind a front",
            flagged_dates(flagged),
            "whole",
            f"of {counted(int((table['verdict'] != 'not_enough_data').sum()), 'date')} that can be told",
        ),
        Figure(
            "fished_flagged",
            "Of them fished",
            fished_flagged_dates(int(fished["verdict"].isin(FLAGGED).sum())),
            "whole",
            f"of {counted(len(fished), 'fished date')}",
        ),
    ]
    sources: tuple[Source, ...] = ("hourly", "daily", "trip")
    for source in sources:
        decided = int((table["source"] == source).sum())
        if decided:
            items.append(
                Figure(
                    f"by_{source}",
                    f"Dates by {SOURCES[source]}",
                    dates_by(source, decided),
                    "whole",
                    _names(fronts, source),
                )
            )
    unknown = int((fished["verdict"] == "not_enough_data").sum())
    mend = f"{MEND} would tell" if unknown else ""
    label = "Fished dates with not enough data"
    items.append(Figure("unknown", label, unknown_dates(unknown), "whole", mend))
    return Figures("front_source", tuple(items), title="What it rests on")


def _names(fronts: FrontDays, source: Source) -> str:
    """Return what the calendars of a source were made from."""
    names = (_name(calendar) for calendar in fronts.calendars if calendar.source == source)
    return ". ".join(dict.fromkeys(names))


def _name(calendar: Calendar) -> str:
    station = calendar.station
    if station is None:
        return f"{calendar.name}: high, low, barometer, wind" if calendar.source == "daily" else calendar.name
    by_day = "" if calendar.source == "hourly" else ", read day by day"
    pressure = _pressure_words(station.pressure_kind)
    return f"{station.source}, {station.station}{by_day}: {pressure}; {station.zone_from}"


def _pressure_words(kind: str) -> str:
    return {
        "altimeter": "altimeter setting",
        "station": "station pressure",
        "sea level": "sea-level pressure",
    }.get(kind, "no pressure")


def _chart(table: pd.DataFrame, gauge: str) -> tuple[Chart, ...]:
    if table["pressure_hpa"].notna().sum() < _CHART_DATES:
        return ()
    return (
        Chart(
            "line",
            "Pressure through the season, days 1 and 2 behind a front marked",
            "",
            f"Pressure ({gauge})",
            (
                Series("Pressure, average of the day", "front_day.date", "front_day.pressure"),
                Series("Day 1 or 2 behind a front", "front_day.date", "front_day.flagged", flags=True),
            ),
            rows=18,
            alt="A line of daily pressure with a mark on every day that lay behind a front.",
        ),
    )


def _agreement(found: Agreement) -> Table:
    """Return call against verdict, two by two, with what was left out and why."""
    left = "; ".join(f"{count} {LEFT_OUT[reason]}" for reason, count in found.left_out.items())
    compared = f"{counted(found.dates, 'date')} compared"
    if found.dates:
        compared += f", {round(100 * found.share)} % alike"
    if np.isfinite(found.positive):
        compared += f"; agreement on yes {round(100 * found.positive)} % (of all yes, the other said so too)"
    note = f"{compared}." + (f" Fished dates left out: {left}." if left else "")
    note += _kappa(found)
    columns: dict[str, Sequence[Cell]] = {
        "call": ["Your call: yes", "Your call: no"],
        **compared_dates(found),
    }
    fields = (
        Field("call", "Fished dates", help="yes: day after, second day. no: ahead, no front."),
        Field("tool_yes", "Tool: yes", "whole", help="Day 1 or 2 behind a front."),
        Field("tool_no", "Tool: no", "whole"),
    )
    return Table("agreement", fields, columns, title="Your call and the tool's verdict", note=note)


def _kappa(found: Agreement) -> str:
    if not found.enough:
        return ""
    kappa = cohen_kappa(found.both_yes, found.call_only, found.tool_only, found.both_no)
    low, high = max(kappa.low, -1.0), min(kappa.high, 1.0)
    return (
        f" Cohen's kappa {kappa.kappa:.2f} ({low:.2f} to {high:.2f}): how much oftener you agree than by "
        "luck. 0: no more than by luck, 1: always."
    )
