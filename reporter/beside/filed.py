"""What was filed: kept in a small file beside the log, so that a later run can say what has changed since.

Nothing here is ever changed or taken out: a filing that differs is written behind the ones before.
"""

import datetime as dt
import json
from collections.abc import Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

from reporter.compute.filed import Filed
from reporter.files.atomic import replace_file
from reporter.files.errors import refusal
from reporter.read.errors import Unreadable

_MARK, _KIND = "season-reporter", "filed"
_LARGEST = 64 << 20  # bytes; a season of filings takes a few hundred kB


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


def _filed(found: Mapping[str, Any]) -> Filed:
    texts = {key: str(found[key]) for key in ("first", "last", "filed_on", "log", "sha256", "version")}
    dt.date.fromisoformat(texts["filed_on"])
    rows = tuple({str(key): str(cell) for key, cell in row.items()} for row in found["rows"])
    if not all("trip" in row for row in rows):
        raise ValueError("a row without its trip")
    return Filed(**texts, totals={str(k): str(v) for k, v in found["totals"].items()}, rows=rows)


def _write(path: Path, content: str) -> None:
    path.write_text(content + "\n", encoding="utf-8", newline="\n")
