"""What worked: choices to make in the workbook, and what the record says of days like that."""

from collections.abc import Mapping, Sequence

import pandas as pd

from reporter.books.blocks import Block, Cell, Choice, Field, Line, Live, Sheet, Table, Text, Value
from reporter.books.season.pick_lists import KEY
from reporter.books.season.pick_places import or_blank
from reporter.books.season.what_worked_behind import behind, found
from reporter.compute.picker.pick import Picked, pick
from reporter.compute.picker.record import ATTRIBUTES
from reporter.compute.picker.words import BEHIND, SAID, STEADIED, answer_words, choice_words
from reporter.compute.report import Report
from reporter.schema.choices import ANY, CHOICES, STEPS
from reporter.schema.thresholds import (
    GOOD_RECORD_TRIPS,
    MIN_BEST_HOURS,
    MIN_OWN_TRIPS,
    MIN_PICK_HOURS,
)

NAME = "What worked"

_TITLE = Line(NAME, "title")
_LEAD = Line(
    "Choose in the yellow cells what the day is like. Below stands what your own record puts first on such "
    "days, at once and without a macro.",
    "lead",
)
_PAST = Line(
    "It tells what happened on your trips, in the order of rates steadied for small samples. It forecasts "
    "nothing, and what you tied on only on hard days stands lower than it deserves: see Side by side.",
    "note",
)


def what_worked(report: Report, numbers: Mapping[str, int] | None = None) -> tuple[Sheet, ...]:
    """Return the sheet and the one behind it, with these choices made (choice -> its number), else Any."""
    if report.picks.stints.empty:
        nothing = Line("Nothing to choose from yet: no stint has usable effort.")
        return (Sheet(NAME, (Text((_TITLE, nothing)),), group="me"),)
    chosen = dict(numbers or {})
    season = report.season
    kappa = float(season.spread.kappa_used)
    picked = pick(report.picks, season.techniques, kappa, chosen)
    blocks: tuple[Block, ...] = (
        Text((_TITLE, _LEAD, _PAST)),
        _choices(report, picked, chosen),
        found(picked),
        _ranked(picked),
        _answers(picked),
    )
    sheet = Sheet(NAME, blocks, group="me", private=True)
    return sheet, behind(report.picks, picked, chosen, kappa)


def _choices(report: Report, picked: Picked, chosen: Mapping[str, int]) -> Table:
    """Return the cells to choose in, and beside each whether it was kept."""
    labels = report.picks.labels
    given = [(ANY, *labels[choice.key])[chosen.get(choice.key, 0)] for choice in CHOICES]
    own = {
        row: {"pick": Field("pick", "", "typed", choice=Choice(symbol=f"{KEY}.{choice.key}"))}
        for row, choice in enumerate(CHOICES)
    }
    columns: dict[str, Sequence[Cell]] = {
        "what": [choice.words for choice in CHOICES],
        "pick": given,
        "said": [_said(row, picked, chosen) for row in range(len(CHOICES))],
    }
    fields = (
        Field("what", "The day", width=26.0),
        Field("pick", "Your choice", "typed", width=30.0),
        Field("said", "Kept or let go", width=20.0),
    )
    note = (
        f"Where fewer than {MIN_PICK_HOURS:g} rod-hours fit, choices are let go from the last: wind, sky, "
        "water, clarity, type of day; then the bands beside your water temperature count too, then any "
        "temperature; time of year goes last. A blank cell means Any."
    )
    return Table("choice", fields, columns, title="The day", note=note, own_fields=own)


def _said(row: int, picked: Picked, chosen: Mapping[str, int]) -> Live:
    """Say what became of a choice."""
    key = CHOICES[row].key
    typed = f"INDEX({{choice.pick}},{row + 1})"
    unknown = f'IF(AND({typed}<>"",{typed}<>"{ANY}"),"{SAID["unknown"]}","{SAID["any"]}")'
    first, *exact = [step for step, (of, _) in enumerate(STEPS, start=1) if of == key]
    word = f'IF({{picked.kept}}>={first},"{SAID["near" if exact else "kept"]}","{SAID["let go"]}")'
    for step in exact:
        word = f'IF({{picked.kept}}>={step},"{SAID["kept"]}",{word})'
    return Live(f"IF({{chosen.{key}}}=0,{unknown},{word})", choice_words(key, picked.kept, chosen))


