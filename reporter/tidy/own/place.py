"""From a confirmed layout to the places of every column of the log in it."""

from dataclasses import replace
from typing import Any

from reporter.read.raw import RawBook
from reporter.schema.log import BY_KEY, SHEETS
from reporter.schema.own_layout import HOW_TO_GIVE, USUAL_WAY, own_sheet
from reporter.schema.own_layout_book import LOOKS_LIKE
from reporter.schema.problems import Problem, problem
from reporter.tidy.layout import find_layout, missing_headings, unread_sheets
from reporter.tidy.own.find import FoundSheet, find_worksheet
from reporter.tidy.own.model import OwnLayout
from reporter.tidy.own.sources import columns_of, source_of
from reporter.tidy.places import Layout, SheetLayout, Source

_TIMING = tuple(key for group in BY_KEY["effort"].one_of for key in group)
_WITHOUT = {
    "effort": "There are no rates, only totals",
    "catch": "Fish count only as techniques' totals",
}
_IN_THE_LAYOUT = " in the layout"
"""Follows the name of a sheet that stands in the layout's workbook."""

_OF_LOG_ALONE = frozenset({"sheet_missing", "no_headings"})


def place_own(book: RawBook, own: OwnLayout) -> tuple[RawBook, Layout, list[Problem]]:
    """Return the log with the sheets of its layout's workbook, the places of its columns, and problems."""
    found, problems = _worksheets(book, own)
    several = len([sheet for sheet in found if columns_of(sheet, "trips")]) > 1
    layout: Layout = {}
    for sheet in SHEETS:
        sources = [source_of(one, sheet.key, several=several) for one in found if columns_of(one, sheet.key)]
        if sources:
            gone = {column.key for one in found for column in one.gone if column.target == sheet.key}
            layout[sheet.key], said = _sheet_layout(sheet.key, tuple(sources), own, gone)
            problems += said
    problems += _absent(layout)
    book, extra, said = _with_own_sheets(book, own, layout)
    return book, layout | extra, [*problems, *said]


def _worksheets(book: RawBook, own: OwnLayout) -> tuple[list[FoundSheet], list[Problem]]:
    """Find the worksheets that the layout names, each with its columns."""
    by_name = {raw.name: raw for raw in book.sheets if raw.rows}
    found: list[FoundSheet] = []
    problems = [problem("sheet_not_read", name) for name in unread_sheets(book)]
    if book.blind:
        problems.append(problem("format_blind", "Workbook", value=book.blind))
    for sheet in own.sheets:
        if sheet.name not in by_name:
            problems.append(problem("own_sheet_gone", sheet.name, value=sheet.name))
            continue
        columns = [column for column in own.columns if column.sheet == sheet.name]
        one, said = find_worksheet(by_name[sheet.name], sheet, columns)
        problems += said
        if one is not None:
            found.append(one)
    return found, problems


def _sheet_layout(
    key: str, sources: tuple[Source, ...], own: OwnLayout, gone: set[str]
) -> tuple[SheetLayout, list[Problem]]:
    """Put the sources of a sheet together, and say what is missing in them; not again what is gone."""
    there = {name: None for source in sources for name in _keys(source)}
    fixed = dict(own.every_row.get(key, {}))
    there |= dict.fromkeys(fixed)
    layout = SheetLayout("", 0, {}, sources, fixed=fixed)
    problems: list[Problem] = []
    if key == "effort" and not any(name in there for name in _TIMING):
        if own.evenly:
            layout = replace(layout, fixed={**fixed, "parts": 1.0})
            problems.append(problem("own_evenly", sources[0].name))
        there |= dict.fromkeys(_TIMING)
    for source in sources:
        known = {*_keys(source), *fixed, *gone, *(there.keys() & set(_TIMING))}
        problems += [missing(key, heading, source.name) for heading in missing_headings(BY_KEY[key], known)]
    return layout, [*problems, *_units_differ(key, layout)]


def missing(key: str, heading: str, worksheet: str) -> Problem:
    """Return the stop for a needed column of a sheet (by its key) that the layout gives nowhere."""
    sheet = BY_KEY[key]
    column = next((column.key for column in sheet.columns if column.heading == heading), "")
    how = HOW_TO_GIVE.get((key, column), USUAL_WAY)
    return problem(
        "own_column_missing", worksheet, heading=heading, value=heading, sheet_name=sheet.name, how=how
    )


def _keys(source: Source) -> list[str]:
    own = [name for group in source.groups for name in (*group.columns, *group.fixed)]
    return [*source.columns, *own, *(["trip"] if source.trip is not None else [])]


def _units_differ(key: str, layout: SheetLayout) -> list[Problem]:
    """Stop where one column of the log is typed in two units, here and there."""
    problems = []
    for column in own_sheet(key).columns:
        places = layout.everywhere(column.key)
        units = (
            {placed.unit.label if placed.unit else "" for _, placed in places} if column.quantity else set()
        )
        if len(units) > 1:
            (first, here), (second, there) = next(
                (a, b) for a in places for b in places if a[1].unit != b[1].unit
            )
            said: dict[str, Any] = {
                "first": here.heading,
                "second": there.heading,
                "second_sheet": second.name,
            }
            problems.append(problem("own_units_differ", first.name, value=column.heading, **said))
    return problems


def _absent(layout: Layout) -> list[Problem]:
    """Say which needed sheet no column belongs to; without trips there is no report."""
    problems = []
    for key, lost in _WITHOUT.items():
        if key not in layout and "trips" in layout:
            layout[key] = SheetLayout("", 0, {}, ())
            problems.append(problem("own_absent", BY_KEY[key].name, lost=lost))
    if "trips" not in layout:
        problems.append(problem("own_no_trips", BY_KEY["trips"].name))
    return problems


def _with_own_sheets(book: RawBook, own: OwnLayout, layout: Layout) -> tuple[RawBook, Layout, list[Problem]]:
    """Add the sheets that stand in the layout's workbook, where the log itself has none of the kind."""
    alone = replace(book, sheets=own.own_sheets, unread=(), blind="")
    places, problems = find_layout(alone)
    extra: Layout = {}
    sheets = list(book.sheets)
    for key, place in places.items():
        if key in layout:
            continue
        name = f"{place.name}{_IN_THE_LAYOUT}"
        extra[key] = replace(place, name=name, file=own.name)
        sheets.append(replace(next(raw for raw in own.own_sheets if raw.name == place.name), name=name))
    said = [
        replace(found, sheet=f"{found.sheet}{_IN_THE_LAYOUT}")
        for found in problems
        if found.code not in _OF_LOG_ALONE and found.value != LOOKS_LIKE
    ]
    return replace(book, sheets=tuple(sheets), layout_file=own.name), extra, said
