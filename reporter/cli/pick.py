"""`reporter pick`."""

from pathlib import Path

import click

from reporter.cli import say
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.stopped import say_stopped
from reporter.cli.weather import open_weather, weather_option

_OPTIONS = {
    "time_of_year": "--time-of-year",
    "water_temperature": "--water-temp",
    "day_type": "--day-type",
    "clarity": "--clarity",
    "water": "--water",
    "sky": "--sky",
    "wind_speed": "--wind",
}
"""Choice -> the option that asks for it."""


@click.command(epilog='Example: reporter pick "season 2026.xlsx" --water-temp 52F --clarity stained')
@click.argument("log", type=click.Path(path_type=Path))
@click.option("--time-of-year", default="", metavar="MONTH", help="A month, or 'March and April'.")
@click.option("--water-temp", default="", metavar="TEMP", help="As 52F, 11C, or '50 to 60 °F'.")
@click.option("--day-type", default="", metavar="TYPE", help="As ordinary, ahead, day_1, day_2.")
@click.option("--clarity", default="", metavar="WORD", help="As clear, stained, muddy.")
@click.option("--water", default="", metavar="NAME", help="A water by its name in the log.")
@click.option("--sky", default="", metavar="WORD", help="As clear, overcast, rain.")
@click.option("--wind", default="", metavar="SPEED", help="As 12mph, 20km/h, or '10 to 15 mph'.")
@weather_option
@click.option("--csv", "as_csv", is_flag=True, help="Print the list as CSV, with every digit.")
@quiet_option
def pick(log: Path, weather: tuple[Path, ...], as_csv: bool, quiet: bool, **asked: str) -> None:
    """Say what worked on days like the one you ask for, by your own record.

    Writes no file: the answer is printed.

    What you leave out means any. Where too little of the record fits, what you asked for is let go step by
    step, and the answer says so. It tells what happened and forecasts nothing.
    """
    from reporter.cli.pick_answer import print_answer, print_csv
    from reporter.read.errors import Unreadable
    from reporter.run.pick import ask

    questions = {key: asked[option.removeprefix("--").replace("-", "_")] for key, option in _OPTIONS.items()}
    hours = open_weather(weather, quiet=quiet)
    try:
        with at_work(log.name, quiet=quiet):
            answer = ask(log, questions, hours)
    except Unreadable as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    for key, why in answer.unread.items():
        raise click.BadParameter(f"{why.why}. {why.remedy}", param_hint=f"'{_OPTIONS[key]}'")
    if answer.reading.season is None:
        say_stopped(answer.reading, "No answer from")
        raise SystemExit(1)
    if not quiet:
        (print_csv if as_csv else print_answer)(answer, log.name)
