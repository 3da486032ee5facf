"""What must be said with a count of use: what it rests on, and what it does not know."""

from collections.abc import Callable, Iterator

import pandas as pd

from reporter.compute.paperwork.said import counted, figure, trips_said
from reporter.schema.paperwork import (
    ANGLER_DAYS,
    ANGLER_HOURS,
    AVERAGE_HOURS,
    CLIENT_DAYS,
    LINE_HOURS,
    OUTINGS,
    TRIPS,
)
from reporter.schema.thresholds import LONGEST_TRIP_HOURS, MOST_TRIP_DAYS

Note = Callable[[pd.DataFrame], Iterator[str]]


def count_notes(rule: str, counted_as: str, rows: pd.DataFrame) -> tuple[str, ...]:
    """Return the sentences of a count. rows: those behind it, with all columns of `filing_trips`."""
    found = [_NOBODY_NAMED] if counted_as != rule else []
    for note in (*_NOTES.get(counted_as, ()), *_ALWAYS):
        found += note(rows)
    return tuple(found)


_NOBODY_NAMED = (
    "No trip names a client, so this is counted as outings. Write client codes on Trips to count a client "
    "once a day."
)


def _of(rows: pd.DataFrame, mask: pd.Series) -> str:
    return trips_said(rows.loc[mask, "trip"])


def _some_unnamed(rows: pd.DataFrame) -> Iterator[str]:
    mask = rows["unnamed"] > 0
    if mask.any():
        yield (
            f"Anglers without a client code add {figure(rows.loc[mask, 'unnamed'].sum())} "
            f"({_of(rows, mask)}): they count on every row and day, as nobody can say who came twice."
        )


def _more_aboard(rows: pd.DataFrame) -> Iterator[str]:
    mask = rows["passengers"] > rows["persons"]
    if mask.any():
        yield (
            f"More passengers than anglers and client codes on {_of(rows, mask)}: those who did not fish and "
            "have no code are not counted. Give them codes if your permit counts them."
        )


def _fewer_fished(rows: pd.DataFrame) -> Iterator[str]:
    mask = rows["codes"] > rows["anglers"]
    if mask.any():
        yield f"More client codes than anglers on {_of(rows, mask)}: as many are counted as fished."


def _lines_blank(rows: pd.DataFrame) -> Iterator[str]:
    mask = rows["lines"].isna()
    if mask.any():
        yield f"Lines is blank on {_of(rows, mask)}: what they add is not known and is not in the count."


def _through_the_night(rows: pd.DataFrame) -> Iterator[str]:
    mask = rows[["hours", "dock_hours"]].max(axis=1) > LONGEST_TRIP_HOURS
    if mask.any():
        yield (
            f"More than {LONGEST_TRIP_HOURS:g} hours on one row ({_of(rows, mask)}): nights are in them. "
            "Write a row a day, or the nights under Hours off."
        )


def _slipped(rows: pd.DataFrame) -> Iterator[str]:
    mask = rows["slipped"]
    if mask.any():
        yield (
            f"End date {MOST_TRIP_DAYS} days or more after Date on {_of(rows, mask)}: read as a slip, only "
            "the first day counts and hours are not known. Mend it on Trips."
        )


def _long_outings(rows: pd.DataFrame) -> Iterator[str]:
    first = rows.groupby("outing_key")["date"].transform("min")
    mask = (rows["date"] - first).dt.days > MOST_TRIP_DAYS
    if mask.any():
        yield (
            f"Outing is the same on rows more than {MOST_TRIP_DAYS} days apart ({_of(rows, mask)}): counted "
            "as one trip all the same. Give each outing a word of its own."
        )


def _which_hours(rows: pd.DataFrame) -> Iterator[str]:
    dock = int(rows["dock_hours"].notna().sum())
    if len(rows):
        yield (
            f"Dock to dock on {counted(dock, 'row')} of Trips, lines in to lines out on "
            f"{counted(len(rows) - dock, 'row')}."
        )


def _unfinished(rows: pd.DataFrame) -> Iterator[str]:
    if rows["unfinished"].any():
        yield f"The log of {_of(rows, rows['unfinished'])} is not finished: it took place and counts."


_ALWAYS: tuple[Note, ...] = (_slipped, _unfinished)
_NOTES: dict[str, tuple[Note, ...]] = {
    CLIENT_DAYS: (_some_unnamed, _more_aboard),
    ANGLER_DAYS: (_some_unnamed, _fewer_fished),
    OUTINGS: (_more_aboard,),
    TRIPS: (_long_outings,),
    ANGLER_HOURS: (_through_the_night,),
    LINE_HOURS: (_lines_blank, _through_the_night),
    AVERAGE_HOURS: (_which_hours, _long_outings, _through_the_night, _more_aboard),
}
