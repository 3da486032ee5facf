"""The restock list for next season, live: it follows the hours and the reading that are typed above it."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Choice, Field, Figure, Figures, Line, Live, Table, Text
from reporter.books.season.tackle_used import LINE_FIELDS, line_cells
from reporter.books.words import counted, number
from reporter.compute.report import Report
from reporter.compute.tackle.restock import LOSS_DECIMALS, Restock
from reporter.schema.thresholds import MIN_OWN_TRIPS

_HEADING = Line("Restock list for next season", "title")
_ASSUMES = Line(
    "Assumed: next season you fish these in the same shares and lose them as often per rod-hour as this "
    "season. It counts what you lost; it forecasts nothing.",
)
_OWN, _TECHNIQUE = "own record", "its technique's"
_THIN = f"{_TECHNIQUE}, under {MIN_OWN_TRIPS} trips"
_NO, _YES = "no", "yes"

_HOURS = "INDEX({ahead.value},1)"
_SEASON = "SUM({used.rod_hours})"
_BLANK_IS_NONE = "{reckoned.none}=1"


def restock_blocks(report: Report) -> tuple[Block, ...]:
    """Return the blocks of the restock list, which print on pages of their own; none without lures lost."""
    tackle = report.tackle
    restock = tackle.restock
    if not tackle.written["lures_lost"].on:
        return ()
    if restock.table.empty:
        none = Line("No lure was lost on the stints that say, so there is nothing to restock.")
        return (Text((_HEADING, none, *_not_listed(restock)), new_area=True),)
    hours = float(tackle.used.table["rod_hours"].sum())
    return (
        Text((_HEADING, _ASSUMES, *_not_listed(restock)), new_area=True),
        _entries(hours),
        _reckoned(hours),
        _list(report),
    )


def _not_listed(restock: Restock) -> tuple[Line, ...]:
    """Say which lines of what was used are not on the list, and why."""
    said = []
    if restock.none_lost:
        said.append(f"{counted(restock.none_lost, 'line')} of which nothing was lost, as far as the log says")
    if restock.not_told:
        hours = number(restock.not_told_rod_hours, 1)
        said.append(
            f"{counted(restock.not_told, 'line')} ({hours} rod-hours) of which the log does not say, nor of "
            "their techniques"
        )
    return (Line(f"Not listed: {'; '.join(said)}."),) if said else ()


def _entries(hours: float) -> Table:
    """Return the two cells to type in."""
    own = {
        0: {"value": Field("value", "", "one", entry=True)},
        1: {"value": Field("value", "", "typed", choice=Choice(labels=(_NO, _YES)))},
    }
    columns: dict[str, Sequence[Cell]] = {
        "no": [1, 2],
        "what": ["Rod-hours next season", "Read a blank as none lost"],
        "value": [hours, _NO],
    }
    fields = (
        Field("no", "No.", "plain"),
        Field("what", "Type at the right"),
        Field("value", "Yours", "typed", width=14.0),
    )
    note = (
        "Rod-hours: this season's, until you type others. Read a blank as none lost: no counts only the "
        "stints whose Lures lost is filled in, 0 too; yes counts every stint, a blank as none lost, which is "
        "right if you write losses only. The list follows at once."
    )
    return Table("ahead", fields, columns, note=note, own_fields=own)


def _reckoned(hours: float) -> Figures:
    """Return what the list is reckoned with, whatever was typed."""
    typed = f"IF(ISNUMBER({_HOURS}),MAX(0,{_HOURS}),{_SEASON})"
    none = f'IF(LOWER(TRIM(INDEX({{ahead.value}},2)))="{_YES}",1,0)'
    return Figures(
        "reckoned",
        (
            Figure(
                "hours", "Rod-hours reckoned with", Live(typed, hours), "one", "This season's if no number."
            ),
            Figure("times", "Times this season's", Live(f"{{reckoned.hours}}/{_SEASON}", 1.0), "two"),
            Figure("none", "Blanks read as none lost", Live(none, 0), "plain", "1: yes. 0: no."),
        ),
    )


def _of_line(key: str, blank_is_none: str) -> str:
    """Return a line's own number, that of the stints that say or of all its stints."""
    all_stints, told = (f"INDEX({{used.{name}}},{{row.line}})" for name in (blank_is_none, key))
    return f"IF({_BLANK_IS_NONE},{all_stints},{told})"


