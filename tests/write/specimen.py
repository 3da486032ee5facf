"""A book with every kind of block."""

import datetime as dt

from reporter.books.blocks import (
    Block,
    Book,
    Chart,
    Choice,
    Field,
    Figure,
    Figures,
    Line,
    Live,
    Series,
    Sheet,
    Table,
    Text,
)
from tests.write.samples import DAY

TECHNIQUES = ["Swim jig", "Drop shot", "Topwater"]
FISH = [4, 0, 3, 5, 1, 2]
HOURS = [1.5, 0.5, 2.0, 1.0, 0.25, 3.0]
NUMBERS = [1, 2, 3, 1, 2, 3]


def specimen(text: str = "plain text", short: str = "short", blocks: tuple[Block, ...] = ()) -> Book:
    """Put `text` where a page takes long text and `short` where lists and messages take short text."""
    sheets = (
        Sheet("Specimen", (*_page(text), *blocks), "me", private=True),
        Sheet("Stints", (_stints(),), "behind", landscape=True),
        Sheet("Trips", (_entry(short),), "log", bare=True, pages_wide=2),
        Sheet(
            "Lists", (Table("list", (Field("sky", "Sky"),), {"sky": ["sun", text, None]}),), "log", bare=True
        ),
    )
    return Book("Specimen season" if text == "plain text" else text, "report", sheets, "letter", DAY)


def _page(text: str) -> tuple[Block, ...]:
    series = (
        Series(text, "technique.name", "technique.rate", "technique.down", "technique.up"),
        Series("Landed", "technique.name", "technique.fish"),
    )
    figures = (
        Figure("fish", "Landed", Live("SUM({stint.fish})", 15), "whole", "in all"),
        Figure("hours", "Rod-hours", Live("SUM({stint.hours})", 8.25), "hours", text),
        Figure("rate", "Fish per rod-hour", Live("{season.fish}/{season.hours}", 15 / 8.25), "two"),
        Figure(
            "best",
            "Best",
            Live("INDEX({technique.name},MATCH(MAX({technique.rate}),{technique.rate},0))", "Swim jig"),
        ),
    )
    words = "The range that your record supports stands beside every rate, and says how much to make of it."
    return (
        Text((Line("Specimen", "title"), Line(f"{words} {words}"), Line("Mind the weather.", "caution"))),
        Figures("season", figures, title="In figures"),
        _techniques(),
        *(Chart(kind, text, text, text, series, rows=12, alt=text) for kind in ("bar", "column", "line")),
    )


def _techniques() -> Table:
    fields = (
        Field("no", "No.", "plain"),
        Field("name", "Technique", help="By the name you gave it."),
        Field("fish", "Landed", "whole"),
        Field("hours", "Rod-hours", "hours"),
        Field("rate", "Fish per rod-hour", "two"),
        Field("down", "Down", "two"),
        Field("up", "Up", "two"),
        Field("trips", "Rows", "whole"),
    )
    fish, hours = [9, 1, 5], [2.5, 0.75, 5.0]
    columns = {
        "no": [1, 2, 3],
        "name": TECHNIQUES,
        "fish": [Live("SUMIFS({stint.fish},{stint.technique_no},{row.no})", value) for value in fish],
        "hours": [Live("SUMIFS({stint.hours},{stint.technique_no},{row.no})", value) for value in hours],
        "rate": [Live('IF({row.hours}>0,{row.fish}/{row.hours},"")', value) for value in (3.6, 4 / 3, 1.0)],
        "down": [1.0, 0.5, None],
        "up": [1.5, 2.0, 1.0],
        "trips": [Live("COUNTIFS({stint.technique_no},{row.no})", 2) for _ in range(3)],
    }
    total = {
        "name": "Season",
        "fish": Live("SUM({technique.fish})", 15),
        "hours": Live("SUM({technique.hours})", 8.25),
        "rate": Live("{row.fish}/{row.hours}", 15 / 8.25),
    }
    return Table(
        "technique",
        fields,
        columns,
        title="Techniques",
        note="Grey rows rest on fewer than 5 trips.",
        total=total,
        grey=[False, True, False],
    )


def _stints() -> Table:
    fields = (
        Field("no", "Row", "plain"),
        Field("day", "Day", "date"),
        Field("technique", "Technique"),
        Field("technique_no", "Technique number", "plain"),
        Field("fish", "Landed", "whole"),
        Field("hours", "Rod-hours", "hours"),
        Field("notes", "Notes"),
    )
    columns = {
        "no": list(range(1, 7)),
        "day": [DAY - dt.timedelta(days=back) for back in range(6)],
        "technique": [TECHNIQUES[number - 1] for number in NUMBERS],
        "technique_no": NUMBERS,
        "fish": FISH,
        "hours": HOURS,
        "notes": ["a note that runs on, " * 8, None, None, None, "x", None],
    }
    total = {"no": 6, "fish": Live("SUM({stint.fish})", 15)}
    return Table("stint", fields, columns, total=total, filtered=True, title="Stints")


def _entry(short: str) -> Table:
    listed = short.replace(",", "")
    fields = (
        Field("trip", "Trip", "typed", help=short, required=True),
        Field("day", "Date", "date", help="The day it began.", required=True),
        Field("sky", "Sky", choice=Choice(symbol="list.sky")),
        Field("level", "Water level", choice=Choice((listed or "low", "high"), strict=False)),
        Field("notes", "Notes", "wrapped"),
    )
    columns = {"trip": ["4-8"], "day": [DAY], "sky": [None], "level": [None], "notes": [short]}
    return Table("trips", fields, columns, blank_rows=50)
