"""Why a row of Keep rules cannot be read: what it lacks, and what does not go together."""

import math
from typing import Any

from reporter.compute.keep_rules.rule import CLOSED, KEEPFIRST, LIMIT, RELEASE
from reporter.schema.log import BY_KEY
from reporter.tidy.words import NotRead

_SHEET = BY_KEY["keep_rules"]
_LENGTHS = ("min_mm", "max_mm", "slot_from_mm", "slot_to_mm", "over_length_mm")
_LIMITS = ("daily_limit", "over_count", "possession")
_TOGETHER = (("slot_from_mm", "slot_to_mm"), ("over_length_mm", "over_count"), ("from", "to"))
_ORDERED = (("min_mm", "max_mm"), ("slot_from_mm", "slot_to_mm"))


def why_unread(
    row: dict[str, Any], water: str | NotRead, species: frozenset[str] | NotRead
) -> tuple[str, NotRead] | None:
    """Return the column of what cannot be read of a row, and why; None where all can."""
    if isinstance(water, NotRead):
        return "water", water
    if isinstance(species, NotRead):
        return "species", species
    if not row["action"]:
        return "action", NotRead("has no Action", "Write LIMIT, RELEASE, CLOSED or KEEPFIRST.")
    return _half(row) or _reversed(row) or _of_other_action(row)


def _half(row: dict[str, Any]) -> tuple[str, NotRead] | None:
    for pair in _TOGETHER:
        first, second = pair if _is_said(row[pair[0]]) else pair[::-1]
        if _is_said(row[first]) and not _is_said(row[second]):
            lacking = _SHEET.column(second).heading
            return second, NotRead(f"has {_SHEET.column(first).heading} but no {lacking}", "Write both.")
    return None


def _reversed(row: dict[str, Any]) -> tuple[str, NotRead] | None:
    for low, high in _ORDERED:
        if row[low] > row[high]:
            above = f"has {_SHEET.column(low).heading} above {_SHEET.column(high).heading}"
            return low, NotRead(above, "Mend one of them; a slot that is protected is Slot from and Slot to.")
    return None


def _of_other_action(row: dict[str, Any]) -> tuple[str, NotRead] | None:
    action = row["action"]
    lengths = [key for key in _LENGTHS if _is_said(row[key])]
    limits = [key for key in _LIMITS if _is_said(row[key])]
    if action == LIMIT and not (lengths or limits):
        return "action", NotRead("is LIMIT without a number", "Write a length or a limit.")
    if action == KEEPFIRST and not row["daily_limit"] > 0:
        return "daily_limit", NotRead("is KEEPFIRST without a Daily limit", "Write how many to keep first.")
    if action in (RELEASE, CLOSED):
        lengths += [key for key in limits if row[key] > 0]
    if action != LIMIT and lengths:
        heading = _SHEET.column(lengths[0]).heading
        return lengths[0], NotRead(f"is {action} with {heading}", "Write LIMIT, or leave the number out.")
    return None


def _is_said(value: str | float) -> bool:
    return value != "" if isinstance(value, str) else not math.isnan(value)
