"""Reports that are owed: for which periods, with trips or nil, and by when."""

import datetime as dt
from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.paperwork.counting import on_report
from reporter.compute.paperwork.nil_months import read_nil_months
from reporter.compute.paperwork.papers import log_papers, trip_keys
from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.spans import Span, season_days, spans
from reporter.compute.paperwork.typed import sheet_rows, typed_columns
from reporter.compute.paperwork.unread import may_lie_in, unread_trips
from reporter.schema.problems import listed_rows
from reporter.tidy.paper_rules import Paper
from reporter.tidy.season import TidyLog

WITH_TRIPS, NIL, NOT_OWED, NOT_OVER, NOT_KNOWN, UNREAD = (
    "trips",
    "nil",
    "not owed",
    "not over",
    "not known",
    "unread",
)
OWED = (WITH_TRIPS, NIL)

_COLUMNS = (
    *("row", "report", "document", "name", "first", "last", "trips", "trip_nos", "state"),
    *("due", "basis", "due_words", "last_checked", "rows", "why"),
)
_TYPED = ("report", "document", "period", "nil_months", "due_days", "basis", "last_checked")


class Owed(NamedTuple):
    """What is owed.

    table: one row a report and period: row (of Reports), report, document, name of the period, first, last,
    trips (rows of Trips with a day in it), trip_nos (theirs), state, due and basis, due_words, last_checked,
    rows (of Trips that are not used and may lie in it), why (a sentence for unread, not known and not over,
    else "").
    state: trips (with trips: owed), nil (none: a nil report is owed), not owed, not over (no trip yet on the
    as-of date), not known (Nil months cannot be read), unread (no trip is read, but rows that may lie in it
    are not used: it blocks). problems: sentences on what Reports does not say.
    """

    table: pd.DataFrame
    problems: tuple[str, ...]

    @property
    def blocks(self) -> pd.DataFrame:
        """The periods that must not be filed before rows of Trips are mended."""
        return self.table[self.table["state"] == UNREAD]


class _Trips(NamedTuple):
    """Numbers, first and last days of the trips of a report, and the rows not used that may be of it."""

    numbers: pd.Series
    first: pd.Series
    last: pd.Series
    aside: pd.DataFrame

    def within(self, span: Span) -> tuple[int, ...]:
        """Return those that have a day in a period."""
        begin, end = pd.Timestamp(span.first), pd.Timestamp(span.last)
        return tuple(self.numbers[(self.first <= end) & (self.last >= begin)].tolist())


def owed_reports(log: TidyLog, trips: pd.DataFrame, asked: Period) -> Owed:
    """Return the reports owed for the periods of the season that touch what is asked for.

    trips: as from `filing_trips`. A report with a Document is about the trips that count on it.
    """
    reports = sheet_rows(log, "reports")
    days = season_days(log.settings, trips)
    papers, keys = log_papers(log), trip_keys(trips, log)
    aside = unread_trips(log)
    as_of = log.settings["as_of"] or log.settings["last_day"]
    made: list[dict[str, Any]] = []
    problems: list[str] = []
    columns = typed_columns(reports, _TYPED)
    for place, values in enumerate(zip(*columns.values(), strict=True)):
        report = {**dict(zip(_TYPED, values, strict=True)), "row": reports["row"].iloc[place]}
        nil = read_nil_months(report["nil_months"] or "")
        problems += [f"{report['report']}: {found}" for found in _lacking(report, nil)]
        if report["period"] is None or days is None:
            continue
        mask = on_report(report["document"] or "", papers, keys) & trips["counts"].to_numpy()
        of_it, unread = trips[mask], _may_be_of(report, aside, papers, log)
        own = _Trips(of_it["trip_no"], of_it["date"], of_it["last_day"], unread)
        made += [_period(report, span, own, nil, as_of) for span in spans(report["period"], days, asked)]
    return Owed(_table(made), tuple(problems))


def _lacking(report: dict[str, Any], nil: frozenset[int] | str) -> list[str]:
    """Return sentences on what a row of Reports does not say."""
    found = [nil] if isinstance(nil, str) else []
    if report["period"] is None:
        found.append(
            "Period is blank on Reports, so no due date is known: write month, quarter, season or year."
        )
    elif report["due_days"] is None:
        found.append("Due days is blank on Reports, so no due date is known.")
    return found


def _may_be_of(
    report: dict[str, Any], aside: pd.DataFrame, papers: Sequence[Paper], log: TidyLog
) -> pd.DataFrame:
    """Return the unused rows that may be of a report: those that count on its paper, or have no water."""
    mask = on_report(report["document"] or "", papers, trip_keys(aside, log))
    return aside[mask | (aside["water"] == "").to_numpy(dtype=bool)]


def _period(
    report: dict[str, Any], span: Span, own: _Trips, nil: frozenset[int] | str, as_of: dt.date | None
) -> dict[str, Any]:
    within = own.within(span)
    unread = own.aside.loc[may_lie_in(own.aside, span.first, span.last), "row"].tolist()
    state = _state(len(within), span, unread, nil, as_of)
    due = None if report["due_days"] is None else span.last + dt.timedelta(days=int(report["due_days"]))
    return {
        **report,
        "document": report["document"] or "",
        "name": span.name,
        "first": span.first,
        "last": span.last,
        "trips": len(within),
        "trip_nos": within,
        "state": state,
        "due": due,
        "basis": report["basis"] or "",
        "due_words": _due_words(due, report["basis"]),
        "rows": tuple(sorted(unread)),
        "why": _why(state, span, unread, nil, as_of),
    }


def _state(
    count: int, span: Span, unread: list[int], nil: frozenset[int] | str, as_of: dt.date | None
) -> str:
    """Return what a period is; a month of which rows are not read is never nil, whatever Nil months says."""
    if count:
        return WITH_TRIPS
    if as_of is not None and span.last > as_of:
        return NOT_OVER
    if unread:
        return UNREAD
    if isinstance(nil, str):
        return NOT_KNOWN
    return NIL if span.months & nil else NOT_OWED


def _due_words(due: dt.date | None, basis: str | None) -> str:
    """Return when it is due, and what must have happened by then."""
    if due is None:
        return "not known"
    return f"{basis or 'due (how is not written)'} by {due:%Y-%m-%d}"


def _why(state: str, span: Span, unread: list[int], nil: frozenset[int] | str, as_of: dt.date | None) -> str:
    if state == UNREAD:
        return (
            f"No trip is read in {span.name}, but {listed_rows(sorted(unread))} of Trips could not be used "
            "and may lie in it. Mend them first: this is not a report without trips."
        )
    if state == NOT_KNOWN:
        return str(nil)
    return f"Not over on the as-of date, {as_of:%Y-%m-%d}." if state == NOT_OVER and as_of else ""


def _table(made: list[dict[str, Any]]) -> pd.DataFrame:
    table = pd.DataFrame(made, columns=_COLUMNS)
    for key in ("first", "last", "due", "last_checked"):
        table[key] = pd.Series(table[key], dtype="datetime64[s]")
    whole = ["row", "trips"]
    return table.assign(**{key: table[key].astype(np.int64) for key in whole})
