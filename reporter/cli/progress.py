"""One line on stderr while something long is at work, written over and then taken away."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

import click

from reporter.cli import say
from reporter.cli.lines import cut
from reporter.run.tell import Tell, silent


@contextmanager
def at_work(name: str, *, quiet: bool, done: int = 1, total: int = 1) -> Iterator[Tell]:
    """Show what is at work, of several its number too; give a function that says what is being done to it.

    The line is gone when the block ends, so that results and failures stand alone. Nothing is shown where
    stderr is no terminal, nor where it is to be quiet.
    """
    if quiet or not sys.stderr.isatty():
        yield silent
        return
    columns = say.width(err=True) - 1
    start = f"[{done}/{total}] {name}" if total > 1 else name

    def tell(doing: str) -> None:
        click.echo(f"\r{cut(f'{start}: {doing}', columns):<{columns}}", err=True, nl=False)

    tell("reading")
    try:
        yield tell
    finally:
        click.echo(f"\r{'':<{columns}}\r", err=True, nl=False)
