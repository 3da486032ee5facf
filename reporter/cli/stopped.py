"""What is said where a log has a stop, so that a command makes nothing of it."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.cli import say

if TYPE_CHECKING:
    from reporter.run.season import Reading


def say_stopped(reading: "Reading", nothing: str) -> None:
    """Say on stderr what stops a log. nothing: what there is not, as "No report of"."""
    say_stops(reading.path, [stop.message for stop in reading.stops], nothing)


def say_stops(log: Path, stops: Sequence[str], nothing: str) -> None:
    """Say the same of a log whose stops are known by their messages alone."""
    problems = "1 problem" if len(stops) == 1 else f"{len(stops):,} problems"
    say.failure(f"{nothing} {log.name}: {problems} to mend first.")
    for stop in stops:
        say.failure(stop, indent=2)
    say_check(log)


def say_check(log: Path) -> None:
    """Say on stderr which command lists everything found in a log."""
    say.failure("Everything found:")
    say.command("check", log, err=True)
