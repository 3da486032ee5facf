"""One line on stderr while something long is at work, written over and then taken away."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

import click

from reporter.cli import say
from reporter.cli.lines import cut
from reporter.run.tell import Tell, silent


class Line:
    """The line. Nothing is shown where stderr is no terminal, nor where it is to be quiet."""

    def __init__(self, *, quiet: bool) -> None:
        self.shown = not quiet and sys.stderr.isatty()
        self._columns = say.width(err=True) - 1

    def show(self, text: str) -> None:
        """Write a text over what is there."""
        if self.shown:
            click.echo(f"\r{cut(text, self._columns):<{self._columns}}", err=True, nl=False)

    def clear(self) -> None:
        """Take the line away, so that results and failures stand alone."""
        if self.shown:
            click.echo(f"\r{'':<{self._columns}}\r", err=True, nl=False)


@contextmanager
def at_work(name: str, *, quiet: bool, done: int = 1, total: int = 1) -> Iterator[Tell]:
    """Show what is at work, of several its number too; give a function that says what is being done to it.

    The line is gone when the block ends.
    """
    line = Line(quiet=quiet)
    start = f"[{done}/{total}] {name}" if total > 1 else name
    if line.shown:
        line.show(f"{start}: reading")
    try:
        yield (lambda doing: line.show(f"{start}: {doing}")) if line.shown else silent
    finally:
        line.clear()
