"""Passengers against what the boat's paper allows."""

import pandas as pd

from reporter.compute.paperwork.typed import sheet_rows, typed_columns
from reporter.schema.log import folded
from reporter.tidy.paper_rules import boat_papers
from reporter.tidy.season import TidyLog


def passengers_table(log: TidyLog, trips: pd.DataFrame) -> pd.DataFrame:
    """Return the trips on boats whose paper says how many may be aboard at once.

    trip_no, row, trip, date, boat, aboard (Passengers, else Anglers: everyone but guide and crew), document,
    allowed, over. Trips of every kind that were fished; trips: as from `filing_trips`.
    """
    documents = sheet_rows(log, "documents")
    columns = typed_columns(documents, ("document", "holder", "allowed", "counting_rule"))
    papers = boat_papers(columns, [True] * len(documents))
    at = trips["boat"].map(lambda boat: papers.get(folded(boat), -1)).astype("int64")
    rows = trips[(at >= 0) & trips["fished"]]
    of_paper = documents[["document", "allowed"]].iloc[at[rows.index]].set_axis(rows.index)
    made = rows[["trip_no", "row", "trip", "date", "boat"]].assign(
        aboard=rows["passengers"].where(rows["passengers"].notna(), rows["anglers"]),
        document=of_paper["document"],
        allowed=of_paper["allowed"].astype("float64"),
    )
    return made.assign(over=made["aboard"] > made["allowed"]).reset_index(drop=True)
