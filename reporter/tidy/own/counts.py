"""What became of the rows of a log, counted by the sheets that the guide sees."""

from collections.abc import Mapping
from dataclasses import replace

from reporter.schema.log import BY_KEY
from reporter.schema.row_codes import row_in_sheet, worksheet_of
from reporter.tidy.rows import RowCount, RowFates


def row_counts(
    fates: Mapping[str, RowFates], worksheets: Mapping[str, tuple[str, ...]]
) -> dict[str, RowCount]:
    """Return sheet -> what became of its rows; a worksheet of another layout is counted once.

    fates: by sheet key. worksheets: sheet name -> the worksheets that its rows come from, see
    `reporter.tidy.season.TidyLog`; empty for a log of our layout.
    """
    if not worksheets:
        return {BY_KEY[key].name: found.count() for key, found in fates.items()}
    apart: dict[str, RowFates] = {}
    for key, found in fates.items():
        for at, name in enumerate(worksheets.get(BY_KEY[key].name, ())):
            own = _of_worksheet(found, at)
            apart[name] = _joined(apart[name], own) if name in apart else own
    return {name: found.count() for name, found in apart.items()}


def _of_worksheet(found: RowFates, at: int) -> RowFates:
    """Return the rows of one of the worksheets, by their numbers in it."""
    touched, aside = (
        frozenset(row_in_sheet(code) for code in codes if worksheet_of(code) == at)
        for codes in (found.touched, found.aside)
    )
    return RowFates((found.read[at],), (found.not_rows[at],), touched, aside)


def _joined(one: RowFates, other: RowFates) -> RowFates:
    """Bring together what one worksheet gives to two sheets of the log."""
    return replace(one, touched=one.touched | other.touched, aside=one.aside | other.aside)
