"""The list of clients' copies for a mail merge: client and file, no address."""

import csv
from collections.abc import Mapping, Sequence
from pathlib import Path

from reporter.files.atomic import replace_file
from reporter.files.csv_log import is_csv_log
from reporter.files.errors import CannotWrite, refusal
from reporter.files.guard import guard_input
from reporter.write.tables import safe_text

LIST = "clients.csv"
_COLUMNS = ["client", "file"]


def guard_list(path: Path, inputs: Sequence[Path]) -> None:
    """Raise CannotWrite where the list would write over a file that is read, or that is no such list."""
    if is_csv_log(path.parent):
        raise CannotWrite(
            f"I cannot write copies into {path.parent}: it is a log of .csv files; choose another."
        )
    guard_input(path, inputs)
    if path.exists() and _rows(path) is None:
        raise refusal(path, "it exists and was not written by reporter; choose another folder or move it")


def write_list(path: Path, files: Mapping[str, str], *, whole: bool) -> None:
    """Write client and file, a line each. whole: nothing else; else the lines of other clients stay.

    No two lines name one file.
    """
    lines = {safe_text(client): safe_text(name) for client, name in files.items()}
    there = {} if whole else _rows(path) or {}
    taken = set(lines.values())
    lines = {client: name for client, name in there.items() if name not in taken or client in lines} | lines
    replace_file(path, lambda target: _write(target, lines))


def _write(path: Path, lines: Mapping[str, str]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\r\n")
        writer.writerow(_COLUMNS)
        writer.writerows(lines.items())


def _rows(path: Path) -> dict[str, str] | None:
    """Return the lines of a list that is there, None where it is no such list."""
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            heading, *rows = csv.reader(file)
    except (OSError, ValueError, csv.Error):
        return None
    return {row[0]: row[1] for row in rows if len(row) == len(_COLUMNS)} if heading == _COLUMNS else None
