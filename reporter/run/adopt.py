"""Adopt a log that is not in our layout: look at it, and write what its columns may mean."""

from pathlib import Path
from typing import NamedTuple

from reporter.books.layout import layout_book
from reporter.files.atomic import replace_file
from reporter.files.guard import guard_target
from reporter.files.layouts import layout_path
from reporter.files.mark import read_mark
from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.tidy.layout import find_layout
from reporter.tidy.propose.model import Proposal
from reporter.tidy.propose.propose import propose
from reporter.tidy.propose.why_not import why_no_trips
from reporter.write.workbook import write_book


class Adopted(NamedTuple):
    """A proposal, and the workbook that it was written into."""

    proposal: Proposal
    layout: Path


def adopt(log: Path) -> Adopted:
    """Write the proposed layout of a log beside it; the log itself is only read.

    Unreadable where the log cannot be read, is in our own layout, has one of its own already or shows nothing
    to go by; CannotWrite where the layout cannot be written. Each is one sentence.
    """
    target = layout_path(log)
    if read_mark(target) == "layout":
        raise Unreadable(
            f"{log.name} has a layout already: open {target.name} beside it, or delete that to begin again."
        )
    guard_target(target, (log,), frozenset())
    book = open_log(log, lambda _name: True, any_folder=True)
    if book.mark not in (None, "log"):
        raise Unreadable(
            f"{log.name} is a {book.mark} that reporter wrote, not a log: adopt your own workbook."
        )
    if not any(found.effect == "stop" for found in find_layout(book)[1]):
        raise Unreadable(
            f"{log.name} is a season log as it stands: check and build read it without a layout."
        )
    proposal = propose(book)
    if not any(sheet.row_is for sheet in proposal.sheets):
        raise Unreadable(f"I cannot find trips in {log.name}: {why_no_trips(book, proposal)}")
    made = layout_book(proposal, log.name)
    replace_file(target, lambda path: write_book(made, path))
    return Adopted(proposal, target)
