"""What was filed, against what would be filed now."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

_WHOLE_ROW = "the row"

Row = Mapping[str, str]
"""Field -> text, as the ledger shows it; every row has a trip."""


@dataclass(frozen=True, slots=True)
class Filed:
    """One filing: first and last day ("" where open), the day it was filed, the log, totals and rows.

    sha256: of the log. version: of the reporter. totals: name -> text.
    """

    first: str
    last: str
    filed_on: str
    log: str
    sha256: str
    version: str
    totals: dict[str, str]
    rows: tuple[dict[str, str], ...]


class Change(NamedTuple):
    """What has changed in a row since it was filed; a row that came or went has one change, of the row."""

    trip: str
    field: str
    old: str
    new: str


class Amended(NamedTuple):
    """A filing against the last one of its period.

    number: how many versions were filed before; changes and totals (name, old, new) since the last of them.
    """

    number: int
    filed_on: str
    changes: tuple[Change, ...]
    totals: tuple[tuple[str, str, str], ...]


def amended(filings: Sequence[Filed], now: Filed) -> Amended | None:
    """Return what has changed since the last filing of the same days; None where none was filed."""
    same = [filed for filed in filings if (filed.first, filed.last) == (now.first, now.last)]
    if not same:
        return None
    last = same[-1]
    names = dict.fromkeys([*last.totals, *now.totals])
    totals = ((name, last.totals.get(name, ""), now.totals.get(name, "")) for name in names)
    return Amended(
        len(same),
        last.filed_on,
        tuple(_changes(last.rows, now.rows)),
        tuple(total for total in totals if total[1] != total[2]),
    )


def _changes(before: Sequence[Row], after: Sequence[Row]) -> list[Change]:
    old, new = ({row["trip"]: row for row in rows} for rows in (before, after))
    made = []
    for trip in dict.fromkeys([*old, *new]):
        if trip not in new or trip not in old:
            made.append(
                Change(trip, _WHOLE_ROW, "filed" if trip in old else "", "" if trip in old else "new")
            )
            continue
        for field in dict.fromkeys([*old[trip], *new[trip]]):
            one, other = old[trip].get(field, ""), new[trip].get(field, "")
            if one != other:
                made.append(Change(trip, field, one, other))
    return made
