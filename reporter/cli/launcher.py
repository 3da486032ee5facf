"""`reporter launcher`."""

from pathlib import Path
from typing import TYPE_CHECKING, cast

import click

from reporter.cli import say
from reporter.cli.quiet import quiet_option

if TYPE_CHECKING:
    from reporter.write.launchers import Desktop

_OPENED = "its report is built beside it and opened"
_FOLDER = "of a folder of logs each report is built, and the folder opened"
_TELL = {
    "windows": f"Drop a season log on it in the Explorer: {_OPENED}; {_FOLDER}.",
    "macos": f"Double-click it and choose a season log: {_OPENED}.",
    "linux": (
        f"Drop a season log on it: {_OPENED}; {_FOLDER}. Your desktop may ask once whether to allow that."
    ),
}
_ELSEWHERE = (
    "It is made for another kind of computer and was not tried on this one: there it looks for reporter on "
    "the PATH, and says what to install where there is none."
)


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
    What is dropped on it gets its report, beside it, and that is opened; of a folder of logs the folder is.
    It is plain text: read in it what it does. It runs the Python that runs this command: write it anew after
    moving that. For another kind of computer it looks there for reporter on the PATH.
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
        say.result(f"The launcher is {file}. {_TELL[kind]}")
        if kind != this_desktop():
            say.result(_ELSEWHERE)
