"""The blank log, filled in from its own examples, reads back without a problem."""

import datetime as dt
from pathlib import Path

import pytest

from reporter.books.blank import blank_book
from reporter.books.blocks import Cell
from reporter.run.season import read_season
from reporter.schema.column import Column, Sheet
from reporter.schema.log import SHEETS
from reporter.schema.sheets.season import SETTINGS
from reporter.schema.units import System
from reporter.write.workbook import write_book


def typed(column: Column, system: System) -> Cell:
    """Return a column's example as the cell that a guide would fill in."""
    example = column.example_in(system)
    if column.kind == "date" and isinstance(example, str):
        return dt.date.fromisoformat(example)
    if column.kind == "time" and isinstance(example, str):
        return dt.time.fromisoformat(example)
    return example


def example_rows(system: System) -> dict[str, list[dict[str, Cell]]]:
    return {
        sheet.key: [{c.key: typed(c, system) for c in sheet.columns if c.example is not None}]
        for sheet in SHEETS
        if sheet.key not in ("season", "techniques")
    }


@pytest.mark.parametrize("system", ["us", "metric"])
def test_blank_log_filled_from_its_own_examples_reads_back_without_a_problem(
    system: System, tmp_path: Path
) -> None:
    settings = {s.key: typed(s, system) for s in SETTINGS if s.example is not None and s.key != "units"}
    path = tmp_path / "examples.xlsx"
    write_book(blank_book(system, 2026, rows=example_rows(system), settings=settings), path)
    reading = read_season(path)
    assert not reading.problems
    assert reading.season is not None
    assert reading.season.fish["fish"].sum() == 1
    assert all(
        count.used == 1 for name, count in reading.counts.items() if name not in ("Season", "Techniques")
    )


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.name)
def test_every_needed_column_has_an_example(sheet: Sheet) -> None:
    for column in sheet.columns:
        assert not column.required or column.example is not None, column.heading
