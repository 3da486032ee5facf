"""Why no worksheet of a log could be taken for trips, in a sentence that says what to do."""

from reporter.read.raw import RawBook, RawSheet
from reporter.tidy.propose.fit import are_dates
from reporter.tidy.propose.look import could_be_heading
from reporter.tidy.propose.model import Proposal
from reporter.tidy.words import plain

_TURNED_FROM = 4  # headings below each other that are known
_FIRST_ROWS = 40


def why_no_trips(book: RawBook, proposal: Proposal) -> str:
    """Return what a log lacks in which no worksheet was taken for anything."""
    turned = next((raw.name for raw in book.sheets if _is_turned(raw)), "")
    if turned:
        return (
            f"the headings of '{turned}' stand below each other and each trip is a column. "
            "Copy the table and paste it transposed, so that each trip is a row."
        )
    said = next((f"'{sheet.seen.name}': {sheet.why}." for sheet in proposal.sheets if sheet.why), "")
    if said:
        return said
    headed = [sheet.seen for sheet in proposal.sheets]
    undated = [seen.name for seen in headed if not any(are_dates(column.values) for column in seen.columns)]
    if headed and len(undated) == len(headed):
        return (
            f"no column of '{undated[0]}' holds dates. "
            "Write the whole date of each trip into one column, as 2026-04-18."
        )
    return (
        "no row looks like headings of dates and waters. "
        "Give each column a heading, or copy your rows into a blank log."
    )


def _is_turned(raw: RawSheet) -> bool:
    """Whether the first column holds more headings than any row does."""
    first = [cells[0] for cells in raw.rows[:_FIRST_ROWS] if cells]
    below = sum(isinstance(cell, str) and could_be_heading(plain(cell)) for cell in first)
    beside = max(
        (
            sum(isinstance(c, str) and could_be_heading(plain(c)) for c in cells[:_FIRST_ROWS])
            for cells in raw.rows[:_FIRST_ROWS]
        ),
        default=0,
    )
    return below >= _TURNED_FROM and below > beside
