"""The name of a workbook to write, as typed on a command line."""

from pathlib import Path

import click


def workbook_file(typed: Path, what: str, option: str) -> Path:
    """Return a path that ends in .xlsx; BadParameter of the option where another ending was typed.

    what: what is written, with its article: "a fix list".
    """
    target = typed if typed.suffix else typed.with_suffix(".xlsx")
    if target.suffix.lower() != ".xlsx":
        raise click.BadParameter(f"{what} is an .xlsx workbook, not {target.suffix}", param_hint=option)
    return target
