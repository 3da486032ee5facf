"""At a glance: the season on one page, without a name of a client or a place."""

import numpy as np

from reporter.books.blocks import Block, Line, Sheet, Text
from reporter.books.season.glance_figures import business_figures, season_figures
from reporter.books.season.glance_findings import finding_lines
from reporter.books.season.glance_gaps import gap_box
from reporter.books.season.techniques import technique_chart
from reporter.books.season.weeks import week_chart
from reporter.books.words import counted, number, one_fish_every, rod_hours_words
from reporter.compute.glance import dud_check, half_day
from reporter.compute.report import Report
from reporter.schema.thresholds import HALF_DAY_HOURS, HALF_DAY_RODS, MIN_OWN_TRIPS

_WEEK_ROWS = 12  # of a chart
_NO_CHART = f"No technique has {MIN_OWN_TRIPS} trips yet, so there is no chart: a bar would say too much."
_SORTING = (
    "Rows without a trip number belong to the row above them: never sort Effort or Catch while Trip is blank "
    "anywhere."
)
_PAST = (
    "This describes what happened. It forecasts nothing, and a low rate says nothing about how many fish "
    "there are. Kept fish, licences and passengers: your local rules and your licence's own terms always "
    "come first."
)


def at_a_glance(report: Report) -> Sheet:
    """Return the sheet At a glance: a page to pin up, then the rest of the season's figures."""
    settings = report.season.settings
    title = Line(settings["season_name"] or "Season report", "title")
    whose = (Line(settings["guide"], "lead"),) if settings["guide"] else ()
    chart = technique_chart(report)
    middle: tuple[Block, ...] = (chart,) if chart else (Text((Line(_NO_CHART, "note"),)),)
    blocks: tuple[Block, ...] = (
        Text((title, *whose)),
        season_figures(report),
        Text(season_lines(report)),
        finding_lines(report),
        *middle,
        *week_chart(report, rows=_WEEK_ROWS),
        business_figures(report),
        gap_box(report),
        _closing(report),
    )
    return Sheet("At a glance", blocks, group="me", pages_tall=1)


def season_lines(report: Report) -> tuple[Line, ...]:
    """Return the sentences that the record can bear, for the page and for the terminal."""
    whole = report.whole.iloc[0]
    rate = float(whole["fish_per_rod_hour"])
    if not np.isfinite(rate):
        return (Line("No stint has usable effort, so there is no rate yet: see Rows to fix."),)
    first = (
        f"{counted(whole['fish'], 'fish', 'fish')} in {rod_hours_words(whole['rod_hours'])} on "
        f"{counted(whole['trips'], 'trip')}"
    )
    if rate == 0:
        return (
            Line(f"{first}. None caught; it could still be as many as {whole['high']:.2f} per rod-hour."),
        )
    lines = [Line(f"{first}: one fish per rod every {one_fish_every(rate)}.")]
    middle = half_day(report.season.trips)
    if middle:
        low, high = (number(value) for value in middle)
        lines.append(
            Line(
                f"A half day for two anglers ({HALF_DAY_RODS} rods x {HALF_DAY_HOURS:g} hours) has given "
                f"{low} to {high} fish at your trips' own rates: that is the middle half of your trips."
            )
        )
    return tuple(lines)


def _closing(report: Report) -> Text:
    duds = dud_check(report.season.pairs)
    lines: list[Line] = []
    if duds.asks:
        lines.append(
            Line(
                f"Nearly everything you wrote down caught fish ({duds.with_fish} of {duds.pairs} techniques "
                "on trips). Were the duds left out? Without them every rate is too high."
            )
        )
    if report.season.from_above:
        lines.append(Line(_SORTING, "note"))
    return Text((*lines, Line(_PAST, "caution")))
