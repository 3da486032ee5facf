"""What the commands print: results on stdout, failures on stderr, in lines that fit the window."""

import os
import sys
from collections.abc import Sequence
from pathlib import Path

import click

from reporter.cli.lines import clean, cut, quoted, wrapped

_NARROWEST, _USUAL, _WIDEST = 40, 80, 100
_GAP = "  "


def width(*, err: bool = False) -> int:
    """Return the columns to write in: the window's when there is one, else 80."""
    stream = sys.stderr if err else sys.stdout
    try:
        columns = os.get_terminal_size(stream.fileno()).columns if stream.isatty() else _USUAL
    except (OSError, ValueError):  # a stream without a window behind it
        columns = _USUAL
    return max(_NARROWEST, min(columns or _USUAL, _WIDEST))


def result(text: str = "", indent: int = 0, *, err: bool = False) -> None:
    """Print a line of a result, wrapped, further lines indented."""
    margin = " " * indent
    for line in wrapped(text, width(err=err), margin, f"{margin}{_GAP}"):
        click.echo(line, err=err)


def failure(sentence: str, indent: int = 0) -> None:
    """Print on stderr why something was not done."""
    result(sentence, indent, err=True)


def left_out(sentences: Sequence[str], *, quiet: bool) -> None:
    """Print on stderr which logs are not read though nothing is wrong with them."""
    if not quiet:
        for sentence in sentences:
            failure(sentence)


def command(name: str, *arguments: Path | str, err: bool = False) -> None:
    """Print on a line of its own, whole, a command of ours to be copied; paths are quoted."""
    words = (quoted(word) if isinstance(word, Path) else word for word in arguments)
    click.echo(f"{_GAP}reporter {name} {' '.join(words)}", err=err)


def labelled(label: str, text: str, label_width: int = 10) -> None:
    """Print a label and its text beside it, wrapped under itself; a label too long is cut."""
    first = f"{_GAP}{cut(label, label_width - 1):<{label_width}}"
    for line in wrapped(text, width(), first, " " * len(first)):
        click.echo(line)


def table(headings: Sequence[str], rows: Sequence[Sequence[object]]) -> None:
    """Print a small table: first column left and cut where the window ends, the others right."""
    cells = [[clean(str(cell)) for cell in row] for row in (headings, *rows)]
    widths = [max(len(row[column]) for row in cells) for column in range(len(headings))]
    others = sum(len(_GAP) + other for other in widths[1:])
    widths[0] = min(widths[0], max(len(cells[0][0]), width() - len(_GAP) - others))
    for name, *numbers in cells:
        shown = [cell.rjust(room) for cell, room in zip(numbers, widths[1:], strict=True)]
        click.echo((_GAP + _GAP.join([cut(name, widths[0]).ljust(widths[0]), *shown])).rstrip())
