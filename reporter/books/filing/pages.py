"""What every page of a filing carries: the days it is about, its rows, how far it may be trusted."""

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from reporter.books.blocks import Block, Cell, Field, Line, Sheet, Table, Text
from reporter.books.words import day_words
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.paperwork.period import Period
from reporter.compute.records import records
from reporter.schema.units import System

CAUTION = (
    "Prepared from your own log to support a report; it is no agency's form. The agency's current form and "
    "text, and the terms of your own papers, come first."
)


class Front(NamedTuple):
    """What all pages of a filing share. amended: "AMENDED 1", "" where nothing differs from the filed one."""

    made: Paperwork
    guide: str
    system: System
    amended: str

    @property
    def days(self) -> str:
        """The days that the filing is about, in words."""
        return period_words(self.made.period, self.system)


def period_words(period: Period, system: System) -> str:
    """Return a period in words."""
    first, last = period.first, period.last
    if first and last:
        return f"{day_words(first, system)} to {day_words(last, system)}"
    if first:
        return f"from {day_words(first, system)} on"
    return f"up to {day_words(last, system)}" if last else "the whole log"


def page(name: str, front: Front, *blocks: Block, lead: str = "", landscape: bool = True) -> Sheet:
    """Return a page with what every page carries above its blocks."""
    title = f"{name} – {front.amended}" if front.amended else name
    days = f"{front.guide}, {front.days}" if front.guide else front.days[:1].upper() + front.days[1:]
    lines = [Line(title, "title"), Line(f"{days}.", "lead")]
    if lead:
        lines.append(Line(lead))
    lines.append(Line(f"{_rows(front.made)} {_checked(front)}", "note"))
    lines.append(Line(CAUTION, "caution"))
    return Sheet(name, (Text(tuple(lines)), *blocks), group="books", landscape=landscape, private=True)


def _rows(made: Paperwork) -> str:
    """Return rows read, used and set aside in the period, and those without a day, by sheet."""
    said = []
    for row in records(made.account):
        undated = f", {row['undated']} more without a day" if row["undated"] else ""
        said.append(
            f"{row['sheet']} {row['read']} read, {row['used']} used, {row['set_aside']} set aside{undated}"
        )
    return f"Rows of these days: {'; '.join(said)}."


def _checked(front: Front) -> str:
    """Return when the guide last read the rules of what is owed, by his sheet Reports."""
    days = [row["last_checked"] for row in records(front.made.owed.table)]
    known = [day for day in map(day_or_blank, days) if day]
    if len(known) < len(days) or not days:
        return "Rules last checked: not written on Reports."
    return f"Rules last checked: {day_words(min(known), front.system)}."


def filled_table(
    key: str,
    fields: Sequence[Field],
    columns: Mapping[str, Sequence[Cell]],
    *,
    title: str = "",
    total: Mapping[str, Cell] | None = None,
    filtered: bool = False,
) -> Table:
    """Return a table of the fields whose columns hold anything; of all where there is no row."""
    there = [field for field in fields if not all(map(_nothing, columns[field.key]))] or fields
    kept = {field.key for field in there}
    return Table(
        key,
        tuple(there),
        {name: columns[name] for name in columns if name in kept},
        title=title,
        total={name: cell for name, cell in (total or {}).items() if name in kept},
        filtered=filtered,
    )


def _nothing(cell: object) -> bool:
    return cell is None or cell == "" or cell != cell


def day_or_blank(value: object) -> dt.date | None:
    """Return a day as a cell, None where there is none."""
    if value is None or value != value:
        return None
    return value.date() if isinstance(value, dt.datetime) else value if isinstance(value, dt.date) else None
