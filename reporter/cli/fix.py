"""What `reporter check` does with a fix list: one is written, or a filled-in one applied."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.progress import at_work

if TYPE_CHECKING:
    from reporter.run.mend import Mended
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


def make_fix_list(reading: "Reading", target: Path, *, quiet: bool) -> bool:
    """Write the fix list of a log that was read and say so unless quiet; False where that could not be."""
    from reporter.files.errors import CannotWrite
    from reporter.run.fix_list import applies_to, write_fix_list

    try:
        if reading.problems:
            write_fix_list(reading, target)
    except CannotWrite as refused:
        say.failure(str(refused))
        return False
    if quiet:
        return True
    say.result()
    if not reading.problems:
        say.result("No fix list was written: there is nothing to mend.")
    elif applies_to(reading):
        say.result(f"The fix list is in {target}. Type corrected values into it, save it, and run:")
        say.command("check", reading.path, "--apply", target)
    else:
        say.result(f"The fix list is in {target}. Its first lines say how to mend a log of this format.")
    return True


def apply_fix_list(log: Path, fix_list: Path, *, quiet: bool) -> bool:
    """Write the mended copy of a log and say what is left unless quiet; False where that could not be."""
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.mend import NotMended, mend

    try:
        with at_work(log.name, quiet=quiet):
            mended = mend(log, fix_list)
    except NotMended as refused:
        for sentence in refused.sentences:
            say.failure(sentence)
        return False
    except (CannotWrite, Unreadable) as refused:
        say.failure(str(refused))
        return False
    if not quiet:
        _say_mended(mended)
    return True


def _say_mended(mended: "Mended") -> None:
    left = len(mended.reading.problems)
    problems = "1 problem" if left == 1 else f"{left:,} problems" if left else "no problems"
    say.result(
        f"{mended.corrected:,} corrected, {problems} left. The mended copy is {mended.path}. Look at it:"
    )
    say.command("check", mended.path)
    if mended.recalculate:
        say.result(
            "It holds formulas. Open it in your spreadsheet program and save it, so that they are worked out "
            "from the corrected cells."
        )
