"""Text as it stands in a CSV file."""

import math

from reporter.write.clean import clean

# The signs that begin a formula, the wide ones of other keyboards too, and what may stand before one unseen.
_FORMULA_STARTS = ("=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20", "\t", "\r", "\n")


def never_a_formula(text: str) -> str:
    """Return text that no spreadsheet takes for a formula: such a start gets an apostrophe before it."""
    cleaned = clean(text)
    if cleaned.startswith(_FORMULA_STARTS) and not _is_number(cleaned):
        return f"'{cleaned}"
    return cleaned


def _is_number(text: str) -> bool:
    try:
        return math.isfinite(float(text))
    except ValueError:
        return False
