"""The season report: its sheets in reading order."""

import datetime as dt

from reporter.books.blocks import Book, Sheet
from reporter.books.season.condition_rates import condition_rates
from reporter.books.season.conditions import conditions
from reporter.books.season.contents import navigable
from reporter.books.season.data_sheets import stints, trip_techniques
from reporter.books.season.day_rates import day_rates
from reporter.books.season.fish import fish
from reporter.books.season.fish_rows import fish_rows
from reporter.books.season.front_days import front_days, front_days_by_date
from reporter.books.season.glance import at_a_glance
from reporter.books.season.hunch_behind import hunch_behind
from reporter.books.season.hunches import hunches
from reporter.books.season.paperwork import paperwork
from reporter.books.season.rows_to_fix import rows_to_fix
from reporter.books.season.side_behind import side_behind
from reporter.books.season.side_by_side import side_by_side
from reporter.books.season.stint_conditions import stint_conditions
from reporter.books.season.tackle import tackle
from reporter.books.season.techniques import techniques
from reporter.books.season.techniques_behind import techniques_behind
from reporter.books.season.trips import trips
from reporter.books.season.water_cards import water_cards
from reporter.books.season.waters import waters
from reporter.books.season.weeks import weeks
from reporter.books.season.what_worked import what_worked
from reporter.books.season.worked_out import worked_out
from reporter.books.season.worked_through import worked_through
from reporter.compute.report import Report


def season_book(report: Report) -> Book:
    """Return the season report as a book; `created` is the season's last day, known from the log alone."""
    season = report.season
    seasons, behind_seasons = _seasons(report)
    picker, *behind = what_worked(report)
    papers, *behind_papers = paperwork(report)
    return Book(
        title=season.settings["season_name"] or "Season report",
        mark="report",
        sheets=navigable(
            (
                at_a_glance(report),
                techniques(report),
                side_by_side(report),
                picker,
                conditions(report),
                front_days(report),
                front_days_by_date(report),
                day_rates(report),
                hunches(report),
                fish(report),
                tackle(report),
                waters(report),
                water_cards(report),
                weeks(report),
                trips(report),
                *seasons,
                papers,
                rows_to_fix(season),
                worked_out(report),
                worked_through(report),
                techniques_behind(report),
                *side_behind(report),
                *hunch_behind(report),
                *behind_seasons,
                condition_rates(report),
                *behind,
                *behind_papers,
                stint_conditions(report),
                stints(report),
                trip_techniques(report),
                fish_rows(report),
            )
        ),
        paper="a4" if season.system == "metric" else "letter",
        created=last_day(report),
    )


def _seasons(report: Report) -> tuple[tuple[Sheet, ...], tuple[Sheet, ...]]:
    """Return Seasons of several logs and the sheets behind it; a single log does without even their code."""
    if report.seasons is None:
        return (), ()
    from reporter.books.season.seasons import season_sheet
    from reporter.books.season.seasons_behind import seasons_behind

    return (season_sheet(report, report.seasons),), seasons_behind(report, report.seasons)


def last_day(report: Report) -> dt.date:
    """Return the season's last day, else its last trip's."""
    set_day: dt.date | None = report.season.settings["last_day"]
    return set_day or report.season.trips["date"].max().date()
