"""Write an empty season log."""

from pathlib import Path

from reporter.books.blank import blank_book
from reporter.files.atomic import replace_file
from reporter.files.guard import guard_target
from reporter.schema.units import System
from reporter.write.workbook import write_book


def write_blank(target: Path, system: System, season: int | None) -> None:
    """Write an empty log; raises CannotWrite, one sentence, where a file is there already."""
    guard_target(target, (), frozenset())
    book = blank_book(system, season)
    replace_file(target, lambda path: write_book(book, path))
