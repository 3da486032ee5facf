"""The option --weather: hourly files, opened once for all logs."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.progress import at_work

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather

weather_option = click.option(
    "--weather",
    multiple=True,
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Hourly weather of an airport nearby, for front days; may be given several times.",
)


def open_weather(paths: tuple[Path, ...], *, quiet: bool) -> "list[RawWeather]":
    """Open the weather files, unless quiet with progress; exit 1 where one cannot be read."""
    if not paths:
        return []
    from reporter.read.errors import Unreadable
    from reporter.run.weather import open_all

    try:
        with at_work("weather", quiet=quiet):
            return open_all(paths)
    except Unreadable as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
