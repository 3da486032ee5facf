"""Write the fix list of a log."""

import os
from collections.abc import Callable
from pathlib import Path

from reporter.books.blocks import Book, Link
from reporter.books.fix_list import fix_list_book
from reporter.files.atomic import replace_file
from reporter.files.guard import guard_target
from reporter.files.real import real_path
from reporter.run.season import Reading
from reporter.tidy.spots import Spot
from reporter.write.workbook import write_book


def write_fix_list(reading: Reading, target: Path) -> None:
    """Write the problems of a log as a workbook to mend them in; CannotWrite where that cannot be."""
    guard_target(target, (reading.path,), frozenset())  # a list that is there may have been typed in
    book = fix_list_of(reading, target)
    replace_file(target, lambda path: write_book(book, path))


def fix_list_of(reading: Reading, target: Path) -> Book:
    """Return the fix list of a log, with links as they are to be from the folder of `target`."""
    links = _links(reading.path, target)
    return fix_list_book(reading.log, reading.layout, reading.problems, links, applies=applies_to(reading))


def applies_to(reading: Reading) -> bool:
    """Whether a log is of a format in which single cells can be changed."""
    return not reading.path.is_dir() and all(found.code != "format_blind" for found in reading.problems)


def _links(log: Path, target: Path) -> Callable[[Spot], Link | None]:
    """Return what gives the link from a fix list to a place in its log."""
    to_log = _relative(log, target)
    if not log.is_dir():
        return lambda spot: Link(to_log, spot.sheet, spot.cell or f"A{spot.row or 1}")

    def to_file(spot: Spot) -> Link | None:
        named = (
            path for path in log.iterdir() if path.stem == spot.sheet and path.suffix.casefold() == ".csv"
        )
        return next((Link(f"{to_log}/{path.name}") for path in sorted(named)), None)

    return to_file


def _relative(log: Path, target: Path) -> str:
    """Return the way from the fix list's folder to the log; the whole path where the drives differ."""
    path = real_path(log)
    try:
        return Path(os.path.relpath(path, real_path(target).parent)).as_posix()
    except ValueError:
        return path.as_posix()