def _of_technique(key: str, blank_is_none: str) -> str:
    """Return the same of its technique."""
    all_stints, told = (
        f"INDEX({{snags_technique.{name}}},{{row.technique_line}})" for name in (blank_is_none, key)
    )
    return f"IF({_BLANK_IS_NONE},{all_stints},{told})"


def _chosen(own: str, technique: str) -> str:
    return f'IF({{row.record}}="{_OWN}",{own},{technique})'


_RECORD = (
    f'IF({_of_line("lost_trips", "trips")}>={MIN_OWN_TRIPS},"{_OWN}",'
    f'IF({_of_technique("lost_trips", "trips")}>={MIN_OWN_TRIPS},"{_TECHNIQUE}","{_THIN}"))'
)
# SUM takes a count that is not told as none.
_LOST = _chosen(
    "SUM(INDEX({used.lures_lost},{row.line}))",
    "SUM(INDEX({snags_technique.lures_lost},{row.technique_line}))",
)
_LIVE: tuple[tuple[str, str, str], ...] = (
    ("trips", "trips", _chosen(_of_line("lost_trips", "trips"), _of_technique("lost_trips", "trips"))),
    (
        "told_hours",
        "lost_rod_hours",
        _chosen(_of_line("lost_hours", "rod_hours"), _of_technique("lost_hours", "rod_hours")),
    ),
    ("lures_lost", "lures_lost", _LOST),
    ("rate", "lures_lost_per_rod_hour", "{row.lures_lost}/{row.told_hours}"),
    ("rod_hours", "rod_hours", "INDEX({used.rod_hours},{row.line})"),
    ("coming", "rod_hours", "{row.rod_hours}*{reckoned.times}"),
    ("expected", "expected_losses", "{row.rate}*{row.coming}"),
    ("to_have", "to_have", f"ROUNDUP(ROUND({{row.expected}},{LOSS_DECIMALS}),0)"),
)
"""Column of the page, column of the list, formula."""

_FIELDS = (
    Field("line", "Line", "plain", help="Its line in What was used how much."),
    *LINE_FIELDS,
    Field("to_have", "To have", "whole", help="Losses to expect, rounded up."),
    Field("expected", "Losses to expect", "one", help="Lost per rod-hour x next season's rod-hours."),
    Field("coming", "Next season's rod-hours", "one"),
    Field("rod_hours", "This season's rod-hours", "one", help="Of the line itself."),
    Field("rate", "Lost per rod-hour", "two", help="Lures lost / rod-hours of the record it comes from."),
    Field("lures_lost", "Lures lost", "whole", help="Lures lost on that record."),
    Field("trips", "On trips", "whole", help="Trips of that record."),
    Field("told_hours", "In rod-hours", "one", help="Rod-hours of that record."),
    Field("record", "Loss rate from"),
    Field("technique_line", "Line of technique", "plain", help="In the table by technique, from the top."),
)
_TOTALS = {
    "rod_hours": "rod_hours",
    "coming": "rod_hours",
    "expected": "expected_losses",
    "to_have": "to_have",
}


def _list(report: Report) -> Table:
    table = report.tackle.restock.table
    technique_trips = report.tackle.rates["technique"].table["lost_trips"]
    thin = (technique_trips < MIN_OWN_TRIPS).to_numpy()[table["technique_row"].to_numpy() - 1]
    records = [
        _OWN if whose == "own" else _THIN if little else _TECHNIQUE
        for whose, little in zip(table["record"], thin, strict=True)
    ]
    columns: dict[str, Sequence[Cell]] = {
        **line_cells(table),
        "record": [Live(_RECORD, words) for words in records],
        "line": table["no"].tolist(),
        "technique_line": table["technique_row"].tolist(),
    }
    for key, source, formula in _LIVE:
        columns[key] = [Live(formula, value) for value in table[source].tolist()]
    total: dict[str, Cell] = {"technique": "All of these"}
    for key, source in _TOTALS.items():
        total[key] = Live(f"SUM({{restock.{key}}})", float(table[source].sum()))
    note = (
        f"Loss rate from: the line's {_OWN} from {MIN_OWN_TRIPS} trips that say on, else {_TECHNIQUE}. To "
        "have: each line rounded up, so that none runs out; all together that may be more than the losses."
    )
    return Table("restock", _FIELDS, columns, title="The list", note=note, total=total)
