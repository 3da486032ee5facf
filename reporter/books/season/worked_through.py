"""Worked through: a rate with its range, and a comparison, step by step on this season's own rows."""

from reporter.books.blocks import Line, Sheet, Text
from reporter.books.season.worked_comparison import comparison_example
from reporter.books.season.worked_rate import rate_example
from reporter.compute.report import Report

NAME = "Worked through"

_LEAD = "How it is worked out, on your own rows: every number here is a formula, and leads to the next."
_NONE = "Nothing to work through yet: it takes a technique on five trips with a fish."


def worked_through(report: Report) -> Sheet:
    """Return the sheet Worked through."""
    examples = (*rate_example(report), *comparison_example(report))
    lines = (Line(NAME, "title"), Line(_LEAD, "lead"), *(() if examples else (Line(_NONE),)))
    return Sheet(NAME, (Text(lines), *examples), group="behind")
