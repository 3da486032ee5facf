"""A sheet of one long table: its headings stay in sight on the screen, and are repeated on paper."""

from reporter.books.blocks import Line, Sheet, Table, Text


def long_sheet(name: str, lead: Line, table: Table) -> Sheet:
    """Return a sheet behind the numbers; below its title and lead stands the table, which is filtered."""
    text = Text((Line(name, "title"), lead))
    return Sheet(name, (text, table), group="behind", landscape=True, private=True)
