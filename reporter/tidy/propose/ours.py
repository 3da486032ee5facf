"""A worksheet of our own layout but for a few headings: what is ours is taken as it stands."""

from reporter.read.raw import RawBook
from reporter.schema.column import Sheet
from reporter.schema.log import SHEETS, find_sheet
from reporter.tidy.headings import match_heading
from reporter.tidy.propose.model import GUESS_FROM, NOT_KNOWN, Meaning, ProposedSheet, SeenColumn, SeenSheet
from reporter.tidy.propose.names import SAME_HEADING
from reporter.tidy.propose.offers import offer
from reporter.tidy.propose.sheets import proposed

_FEWEST = 2  # headings of ours, and more than half of all


def as_ours(sheets: list[ProposedSheet], book: RawBook) -> list[ProposedSheet]:
    """Take the worksheets of a log of ours as what they are: one that has every needed sheet by its name."""
    named = {found.key for raw in book.sheets if (found := find_sheet(raw.name))}
    if not named >= {sheet.key for sheet in SHEETS if sheet.required}:
        return sheets
    return [
        proposed(one.seen, sheet.key, _by_headings(one.seen.columns, sheet))
        if (sheet := _ours(one.seen))
        else one
        for one in sheets
    ]


def _ours(seen: SeenSheet) -> Sheet | None:
    """Return the sheet of the log that a worksheet is by its name and most of its headings; None if none."""
    sheet = find_sheet(seen.name)
    if sheet is None:
        return None
    headings = [column.heading for column in seen.columns if column.heading]
    known = sum(match_heading(heading, sheet)[0] is not None for heading in headings)
    return sheet if known >= _FEWEST and 2 * known > len(headings) else None


def _by_headings(columns: tuple[SeenColumn, ...], sheet: Sheet) -> list[Meaning]:
    """Return a meaning for each column: what its heading says, else the best of what is still missing."""
    made: list[Meaning] = []
    for column in columns:
        found, unit = match_heading(column.heading, sheet) if column.heading else (None, None)
        taken = {meaning.key for meaning in made}
        if found is None or found.key in taken:
            made.append(NOT_KNOWN)
        else:
            label = unit.label if unit else ""
            made.append(Meaning(sheet.key, found.key, SAME_HEADING, "same heading", unit=label))
    return [
        meaning if meaning.target else _still_missing(column, sheet, made)
        for column, meaning in zip(columns, made, strict=True)
    ]


def _still_missing(column: SeenColumn, sheet: Sheet, made: list[Meaning]) -> Meaning:
    taken = {meaning.key for meaning in made}
    offers = [offer(column, sheet.key, one.key, sheet.key) for one in sheet.columns if one.key not in taken]
    best = max(offers, key=lambda one: one.score, default=NOT_KNOWN)
    return best if best.score >= GUESS_FROM else NOT_KNOWN
