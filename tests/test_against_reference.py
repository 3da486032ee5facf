"""The tool, end to end, against a second implementation that was written from the rules alone."""

import csv
from pathlib import Path

import pytest
from click.testing import CliRunner

from reporter.cli.main import cli
from tests.reference.account import Account
from tests.reference.compare import Table, differences
from tests.reference.random_log import random_log
from tests.reference.workbook import load_log, write_log

SAMPLE = Path(__file__).parent.parent / "sample_workbooks" / "demo season.xlsx"
SEEDS = range(40)


def _build(log: Path, folder: Path) -> dict[str, Table]:
    arguments = ["build", str(log), "--out", str(folder), "--tables", str(folder / "tables"), "--quiet"]
    result = CliRunner().invoke(cli, arguments, catch_exceptions=False)
    assert result.exit_code == 0, result.output
    tables = {}
    for path in (folder / "tables").glob("*.csv"):
        with path.open(encoding="utf-8-sig", newline="") as file:
            tables[path.stem] = [*csv.DictReader(file)]
    return tables


def test_the_demo_season_comes_out_as_the_reference_says(tmp_path: Path) -> None:
    assert differences(Account(load_log(SAMPLE)), _build(SAMPLE, tmp_path)) == []


@pytest.mark.parametrize("seed", SEEDS)
def test_a_random_log_comes_out_as_the_reference_says(seed: int, tmp_path: Path) -> None:
    log = random_log(seed)
    path = tmp_path / f"log {seed}.xlsx"
    write_log(log, path)
    assert differences(Account(log), _build(path, tmp_path)) == []
