"""Whatever is typed in a column that we read survives: in the report, a table of `--tables` or a problem."""

import csv
import datetime as dt
import math
import tempfile
from collections.abc import Iterator
from pathlib import Path

import openpyxl
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from reporter.run.build import Built, build
from reporter.run.jobs import plan
from reporter.run.season import read_season
from reporter.schema.log import BY_KEY
from reporter.schema.log_tables import typed_name, typed_table
from reporter.schema.sheets.season import SETTINGS
from tests.conftest import WriteLog
from tests.properties.typed_logs import (
    At,
    Typed,
    TypedLog,
    dice,
    fitting,
    kept,
    save_folder,
    save_workbook,
    stored,
    typed_log,
)

LONGEST = 32_767
FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\n")
STARTS = [
    *(
        "=1+1",
        '=HYPERLINK("http://x.example","y")',
        "+1",
        "-1",
        "@SUM(A1)",
        "{=1+1}",
        "'",
        "''=1",
        "\t=1",
        "\n=",
    ),
    *("http://x.example/", "mailto:a@x.example", "#REF!", "<r>", "</v><f>1</f>", "_x0041_", "_x005F_x0041_"),
    *(
        "Total ",
        "none ",
        "n/a ",
        "void",
        "T-001",
        "C01; C02;",
        "18 1/4 ",
        "4-8",
        "7:30",
        "NW ",
        "bass ",
        "\ufeff",
    ),
    *(
        "\u202eright to left ",
        "שלום ",
        "مرحبا ",
        "é́",
        "🎣🐟",
        "👨‍👩‍👧 ",
        "\u00a0",
        "\u3000",
        "\u200b",
        "\u2028",
        "“”",
    ),
    *(
        "a\nb",
        "a\r\nb",
        " \t ",
        "\x1b[31m",
        "\x85",
        ",;\t",
        '"',
        "a  b",
        "½ ",
        "９９ ",
        "%s {value} ",
        "NaN",
        "1e5",
    ),
]
ERRORS = ["#DIV/0!", "#N/A", "#NAME?", "#NUM!", "#REF!", "#VALUE!"]
few = settings(
    derandomize=True,
    deadline=None,
    phases=[Phase.explicit, Phase.generate],  # a smaller case is no plainer, and each costs a build
    suppress_health_check=[
        HealthCheck.too_slow,
        HealthCheck.data_too_large,
        HealthCheck.function_scoped_fixture,
    ],
)
# Days of the season that would set every trip aside are no odd values but a stop.
SEASON_DAYS: dict[int, Typed] = {
    row: dt.datetime(2026, 1, 1) if setting.key == "first_day" else dt.datetime(2026, 12, 31)
    for row, setting in enumerate(SETTINGS, start=2)
    if setting.kind == "date"
}
pieces = st.one_of(
    st.sampled_from(STARTS),
    st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0\ufffe\uffff"), max_size=30),
)
numbers = st.one_of(
    st.integers(-(10**14), 10**14), st.floats(-1e300, 1e300), st.floats(0, 400), st.sampled_from([0, 1, 0.5])
)
values = st.one_of(
    numbers,
    st.booleans(),
    st.datetimes(dt.datetime(1904, 1, 3), dt.datetime(2199, 1, 1)).map(
        lambda when: when.replace(microsecond=0)
    ),
    st.times().map(lambda clock: clock.replace(microsecond=0)),
    st.integers(1, 10**6).map(lambda seconds: dt.timedelta(seconds=seconds)),
    st.sampled_from(ERRORS),
)


def texts(pool: list[str], seed: int) -> Iterator[str]:
    """Yield texts without end, each with a mark of its own, one in thirty as long as a cell can hold."""
    chance = dice(seed)
    for number in range(10**6):
        before, after = chance.choice(pool), chance.choice(pool)
        # The library that writes the log counts what is stored, a spreadsheet program what is seen.
        long = chance.random() < 1 / 30 and stored(before + after) == before + after
        after *= LONGEST // max(1, len(after)) if long else 1
        yield fitting(f"{before}q{number}z{after}", LONGEST)


def built(log: TypedLog, folder: Path, *, as_folder: bool) -> tuple[Built, Path]:
    path = folder / ("log" if as_folder else "log.xlsx")
    (save_folder if as_folder else save_workbook)(log, path)
    (job,) = plan([path], folder / "out", folder / "tables")
    return build(job, [path]), folder


