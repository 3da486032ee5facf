"""Papers and clients' licences on the page Paperwork: what runs out, and which days are not covered."""

from collections.abc import Sequence
from typing import Any

from reporter.books.blocks import Block, Cell, Field, Live
from reporter.books.filing.pages import day_or_blank, filled_table
from reporter.books.season.paperwork_behind import COUNTS, OUTSIDE, shown_licences
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.records import records

_DOCUMENTS = (
    Field("document", "Document"),
    Field("kind", "Kind"),
    Field("valid_from", "Valid from", "date"),
    Field("valid_to", "Valid to", "date"),
    Field("state", "State"),
    Field("trips", "Trips that need it", "whole"),
    Field("trips_outside", "Of them not covered", "whole"),
    Field("trip", "The first"),
    Field("keep_until", "Keep its records until, at least", "date"),
)
_LICENCES = (
    Field("client", "Client"),
    Field("licence_from", "Licence from", "date"),
    Field("licence_to", "Licence to", "date"),
    Field("trips", "Trips", "whole"),
    Field("days_outside", "Days not covered", "whole"),
    Field("trip", "The first"),
    Field("state", "State"),
)
_FORMULAS = {"trips": COUNTS, "trips_outside": OUTSIDE, "days_outside": OUTSIDE}


def documents_block(made: Paperwork, *, live: bool) -> list[Block]:
    """Return the papers; live: their counts are formulas over the rows behind them."""
    rows = records(made.documents)
    if not rows:
        return []
    columns = _columns(rows, _DOCUMENTS, live=live)
    return [
        filled_table("document", _DOCUMENTS, columns, title="Papers: both the first and the last day count")
    ]


def licences_block(made: Paperwork, *, live: bool) -> list[Block]:
    """Return the licences that are not shown to cover every day; live: as for papers."""
    rows = records(shown_licences(made))
    if not rows:
        return []
    title = "Clients' licences that are not shown to cover every day of their trips"
    return [filled_table("licence", _LICENCES, _columns(rows, _LICENCES, live=live), title=title)]


def _columns(
    rows: Sequence[dict[str, Any]], fields: Sequence[Field], *, live: bool
) -> dict[str, Sequence[Cell]]:
    return {field.key: [_cell(row[field.key], field, live=live) for row in rows] for field in fields}


def _cell(value: Any, field: Field, *, live: bool) -> Cell:
    """Return a cell; what is not known, or is 0, is empty."""
    if field.look == "date":
        return day_or_blank(value)
    if value and live and field.key in _FORMULAS:
        return Live(_FORMULAS[field.key], value)
    return value or None
