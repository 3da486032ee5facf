"""`reporter check`."""

from pathlib import Path

import click

from reporter.cli import fix, say
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.stopped import say_stopped
from reporter.cli.workbook_file import workbook_file


@click.command(epilog='Example: reporter check "season 2026.xlsx"')
@click.argument("logs", nargs=-1, required=True, metavar="LOG...", type=click.Path(path_type=Path))
@click.option(
    "--fix-list",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Write a workbook with a line a problem, to type corrected values in.",
)
@click.option(
    "--apply",
    type=click.Path(path_type=Path),
    metavar="FIXLIST",
    help="Write a mended copy with the values of a filled-in fix list.",
)
@quiet_option
def check(logs: tuple[Path, ...], fix_list: Path | None, apply: Path | None, quiet: bool) -> None:
    """Say which rows of a log to mend, and why.

    Writes no file unless asked: --fix-list writes FILE, --apply writes "NAME mended.xlsx" beside the log. The
    log itself is never written to.

    LOG is a season log, or a folder that stands for every log in it; --fix-list and --apply take one LOG. The
    exit code is 1 where something stops the report.
    """
    fix.one_log(logs, fix_list, apply)
    if apply:
        raise SystemExit(int(not fix.apply_fix_list(logs[0], apply, quiet=quiet)))
    target = workbook_file(fix_list, "a fix list", "--fix-list") if fix_list else None
    from reporter.run.logs import find_logs, left_out

    found, sentences = find_logs(logs)
    say.left_out(left_out(logs), quiet=quiet)
    for sentence in sentences:
        say.failure(sentence)
    stopped = 0
    for index in range(len(found)):
        if index and not quiet:
            say.result()
        stopped += not _check_one(found, index, target, quiet=quiet)
    if len(found) > 1 and not quiet:
        say.result()
        say.result(f"{len(found):,} logs: {stopped or 'none'} with something that stops the report.")
    raise SystemExit(int(bool(sentences or stopped)))


def _check_one(found: list[Path], index: int, target: Path | None, *, quiet: bool) -> bool:
    """Read one of several logs and print what to mend; return whether it can be reported on."""
    from reporter.cli.check_said import say_found
    from reporter.read.errors import Unreadable
    from reporter.run.season import read_season

    log = found[index]
    try:
        with at_work(log.name, quiet=quiet, done=index + 1, total=len(found)):
            reading = read_season(log)
    except Unreadable as refused:
        say.failure(str(refused))
        return False
    if not quiet:
        say_found(reading)
    elif reading.stops:
        say_stopped(reading, "No report of")
    listed = target is None or fix.make_fix_list(reading, target, quiet=quiet)
    return listed and not reading.stops