def tables(folder: Path) -> dict[str, list[dict[str, str]]]:
    found = {}
    usual = csv.field_size_limit(10 * LONGEST)
    try:
        for path in sorted((folder / "tables").glob("*.csv")):
            with path.open(encoding="utf-8", newline="") as file:
                found[path.stem] = [
                    {key: bare(cell) for key, cell in row.items()} for row in csv.DictReader(file)
                ]
    finally:
        csv.field_size_limit(usual)  # other tests read with the limit that users have
    return found


def bare(cell: str) -> str:
    """Take away the apostrophe that keeps a spreadsheet from taking a text for a formula."""
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(FORMULA_STARTS) else cell


def shown_in(outcome: Built, folder: Path) -> set[str]:
    """Every text that came out: cells of the report, cells of the tables, problems."""
    found = {problem.value for problem in outcome.reading.problems}
    found |= {kept(text) for text in found}
    if outcome.reading.season is None:
        return found
    report = openpyxl.load_workbook(folder / "out" / "log report.xlsx", read_only=True)
    for sheet in report:
        found |= {cell for row in sheet.iter_rows(values_only=True) for cell in row if isinstance(cell, str)}
    report.close()
    return found | {cell for rows in tables(folder).values() for row in rows for cell in row.values()}


@settings(few, max_examples=20)
@given(st.lists(pieces, min_size=20, max_size=40), st.integers(0, 2**32), st.booleans())
def test_any_text_in_any_cell_of_any_column_survives(pool: list[str], seed: int, as_folder: bool) -> None:
    spelled = texts(pool, seed)
    log = typed_log(lambda _: next(spelled))
    with tempfile.TemporaryDirectory() as name:
        outcome, folder = built(log, Path(name), as_folder=as_folder)
        out = shown_in(outcome, folder)
    if outcome.reading.season is None:
        assert_stops_carry_what_was_typed(outcome, log)
        return
    lost = {at: text for at, text in log.typed.items() if kept(str(text)) not in out}
    assert lost == {}


def assert_stops_carry_what_was_typed(outcome: Built, log: TypedLog) -> None:
    """With a stop nothing is written, and the log is as it was: what stops it is said to the letter."""
    by_cell = {(BY_KEY[sheet].name, row, column): text for (sheet, row, column), text in log.typed.items()}
    stops = [problem for problem in outcome.reading.stops if problem.cell]
    assert stops
    for stop in stops:
        here = [text for (sheet, row, _), text in by_cell.items() if (sheet, row) == (stop.sheet, stop.row)]
        assert stop.value in here


@settings(few, max_examples=12)
@given(st.lists(values, min_size=20, max_size=60), st.integers(0, 2**32))
def test_any_number_moment_truth_or_error_is_a_value_or_a_problem(pool: list[Typed], seed: int) -> None:
    chance = dice(seed)
    log = typed_log(
        lambda at: SEASON_DAYS.get(at[1], chance.choice(pool)) if at[0] == "season" else chance.choice(pool)
    )
    with tempfile.TemporaryDirectory() as name:
        outcome, folder = built(log, Path(name), as_folder=False)
        said = {(problem.sheet, problem.row) for problem in outcome.reading.problems}
        if outcome.reading.season is None:
            assert {stop.code for stop in outcome.reading.stops} <= {"trip_number_twice", "error_cells"}
            return
        out = tables(folder)
    for at, value in log.typed.items():
        assert is_there(out, at, value) or (BY_KEY[at[0]].name, at[1]) in said, (at, value)


def is_there(out: dict[str, list[dict[str, str]]], at: At, value: Typed) -> bool:
    key, row, column = at
    cells = [line for line in out[typed_table(BY_KEY[key])] if line["row"] == str(row)]
    return len(cells) == 1 and means(cells[0][typed_name(BY_KEY[key].column(column))], value)


def means(text: str, value: Typed) -> bool:
    """Whether a cell of a table says a value."""
    if isinstance(value, bool | str):
        return text == str(value).upper()
    if isinstance(value, int | float):
        return math.isclose(float(text), value, rel_tol=1e-14)
    if isinstance(value, dt.timedelta):
        hours, minutes, seconds = map(int, text.split(":"))
        return dt.timedelta(hours=hours, minutes=minutes, seconds=seconds) == value
    if isinstance(value, dt.datetime):
        return dt.datetime.fromisoformat(text) == value
    return dt.time.fromisoformat(text) == value


@pytest.mark.parametrize("text", ["4,5 pounds of " + "x" * 3000, "T-001"])
def test_text_that_stops_the_report_is_whole_in_the_stop(text: str, write_log: WriteLog) -> None:
    changes = {"A3": text} if text == "T-001" else {"D2": text, "D3": "15.5 and a bit"}
    reading = read_season(write_log({"Trips" if text == "T-001" else "Catch": changes}))
    assert text in {stop.value for stop in reading.stops}
