"""What `reporter check` does with a fix list: one is written, or a filled-in one applied."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say

if TYPE_CHECKING:
    from reporter.run.season import Reading


def one_log(logs: tuple[Path, ...], fix_list: Path | None, apply: Path | None) -> None:
    """Raise UsageError unless at most one of the two options stands beside exactly one log."""
    from reporter.files.csv_log import is_csv_log

    if fix_list is None and apply is None:
        return
    if fix_list and apply:
        raise click.UsageError("--fix-list makes a list and --apply takes it when it is filled in: give one.")
    if len(logs) > 1 or (logs[0].is_dir() and not is_csv_log(logs[0])):
        raise click.UsageError("--fix-list and --apply take one LOG, not several.")


def make_fix_list(reading: "Reading", target: Path) -> bool:
    """Write the fix list of a log that was read and say so; False where that could not be."""
    from reporter.files.errors import CannotWrite
    from reporter.run.fix_list import applies_to, write_fix_list

    if not reading.problems:
        say.result("No fix list was written: there is nothing to mend.")
        return True
    try:
        write_fix_list(reading, target)
    except CannotWrite as refused:
        say.failure(str(refused))
        return False
    if applies_to(reading):
        say.result(f"The fix list is in {target}. Type corrected values into it, save it, and run:")
        say.command(f"reporter check '{reading.path}' --apply '{target}'")
    else:
        say.result(f"The fix list is in {target}. Its first lines say how to mend a log of this format.")
    return True


def apply_fix_list(log: Path, fix_list: Path) -> bool:
    """Write the mended copy of a log and say what is left; False where that could not be."""
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.mend import NotMended, mend

    try:
        mended = mend(log, fix_list)
    except NotMended as refused:
        for sentence in refused.sentences:
            say.failure(sentence)
        return False
    except (CannotWrite, Unreadable) as refused:
        say.failure(str(refused))
        return False
    left = len(mended.reading.problems)
    problems = "1 problem" if left == 1 else f"{left or 'no'} problems"
    say.command(f"{mended.corrected} corrected, {problems} left: reporter check '{mended.path}'")
    if mended.recalculate:
        say.result(
            "It holds formulas. Open it in your spreadsheet program and save it, so that they are worked out "
            "from the corrected cells."
        )
    return True
