"""The tables as CSV files with their description, a Frictionless Tabular Data Package."""

import csv
import json
import math
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Any

import pandas as pd

from reporter import __version__
from reporter.files.atomic import replace_file
from reporter.files.csv_log import PACKAGE, TABLES_MARK, holds_tables, is_csv_log, tables_described
from reporter.files.errors import CannotWrite
from reporter.files.folders import make_folder
from reporter.files.guard import guard_input
from reporter.schema.csv_table import CsvField, CsvTable
from reporter.schema.tables import TABLES
from reporter.write.clean import clean
from reporter.write.csv_text import never_a_formula


def guard_tables(folder: Path, inputs: Sequence[Path], specs: Sequence[CsvTable] = TABLES) -> None:
    """Raise CannotWrite where the tables would write over a file that is read, or one that is not ours.

    Nor do tables of a filing and of a report share a folder: each has a description of its own.
    """
    if folder.exists() and not folder.is_dir():
        raise CannotWrite(
            f"I cannot write tables into {folder}: it is a file, not a folder; choose another name."
        )
    if is_csv_log(folder):
        raise CannotWrite(f"I cannot write tables into {folder}: it is a log of .csv files; choose another.")
    names = [PACKAGE, *(f"{table.name}.csv" for table in specs)]
    there = [name for name in names if (folder / name).exists()]
    for name in there:
        guard_input(folder / name, inputs)
    if there and not holds_tables(folder):
        raise CannotWrite(
            f"I cannot write tables into {folder}: {there[0]} is there and was not written by reporter; "
            "choose another folder."
        )
    if there and not tables_described(folder, f"{specs[0].name}.csv"):
        raise CannotWrite(
            f"I cannot write tables into {folder}: it holds other tables of reporter's; choose another."
        )


def write_tables(
    tables: Mapping[str, pd.DataFrame], title: str, folder: Path, specs: Sequence[CsvTable] = TABLES
) -> None:
    """Write the package's description, then each table as UTF-8 CSV; every file whole or not at all.

    The description goes first: by it the folder is known as ours, should the rest never be written.
    """
    make_folder(folder)
    replace_file(folder / PACKAGE, lambda path: _write_package(path, title, specs))
    for spec in specs:
        rows = _rows(tables[spec.name], spec)
        replace_file(folder / f"{spec.name}.csv", partial(_write_csv, spec=spec, rows=rows))


def _write_csv(path: Path, spec: CsvTable, rows: Iterator[tuple[str, ...]]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\r\n")
        writer.writerow([field.name for field in spec.fields])
        writer.writerows(rows)


def _rows(table: pd.DataFrame, spec: CsvTable) -> Iterator[tuple[str, ...]]:
    columns = [field_texts(table[field.name], field) for field in spec.fields]
    return zip(*columns, strict=True)


def field_texts(values: pd.Series, field: CsvField) -> list[str]:
    """Return the values of a column as they stand in a file; nothing where there is no value."""
    if field.type == "string":
        return [safe_text(value) for value in values]
    if field.type == "boolean":
        return ["true" if value else "false" for value in values]
    if field.type == "date":
        return ["" if pd.isna(value) else f"{value:%Y-%m-%d}" for value in values]
    if field.type == "datetime":
        return ["" if pd.isna(value) else f"{value:%Y-%m-%dT%H:%M:%SZ}" for value in values]
    if field.type == "time":
        return [f"{value}:00" if value else "" for value in values]
    return [_number(value) for value in values]


def _number(value: Any) -> str:
    if value is pd.NA or not math.isfinite(value):
        return ""
    return f"{float(value):.12g}"


def safe_text(value: Any) -> str:
    """Return text that no spreadsheet takes for a formula; nothing where there is no value."""
    return never_a_formula("" if value is None or value is pd.NA else str(value))


def _write_package(path: Path, title: str, specs: Sequence[CsvTable]) -> None:
    package = {
        "profile": "tabular-data-package",
        "name": "season-tables",
        "title": clean(title),
        TABLES_MARK: "tables",
        "version": __version__,
        "resources": [_resource(spec) for spec in specs],
    }
    path.write_text(json.dumps(package, ensure_ascii=False, indent=2) + "\n", encoding="utf-8", newline="\n")


def _resource(spec: CsvTable) -> dict[str, Any]:
    return {
        "profile": "tabular-data-resource",
        "name": spec.name.replace("_", "-"),
        "path": f"{spec.name}.csv",
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "description": f"One row is {spec.one_row_is}.",
        "schema": {"fields": [_field(field) for field in spec.fields], "missingValues": [""]},
    }


def _field(field: CsvField) -> dict[str, Any]:
    made: dict[str, Any] = {"name": field.name, "type": field.type, "description": field.description}
    if field.unit:
        made["unit"] = field.unit
    return made
