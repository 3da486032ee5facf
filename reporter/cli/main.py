"""The command `reporter`: a group whose commands are imported only when they run."""

import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from importlib import import_module
from io import TextIOWrapper
from typing import NoReturn

import click

from reporter import __version__
from reporter.cli.lines import wrapped
from reporter.run.cycles import look_seldom_for_cycles

COMMANDS: dict[str, tuple[str, str]] = {
    "blank": ("reporter.cli.blank:blank", "Write an empty season log to fill in."),
    "check": ("reporter.cli.check:check", "Say which rows of a log to mend, and why."),
    "build": ("reporter.cli.build:build", "Write the season report of a log."),
    "clients": ("reporter.cli.clients:clients", "Write each client a copy of his own days."),
    "filing": ("reporter.cli.filing:filing", "Write pages that support a guide's reports."),
    "rollup": ("reporter.cli.rollup:rollup", "Add up many guides' logs, guides by code only."),
    "adopt": ("reporter.cli.adopt:adopt", "Learn the layout of a log that is not ours."),
    "launcher": ("reporter.cli.launcher:launcher", "Write a file to drop a log on."),
    "pick": ("reporter.cli.pick:pick", "Say what worked on days like the one you ask for."),
}
"""Command -> where it lives, and its line in the list."""

_USAGE_COLUMNS = 80


class LazyGroup(click.Group):
    """A group that lists its commands without importing them."""

    def invoke(self, ctx: click.Context) -> object:
        """Run a command; what was wrong with the command line is said in lines that fit."""
        try:
            return super().invoke(ctx)
        except click.UsageError as error:
            lines = wrapped(f"Error: {error.format_message()}", _USAGE_COLUMNS, rest="  ")
            said = "\n".join(lines).removeprefix("Error: ")
            raise click.UsageError(said, error.ctx) from error

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the commands in the order of a season."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Import a command, None where there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        module, _, name = COMMANDS[cmd_name][0].partition(":")
        command: click.Command = getattr(import_module(module), name)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the list of commands from the table."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in COMMANDS.items()])


@click.group(
    cls=LazyGroup,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
    epilog="Start with: reporter blank season.xlsx",
)
@click.version_option(__version__, package_name="season-reporter", prog_name="reporter")
def cli() -> None:
    """Turn a bass guide's season log into a report.

    The log is a spreadsheet workbook with a row a trip, a row a stint and a row a fish. It is never
    written to.
    """


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the command line; leaves by SystemExit."""
    look_seldom_for_cycles()
    cli.main(args=arguments, prog_name="reporter")


def run() -> NoReturn:
    """Run the command line as a program, and leave at once.

    To take a run's objects apart one by one costs a tenth of it. All files are closed by then; what is
    printed is flushed here. A letter that the terminal or the pipe has no sign for is written by its number.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    code: object = 0
    try:
        main()
    except SystemExit as leaving:
        code = leaving.code
    for stream in (sys.stdout, sys.stderr):
        with suppress(OSError, ValueError):
            stream.flush()
    os._exit(code if isinstance(code, int) else int(code is not None))
