"""Hunches: the guide's rules of thumb, each held against his own record."""

import math
from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.hunch_behind import RATIO, TRIPS
from reporter.books.season.hunch_words import compared, settle_words, side_words, verdict_words
from reporter.books.season.numbers import live_where_known
from reporter.books.words import OF_TWENTY, counted
from reporter.compute.hunches.verdict import Evidence, Result
from reporter.compute.report import Report

_TITLE = Line("Hunches", "title")
_LEAD = Line(
    "Your rules of thumb, held against your own record. A ratio of 2.00 is twice as much on this side as on "
    "the other.",
    "lead",
)
_NONE = Line(
    "None to test: write one a row on the sheet Hunches of your log. Compare a colour, a technique, the wind "
    "..., say what against what, and under which conditions."
)
_LUCK = (
    "Of a dozen hunches that are not so, one may look true by luck: look at one that holds again next season."
)
_EVIDENCE = (
    "Same trips: both sides on the same trip, with the same technique where a variant, a colour or the like "
    "is compared. Different days: the same technique on days of either kind, which is weaker evidence, as "
    "other things change with the day. Techniques and styles hold only where days of one kind say so too."
)
_FIELDS = (
    Field("no", "No.", "plain"),
    Field("hunch", "Hunch", "wrapped", 38),
    Field("compared", "What is compared", "wrapped", 38),
    Field("this", "This side", "wrapped", 22),
    Field("against", "The other", "wrapped", 22),
    Field("ratio", "Ratio", "two"),
    Field("low", "From", "two"),
    Field("high", "To", "two"),
    Field("trips", "Trips", "whole"),
    Field("evidence", "Evidence", width=14),
    Field("verdict", "What your record says", "wrapped", 38),
    Field("settle", "To settle it, about", "wrapped", 18),
)
_ON: dict[Evidence, str] = {"same_trip": "same trips", "over_days": "different days"}


def _whose(report: Report) -> tuple[Line, ...]:
    several = report.season.several
    if not several:
        return ()
    return (Line(f"The hunches of {several[-1].label}, held against the record of all seasons.", "note"),)


def hunches(report: Report) -> Sheet:
    """Return the sheet Hunches."""
    unread = sum(found.code == "hunch_unread" for found in report.season.problems)
    not_read = (
        (Line(f"{counted(unread, 'hunch', 'hunches')} could not be read: see Rows to fix."),)
        if unread
        else ()
    )
    if not report.hunches:
        return Sheet("Hunches", (Text((_TITLE, *not_read, _NONE)),), group="me", landscape=True)
    blocks: tuple[Block, ...] = (
        Text((_TITLE, _LEAD, *_whose(report), Line(_tally(report.hunches)), *not_read, Line(_LUCK))),
        _table(report),
    )
    return Sheet("Hunches", blocks, group="me", landscape=True, private=True)


def _tally(results: Sequence[Result]) -> str:
    said = [result.verdict for result in results]
    return (
        f"{counted(len(said), 'hunch', 'hunches')} tested: {said.count('holds')} in line with your record, "
        f"{said.count('other_way')} the other way, {said.count('cannot_tell')} that it cannot tell."
    )


def _told(result: Result, value: float) -> float:
    """Return a number of the comparison, nothing where too little stands behind it."""
    return math.nan if result.why in ("few_trips", "few_events") else value


def _table(report: Report) -> Table:
    season_hours = float(report.whole["rod_hours"].iloc[0])
    results = report.hunches
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(1, len(results) + 1)),
        "hunch": [result.hunch.name for result in results],
        "compared": [compared(result.hunch) for result in results],
        "this": [side_words(result, "this") for result in results],
        "against": [side_words(result, "against") for result in results],
        "ratio": live_where_known(RATIO, [_told(result, result.ratio) for result in results]),
        "low": [_told(result, result.low) for result in results],
        "high": [_told(result, result.high) for result in results],
        "trips": [Live(TRIPS, result.trips) for result in results],
        "evidence": [_ON[result.evidence] for result in results],
        "verdict": [verdict_words(result) for result in results],
        "settle": [settle_words(result.rod_hours_to_settle, season_hours) for result in results],
    }
    grey = [result.verdict == "cannot_tell" for result in results]
    note = f"{_EVIDENCE} {OF_TWENTY} Grey: cannot tell. A half day is two anglers for four hours."
    return Table("hunch", _FIELDS, columns, note=note, grey=grey)
