"""The numbers of trips: each once, none missing, none that only looks different."""

import re
from collections import defaultdict

from reporter.tidy.sheet import TidySheet

_NUMBERED = re.compile(r"(.*?)(\d{1,18})(\D*)")
_MOST_LISTED = 12


def check_twice(tidy: TidySheet) -> None:
    """Stop at a number used for two trips; a row written twice counts once."""
    first_row: dict[str, int] = {}
    for index, number in enumerate(tidy.columns["trip"]):
        if number is None:
            continue
        key = number.casefold()
        if key not in first_row:
            first_row[key] = index
            continue
        other = first_row[key]
        said = {"value": number, "other": tidy.rows.said(other)}
        if all(cells[index] == cells[other] for cells in tidy.rows.cells.values()):
            tidy.set_aside("trip_row_twice", index, "trip", **said)
        else:
            tidy.say("trip_number_twice", index, "trip", **said)


def check_missing(tidy: TidySheet) -> None:
    """Note numbers that a run leaves out, one note a run of numbers alike."""
    runs: dict[tuple[str, str], dict[int, tuple[str, int]]] = defaultdict(dict)
    for index, number in enumerate(tidy.columns["trip"]):
        found = _NUMBERED.fullmatch(number) if number else None
        if found:
            runs[found[1].casefold(), found[3].casefold()].setdefault(int(found[2]), (number, index))
    for run in runs.values():
        low, high = min(run), max(run)
        missing_count = high - low + 1 - len(run)
        # Numbers with more gaps than members are no run: dates, say.
        if missing_count and missing_count < len(run):
            _say_missing(tidy, run, [number for number in range(low, high) if number not in run])


def _say_missing(tidy: TidySheet, run: dict[int, tuple[str, int]], missing: list[int]) -> None:
    pattern, _ = run[min(run)]
    found = _NUMBERED.fullmatch(pattern)
    if found is None:
        return
    head, digits, tail = found.groups()
    width = len(digits) if digits.startswith("0") else 0
    names = [f"{head}{number:0{width}d}{tail}" for number in missing]
    listed = ", ".join(names[:_MOST_LISTED]) + (" ..." if len(names) > _MOST_LISTED else "")
    verb = " is" if len(names) == 1 else " are"
    above = min(number for number in run if number > missing[0])
    at = run[above][1]
    tidy.say("trips_skipped", at, "trip", skipped=listed + verb, first=pattern, last=run[max(run)][0])


def same_number(number: str) -> str:
    """Return a trip's number without what could be left out: letters in front, leading zeros."""
    found = _NUMBERED.fullmatch(number)
    return f"{int(found[2])}{found[3].casefold()}" if found else number.casefold()


def check_alike(tidy: TidySheet) -> None:
    """Note numbers that differ only in what people leave out: 12, 012 and T-12."""
    seen: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for index, number in enumerate(tidy.columns["trip"]):
        if number is None:
            continue
        found = _NUMBERED.fullmatch(number)
        head = found[1].casefold() if found else ""
        others = seen[same_number(number)]
        alike = [other for other, other_head in others if other_head == head or not (head and other_head)]
        if alike and alike[0].casefold() != number.casefold():
            tidy.say("trip_alike", index, "trip", value=number, other=alike[0])
        others.append((number, head))
