"""Whatever stands in a cell becomes a value or a problem: nothing raises and nothing is lost silently."""

import pandas as pd
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from reporter.compute.season import compute_season
from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Column
from reporter.schema.log import find_sheet
from reporter.schema.problems import CELL_CODES, Problem
from reporter.tidy.layout import find_layout
from reporter.tidy.places import SheetLayout
from reporter.tidy.season import TidyLog, tidy_log
from reporter.tidy.words import plain, shown
from tests.properties.random_cells import books

TEXT_KINDS = {"text", "key", "ref", "species"}
many = settings(
    derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)


def tidied(book: RawBook) -> tuple[dict[str, SheetLayout], TidyLog]:
    layout, found = find_layout(book)
    return layout, tidy_log(book, layout, found)


@settings(many, max_examples=150)
@given(st.sampled_from([0.02, 0.2, 0.6]).flatmap(books))
def test_every_row_and_every_cell_of_any_log_is_accounted_for(book: RawBook) -> None:
    layout, log = tidied(book)
    for raw in book.sheets:
        sheet = find_sheet(raw.name)
        assert sheet is not None
        of_sheet = [problem for problem in log.problems if problem.sheet == sheet.name]
        if sheet.key not in log.fates:
            assert not raw.rows or any(problem.effect == "stop" for problem in of_sheet)
            continue
        place = layout[sheet.key]
        assert_rows_add_up(raw, place, log, of_sheet)
        assert_cells_are_read_or_said(raw, place, log.tables[sheet.key], of_sheet)


def assert_rows_add_up(raw: RawSheet, place: SheetLayout, log: TidyLog, of_sheet: list[Problem]) -> None:
    key = find_sheet(raw.name).key
    marked = {*raw.errors, *raw.uncalculated}
    positions = {placed.position for placed in place.columns.values()}
    filled = [
        number
        for number, cells in zip(raw.numbers, raw.rows, strict=True)
        if number > place.heading_row
        and any((number, p + 1) in marked or (p < len(cells) and cells[p] is not None) for p in positions)
    ]
    skipped = {row for p in of_sheet if p.code in ("totals_row", "second_heading") for row in p.rows}
    set_aside = [p for p in of_sheet if p.effect == "set aside" and p.code not in CELL_CODES]
    aside = {row for p in set_aside for row in p.rows}
    read = max(raw.numbers) - place.heading_row
    used = len(filled) - len(skipped) - len(aside)
    count, table = log.fates[key].count(), log.tables[key]
    assert (count.read, count.used, count.set_aside, count.blank, count.not_rows) == (
        read,
        used,
        len(aside),
        read - len(filled),
        len(skipped),
    )
    assert table["row"].tolist() == [number for number in filled if number not in skipped]
    assert set(table.loc[~table["used"], "row"]) == aside


def assert_cells_are_read_or_said(
    raw: RawSheet, place: SheetLayout, table: pd.DataFrame, of_sheet: list[Problem]
) -> None:
    said = {problem.cell for problem in of_sheet if problem.cell}
    columns = {column.key: column for column in find_sheet(raw.name).columns}
    cells = dict(zip(raw.numbers, raw.rows, strict=True))
    positions = {placed.position + 1 for placed in place.columns.values()}
    # A formula without a result stops the log; its row is judged once there is one.
    waiting = {row for row, column in raw.uncalculated if column in positions} & set(table["row"])
    assert not waiting or any(problem.code == "not_calculated" for problem in of_sheet)
    judged = table[table["used"] & ~table["row"].isin(waiting)]
    for key, placed in place.columns.items():
        for number, value in zip(judged["row"], judged[key], strict=True):
            row = cells[number]
            typed = row[placed.position] if placed.position < len(row) else None
            here = (number, placed.position + 1)
            if (typed is None and here not in raw.errors) or says_nothing(typed, columns[key]):
                continue
            assert not blank(value) or key == "species" or address(*here) in said, (raw.name, here, typed)


def blank(value: object) -> bool:
    return not value if isinstance(value, str | tuple) else bool(pd.isna(value))


def says_nothing(typed: CellValue, column: Column) -> bool:
    """Whether a cell is as good as blank: a dash where no text is wanted, names without a name."""
    if not isinstance(typed, str) or column.kind in TEXT_KINDS:
        return False
    names = shown(typed) if column.kind in ("refs", "names") else typed
    return plain(typed).casefold() in ("-", "--", "n/a", "na") or not names.replace(";", "").strip()


@settings(many, max_examples=60)
@given(st.sampled_from([0.02, 0.1]).flatmap(books))
def test_season_of_any_log_without_a_stop_is_computed(book: RawBook) -> None:
    _, log = tidied(book)
    if any(problem.effect == "stop" for problem in log.problems):
        return
    season = compute_season(log)
    counted = season.pairs[season.pairs["in_rates"]]
    assert counted["rod_hours"].notna().all()
    assert (counted["landed"] >= 0).all()
    assert season.identity["fish"].sum() == season.fish["fish"].sum() + season.surplus
