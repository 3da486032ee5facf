"""Every spelling by which a log knows a name."""

from collections.abc import Sequence

from reporter.compute.records import records
from reporter.schema.log import folded
from reporter.tidy.season import TidyLog


def spellings(log: TidyLog, sheet: str, column: str, names: Sequence[str]) -> dict[str, str]:
    """Return every spelling of names, folded: what they are also called, then themselves."""
    listed = log.tables.get(sheet)
    others: dict[str, str] = {}
    if listed is not None:
        for row in records(listed.loc[listed["used"], [column, "also_called"]]):
            others |= {folded(other): row[column] for other in row["also_called"]}
    return others | {folded(name): name for name in names}
