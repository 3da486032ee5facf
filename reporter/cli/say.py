"""What the commands print: results on stdout, progress and sentences about failure on stderr."""

import shutil
import sys
import textwrap
from collections.abc import Sequence

import click

_NARROWEST, _WIDEST = 40, 100

# A terminal obeys control characters, and what is printed may quote what someone typed.
_CONTROLS = {code: None for code in (*range(0x20), *range(0x7F, 0xA0)) if chr(code) not in "\t\n"}


def width() -> int:
    """Return the columns to write in: the window's when there is one, else 80."""
    columns = shutil.get_terminal_size((80, 24)).columns if sys.stdout.isatty() else 80
    return max(_NARROWEST, min(columns, _WIDEST))


def result(text: str = "", indent: int = 0) -> None:
    """Print a line of a result, wrapped, further lines indented."""
    lines = textwrap.wrap(
        text.translate(_CONTROLS),
        width(),
        initial_indent=" " * indent,
        subsequent_indent=" " * (indent + 2),
        break_long_words=False,
    )
    for line in lines or [""]:
        click.echo(line)


def command(text: str) -> None:
    """Print a line with a command as it stands, to be copied."""
    click.echo(text)


def labelled(label: str, text: str, label_width: int = 10) -> None:
    """Print a label and its text beside it, wrapped under itself."""
    indent = " " * (label_width + 2)
    shown = text.translate(_CONTROLS)
    lines = textwrap.wrap(shown, width() - len(indent), break_long_words=False, break_on_hyphens=False) or [
        ""
    ]
    click.echo(f"  {label:<{label_width}}{lines[0]}")
    for line in lines[1:]:
        click.echo(f"{indent}{line}")


def table(headings: Sequence[str], rows: Sequence[Sequence[object]]) -> None:
    """Print a small table: first column left, the others right."""
    cells = [[str(cell) for cell in row] for row in (headings, *rows)]
    widths = [max(len(row[column]) for row in cells) for column in range(len(headings))]
    for row in cells:
        first, *others = (
            cell.ljust(widths[0]) if index == 0 else cell.rjust(widths[index])
            for index, cell in enumerate(row)
        )
        click.echo("  " + "  ".join([first, *others]).rstrip())


def failure(sentence: str) -> None:
    """Print on stderr why something was not done."""
    shown = sentence.translate(_CONTROLS)
    click.echo(textwrap.fill(shown, width(), break_long_words=False, break_on_hyphens=False), err=True)


def on_terminal() -> bool:
    """Whether somebody looks at stderr as it is printed."""
    return sys.stderr.isatty()


def progress(done: int, total: int, name: str, *, quiet: bool) -> None:
    """Print on stderr which log of several is at work; silent when piped."""
    if total > 1 and not quiet and on_terminal():
        click.echo(f"[{done}/{total}] {name.translate(_CONTROLS)}", err=True)
