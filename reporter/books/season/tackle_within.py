"""The sizes and the colours of each technique: what was used how much, and their part of its losses."""

from collections.abc import Sequence

from reporter.books.blocks import Cell, Field, Table
from reporter.books.season.tackle_groups import KEYS, NO, live, sums, technique_numbers, trips_of
from reporter.books.words import counted, number
from reporter.compute.report import Report
from reporter.compute.tackle.tackle import Tackle
from reporter.schema.bands import NOT_RECORDED
from reporter.schema.thresholds import MIN_OWN_TRIPS

_LOSSES = {"lures_lost", "expected"}
_OF_TECHNIQUE = "MATCH({row.technique_no},{used_technique.no},0)"
_EXPECTED = f"INDEX({{used_technique.expected}},{_OF_TECHNIQUE})"


def within_table(report: Report, by: str, *, losses: bool) -> Table:
    """Return the sizes or colours of the techniques of which any is recorded.

    losses: whether with what was lost.
    """
    table = report.tackle.used[by].table
    columns: dict[str, Sequence[Cell]] = {
        "no": table["no"].tolist(),
        "technique": table["technique"].tolist(),
        "value": [value or NOT_RECORDED for value in table["value"]],
        "technique_no": technique_numbers(report, table["technique"]),
    }
    for key, source, formula in _formulas(by):
        columns[key] = live(formula, table[source])
    fields = [field for field in _fields(by) if losses or field.key not in _LOSSES]
    return Table(
        f"used_{by}",
        tuple(fields),
        {field.key: columns[field.key] for field in fields},
        title=f"By {by}",
        note=_note(report.tackle, by, losses=losses),
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _fields(by: str) -> tuple[Field, ...]:
    return (
        NO,
        Field("technique", "Technique"),
        Field("value", by.capitalize()),
        Field("stints", "Stints", "whole"),
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("share", "Share of its technique", "share", help="Of its technique's rod-hours."),
        Field("landed", "Landed", "whole"),
        Field("lures_lost", "Lures lost", "whole", help="As far as the log says."),
        Field("expected", "Losses to expect", "one", help="Its technique's, spread by rod-hours."),
        Field("technique_no", "Technique no.", "plain"),
    )


def _formulas(by: str) -> tuple[tuple[str, str, str], ...]:
    """Return column of the page, column of what was used, formula."""
    key = KEYS[by]
    placed, told = f"{key},{{stint.{by}_fish}},1", f'{key},{{stint.lures_lost}},">=0"'
    whole = f"INDEX({{used_technique.rod_hours}},{_OF_TECHNIQUE})"
    return (
        ("stints", "stints", f"COUNTIFS({key})"),
        ("trips", "trips", trips_of(by)),
        ("rod_hours", "rod_hours", sums("rod_hours", key)),
        ("share", "technique_share", f"{{row.rod_hours}}/{whole}"),
        ("landed", "landed", f'IF(COUNTIFS({placed})>0,{sums("counted_fish", placed)},"")'),
        ("lures_lost", "lures_lost", f'IF(COUNTIFS({told})>0,{sums("lures_lost", key)},"")'),
        ("expected", "expected_losses", f'IF(ISNUMBER({_EXPECTED}),{_EXPECTED}*{{row.share}},"")'),
    )


def _note(tackle: Tackle, by: str, *, losses: bool) -> str:
    said = [f"Grey: fewer than {MIN_OWN_TRIPS} trips."]
    if losses:
        said.append("Losses to expect: its technique's, spread by rod-hours.")
    left_out = tackle.used[by].fish_left_out
    if left_out:
        said.append(f"Landed leaves out {counted(left_out, 'fish', 'fish')} that cannot be told apart.")
    techniques = tackle.used["technique"].table
    without = techniques[~techniques["technique"].isin(tackle.used[by].table["technique"])]
    if len(without):
        names = ", ".join(without["technique"])
        hours = number(without["rod_hours"].sum(), 1)
        said.append(f"Without a {by}: {names}, {counted(len(without), 'technique')}, {hours} rod-hours.")
    return " ".join(said)
