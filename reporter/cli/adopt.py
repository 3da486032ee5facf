"""`reporter adopt`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option

if TYPE_CHECKING:
    from reporter.run.adopt import Adopted


_LABEL = 24


@click.command(epilog='Example: reporter adopt "my trips 2026.xlsx"')
@click.argument("log", metavar="LOG", type=click.Path(path_type=Path))
@quiet_option
def adopt(log: Path, quiet: bool) -> None:
    """Learn the layout of a LOG that is not ours, to be confirmed once.

    Writes "NAME layout.xlsx" beside it: what its worksheets and columns may mean. Look it through there and
    answer its first question with yes; from then on every command reads the log by it. The log itself is
    never changed.
    """
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.adopt import adopt as run_adopt

    try:
        with at_work(log.name, quiet=quiet):
            adopted = run_adopt(log)
    except (Unreadable, CannotWrite) as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    if not quiet:
        _say(log, adopted)


def _say(log: Path, adopted: "Adopted") -> None:
    from collections import Counter

    from reporter.schema.own_layout import NOT_READ, ROW_IS
    from reporter.schema.own_layout_book import QUESTIONS
    from reporter.tidy.propose.model import how_sure

    say.result(log.name)
    for sheet in adopted.proposal.sheets:
        read = [meaning for _, meaning in sheet.columns if meaning.target and sheet.row_is]
        sure = Counter(how_sure(meaning.score) for meaning in read)
        counted = ", ".join(f"{sure[word]} {word}" for word in ("sure", "likely", "a guess") if sure[word])
        row_is = f"one row is {ROW_IS[sheet.row_is]}" if sheet.row_is else NOT_READ
        columns = f"; {len(read)} of {len(sheet.columns)} columns: {counted}" if read else ""
        beyond = f"; {sheet.seen.beyond} further right were not looked at" if sheet.seen.beyond else ""
        why = f": {sheet.why}" if sheet.why and not sheet.row_is else ""
        say.labelled(sheet.seen.name, f"{row_is}{why}{columns}{beyond}", _LABEL)
    for name in adopted.proposal.unread:
        say.labelled(name, NOT_READ, _LABEL)
    for key, likely in adopted.proposal.answers.items():
        say.labelled("No column says it", f"{QUESTIONS[key].partition(': ')[2]}{_guess(likely)}", _LABEL)
    say.result()
    say.result(f"Look it through in {adopted.layout}, answer 'Use this layout' with yes, and save it.")


def _guess(likely: str) -> str:
    return f"; '{likely}' is a guess" if likely else "; answer it there"
