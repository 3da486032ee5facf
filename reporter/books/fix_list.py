"""The fix list: a workbook with a line a problem, in which one types the corrected values."""

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import replace

from reporter.books.blank.fields import entry_field
from reporter.books.blank.lists import lists_sheet
from reporter.books.blocks import Book, Cell, Field, Figure, Figures, Line, Link, Sheet, Table, Text
from reporter.schema import fix_list as words
from reporter.schema.column import Column
from reporter.schema.log import BY_KEY
from reporter.schema.own_layout import own_sheet
from reporter.schema.problems import Problem
from reporter.schema.units import System
from reporter.tidy.known import known_names
from reporter.tidy.places import Layout
from reporter.tidy.season import TidyLog
from reporter.tidy.settings import setting_named
from reporter.tidy.spots import Spot, in_workbook_order, sheet_key, spot_of

LinkTo = Callable[[Spot], Link | None]
"""Gives the link to a place in the log, None where there is none."""

_CORRECTED = "corrected"
_FIELDS: tuple[Field, ...] = (
    Field("no", words.NUMBER, "plain", width=6.0),
    Field("where", words.WHERE, "wrapped", width=30.0),
    Field("found", words.FOUND, "wrapped", width=17.0),
    Field("done", words.DONE, "wrapped", width=46.0),
    Field("to_do", words.TO_DO, "wrapped", width=36.0),
    Field(_CORRECTED, words.CORRECTED, "wrapped", width=26.0),
)
_PLACES: tuple[Field, ...] = (
    Field("no", words.NUMBER, "plain", width=8.0),
    Field("where", words.WHERE, width=40.0),
    Field("sheet", words.PLACE_SHEET, width=24.0),
    Field("cell", words.PLACE_CELL, width=10.0),
)
_ONLY_TO_READ = (
    "Mend these in your log. To type corrected values here instead, save the log as an Excel workbook "
    "(.xlsx) first and make a new list of that: single cells of this log's format cannot be changed."
)
_NO_DAY = dt.date(2000, 1, 1)


def fix_list_book(
    log: TidyLog, layout: Layout, problems: Sequence[Problem], link_to: LinkTo, *, applies: bool = True
) -> Book:
    """Return the fix list of a log: its problems in the order of the workbook, links to their cells.

    applies: whether the log is of a format that the filled-in list can be applied to.
    """
    system: System = log.settings.system or "us"
    lines = [(found, spot_of(found, layout)) for found in in_workbook_order(list(problems), layout)]
    entries = {
        index: entry_field(sheet_key(found), column, system)
        for index, (found, _) in enumerate(lines)
        if (column := _column_to_mend(found, layout, log))
    }
    offered, lists = _with_lists(entries, log, system)
    return Book(
        title=f"Fix list of {log.name}",
        mark="fix list",
        sheets=(
            _main(_lead(log.name, applies=applies), lines, offered, link_to),
            *lists,
            _places(log, lines),
        ),
        paper="a4" if system == "metric" else "letter",
        created=log.settings["last_day"] or _NO_DAY,
    )


def _column_to_mend(found: Problem, layout: Layout, log: TidyLog) -> Column | None:
    """Return the column of the cell that a value may mend, on Season the setting itself."""
    spot = spot_of(found, layout)
    if spot is None or not spot.mendable:
        return None
    key = sheet_key(found)
    if key == "season" and found.column == "value":
        table = log.tables["season"]
        named = dict(zip(table["row"].tolist(), table["setting"].tolist(), strict=True))
        return setting_named(named.get(found.row, "")) or BY_KEY[key].column(found.column)
    return own_sheet(key).column(found.column)


