"""The workbook in which a guide looks through a proposed layout, changes it and confirms it."""

import datetime as dt
from collections.abc import Mapping
from dataclasses import replace

from reporter.books.blank.fields import entry_field
from reporter.books.blank.lists import lists_sheet
from reporter.books.blank.season import season_table
from reporter.books.blocks import Book, Cell, Choice, Field, Line, Sheet, Table, Text
from reporter.schema.a1 import column_letters
from reporter.schema.log import BY_KEY
from reporter.schema.own_layout import NOT_READ, ROW_IS, meaning, meanings, own_sheet
from reporter.schema.own_layout_book import (
    ANSWER,
    COLUMNS,
    COLUMNS_SHEET,
    LAYOUT_SHEET,
    LOOKS_LIKE,
    NO,
    QUESTION,
    QUESTIONS,
    WHY,
    WORKSHEET,
    WORKSHEETS,
    YES,
    YES_NO,
)
from reporter.schema.units import UNITS, System
from reporter.tidy.propose.model import Proposal, ProposedSheet, how_sure
from reporter.tidy.words import shown

_MEANS, _UNITS = "list_means", "list_units"
_LONGEST_EXAMPLE = 40
_NO_SEASON = dt.date(2000, 1, 1)
_PROPOSED: tuple[Field, ...] = (
    Field("worksheet", COLUMNS["worksheet"], width=18),
    Field("column", COLUMNS["column"], width=8),
    Field("heading", COLUMNS["heading"], "wrapped", width=26),
    Field("example", COLUMNS["example"], "wrapped", width=18),
    Field("means", COLUMNS["means"], "typed", width=26, choice=Choice(symbol=f"{_MEANS}.label")),
    Field("group", COLUMNS["group"], "typed", width=19),
    Field("unit", COLUMNS["unit"], "typed", width=8, choice=Choice(symbol=f"{_UNITS}.label")),
    Field("sure", COLUMNS["sure"], width=10),
    Field("why", COLUMNS["why"], "wrapped", width=34),
)


def layout_book(proposal: Proposal, log_name: str) -> Book:
    """Return the workbook of a proposed layout; `log_name` is the log's file name."""
    system: System = "metric" if proposal.settings.get("units") == "metric" else "us"
    sheets = (
        _first_sheet(proposal, log_name),
        _columns_sheet(proposal),
        *_season_sheet(proposal, system),
        *_techniques_sheet(proposal, system),
        _lists_sheet(system),
    )
    return Book(
        f"Layout of {log_name}", "layout", sheets, "a4" if system == "metric" else "letter", _NO_SEASON
    )


_HOW = (
    "1. Column by column, the sheet Columns says what each column of your log is taken for, how sure that is"
    f" and why. Change what is wrong with the drop-down under {COLUMNS['means']}; '{NOT_READ}' leaves a"
    " column alone.",
    f"2. Columns of one technique or one species carry the same word under {COLUMNS['group']}: where your log"
    " has a column a technique, a row of it becomes a row for each technique in which something is typed.",
    "3. The sheet Season, where your log has none, holds what the report must know of your season; fill in"
    " what you can. Techniques, where your log has none, lists the names found: say of each whether it is"
    " moving or slow, and write other spellings of one name under Also called.",
    f"4. When all is right, answer '{QUESTIONS['use']}' with {YES} and save this workbook. Your log itself is"
    " never changed. Keep this workbook beside it, under its name.",
)


def _first_sheet(proposal: Proposal, log_name: str) -> Sheet:
    lines = (
        Line(f"Layout of {log_name}", "title"),
        Line(
            "What the worksheets and columns of your log mean. Nothing is read by it until you say yes.",
            "lead",
        ),
        *(Line(text) for text in _HOW),
    )
    return Sheet(LAYOUT_SHEET, (Text(lines), _questions(proposal), _worksheets(proposal)), "log")


def _questions(proposal: Proposal) -> Table:
    answers: dict[str, Cell] = {"use": NO, "evenly": YES}
    yes_no = {"answer": Field("answer", ANSWER, "typed", choice=Choice(YES_NO))}
    likely = proposal.answers
    return Table(
        "answers",
        (
            Field("question", QUESTION, "wrapped", width=46),
            Field("answer", ANSWER, "typed", width=24),
            Field("why", WHY, "wrapped", width=14),
        ),
        {
            "question": list(QUESTIONS.values()),
            "answer": [answers.get(key) or likely.get(key) or None for key in QUESTIONS],
            "why": [_why_asked(key, likely) for key in QUESTIONS],
        },
        title="Your answers",
        own_fields={at: yes_no for at, key in enumerate(QUESTIONS) if key in answers},
        note=f"The answer '{WORKSHEET}' stands for a worksheet's own name, as where each water has one.",
    )


