"""The twelve invented rules, and small logs of guided trips with fish that are held against them.

Waters and rules are invented. Their numbers and the results of the cases come from the list of cases that
the check was written to, worked out there by hand.
"""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from reporter.compute.keep_rules.check import KeepChecks, check_keep_rules
from reporter.run.season import read_season
from tests.conftest import Change, WriteLog

Row = list[object]

HEADINGS = [
    "Rule",
    "Edition",
    "Water",
    "Species",
    "From",
    "To",
    "Action",
    "Min (in)",
    "Max (in)",
    "Slot from (in)",
    "Slot to (in)",
    "Slot ends",
    "Daily limit",
    "Over length (in)",
    "Over count",
    "Possession",
    "Everywhere",
    "Guide's fish count",
    "Who",
    "Measure",
    "Jurisdiction",
    "Cull allowed",
    "Notes",
]
BASS, WALLEYE, CRAPPIE, TROUT = "LMB;SMB;SPB", "WAE;SAR;SAE", "BLC;WHC", "RBT;BNT;BKT;CUT"
YEAR, SEASON = ("01-01", "12-31"), ("05-04", "03-01")
WATERS = (
    "Lake Arden",
    "Big Heron Lake",
    "Brannock Reservoir",
    "Otter River",
    "Pike Fork",
    "Sable Creek",
)
PARTY = ("C01", "C02", "C03")


def rule(
    name: str,
    water: str,
    species: str,
    dates: tuple[str, str] = YEAR,
    action: str = "LIMIT",
    edition: int | None = 2026,
    **more: object,
) -> Row:
    """A row of Keep rules: more are its other columns by their headings, without unit, lower case."""
    given: dict[str, object] = {
        "rule": name,
        "edition": edition,
        "water": water,
        "species": species,
        "from": dates[0],
        "to": dates[1],
        "action": action,
        **more,
    }
    keys = [heading.partition(" (")[0].casefold().replace(" ", "_").replace("'", "") for heading in HEADINGS]
    assert set(given) <= set(keys)
    return [given.get(key) for key in keys]


def the_twelve(edition: int = 2026) -> list[Row]:
    rules = [
        rule("R01", "*", BASS, daily_limit=5, possession=10, everywhere="Y"),
        rule("R02", "*", "LMB;SMB", min=14),
        rule(
            "R03", "Lake Arden", "LMB", slot_from=14, slot_to=18, slot_ends="IN", over_length=18, over_count=1
        ),
        rule("R04", "Lake Arden", BASS, ("03-01", "04-30"), "RELEASE"),
        rule("R05", "*", WALLEYE, SEASON, daily_limit=6, possession=12, everywhere="Y"),
        rule("R06", "*", "WAE", SEASON, min=15, over_length=20, over_count=1),
        rule(
            "R07",
            "Big Heron Lake",
            "WAE",
            SEASON,
            slot_from=18,
            slot_to=26,
            slot_ends="IN",
            daily_limit=4,
            over_length=26,
            over_count=1,
        ),
        rule("R08", "*", CRAPPIE, min=10, daily_limit=25, possession=50),
        rule(
            "R09",
            "Brannock Reservoir",
            CRAPPIE,
            ("12-01", "02-end"),
            "KEEPFIRST",
            daily_limit=25,
            possession=50,
        ),
        rule(
            "R10",
            "*",
            TROUT,
            ("04-01", "10-31"),
            daily_limit=5,
            over_length=16,
            over_count=1,
            possession=10,
        ),
        rule("R11", "Otter River", TROUT, ("10-01", "06-04"), "RELEASE"),
        rule("R12", "*", "MUE", ("06-01", "11-30"), min=40, daily_limit=1, possession=1),
    ]
    return [[row[0], edition, *row[2:]] for row in rules]


@dataclass(frozen=True)
class Fish:
    """Fish alike: a row of Catch."""

    species: str
    length: object = None
    count: int = 1
    fate: str | None = "kept"
    angler: str | None = None
    time: object = None
    measured: str | None = None


@dataclass(frozen=True)
class Trip:
    """A trip: one angler and all day, unless it says otherwise."""

    water: str
    day: str
    fish: Sequence[Fish] = ()
    anglers: int = 1
    clients: Sequence[str] = ()
    guide_fished: str = "no"
    start: str = "6:00"
    end: str = "14:00"
    kind: str = "guided"
    status: str = "done"
    landed: int | None = None


def sheets(
    trips: Iterable[Trip], rules: Sequence[Row], settings: Sequence[Row] = (), units: str = "us"
) -> dict[str, Change]:
    """The sheets of a log with these trips and rules."""
    trips = list(trips)
    unit = "in" if units == "us" else "mm"
    headings = [heading.replace("(in)", f"({unit})") for heading in HEADINGS]
    rows = [
        [
            f"T-{number}",
            dt.date.fromisoformat(trip.day),
            trip.water,
            trip.start,
            trip.end,
            trip.anglers,
            ";".join(trip.clients),
            trip.guide_fished,
            trip.kind,
            trip.status,
        ]
        for number, trip in enumerate(trips, start=1)
    ]
    fish = [
        [f"T-{number}", "Jig", f.species, f.count, f.length, f.fate, f.angler, f.time, f.measured]
        for number, trip in enumerate(trips, start=1)
        for f in trip.fish
    ]
    catch = [
        "Trip",
        "Technique",
        "Species",
        "Count",
        f"Length ({unit})",
        "Fate",
        "Angler",
        "Time",
        "Measured",
    ]
    return {
        "Season": [["Setting", "Value"], ["Units", units], *settings],
        "Trips": [
            [
                "Trip",
                "Date",
                "Water",
                "Start",
                "End",
                "Anglers",
                "Client",
                "Guide fished",
                "Kind",
                "Status",
            ],
            *rows,
        ],
        "Effort": [
            ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
            *([f"T-{n}", "Jig", 300, max(1, t.anglers), t.landed] for n, t in enumerate(trips, start=1)),
        ],
        "Catch": [catch, *fish],
        "Techniques": [["Technique", "Style"], ["Jig", "slow"]],
        "Waters": [["Water", "Also called"], *([water, None] for water in WATERS)],
        "Keep rules": [headings, *rules],
    }


def check(
    write_log: WriteLog,
    trips: Iterable[Trip],
    rules: Sequence[Row] | None = None,
    settings: Sequence[Row] = (),
    period: tuple[dt.date | None, dt.date | None] = (None, None),
    units: str = "us",
    **changes: Change,
) -> KeepChecks:
    """What the check finds in a log with these trips, by the twelve rules unless others are given."""
    made = sheets(trips, the_twelve() if rules is None else rules, settings, units)
    reading = read_season(write_log({**made, **changes}))
    assert reading.season is not None, reading.problems
    return check_keep_rules(reading.season, reading.log, *period)


def results(checks: KeepChecks) -> list[tuple[str, str, str]]:
    """Species, result and rule of every row."""
    table = checks.table
    return list(zip(table["species"], table["result"], table["rule"], strict=True))


def broken(checks: KeepChecks) -> list[str]:
    """The rules of the rows that say to check something."""
    return checks.table.loc[checks.table["result"] == "check this", "rule"].tolist()