def _with_lists(
    entries: dict[int, Field], log: TidyLog, system: System
) -> tuple[dict[int, Field], tuple[Sheet, ...]]:
    """Return the fields with their drop-downs as far as there is something to choose, and their lists."""
    tables = {block.key: block for block in lists_sheet(system).blocks if isinstance(block, Table)}
    for key, column, heading, names in known_names(log):
        tables[key] = Table(key, (Field(column, heading, width=28.0),), {column: names})
    used: list[str] = []
    offered: dict[int, Field] = {}
    for index, field in entries.items():
        table = field.choice.symbol.partition(".")[0] if field.choice else ""
        used += [table] if table in tables else []
        choice = field.choice if not table or table in tables else None
        offered[index] = replace(
            _FIELDS[-1], look=field.look, choice=choice, entry=True, width=_FIELDS[-1].width
        )
    if not used:
        return offered, ()
    lead = Text((Line("What the drop-downs offer. This sheet is not read.", "note"),))
    wanted = [tables[key] for key in dict.fromkeys(used)]
    return offered, (Sheet(words.LISTS_SHEET, (lead, *wanted), "log"),)


def _main(
    lead: Text,
    lines: Sequence[tuple[Problem, Spot | None]],
    entries: dict[int, Field],
    link_to: LinkTo,
) -> Sheet:
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(1, len(lines) + 1)),
        "where": [_where(found, spot) for found, spot in lines],
        "found": [found.value or None for found, _ in lines],
        "done": [f"{words.EFFECT_WORDS[found.effect]}: {found.said}" for found, _ in lines],
        "to_do": [found.remedy or None for found, _ in lines],
        _CORRECTED: [None if index in entries else words.NO_PLACE for index in range(len(lines))],
    }
    own = {index: {_CORRECTED: field} for index, field in entries.items()}
    table = Table(
        "fix",
        _FIELDS,
        columns,
        filtered=True,
        own_fields=own,
        links={"where": [link_to(spot) if spot else None for _, spot in lines]},
    )
    return Sheet(words.SHEET, (lead, table), "log", landscape=True, private=True)


def _lead(log_name: str, *, applies: bool) -> Text:
    title = Line(f"Fix list of {log_name}", "title")
    if not applies:
        return Text((title, Line(_ONLY_TO_READ, "lead")))
    stem, dot, ending = log_name.rpartition(".")
    mended = f"{stem}{words.MENDED}.{ending}" if dot else f"{log_name}{words.MENDED}"
    return Text(
        (
            title,
            Line(
                f"Type what should stand in the cell into {words.CORRECTED}, on as many lines as you like; "
                "a blank line changes nothing. Save this file and close it.",
                "lead",
            ),
            Line(
                f'Then: reporter check "{log_name}" --apply and the name of this file. It writes {mended}, '
                "a copy with these cells corrected. Your log stays as it is.",
                "body",
            ),
            Line(
                f"{words.BLANK} makes a cell blank. What is to mend “{words.NO_PLACE}”, mend there, and then "
                "make a new list: a list serves the log only as it was when the list was made.",
                "body",
            ),
        )
    )


def _where(found: Problem, spot: Spot | None) -> str:
    if spot is None or not spot.row:
        return found.sheet if spot is None else spot.sheet
    place = f"{spot.sheet} {spot.cell}" if spot.cell else f"{spot.sheet} row {spot.row}"
    return f"{place}, {spot.heading}" if spot.heading else place


def _places(log: TidyLog, lines: Sequence[tuple[Problem, Spot | None]]) -> Sheet:
    """Return the sheet by which a filled-in list is understood."""
    cells = [spot if spot and spot.mendable else None for _, spot in lines]
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(1, len(lines) + 1)),
        "where": [_where(found, spot) for found, spot in lines],
        "sheet": [spot.sheet if spot else None for spot in cells],
        "cell": [spot.cell if spot else None for spot in cells],
    }
    return Sheet(
        words.PLACES_SHEET,
        (
            Text((Line("By this sheet reporter reads the list again. Leave it as it is.", "note"),)),
            Figures(
                "of",
                (
                    Figure("log", words.LOG_NAME, log.name),
                    Figure("sha", words.LOG_FINGERPRINT, log.sha256),
                ),
            ),
            Table("place", _PLACES, columns),
        ),
        "behind",
    )
