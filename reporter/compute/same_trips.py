"""Trips of a log in a form that says nothing of them but whether another log holds the same."""

from collections.abc import Iterable, Mapping

import pandas as pd

from reporter.files.fingerprint import sha256_of_text

_DIGITS = 6  # a copy saved by another program may differ behind these
_LETTERS = 16  # of the fingerprint: 64 bits, for the few thousand trips of a guide


def trip_marks(trips: pd.DataFrame) -> dict[str, str]:
    """Return mark -> the trip in words, in the log's order. trips: of a season, each with its date."""
    numbers = trips[["begin_min", "rod_hours", "fish"]].astype(float).round(_DIGITS)
    rows = trips[["trip", "date", "water"]].join(numbers)
    marks = [sha256_of_text(*map(str, row))[:_LETTERS] for row in rows.itertuples(index=False)]
    named = zip(rows["trip"], rows["date"], strict=True)
    said = [f"trip {trip} of {date:%Y-%m-%d}" for trip, date in named]
    return dict(zip(marks, said, strict=True))


def held_back(pairs: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Return log -> the earlier one with which it shares a trip, of those that are not counted for it.

    pairs: log and an earlier log that shares a trip with it, by log, then by the earlier one. A log that is
    not counted holds no other back.
    """
    held: dict[str, str] = {}
    for log, earlier in pairs:
        if log not in held and earlier not in held:
            held[log] = earlier
    return held


def first_shared(trips: Mapping[str, str], marks: frozenset[str]) -> str:
    """Return the first trip in words that is among the marks, "" for none. trips: see `trip_marks`."""
    return next((said for mark, said in trips.items() if mark in marks), "")
