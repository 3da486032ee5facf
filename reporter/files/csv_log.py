"""A folder that is one log: a Trips.csv in it, and no mark that we wrote its tables."""

import json
from pathlib import Path

PACKAGE = "datapackage.json"
TABLES_MARK = "season-reporter"

_NEEDED = "trips.csv"


def is_csv_log(folder: Path) -> bool:
    """Whether a folder is a log of CSV files. Never raises."""
    try:
        there = any(path.name.casefold() == _NEEDED and path.is_file() for path in folder.iterdir())
    except OSError:
        return False
    return there and not holds_tables(folder)


def holds_tables(folder: Path) -> bool:
    """Whether a folder holds tables that we wrote."""
    try:
        package = json.loads((folder / PACKAGE).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return False
    return isinstance(package, dict) and package.get(TABLES_MARK) == "tables"
