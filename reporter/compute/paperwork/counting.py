"""Use by every paper and report that has a Counting rule."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
import pandas as pd

from reporter.compute.paperwork.count import Count, count_use
from reporter.compute.paperwork.papers import counts_on, log_papers, named_paper, trip_keys
from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.said import trips_said
from reporter.compute.paperwork.typed import sheet_rows
from reporter.compute.records import records
from reporter.tidy.paper_rules import PERMIT, Paper, TripKeys
from reporter.tidy.season import TidyLog


@dataclass(frozen=True, slots=True)
class Use:
    """What was counted for a row of Documents or Reports.

    sheet, row (worksheet, "" for a log of our layout): where its rule stands. name: the paper's or report's.
    document: the paper that it counts on, "" for every guided trip.
    """

    sheet: str
    row: int
    worksheet: str
    name: str
    document: str
    count: Count


def counted_uses(log: TidyLog, trips: pd.DataFrame, period: Period) -> tuple[Use, ...]:
    """Count the use of a period for every row of Documents, then of Reports, that has a Counting rule.

    trips: as from `filing_trips`. A trip counts on its own permit, else on its water's; on a paper that is no
    permit where it needs the paper: by its waters, and its guide or boat.
    """
    papers, keys = log_papers(log), trip_keys(trips, log)
    documents, reports = sheet_rows(log, "documents"), sheet_rows(log, "reports")
    made = []
    for row in records(_with_rule(documents)):
        paper = named_paper(row["document"], papers)
        found = count_use(row["counting_rule"], trips[counts_on(paper, keys)], period)
        notes = (*found.notes, *_of_no_permit(paper, trips, keys, period))
        made.append(_use("Documents", row, row["document"], row["document"], replace(found, notes=notes)))
    for row in records(_with_rule(reports)):
        mask = on_report(row["document"], papers, keys)
        found = count_use(row["counting_rule"], trips[mask], period)
        made.append(_use("Reports", row, row["report"], row["document"], found))
    return tuple(made)


def on_report(document: str, papers: Sequence[Paper], keys: Sequence[TripKeys]) -> np.ndarray:
    """Return for each trip whether a report is about it: by its Document; every one where it names none."""
    if not document:
        return np.ones(len(keys), dtype=bool)
    return counts_on(named_paper(document, papers), keys)


def _with_rule(table: pd.DataFrame) -> pd.DataFrame:
    return table[table["counting_rule"].astype(object) != ""]


def _use(sheet: str, row: dict[str, Any], name: str, document: str, found: Count) -> Use:
    return Use(sheet, int(row["row"]), row.get("worksheet", ""), name, document, found)


def _of_no_permit(
    paper: Paper, trips: pd.DataFrame, keys: Sequence[TripKeys], period: Period
) -> Iterator[str]:
    """Say which trips were on a permit's own waters, and count on no permit at all."""
    if paper.kind != PERMIT or not paper.waters:
        return
    there = np.array([key.water in paper.waters and not key.permit for key in keys], dtype=bool)
    left = trips[there & trips["counts"] & period.holds(trips["date"])]
    if len(left):
        yield (
            f"On its waters but on no permit, so not counted: {trips_said(left['trip'])}. Name the permit on "
            "Waters or Trips if they count."
        )
