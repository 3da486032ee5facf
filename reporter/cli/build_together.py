"""`reporter build --together`: one report of the seasons of one guide."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from reporter.cli import say
from reporter.cli.build_told import say_built
from reporter.cli.progress import at_work
from reporter.cli.stopped import say_stopped
from reporter.files.real import real_path

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather
    from reporter.run.tell import Tell
    from reporter.run.together import Together


class Target(NamedTuple):
    """Folder of the report, None for that of the first log; folder of its tables, None for none."""

    out: Path | None
    tables: Path | None


def refuse_together(
    logs: Sequence[Path], *, workers: int | None, cluster: str | None, summary: Path | None
) -> None:
    """Refuse what makes no sense of one report: exit 2."""
    if workers or cluster or summary:
        raise click.UsageError(
            "--together makes one report; --workers, --cluster and --summary are for many reports."
        )
    seen: set[Path] = set()
    for log in logs:
        if real_path(log) in seen:
            raise click.UsageError(f"{log} is named twice; name the log of each season once.")
        seen.add(real_path(log))


def say_alone() -> None:
    """Say that one log has nothing to be set against."""
    say.result("One log alone has no other season to be set against: this is its ordinary report.")


def build_together(
    logs: Sequence[Path],
    sentences: Sequence[str],
    target: Target,
    weather: "Sequence[RawWeather]",
    *,
    quiet: bool,
) -> int:
    """Build one report of logs and print what it holds; return the exit code.

    sentences: what is wrong with paths that give no log. Nothing is written unless every log can be used.
    """
    for sentence in sentences:
        say.failure(sentence)
    if sentences:
        return 1
    with at_work(f"{len(logs)} logs", quiet=quiet) as tell:
        built = _built(logs, target, weather, tell)
    if built is None:
        return 1
    for reading in built.stopped:
        say_stopped(reading, "No report, because of")
    if built.stopped:
        return 1
    if built.job and not quiet:
        say_built(built.title, built.job, built.outcome, built.logs)
    return 0


def _built(
    logs: Sequence[Path], target: Target, weather: "Sequence[RawWeather]", tell: "Tell"
) -> "Together | None":
    """Build; None where that cannot be, which was said."""
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.together import CannotPutTogether, build_together

    try:
        return build_together(logs, target.out, target.tables, weather, tell)
    except (Unreadable, CannotWrite, CannotPutTogether) as why:
        say.failure(str(why))
        return None
