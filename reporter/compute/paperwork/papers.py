"""The papers of a log, and which trips count on them."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.compute.paperwork.trips import permits_of_waters
from reporter.compute.paperwork.typed import sheet_rows, typed_columns
from reporter.tidy.paper_rules import PERMIT, Paper, PaperTrip, TripKeys, read_keys, read_papers
from reporter.tidy.season import TidyLog

_PAPER = ("document", "kind", "holder", "waters", "valid_from", "valid_to")
_KEYS = ("water", "permit", "guide", "boat")


def log_papers(log: TidyLog) -> list[Paper]:
    """Return the papers of Documents; `index` counts its used rows from 0."""
    documents = sheet_rows(log, "documents")
    named = {*permits_of_waters(log).values(), *log.tables["trips"]["permit"]} - {""}
    return list(read_papers(typed_columns(documents, _PAPER), [True] * len(documents), named))


def trip_keys(trips: pd.DataFrame, log: TidyLog) -> list[TripKeys]:
    """Return by what papers know each row of a table of trips (water, permit, guide, boat)."""
    usual = (log.settings["guide"], log.settings["guide_code"])
    return read_keys(typed_columns(trips, _KEYS), permits_of_waters(log), usual)


def paper_trips(trips: pd.DataFrame, log: TidyLog) -> list[PaperTrip]:
    """Return the trips that need papers: those of `filing_trips` that count."""
    counted = trips[trips["counts"]]
    columns = typed_columns(counted, ("trip", "date", "last_day"))
    rows = zip(*columns.values(), trip_keys(counted, log), strict=True)
    return [PaperTrip(*row) for row in rows]


def counts_on(paper: Paper, keys: Sequence[TripKeys]) -> np.ndarray:
    """Return for each trip whether it counts on a paper."""
    return np.array([paper.counts(key) for key in keys], dtype=bool)


def named_paper(name: str, papers: Sequence[Paper]) -> Paper:
    """Return the paper of a name; one that Documents does not list is a permit of that name."""
    unlisted = Paper(-1, name, PERMIT, "", frozenset(), None, None)
    return next((paper for paper in papers if paper.name == name), unlisted)
