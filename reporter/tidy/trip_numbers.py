"""The numbers of trips: each once, none missing, none that only looks different."""

import re
from collections import defaultdict
from collections.abc import Collection, Mapping
from itertools import pairwise

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


def split_number(number: str) -> tuple[str, int, str] | None:
    """Return what stands before a number's last digits, they, and what stands behind; None without any."""
    found = _NUMBERED.fullmatch(number)
    return (found[1], int(found[2]), found[3]) if found else None


def missing_numbers(run: Mapping[int, str], there: Collection[int] = ()) -> list[str]:
    """Return the numbers that a run (number -> as typed) leaves out between its ends, as its first is typed.

    there: numbers that are not missing though the run has them not. Numbers with more gaps than members are
    no run: dates, say.
    """
    low, high = min(run), max(run)
    found = _NUMBERED.fullmatch(run[low])
    known = {number for number in (*run, *there) if low <= number <= high}
    if found is None or high - low + 1 - len(known) >= len(run):
        return []
    head, digits, tail = found.groups()
    width = len(digits) if digits.startswith("0") else 0
    left_out = (number for number in range(low, high) if number not in known)
    return [f"{head}{number:0{width}d}{tail}" for number in left_out]


def check_missing(tidy: TidySheet) -> None:
    """Note numbers that a run leaves out, one note a run of numbers alike."""
    runs: dict[tuple[str, str], dict[int, tuple[str, int]]] = defaultdict(dict)
    for index, typed in enumerate(tidy.columns["trip"]):
        found = split_number(typed) if typed else None
        if found:
            head, number, tail = found
            runs[head.casefold(), tail.casefold()].setdefault(number, (typed, index))
    for run in runs.values():
        missing = missing_numbers({number: typed for number, (typed, _) in run.items()})
        if missing:
            _say_missing(tidy, run, missing)


def _say_missing(tidy: TidySheet, run: dict[int, tuple[str, int]], missing: list[str]) -> None:
    listed = ", ".join(missing[:_MOST_LISTED]) + (" ..." if len(missing) > _MOST_LISTED else "")
    verb = " is" if len(missing) == 1 else " are"
    numbers = sorted(run)
    above = next(after for before, after in pairwise(numbers) if after > before + 1)
    first, last = run[numbers[0]][0], run[numbers[-1]][0]
    tidy.say("trips_skipped", run[above][1], "trip", skipped=listed + verb, first=first, last=last)


def same_number(number: str) -> str:
    """Return a trip's number without what could be left out: letters in front, leading zeros."""
    found = split_number(number)
    return f"{found[1]}{found[2].casefold()}" if found else number.casefold()


def check_alike(tidy: TidySheet) -> None:
    """Note numbers that differ only in what people leave out: 12, 012 and T-12."""
    seen: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for index, number in enumerate(tidy.columns["trip"]):
        if number is None:
            continue
        found = split_number(number)
        head = found[0].casefold() if found else ""
        others = seen[same_number(number)]
        alike = [other for other, other_head in others if other_head == head or not (head and other_head)]
        if alike and alike[0].casefold() != number.casefold():
            tidy.say("trip_alike", index, "trip", value=number, other=alike[0])
        others.append((number, head))
