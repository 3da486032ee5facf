"""A folder that is one log: a Trips.csv in it or a layout beside it, and no mark that its tables are ours."""

import json
from pathlib import Path

from reporter.files.layouts import layout_path
from reporter.files.mark import read_mark

PACKAGE = "datapackage.json"
TABLES_MARK = "season-reporter"

LOG_NEEDS = "trips.csv"


def is_csv_log(folder: Path) -> bool:
    """Whether a folder is a log of CSV files. Never raises."""
    own = read_mark(layout_path(folder)) == "layout"
    return holds_csv(folder, "" if own else LOG_NEEDS) and not holds_tables(folder)


def holds_csv(folder: Path, name: str = "") -> bool:
    """Whether a CSV file stands in a folder, of a name (lower case) if one is given. Never raises."""
    try:
        return any(_is_csv(path, name) and path.is_file() for path in folder.iterdir())
    except OSError:
        return False


def _is_csv(path: Path, name: str) -> bool:
    there = path.name.casefold()
    return there == name if name else there.endswith(".csv")


def holds_tables(folder: Path) -> bool:
    """Whether a folder holds tables that we wrote."""
    return _package(folder).get(TABLES_MARK) == "tables"


def tables_described(folder: Path, name: str) -> bool:
    """Whether the description of the tables in a folder names a file."""
    resources = _package(folder).get("resources")
    return isinstance(resources, list) and any(
        isinstance(one, dict) and one.get("path") == name for one in resources
    )


def _package(folder: Path) -> dict[str, object]:
    """Return the description of the tables in a folder; empty where there is none."""
    try:
        package = json.loads((folder / PACKAGE).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return package if isinstance(package, dict) else {}
