"""What was used how much by technique, and what to have of each next season by what it lost."""

from collections.abc import Mapping, Sequence

from reporter.books.blocks import Cell, Field, Live, Table
from reporter.books.season.tackle_ahead import BLANK_IS_NONE
from reporter.books.season.tackle_groups import (
    COUNTED,
    KEYS,
    NO,
    live,
    season_trips,
    sums,
    technique_numbers,
    trips_of,
    trips_of_all,
)
from reporter.compute.report import Report
from reporter.compute.tackle.restock import LOSS_DECIMALS
from reporter.compute.tackle.tackle import Tackle
from reporter.schema.thresholds import MIN_OWN_TRIPS

_NOTHING, _THIN = "nothing told", f"under {MIN_OWN_TRIPS} trips"
_GREY = f"Grey: fewer than {MIN_OWN_TRIPS} trips."
_NOTE = (
    f"{_GREY} To have: each technique's losses rounded up; all together that may be more than the losses. "
    f"Record: {_THIN} that say, too little to go by; {_NOTHING}, no figure."
)

_FIELDS = (
    NO,
    Field("technique", "Technique"),
    Field("stints", "Stints", "whole"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("share", "Share of rod-hours", "share"),
    Field("landed", "Landed", "whole"),
)
_OF_LOSSES = (
    Field("lures_lost", "Lures lost", "whole"),
    Field("lost_trips", "Trips that say", "whole", help="With blanks read as none lost: all trips."),
    Field("lost_hours", "Rod-hours that say", "one", help="With blanks read as none lost: all rod-hours."),
    Field("rate", "Lost per rod-hour", "two", help="Lures lost / rod-hours that say."),
    Field("coming", "Next season's rod-hours", "one"),
    Field("expected", "Losses to expect", "one", help="Lost per rod-hour x next season's rod-hours."),
    Field("to_have", "To have", "whole", help="Losses to expect, rounded up."),
    Field("record", "Record"),
)

_TOLD = '{stint.lures_lost},">=0"'
_TOLD_TRIPS = "SUMIFS({snags_technique.lost_trips},{snags_technique.no},{row.no})"
_LIVE: tuple[tuple[str, str, str], ...] = (
    ("rate", "lures_lost_per_rod_hour", 'IF({row.lost_trips}>0,{row.lures_lost}/{row.lost_hours},"")'),
    ("coming", "rod_hours", "{row.rod_hours}*{reckoned.times}"),
    ("expected", "expected_losses", 'IF({row.lost_trips}>0,{row.rate}*{row.coming},"")'),
    ("to_have", "to_have", f'IF({{row.lost_trips}}>0,ROUNDUP(ROUND({{row.expected}},{LOSS_DECIMALS}),0),"")'),
)
"""Column of the page, column of what was used, formula."""
_SOURCES = {key: source for key, source, _ in _LIVE}
_RECORD = f'IF({{row.lost_trips}}=0,"{_NOTHING}",IF({{row.lost_trips}}<{MIN_OWN_TRIPS},"{_THIN}",""))'


def _sums(key: str, told_trips: str) -> tuple[tuple[str, str, str], ...]:
    """Return the same for sums under a condition. told_trips: formula of the trips that say."""
    return (
        ("stints", "stints", f"COUNTIFS({key})"),
        ("rod_hours", "rod_hours", sums("rod_hours", key)),
        ("share", "share", "{row.rod_hours}/SUM({used_technique.rod_hours})"),
        ("landed", "landed", sums("counted_fish", key)),
        ("lost_trips", "lost_trips", f"IF({BLANK_IS_NONE},{{row.trips}},{told_trips})"),
        (
            "lost_hours",
            "lost_rod_hours",
            f"IF({BLANK_IS_NONE},{{row.rod_hours}},{sums('rod_hours', f'{key},{_TOLD}')})",
        ),
        ("lures_lost", "lures_lost", f'IF({{row.lost_trips}}>0,{sums("lures_lost", key)},"")'),
    )


def technique_table(report: Report, *, losses: bool) -> Table:
    """Return the table by technique. losses: whether with what was lost and what to have."""
    table = report.tackle.used["technique"].table
    columns: dict[str, Sequence[Cell]] = {
        "no": technique_numbers(report, table["technique"]),
        "technique": table["technique"].tolist(),
        "trips": live(trips_of("technique"), table["trips"]),
        "record": [Live(_RECORD, _record(trips)) for trips in table["lost_trips"]],
    }
    for key, source, formula in (*_sums(KEYS["technique"], _TOLD_TRIPS), *_LIVE):
        columns[key] = live(formula, table[source])
    fields = (*_FIELDS, *_OF_LOSSES) if losses else _FIELDS
    return Table(
        "used_technique",
        fields,
        {field.key: columns[field.key] for field in fields},
        title="By technique",
        note=_NOTE if losses else _GREY,
        total=_total(report.tackle, [field.key for field in fields]),
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _record(trips: int) -> str:
    if not trips:
        return _NOTHING
    return _THIN if trips < MIN_OWN_TRIPS else ""


def _total(tackle: Tackle, keys: Sequence[str]) -> Mapping[str, Cell]:
    table, whole = tackle.used["technique"].table, tackle.rates["technique"].whole.iloc[0]
    trips, told_trips = int(whole["trips"]), int(whole["lost_trips"])
    total: dict[str, Cell] = {"technique": "Season", "trips": season_trips(trips)}
    for key, source, formula in _sums(COUNTED, trips_of_all("technique", "lost_trips")):
        total[key] = Live(formula, told_trips if key == "lost_trips" else table[source].sum())
    for key in ("coming", "expected", "to_have"):
        total[key] = Live(f"SUM({{used_technique.{key}}})", table[_SOURCES[key]].sum())
    return {key: cell for key, cell in total.items() if key in keys}