def _why_asked(key: str, likely: Mapping[str, str]) -> str | None:
    if key not in likely:
        return None
    return "a guess" if likely[key] else "needed"


def _worksheets(proposal: Proposal) -> Table:
    kinds = Choice((*ROW_IS.values(), NOT_READ))
    sheets = proposal.sheets
    fields = (
        Field("worksheet", WORKSHEETS["worksheet"], width=46),
        Field("row_is", WORKSHEETS["row_is"], "typed", width=24, choice=kinds),
        Field("heading_rows", WORKSHEETS["heading_rows"], "typed", width=14),
        Field("sure", WORKSHEETS["sure"], width=10),
        Field("why", WORKSHEETS["why"], "wrapped", width=44),
    )
    columns: dict[str, list[Cell]] = {
        "worksheet": [sheet.seen.name for sheet in sheets],
        "row_is": [ROW_IS.get(sheet.row_is, NOT_READ) for sheet in sheets],
        "heading_rows": [
            sheet.seen.headings.last_row - sheet.seen.headings.first_row + 1 for sheet in sheets
        ],
        "sure": [how_sure(sheet.score) for sheet in sheets],
        "why": [sheet.why or "no columns that I know" for sheet in sheets],
    }
    note = (
        f"Without headings that I know, and not read: {', '.join(proposal.unread)}."
        if proposal.unread
        else ""
    )
    return Table("worksheets", fields, columns, title="Your worksheets", note=note)


def _columns_sheet(proposal: Proposal) -> Sheet:
    rows = [row for sheet in proposal.sheets for row in _rows(sheet)]
    columns = {field.key: [row[field.key] for row in rows] for field in _PROPOSED}
    lead = Line("What each column of your log is taken for. Change what is wrong.", "lead")
    return Sheet(
        COLUMNS_SHEET,
        (Text((Line("Columns", "title"), lead)), Table("columns", _PROPOSED, columns)),
        "log",
        landscape=True,
    )


def _rows(sheet: ProposedSheet) -> list[dict[str, Cell]]:
    return [
        {
            "worksheet": sheet.seen.name,
            "column": column_letters(column.position + 1),
            "heading": column.heading or None,
            "example": shown(column.values[0])[:_LONGEST_EXAMPLE] if column.values else None,
            "means": _label(meant.target, meant.key),
            "group": meant.group or None,
            "unit": meant.unit or None,
            "sure": how_sure(meant.score),
            "why": meant.why or "like no column that I know",
        }
        for column, meant in sheet.columns
    ]


def _label(target: str, key: str) -> str:
    return meaning(BY_KEY[target], own_sheet(target).column(key)) if target else NOT_READ


def _season_sheet(proposal: Proposal, system: System) -> tuple[Sheet, ...]:
    """Return the settings to fill in, unless the log has a worksheet of them."""
    if any(sheet.row_is == "season" for sheet in proposal.sheets):
        return ()
    return (Sheet("Season", (season_table(system, proposal.settings),), "log", bare=True),)


def _techniques_sheet(proposal: Proposal, system: System) -> tuple[Sheet, ...]:
    """Return the techniques found in the log, with the name that each is near: offered, not applied."""
    if not proposal.techniques:
        return ()
    sheet = BY_KEY["techniques"]
    fields = tuple(
        entry_field("techniques", sheet.column(key), system) for key in ("technique", "style", "also_called")
    )
    columns: dict[str, list[Cell]] = {
        "technique": [name.name for name in proposal.techniques],
        "style": [name.style or None for name in proposal.techniques],
        "also_called": [None] * len(proposal.techniques),
        "near": [name.near or None for name in proposal.techniques],
    }
    near = Field("near", LOOKS_LIKE, width=24, help="A name that is near. Nothing follows from it by itself.")
    table = Table("techniques", (*fields, near), columns, blank_rows=20)
    return (Sheet(sheet.name, (table,), "log", bare=True),)


def _lists_sheet(system: System) -> Sheet:
    labels = [NOT_READ, *meanings()]
    units = list(dict.fromkeys(unit.label for unit in UNITS if unit.label))
    means = Table(_MEANS, (Field("label", "A column may mean", width=34.0),), {"label": labels})
    unit = Table(_UNITS, (Field("label", "Units", width=34.0),), {"label": units})
    usual = lists_sheet(system)
    return replace(usual, blocks=(*usual.blocks, means, unit))
