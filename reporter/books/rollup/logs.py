"""The page of a roll-up about the logs: which are not counted and why, their rows, their problems."""

from reporter.books.blocks import Block, Field, Line, Sheet, Text
from reporter.books.rollup.pages import Front, guides_only
from reporter.books.rollup.totals import table_or_words
from reporter.compute.rollup.missed import CANNOT_BE_READ, SHARES, TOO_SLOW, TWICE, Missed
from reporter.schema.problems import CATALOGUE

_SAID = {
    CANNOT_BE_READ: "cannot be read; the run says why.",
    TOO_SLOW: "takes too long to be read; the run says more.",
    SHARES: "has a trip that stands in another log too; the run says which.",
    TWICE: "is there twice and counted once at most; the run says which it is.",
}
"""State -> what is said of such a log where no file is named."""


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
    return guides_only(
        "Logs",
        front,
        *_not_counted(made.missed, names=made.names),
        table_or_words("log", logs, made.logs, "No log."),
        table_or_words("problem", problems, made.problems, "No problem in any log.", title="Problems by log"),
        lead="Logs are numbered in the order of file names; reporter check LOG says where a problem is.",
    )


def _not_counted(missed: tuple[Missed, ...], *, names: bool) -> list[Block]:
    if not missed:
        return []
    lines = [Line(sentence) for log in missed for sentence in _why(log, names=names)]
    return [Text((Line("Not counted", "heading"), *lines))]


def _why(log: Missed, *, names: bool) -> list[str]:
    """Return why a log is not counted; file names and what was typed only where guides are named."""
    if names:
        return [f"Log {log.log}, {log.file}: {sentence}" for sentence in log.sentences]
    if log.state in _SAID:
        return [f"Log {log.log} {_SAID[log.state]}"]
    titles = "; ".join(dict.fromkeys(CATALOGUE[code].title for code in log.codes))
    return [f"Log {log.log} stops: {titles}. reporter check says where."]
