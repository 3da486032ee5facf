"""What was filed: kept in a small file beside the log, so that a later run can say what has changed since.

Nothing here is ever changed or taken out: a filing that differs is written behind the ones before.
"""

import datetime as dt
import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from reporter.files.atomic import replace_file
from reporter.files.errors import refusal
from reporter.read.errors import Unreadable

_MARK, _KIND = "season-reporter", "filed"
_LARGEST = 64 << 20  # bytes; a season of filings takes a few hundred kB
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


@dataclass(frozen=True, slots=True)
class Change:
    """What has changed in a row since it was filed; a row that came or went has one change, of the row."""

    trip: str
    field: str
    old: str
    new: str


@dataclass(frozen=True, slots=True)
class Amended:
    """A filing against the last one of its period.

    number: how many versions were filed before; changes and totals (name, old, new) since the last of them.
    """

    number: int
    filed_on: str
    changes: tuple[Change, ...]
    totals: tuple[tuple[str, str, str], ...]


def filed_path(log: Path) -> Path:
    """Return where the filings of a log, a workbook or a folder, are kept."""
    name = log.name if log.is_dir() else log.stem
    return log.parent / f"{name} filed.json"


def read_filings(log: Path) -> list[Filed]:
    """Return what was filed from a log, in order; Unreadable where the file is there and cannot be read."""
    path = filed_path(log)
    if not path.exists():
        return []
    try:
        if path.stat().st_size > _LARGEST:
            raise ValueError("too large")
        found = json.loads(path.read_text(encoding="utf-8"))
        if found[_MARK] != _KIND:
            raise ValueError("not ours")
        return [_filed(filing) for filing in found["filings"]]
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        why = "it is not as reporter wrote it; put back the copy that you have of it, or move it away"
        raise Unreadable(f"I cannot read {path.name}, which says what was filed: {why}.") from error


def add_filing(log: Path, filing: Filed) -> None:
    """Write a filing behind those before it; CannotWrite where that cannot be."""
    path = filed_path(log)
    if path.is_dir():
        raise refusal(path, "that is a folder; move it away")
    filings = [asdict(filed) for filed in (*read_filings(log), filing)]
    content = json.dumps({_MARK: _KIND, "filings": filings}, ensure_ascii=False, indent=1)
    replace_file(path, lambda target: _write(target, content))


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


def _filed(found: Mapping[str, Any]) -> Filed:
    texts = {key: str(found[key]) for key in ("first", "last", "filed_on", "log", "sha256", "version")}
    dt.date.fromisoformat(texts["filed_on"])
    rows = tuple({str(key): str(cell) for key, cell in row.items()} for row in found["rows"])
    if not all("trip" in row for row in rows):
        raise ValueError("a row without its trip")
    return Filed(**texts, totals={str(k): str(v) for k, v in found["totals"].items()}, rows=rows)


def _write(path: Path, content: str) -> None:
    path.write_text(content + "\n", encoding="utf-8", newline="\n")
