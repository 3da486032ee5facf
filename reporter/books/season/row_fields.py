"""The columns that say on which row of the log a line stands."""

from reporter.books.blocks import Field
from reporter.compute.season import Season


def row_fields(season: Season, sheet: str) -> tuple[Field, ...]:
    """Return them for a table of rows of a sheet (by name); of another layout the worksheet is named too."""
    if season.layout_file:
        return Field("worksheet", "Worksheet"), Field("row", "Row on it", "plain")
    return (Field("row", f"Row on {sheet}", "plain"),)
