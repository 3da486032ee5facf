"""Trips that stand on two worksheets: a plan and a log, or a list of trips and a row a trip of their fish."""

from collections.abc import Sequence
from dataclasses import replace

from reporter.read.raw import CellValue
from reporter.schema.own_layout import CLOCK
from reporter.tidy.propose.model import LIKELY_FROM, NOT_KNOWN, ProposedSheet

_SAME = 0.5  # share of the dates of one that are on the other
_WHOLE = (("anglers",), ("start", CLOCK.key, "hours_fished"))
"""What a worksheet has, of each one, that needs no other for its trips."""


def is_double(sheet: ProposedSheet, others: Sequence[ProposedSheet]) -> str:
    """Return why a worksheet of trips is not one, given the others; nothing where it is."""
    rest = [other for other in others if other is not sheet]
    if _date_score(sheet) < LIKELY_FROM <= max(map(_date_score, rest), default=0.0):
        return "its dates may be something else"
    if _is_fished(sheet):
        return ""
    for other in rest:
        if _is_fished(other) and _is_whole(other) and _same_days(sheet, other):
            return f"its dates are on '{other.seen.name}' too, which says what was fished"
    return ""


def points_at(sheet: ProposedSheet, others: Sequence[ProposedSheet]) -> bool:
    """Whether a worksheet with fish only repeats the dates of trips that another has whole."""
    return (
        _is_fished(sheet)
        and not _is_whole(sheet)
        and any(
            other is not sheet and not _is_fished(other) and _is_whole(other) and _same_days(sheet, other)
            for other in others
        )
    )


def not_read(sheet: ProposedSheet, why: str) -> ProposedSheet:
    """Return a worksheet that is left alone, with the reason."""
    nothing = tuple((column, NOT_KNOWN) for column, _ in sheet.columns)
    return replace(sheet, row_is="", score=0.0, why=why, columns=nothing)


def _date_score(sheet: ProposedSheet) -> float:
    return max((meant.score for _, meant in sheet.columns if meant.key == "date"), default=0.0)


def _is_fished(sheet: ProposedSheet) -> bool:
    return sheet.has_any("effort") or sheet.has_any("catch")


def _is_whole(sheet: ProposedSheet) -> bool:
    return all(any(sheet.has("trips", key) for key in keys) for keys in _WHOLE)


def _same_days(one: ProposedSheet, other: ProposedSheet) -> bool:
    days, others = _days(one), _days(other)
    return len(days & others) >= _SAME * max(1, min(len(days), len(others)))


def _days(sheet: ProposedSheet) -> set[CellValue]:
    return {value for column, meant in sheet.columns if meant.key == "date" for value in column.values}
