"""The summary of several logs: a CSV file with a row a log."""

import csv
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from reporter.files.atomic import replace_file
from reporter.files.csv_log import LOG_NEEDS, is_csv_log
from reporter.files.errors import refusal, refusal_for
from reporter.files.folders import make_folder
from reporter.files.guard import guard_input
from reporter.files.real import real_path
from reporter.schema.summary_table import SUMMARY
from reporter.write.csv_text import never_a_formula

Value = str | float | None

_HEADING = [field.name for field in SUMMARY.fields]


def guard_summary(path: Path, inputs: Sequence[Path], folders: Iterable[Path]) -> None:
    """Raise CannotWrite where a summary would write over what is read, or what is no summary of ours.

    folders: those that tables go into, where it may not lie. Nor may it lie in a log of .csv files, which
    it would be a part of.
    """
    if is_csv_log(path.parent):
        raise refusal(path, "its folder is a log of .csv files; choose another")
    if path.name.casefold() == LOG_NEEDS:
        raise refusal(path, "with it its folder would be taken for a log; choose another name")
    if real_path(path.parent) in {real_path(folder) for folder in folders}:
        raise refusal(path, "tables go into its folder; choose another")
    guard_input(path, inputs)
    try:
        ours = not path.exists() or _heading(path) == _HEADING
    except OSError as error:
        raise refusal_for(path, error) from error
    if not ours:
        raise refusal(path, "it exists and is no summary of reporter's; choose another name or move it")
    make_folder(path.parent)


def _heading(path: Path) -> list[str] | None:
    if not path.is_file():
        return None
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            return next(csv.reader(file), None)
    except (ValueError, csv.Error):
        return None


def write_summary(path: Path, rows: Iterable[Mapping[str, Value]]) -> None:
    """Write a row a log, whole or not at all; nothing where a row has no value. Raises CannotWrite."""
    lines = [list(_texts(row)) for row in rows]
    replace_file(path, lambda target: _write(target, lines))


def _write(path: Path, lines: Sequence[Sequence[str]]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\r\n")
        writer.writerow(_HEADING)
        writer.writerows(lines)


def _texts(row: Mapping[str, Value]) -> Iterator[str]:
    for name in _HEADING:
        value = row.get(name)
        if isinstance(value, str):
            yield never_a_formula(value)
        else:
            yield "" if value is None or not math.isfinite(value) else f"{value:.12g}"
