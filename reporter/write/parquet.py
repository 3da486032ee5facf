"""The tables as Parquet, for those who go on with them elsewhere: the same columns and values as the CSV."""

from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pandas as pd

from reporter.files.atomic import replace_file
from reporter.files.csv_log import holds_tables
from reporter.files.errors import CannotWrite
from reporter.schema.csv_table import CsvField, CsvTable

if TYPE_CHECKING:
    import pyarrow as pa

_MISSING = (
    "I cannot write Parquet: pyarrow is not installed; run: python -m pip install 'season-reporter[parquet]'"
)


def need_parquet() -> None:
    """Raise CannotWrite, with the command that installs it, where what writes Parquet is not installed."""
    try:
        import pyarrow.parquet  # noqa: F401 - whether it is there
    except ImportError as error:
        raise CannotWrite(_MISSING) from error


def guard_parquet(folder: Path, specs: Sequence[CsvTable]) -> None:
    """Raise CannotWrite where a file of a table's name is there, in a folder that holds no tables of ours."""
    there = [f"{spec.name}.parquet" for spec in specs if (folder / f"{spec.name}.parquet").exists()]
    if there and not holds_tables(folder):
        raise CannotWrite(
            f"I cannot write tables into {folder}: {there[0]} is there and was not written by reporter; "
            "choose another folder."
        )


def write_parquet(tables: Mapping[str, pd.DataFrame], folder: Path, specs: Sequence[CsvTable]) -> None:
    """Write each table as NAME.parquet into a folder that is there; every file whole or not at all."""
    for spec in specs:
        replace_file(folder / f"{spec.name}.parquet", partial(_write, table=tables[spec.name], spec=spec))


def _write(path: Path, table: pd.DataFrame, spec: CsvTable) -> None:
    import pyarrow as pa
    import pyarrow.parquet as pq

    columns = [pa.array(_values(table[field.name], field), _type(field)) for field in spec.fields]
    pq.write_table(pa.table(columns, names=[field.name for field in spec.fields]), path)


def _values(column: pd.Series, field: CsvField) -> list[Any]:
    """Return plain values, None where a CSV file has nothing."""
    blank = column.isna().tolist()
    whole = field.type == "integer"
    return [
        None if none else int(value) if whole else value
        for none, value in zip(blank, column.tolist(), strict=True)
    ]


def _type(field: CsvField) -> "pa.DataType":
    import pyarrow as pa

    kinds = {"string": pa.string(), "boolean": pa.bool_(), "integer": pa.int64(), "number": pa.float64()}
    return kinds[field.type]
