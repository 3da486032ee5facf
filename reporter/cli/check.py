"""`reporter check`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import fix, say
from reporter.cli.workbook_file import workbook_file

if TYPE_CHECKING:
    from reporter.run.season import Reading

_EFFECT_HEADINGS = {
    "stop": "Stop: no report until these are mended",
    "set aside": "Set aside: not used, in no total",
    "note": "Note: used as it stands",
}


@click.command(epilog="Example: reporter check 'season 2026.xlsx'")
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
    help="Write NAME mended.xlsx beside the log: a copy with the values of a filled-in fix list.",
)
@click.option("--quiet", is_flag=True, help="No progress.")
def check(logs: tuple[Path, ...], fix_list: Path | None, apply: Path | None, quiet: bool) -> None:
    """Say which rows of a log to mend, and why.

    LOG is a season log, or a folder that stands for every log in it. Exit 1 only where something stops the
    report. --fix-list and --apply take one LOG, which is never written to.
    """
    fix.one_log(logs, fix_list, apply)
    if apply:
        raise SystemExit(int(not fix.apply_fix_list(logs[0], apply)))
    target = workbook_file(fix_list, "a fix list", "--fix-list") if fix_list else None
    from reporter.read.errors import Unreadable
    from reporter.run.logs import find_logs
    from reporter.run.season import read_season

    found, sentences = find_logs(logs)
    failed = bool(sentences)
    for sentence in sentences:
        say.failure(sentence)
    for index, path in enumerate(found, start=1):
        say.progress(index, len(found), path.name, quiet=quiet)
        try:
            reading = read_season(path)
        except Unreadable as refused:
            say.failure(str(refused))
            failed = True
            continue
        if index > 1:
            say.result()
        _print(reading)
        failed = failed or bool(reading.stops)
        if target:
            say.result()
            failed = not fix.make_fix_list(reading, target) or failed
    raise SystemExit(int(failed))


def _print(reading: "Reading") -> None:
    from reporter.schema.problems import EFFECTS

    say.result(reading.path.name)
    if reading.log.layout_file:
        say.result(f"Read through {reading.log.layout_file}.", indent=2)
    if not reading.problems:
        say.result("Nothing to mend: every row was read and used.", indent=2)
    for effect in EFFECTS:
        found = [problem for problem in reading.problems if problem.effect == effect]
        if found:
            say.result()
            say.result(f"{_EFFECT_HEADINGS[effect]} ({len(found)})")
        for problem in found:
            cell = f" ({problem.cell})" if problem.cell else ""
            say.result(f"{problem.where}{cell}: {problem.text}", indent=2)
    say.result()
    rows = [
        (name, count.read, count.used, count.set_aside, count.blank, count.not_rows)
        for name, count in reading.counts.items()
    ]
    if rows:
        say.table(("Rows", "read", "used", "set aside", "blank", "not rows"), rows)
        say.result("read = used + set aside + blank + not rows", indent=2)
    if reading.season is not None and reading.season.from_above:
        above = reading.season.from_above
        rows_were = "1 row without a trip was" if above == 1 else f"{above} rows without a trip were"
        say.result(
            f"{rows_were} read as the trip of the row above: never sort Effort or Catch while Trip is blank "
            "anywhere.",
            indent=2,
        )
