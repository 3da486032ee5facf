"""What `reporter build` prints of each log, and of several in the end."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.cli import say
from reporter.cli.stopped import say_stops

if TYPE_CHECKING:
    from reporter.run.jobs import Job
    from reporter.run.outcome import Outcome, Rows


def say_outcome(job: "Job", outcome: "Outcome", *, first: bool, quiet: bool) -> None:
    """Print what became of a log. first: no other stands above it."""
    if outcome.state == "done":
        if not quiet:
            if not first:
                say.result()
            say_built(job.log.name, job, outcome)
    elif outcome.state == "stopped":
        say_stops(job.log, outcome.why, "No report of")
    else:
        for sentence in outcome.why:
            say.failure(sentence)


def _counted(number: int, effect: str) -> str:
    return f"{number:,} {effect}{'s' if effect == 'note' and number > 1 else ''}"


def say_built(title: str, job: "Job", outcome: "Outcome", logs: Sequence[tuple[str, str]] = ()) -> None:
    """Print what a report holds. logs: of a report of several, each with the season that it is."""
    from reporter.schema.problems import EFFECTS

    found = outcome.effects
    to_mend = ", ".join(_counted(found[effect], effect) for effect in EFFECTS if found.get(effect))
    say.result(title)
    for index, (log, season) in enumerate(logs):
        say.labelled("" if index else "logs", f"{log}: {season}")
    say.labelled("rows", _rows(outcome.rows))
    say.labelled("to mend", f"{to_mend}: see Rows to fix" if to_mend else "nothing")
    for index, sentence in enumerate(outcome.findings):
        say.labelled("" if index else "season", sentence)
    say.labelled("fronts", outcome.fronts)
    say.labelled("report", str(job.report))
    if job.tables:
        say.labelled("tables", str(job.tables))


def _rows(rows: "Rows") -> str:
    return f"{rows.read:,} read, {rows.used:,} used, {rows.set_aside:,} set aside"


def say_total(outcomes: "Sequence[Outcome]", summary: Path | None) -> None:
    """Print what became of several logs."""
    from reporter.run.summary import total

    found = total(outcomes)
    without = f"{found.failed:,}" if found.failed else "none"
    say.result()
    say.result(f"{len(outcomes):,} logs: {found.done:,} with a report, {without} without.")
    say.labelled("rows", _rows(found.rows))
    if summary:
        say.labelled("summary", str(summary))
