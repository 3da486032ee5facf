"""The numbers of a log's trips, and their runs as a table."""

from collections.abc import Sequence

import pandas as pd

from reporter.compute.paperwork.numbering import NumberedTrip, Run
from reporter.compute.worksheets import with_row_numbers, worksheets_of
from reporter.schema.log import BY_KEY, folded
from reporter.tidy.season import TidyLog

_ROW_TWICE = "trip_row_twice"


def log_numbers(log: TidyLog) -> list[NumberedTrip]:
    """Return the numbers of Trips in the log's order, of rows that are set aside too.

    A row written twice is one: its second writing is left out. So are the names that trips of a worksheet
    without numbers are given here.
    """
    whole, sheet = log.tables["trips"], BY_KEY["trips"].name
    again = [row for p in log.problems if p.sheet == sheet and p.code == _ROW_TWICE for row in p.rows]
    table = with_row_numbers(whole.assign(again=whole["row"].isin(again)), worksheets_of(log, "trips"))
    if "worksheet" in table:
        numbered = {name for name, key, _ in log.typed["trips"].headings() if key == "trip"}
        table = table[table["worksheet"].isin(numbered)]
    table = table[(table["trip"] != "") & ~table["again"]]
    years = table["date"].dt.strftime("%Y").fillna("")
    runs = zip(_first_written(table["guide"]), _first_written(table["boat"]), years, strict=True)
    columns = zip(table["trip"], table["status"], runs, strict=True)
    return [NumberedTrip(number, status, run) for number, status, run in columns]


def _first_written(names: pd.Series) -> pd.Series:
    """Return each name in the spelling in which it stands first."""
    return names.groupby(names.map(folded)).transform("first")


def numbering_table(runs: Sequence[Run]) -> pd.DataFrame:
    """Return one row a run.

    guide, boat, year, first, last, numbers, missing, twice, void, alike, words, blocks: see `Run`. Several
    numbers are one text with ; between.
    """
    listed = ("missing", "twice", "void", "alike")
    rows = [
        {
            **dict(zip(("guide", "boat", "year"), run.run, strict=True)),
            **{key: getattr(run, key) for key in ("first", "last", "numbers", "words", "blocks")},
            **{key: "; ".join(getattr(run, key)) for key in listed},
        }
        for run in runs
    ]
    return pd.DataFrame(
        rows, columns=["guide", "boat", "year", "first", "last", "numbers", *listed, "words", "blocks"]
    )
