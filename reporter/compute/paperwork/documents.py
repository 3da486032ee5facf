"""Papers: valid on the days of trips, and what runs out when."""

import datetime as dt
from collections.abc import Sequence
from itertools import compress

import pandas as pd

from reporter.compute.paperwork.papers import log_papers, paper_trips
from reporter.compute.paperwork.typed import sheet_rows
from reporter.schema.paperwork import AFTER_PAPER_YEARS, RECORDS_YEARS
from reporter.tidy.paper_rules import Paper, PaperTrip, renewals, trips_outside
from reporter.tidy.season import TidyLog
from reporter.tidy.settings import Settings
from reporter.tidy.years import next_year, years_on

NO_END, RENEWED, RAN_OUT = "no end written", "renewed", "ran out"
BEFORE_NEXT, DURING_NEXT, LASTS = "runs out before next season", "runs out during next season", "lasts"
NOT_CHECKED = "not checked"
_A_DAY = dt.timedelta(days=1)


def document_table(log: TidyLog, trips: pd.DataFrame) -> pd.DataFrame:
    """Return one row a paper of Documents, the first to run out first.

    row, (worksheet,) document, kind, number, holder, valid_from, valid_to; trips: guided trips that need it
    or one alike; trips_outside: of them those with a day on which neither is valid (both ends count), trip
    and day of the first; trip_nos, outside_nos: both by number of trip; state: what becomes of it after the
    as-of date (else the season's last day) and in next season, which is First day to Last day a year on; see
    the names above. Papers that differ in their numbers only renew each other. keep_until: how long what it
    was filed on should be kept, at the least (see RECORDS_YEARS). trips: as from `filing_trips`.
    """
    papers, needing = log_papers(log), paper_trips(trips, log)
    outside = trips_outside(papers, needing)
    first = {index: min(found, key=lambda each: each[1]) for index, found in outside.items()}
    states = _states(papers, log.settings)
    numbers = trips.loc[trips["counts"], "trip_no"].tolist()
    needed = [_numbers(numbers, [paper.concerns(trip.keys) for trip in needing]) for paper in papers]
    at = [paper.index for paper in papers]
    uncovered = [_numbers(numbers, _among(needing, outside.get(index, ()))) for index in at]
    keys = ["row", "worksheet", "document", "kind", "number", "holder", "valid_from", "valid_to"]
    documents = sheet_rows(log, "documents")
    made = documents[[key for key in keys if key in documents]].iloc[at].reset_index(drop=True)
    made = made.assign(
        trips=[len(each) for each in needed],
        trips_outside=[len(each) for each in uncovered],
        trip_nos=pd.Series(needed, dtype=object),
        outside_nos=pd.Series(uncovered, dtype=object),
        trip=[first[index][0].number if index in first else "" for index in at],
        day=pd.Series([first[index][1] if index in first else None for index in at], dtype="datetime64[s]"),
        state=[states[index] for index in at],
        keep_until=pd.Series([_keep_until(paper, log.settings) for paper in papers], dtype="datetime64[s]"),
    )
    return made.sort_values("valid_to", kind="stable", na_position="last", ignore_index=True)


def _numbers(numbers: Sequence[int], among: Sequence[bool]) -> tuple[int, ...]:
    return tuple(compress(numbers, among))


def _among(trips: Sequence[PaperTrip], found: Sequence[tuple[PaperTrip, dt.date]]) -> list[bool]:
    """Return for each trip whether it was found; trips that are equal in all were found together."""
    those = {trip for trip, _ in found}
    return [trip in those for trip in trips] if those else []


def _keep_until(paper: Paper, settings: Settings) -> dt.date | None:
    """Return the later of the years after the season and those after the paper's end; None without either."""
    ends = ((settings["last_day"], RECORDS_YEARS), (paper.last, AFTER_PAPER_YEARS))
    return max((years_on(day, years) for day, years in ends if day), default=None)


def _states(papers: Sequence[Paper], settings: Settings) -> dict[int, str]:
    """Return index of a paper -> what becomes of it."""
    as_of = settings["as_of"] or settings["last_day"]
    return {
        paper.index: _state(paper, alike, as_of, settings) for alike in renewals(papers) for paper in alike
    }


def _state(paper: Paper, alike: Sequence[Paper], as_of: dt.date | None, settings: Settings) -> str:
    if paper.last is None:
        return NO_END
    if any(other.covers(paper.last + _A_DAY) for other in alike):
        return RENEWED
    if as_of is None:
        return NOT_CHECKED
    if paper.last < as_of:
        return RAN_OUT
    first, last = settings.season_days
    if first is None or last is None:
        return NOT_CHECKED
    if paper.last < next_year(first):
        return BEFORE_NEXT
    return DURING_NEXT if paper.last < next_year(last) else LASTS
