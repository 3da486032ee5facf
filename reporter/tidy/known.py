"""Names that a log knows: those that its other sheets may refer to."""

from typing import TYPE_CHECKING

from reporter.schema.log import BY_KEY, SHEETS
from reporter.tidy.season import TidyLog

if TYPE_CHECKING:
    import pandas as pd


def known_names(log: TidyLog) -> list[tuple[str, str, str, list[str]]]:
    """Return the names of every sheet that others refer to: sheet key, column key, heading, names.

    They are the ones listed on that sheet; where it lists none, the ones that others use. A sheet without
    any is left out.
    """
    referred = dict.fromkeys(column.refers for sheet in SHEETS for column in sheet.columns if column.refers)
    found = []
    for key in referred:
        column = next(column for column in BY_KEY[key].columns if column.kind == "key")
        names = _listed(log.tables.get(key), column.key) or _used(log, key)
        if names:
            found.append((key, column.key, column.heading, names))
    return found


def _listed(table: "pd.DataFrame | None", column: str) -> list[str]:
    return [] if table is None else _different(table.loc[table["used"], column].tolist())


def _used(log: TidyLog, key: str) -> list[str]:
    names: list[str] = []
    for sheet in SHEETS:
        table = log.tables.get(sheet.key)
        for column in sheet.columns if table is not None else ():
            if table is None or column.refers != key:
                continue
            for cell in table.loc[table["used"], column.key]:
                names += cell if isinstance(cell, tuple) else [cell]
    return _different(names)


def _different(names: list[str]) -> list[str]:
    return [name for name in dict.fromkeys(names) if name]
