"""`reporter launcher`."""

from pathlib import Path
from typing import TYPE_CHECKING, cast

import click

from reporter.cli import say

if TYPE_CHECKING:
    from reporter.write.launchers import Desktop

_TELL = {
    "windows": "Drop a season log on it in the Explorer",
    "macos": "Double-click it and choose a season log",
    "linux": "Drop a season log on it; your desktop may ask once whether to allow that",
}


@click.command(epilog="Example: reporter launcher Desktop")
@click.argument("folder", type=click.Path(path_type=Path), metavar="DIR")
@click.option(
    "--for",
    "desktop",
    type=click.Choice(list(_TELL)),
    help="The kind of computer it is for; else this one's.",
)
def launcher(folder: Path, desktop: str | None) -> None:
    """Write a file to drop a log on into DIR.

    For those who never type a command: it builds the report beside the log and opens it. It is plain text;
    read in it what it does. It runs the Python that runs this command: write it anew after moving that.
    """
    from reporter.files.errors import CannotWrite
    from reporter.run.launcher import make_launcher, this_desktop

    kind = cast("Desktop", desktop) if desktop else this_desktop()
    try:
        file = make_launcher(folder, kind)
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    say.result(f"The launcher is {file}. {_TELL[kind]}: its report is built beside it and opened.")
