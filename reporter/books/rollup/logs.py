"""Pages of a roll-up about the logs themselves: missing months, logs, their problems."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Block, Field, Line, Sheet, Table, Text
from reporter.books.rollup.pages import Front, cells, page


def missing_page(front: Front) -> Sheet:
    """Return the page with guides who have no trip in a month in which others have one."""
    fields = (Field("guide", "Guide"), Field("month", "Month"), Field("said", "What the log says"))
    nobody = "Every guide has a row of Trips in each month in which others have a trip."
    lead = (
        "Months in which others have a trip and this guide has none, cancelled ones included. That a log has "
        "no trip does not say that there was none, nor that anything is owed; a log that is not counted may "
        "have one."
    )
    return page("Missing months", front, _table("missing", fields, front.made.missing, nobody), lead=lead)


def logs_page(front: Front) -> Sheet:
    """Return the page with a line a log, and the kinds of problems of each."""
    made = front.made
    file = [Field("file", "File")] if made.names else []
    logs = (
        Field("log", "Log", "plain"),
        Field("guide", "Guide"),
        *file,
        Field("state", "State"),
        Field("rows_read", "Rows read", "whole"),
        Field("rows_used", "Used", "whole"),
        Field("rows_set_aside", "Set aside", "whole"),
        Field("trips_set_aside", "Of them rows of Trips", "whole", width=10.0),
    )
    problems = (
        Field("log", "Log", "plain"),
        Field("guide", "Guide"),
        Field("effect", "Effect"),
        Field("title", "Problem", "wrapped", width=60.0),
        Field("found", "Found", "whole"),
    )
    return page(
        "Logs",
        front,
        _table("log", logs, made.logs, "No log."),
        _table("problem", problems, made.problems, "No problem in any log.", title="Problems by log"),
        lead="Logs are numbered in the order of file names; reporter check LOG says where a problem is.",
        behind=True,
    )


def _table(key: str, fields: Sequence[Field], table: pd.DataFrame, nothing: str, title: str = "") -> Block:
    if table.empty:
        return Text((*([Line(title, "heading")] if title else []), Line(nothing)))
    columns = {field.key: cells(table[field.key].tolist()) for field in fields}
    return Table(key, tuple(fields), columns, title=title)
