"""`reporter launcher`."""

from pathlib import Path
from typing import TYPE_CHECKING, cast

import click

from reporter.cli import say
from reporter.cli.quiet import quiet_option

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
@quiet_option
def launcher(folder: Path, desktop: str | None, quiet: bool) -> None:
    """Write a file to drop a log on, for those who never type a command.

    Writes "Season report" into DIR: a .bat for Windows, a .command for macOS, a .desktop and a .sh for Linux.
    What is dropped on it gets its report, beside it, and that is opened. It is plain text: read in it what it
    does. It runs the Python that runs this command: write it anew after moving that.
    """
    from reporter.files.errors import CannotWrite
    from reporter.run.launcher import make_launcher, this_desktop

    kind = cast("Desktop", desktop) if desktop else this_desktop()
    try:
        file = make_launcher(folder, kind)
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    if not quiet:
        say.result(f"The launcher is {file}. {_TELL[kind]}: its report is built beside it and opened.")
