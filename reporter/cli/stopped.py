"""What is said where a log has a stop, so that a command makes nothing of it."""

from typing import TYPE_CHECKING

from reporter.cli import say

if TYPE_CHECKING:
    from reporter.run.season import Reading


def say_stopped(reading: "Reading", nothing: str) -> None:
    """Say on stderr what stops a log. nothing: what there is not, as "No report of"."""
    stops = reading.stops
    problems = "1 problem" if len(stops) == 1 else f"{len(stops):,} problems"
    say.failure(f"{nothing} {reading.path.name}: {problems} to mend first.")
    for stop in stops:
        say.failure(stop.message, indent=2)
    say_check(reading)


def say_check(reading: "Reading") -> None:
    """Say on stderr which command lists everything found in a log."""
    say.failure("Everything found:")
    say.command("check", reading.path, err=True)
