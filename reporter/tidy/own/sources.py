"""How the rows of one sheet of the log are found in a worksheet of another layout."""

from collections.abc import Set

from reporter.schema.log import BY_KEY
from reporter.schema.own_layout import ABOVE, CLOCK, TELL_TRIPS_APART
from reporter.tidy.not_rows import FREE_TEXT
from reporter.tidy.own.find import FoundSheet
from reporter.tidy.own.groups import shared_and_groups
from reporter.tidy.places import Placed, Source, TripCells, Worksheet

_REPEATS = {"trips": (), "effort": ("technique", "stint", "start")}
"""Sheet key -> what, with the trip, tells its rows apart where they are repeated."""

_OTHER = {"catch": "effort", "effort": "catch"}
"""A technique alone makes no fish where the worksheet has stints, nor a stint where it has fish; on the row
of a trip it makes a stint: it was fished all day."""


def columns_of(found: FoundSheet, key: str) -> dict[str, Placed]:
    """Return the columns of a sheet of the log in a worksheet, by key; of a group's the first."""
    columns: dict[str, Placed] = {}
    for column, placed in found.places.items():
        if column.target == key:
            columns.setdefault(column.key, placed)
    return columns


def source_of(found: FoundSheet, key: str, *, several: bool) -> Source:
    """Return how rows of a sheet (by key) are found; several: whether more worksheets hold trips."""
    mine = [(column, placed) for column, placed in found.places.items() if column.target == key]
    shared, groups = shared_and_groups(key, mine)
    keys = shared.keys() | {name for group in groups for name in group.columns.keys() | group.fixed.keys()}
    shared |= _lent(found, key, keys)
    if CLOCK.key in shared:
        shared |= {"start": shared[CLOCK.key], "end": shared[CLOCK.key]}
    row_is = found.own.row_is
    alone = not columns_of(found, _OTHER.get(key, "")) or (key == "effort" and row_is == "trips")
    repeated = key in ABOVE.get(row_is, ())
    pointed = "trip" in shared and not (repeated and key == "trips")
    numbered_here = pointed or key not in ("trips", "effort", "catch", "conditions")
    return Source(
        _worksheet(found),
        shared,
        tuple(placed for name, placed in shared.items() if name != "technique" or alone),
        groups,
        None if numbered_here else _trip_cells(found, several=several),
        _REPEATS[key] if repeated and not groups else None,
        speaks=key == (row_is if columns_of(found, row_is) else _first_target(found)),
    )


def _first_target(found: FoundSheet) -> str:
    return next(column.target for column in found.places if column.target)


def _lent(found: FoundSheet, key: str, keys: Set[str]) -> dict[str, Placed]:
    """Return the columns that stints and fish of one worksheet lend each other: technique, and trip."""
    if key not in ("effort", "catch"):
        return {}
    both = [(c, p) for c, p in found.places.items() if c.target in ("effort", "catch")]
    lent = {c.key: p for c, p in both if c.key == "technique" and not c.group and "technique" not in keys}
    if not columns_of(found, "trips"):
        lent |= {c.key: p for c, p in both if c.key == "trip" and "trip" not in keys}
    return lent


def _trip_cells(found: FoundSheet, *, several: bool) -> TripCells | None:
    """Return how the worksheet tells its trips apart; None where it has none."""
    trips = columns_of(found, "trips")
    before = f"{found.raw.name} " if several else ""
    if "trip" in trips:
        return TripCells("number", (trips["trip"],))
    if not trips:
        return None
    if found.own.row_is == "trips":
        return TripCells("row", tuple(trips.values()), before)
    telling = tuple(trips[key] for key in TELL_TRIPS_APART if key in trips)
    return TripCells("cells", telling or tuple(trips.values()), before)


def _worksheet(found: FoundSheet) -> Worksheet:
    main = BY_KEY[found.own.row_is]
    columns = columns_of(found, main.key)
    needed = tuple(columns[c.key].position for c in main.columns if c.required and c.key in columns)
    return Worksheet(
        found.raw.name,
        found.headings.last_row,
        {placed.position: placed.heading for placed in found.places.values()},
        needed,
        frozenset(p.position for c, p in found.places.items() if c.key in FREE_TEXT or not c.target),
    )
