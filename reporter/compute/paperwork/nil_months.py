"""In which months a report is owed though there was no trip, as a guide types it."""

import re
from collections.abc import Iterator

from reporter.tidy.moments import MONTHS
from reporter.tidy.words import plain

EVERY_MONTH = frozenset(range(1, 13))
NO_MONTH: frozenset[int] = frozenset()

_MODES = {
    **dict.fromkeys(("always", "yes", "all", "every month", "all months"), EVERY_MONTH),
    **dict.fromkeys(("never", "no", "none"), NO_MONTH),
}
_MONTH = r"(?:[a-z]{3,9}\.?|\d{1,2})"
_SPAN = re.compile(
    rf"(?:from |in )?({_MONTH})(?:(?: ?- ?| to | through | thru | until )({_MONTH}))?(?: only)?"
)
_CONDITION = re.compile(r"[ (]*\b(?:only )?(?:if|when|with)\b.*")
_AND = re.compile(r" and |&")
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}.*")


def read_nil_months(typed: str) -> frozenset[int] | str:
    """Return the months (1 to 12) in which a report without trips is owed, or a sentence: why it is not read.

    always, never, or months: "May to Oct", "5-10", "Nov-Feb", "May; July". What is owed only with trips, as
    "Nov-Apr if guided", adds nothing: months with trips are owed anyway.
    """
    text = plain(typed).casefold().strip(" .")
    if not text:
        return "Nil months is blank on Reports: write always, never, or the months, as May to Oct."
    if text in _MODES:
        return _MODES[text]
    if _DATE.fullmatch(text):
        return f"The spreadsheet turned Nil months into a date ({text}): write them in words, as May to Oct."
    months = [_months_of(part) for part in _parts(text)]
    read = [found for found in months if found is not None]
    if len(read) < len(months):
        return (
            f"Nil months '{typed.strip()}' can't be read: write always, never, or the months, as May to Oct."
        )
    return frozenset().union(*read)


def _parts(text: str) -> Iterator[tuple[str, bool]]:
    """Yield what stands between the signs, and whether it is owed with trips only."""
    for part in re.split("[;,]", text):
        condition = _CONDITION.search(part)
        words = part[: condition.start()] if condition else part
        yield from ((word.strip(), condition is not None) for word in _AND.split(words))


def _months_of(part: tuple[str, bool]) -> frozenset[int] | None:
    words, with_trips = part
    found = _SPAN.fullmatch(words)
    first, last = (_month(found[1]), _month(found[2] or found[1])) if found else (None, None)
    if first is None or last is None:
        return None
    length = (last - first) % 12
    months = ((first + step - 1) % 12 + 1 for step in range(length + 1))
    return NO_MONTH if with_trips else frozenset(months)


def _month(word: str) -> int | None:
    if word.isdecimal():
        return int(word) if 1 <= int(word) <= 12 else None
    return MONTHS.get(word.rstrip("."))
