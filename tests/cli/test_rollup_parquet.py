"""The tables of a roll-up as Parquet: runs where the package of the extra is there, and always in CI.

pandas behaves otherwise beside that package, so the other tests run without it, as for most users.
"""

import csv
from pathlib import Path

import pytest

from reporter.schema.rollup_tables import GUIDE_TABLES, ROLLUP_TABLES
from tests.cli.conftest import Run
from tests.rollup_logs import random_association, save_all

parquet = pytest.importorskip("pyarrow.parquet", reason="comes with the extra [parquet]")


def test_parquet_holds_what_csv_holds(run: Run, tmp_path: Path) -> None:
    save_all(random_association(7, 8), tmp_path / "logs")
    ran = run(
        "rollup", tmp_path / "logs", "--out", tmp_path / "r.xlsx", "--tables", tmp_path / "t", "--parquet"
    )
    assert ran.code == 0, ran.err
    tables = [(tmp_path / "t", spec) for spec in ROLLUP_TABLES]
    tables += [(tmp_path / "t" / "guides", spec) for spec in GUIDE_TABLES]
    for place, spec in tables:
        found = parquet.read_table(place / f"{spec.name}.parquet").to_pylist()
        with (place / f"{spec.name}.csv").open(encoding="utf-8", newline="") as file:
            rows = list(csv.DictReader(file))
        assert [{name: text(value) for name, value in row.items()} for row in found] == rows, spec.name


def text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return str(value).lower()
    return f"{value:.12g}" if isinstance(value, float) else str(value)


def test_parquet_of_someone_else_is_not_replaced(run: Run, tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    save_all(random_association(7, 4), folder)
    (tmp_path / "t").mkdir()
    other = tmp_path / "t" / "rollup_fish.parquet"
    other.write_bytes(b"mine")
    ran = run("rollup", folder, "--out", tmp_path / "r.xlsx", "--tables", tmp_path / "t", "--parquet")
    assert (ran.code, other.read_bytes()) == (1, b"mine")
    assert "rollup_fish.parquet is there and was not written by reporter" in ran.err
    assert not (tmp_path / "r.xlsx").exists()
