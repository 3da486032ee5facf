"""Raw logs full of what nobody should type, made without files: many odd cells an example."""

import datetime as dt
import enum
import random
from pathlib import Path

from hypothesis import strategies as st

from reporter.read.cells import CellError, settled_text
from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.schema.column import Column, Sheet
from reporter.schema.log import SHEETS
from reporter.schema.sheets.season import SETTINGS


class Mark(enum.Enum):
    """Cells without a value that hold something all the same."""

    ERROR = "#DIV/0!"
    UNCALCULATED = "="


Cell = CellValue | Mark

WORDS = [
    *("T-001", "T-002", "t-1", "1", "2026-04-18", "18/04/2026", "6:30", "7 pm", "24:00", "4-8", "4 lb 20 oz"),
    *("18 1/4", "1,200", "4,5", "-", "n/a", ";", ";;", "none", "bass", "trout", "LMB", "TOTAL", "Trip", "in"),
    *(
        "void",
        "cancelled",
        "log not finished",
        "yes",
        "metric",
        "us",
        "Units",
        "calm",
        "NNW",
        "02-end",
        "፩-05",
    ),
    *("Drop shot", "DS", "Lake Arden", "C01; C02", "guide", "Length (in)", "=1+1", "{value}", "%s", "#REF!"),
    *("9" * 5000, "9" * 5000 + "/2", "①", "½", "٣", "\u200b \u200c", "'12", "°F", "“”", "a" * 32767),
]
NUMBERS = [10**400, -(10**400), 10**18, 1e308, -1e308, 5e-324, 0, -1, 0.3125, 1.5, 1, 730, 46130, 2958466]

CELLS = st.one_of(
    st.none(),
    st.sampled_from([*WORDS, *NUMBERS]),
    st.sampled_from([*Mark, None, None, None]),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=20),
    st.integers(),
    st.floats(allow_nan=False, allow_infinity=False),
    st.datetimes(min_value=dt.datetime(1900, 3, 1)),
    st.times(),
    st.timedeltas(),
    st.booleans(),
)


@st.composite
def books(draw: st.DrawFn, odd: float) -> RawBook:
    """Logs of a few rows a sheet in which a share of the cells is odd and the others are sound."""
    pool: list[Cell] = draw(st.lists(CELLS, min_size=10, max_size=40))
    dice = random.Random(draw(st.integers(0, 2**32)))  # noqa: S311 - nothing secret
    sheets = [_sheet(sheet, pool, dice, odd) for sheet in SHEETS if sheet.required or dice.random() < 0.8]
    return RawBook(Path("log.xlsx"), "log.xlsx", "0" * 64, None, tuple(sheets), ("My notes",))


def _sheet(sheet: Sheet, pool: list[Cell], dice: random.Random, odd: float) -> RawSheet:
    columns = [column for column in sheet.columns if column.required or dice.random() < 0.9]
    if dice.random() < odd:
        dice.shuffle(columns)
    rows: list[list[Cell]] = [[column.headed("us") for column in columns]]
    for index in range(len(SETTINGS) if sheet.key == "season" else dice.randrange(3, 9)):
        row = [
            dice.choice(pool) if dice.random() < odd else _sound(sheet, column, index, dice)
            for column in columns
        ]
        rows.append([dice.choice(pool), *row] if dice.random() < odd / 20 else row)
    return raw_sheet(sheet.name, rows)


def _sound(sheet: Sheet, column: Column, index: int, dice: random.Random) -> Cell:
    if column.kind == "key" and sheet.key == "trips":
        return f"T-00{index + 1}"
    if column.refers == "trips":
        return f"T-00{dice.randrange(1, 4)}"
    if sheet.key == "season":
        setting = SETTINGS[index]
        return setting.heading if column.key == "setting" else setting.example
    if column.kind == "key":
        return f"{column.example} {index}"
    return column.example_in("us") if column.required or dice.random() < 0.7 else None


def raw_sheet(name: str, rows: list[list[Cell]]) -> RawSheet:
    """Make a sheet as the reader hands it over: text settled, marks apart, empty rows left out."""
    numbers: list[int] = []
    kept: list[tuple[CellValue, ...]] = []
    errors: dict[tuple[int, int], str] = {}
    uncalculated: set[tuple[int, int]] = set()
    for number, row in enumerate(rows, start=1):
        values: list[CellValue] = []
        for position, cell in enumerate(row, start=1):
            settled = settled_text(cell) if isinstance(cell, str) else cell
            if settled is Mark.UNCALCULATED:
                uncalculated.add((number, position))
            elif settled is Mark.ERROR or isinstance(settled, CellError):
                errors[number, position] = str(getattr(settled, "value", settled))
            values.append(None if isinstance(settled, Mark | CellError) else settled)
        if any(value is not None for value in values) or any(
            at[0] == number for at in (*errors, *uncalculated)
        ):
            numbers.append(number)
            kept.append(tuple(values))
    return RawSheet(name, numbers, kept, errors, frozenset(uncalculated), (), frozenset(), True)