def _ranked(picked: Picked) -> Table:
    """Return the techniques in their order, best first; lines that are not needed are blank."""
    ranked = picked.table[picked.table["place"] > 0].sort_values("place", kind="stable")
    count = len(picked.table)

    def live(formula: str, values: Sequence[Value]) -> list[Cell]:
        return [Live(formula, value) for value in (*values, *[""] * (count - len(values)))]

    def shown(key: str, values: pd.Series) -> list[Cell]:
        return live(f'IF({{row.line}}=0,"",INDEX({{pick.{key}}},{{row.line}}))', or_blank(values))

    lines = [*(int(line) + 1 for line in ranked.index), *[0] * (count - len(ranked))]
    at = "SUMPRODUCT(--({pick.place}={row.place}),{pick.line})"
    columns: dict[str, Sequence[Cell]] = {
        "technique": shown("technique", ranked["technique"]),
        "record": live(_RECORD, [answer_words(trips) for trips in ranked["trips"]]),
        "place": list(range(1, count + 1)),
        "trips": shown("trips", ranked["trips"]),
        "rod_hours": shown("rod_hours", ranked["rod_hours"]),
        "fish": shown("fish", ranked["fish"]),
        "rate": shown("rate", ranked["fish_per_rod_hour"]),
        "steadied": shown("steadied", ranked["shrunken_rate"]),
        "line": [Live(at, line) for line in lines],
    }
    fields = (
        Field("technique", "Technique"),
        Field("record", "Your record behind it"),
        Field("place", "Place", "plain"),
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("fish", "Landed", "whole"),
        Field("rate", "Fish per rod-hour", "two"),
        Field("steadied", "Steadied for small samples", "two", help=STEADIED),
        Field("line", "Line behind", "plain", help="Its line in Every technique, on the sheet behind."),
    )
    return Table("worked", fields, columns, title="What worked on days like that")


_RECORD = (
    f'IF({{row.line}}=0,"",IF({{row.trips}}<{MIN_OWN_TRIPS},"{BEHIND[0]}",'
    f'IF({{row.trips}}<{GOOD_RECORD_TRIPS},"{BEHIND[1]}","{BEHIND[2]}")))'
)


def _answers(picked: Picked) -> Table:
    """Return the cover, depth, variant and retrieve that did best among the trips that fit."""
    rows = [_answer(key, picked.best[key]) for key in ATTRIBUTES]
    fields = (
        Field("what", "Of what"),
        Field("best", "Did best"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("fish", "Landed", "whole"),
        Field("rate", "Fish per rod-hour", "two"),
    )
    columns = {field.key: [row[field.key] for row in rows] for field in fields}
    note = (
        f"The highest rate among those with {MIN_BEST_HOURS:g} rod-hours and a fish on such days. Variants "
        "and retrieves stand with their technique."
    )
    return Table("answer", fields, columns, title="And on what, and how", note=note)


def _answer(key: str, table: pd.DataFrame) -> dict[str, Cell]:
    answer: dict[str, Cell] = {"what": key.capitalize(), "rod_hours": None, "fish": None, "rate": None}
    if table.empty:
        return answer | {"best": "not recorded"}
    first = table[table["place"] == 1]
    top = f"SUMPRODUCT(--({{did_{key}.place}}=1),{{did_{key}.no}})"
    for column, source, none in (
        ("best", "label", SAID["little"]),
        ("rod_hours", "rod_hours", ""),
        ("fish", "fish", ""),
        ("rate", "fish_per_rod_hour", ""),
    ):
        inside = "label" if column == "best" else column
        formula = f'IF(SUM({{did_{key}.place}})=0,"{none}",INDEX({{did_{key}.{inside}}},{top}))'
        answer[column] = Live(formula, first[source].iloc[0] if len(first) else none)
    return answer
