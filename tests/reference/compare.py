"""Where the tool's tables differ from the reference: one line a difference."""

import math
from collections import Counter
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping

from tests.reference.account import Account, Group
from tests.reference.catch import Pair, TripCatch
from tests.reference.trips import trip_key

Table = list[dict[str, str]]
Value = float | str | bool | None

RANGES = (
    ("fish", "fish_per_rod_hour", "low", "high"),
    ("kept", "kept_per_rod_hour", "kept_low", "kept_high"),
    ("released", "released_per_rod_hour", "released_low", "released_high"),
)
BITE_RANGE = ("bites_per_rod_hour", "bites_low", "bites_high")
FINDINGS = ("effort_above", "effort_below", "effort_over", "parts_mixed", "tally_less", "no_fish_written")
"""Findings that the rules of the rows count one by one."""

COUNTED_EXACTLY = frozenset(
    {"trips", "fish", "kept", "released", "fate_unknown", "bite_trips", "bites", "read"}
)


def differences(account: Account, tables: Mapping[str, Table]) -> list[str]:
    """Return every difference, as `place: field: reference, tool`."""
    return [
        *_rows(account, tables["rows"]),
        *_stints(account, tables["stints"]),
        *_fish(account, tables["fish"]),
        *_problems(account, tables["problems"]),
        *_pairs(account, tables["trip_techniques"]),
        *_trips(account, tables["trips"]),
        *_rates(account, tables),
    ]


def _fields(place: object, row: Mapping[str, str] | None, expected: Mapping[str, Value]) -> Iterator[str]:
    if row is None:
        yield f"{place}: the tool has no such row"
        return
    for field, value in expected.items():
        if not _same(field, value, row[field]):
            yield f"{place}: {field}: {value!r}, tool {row[field]!r}"


def _same(field: str, value: Value, written: str) -> bool:
    if value is None or isinstance(value, str):
        return written == (value or "")
    if isinstance(value, bool):
        return written == str(value).lower()
    if not written:
        return False
    if field in COUNTED_EXACTLY:
        return float(written) == value
    return math.isclose(float(written), value, rel_tol=1e-9, abs_tol=1e-12)


def _left(table: str, rows: Iterable[Hashable]) -> Iterator[str]:
    yield from (f"{table}: {key}: only the tool has it" for key in rows)


def _rows(account: Account, table: Table) -> Iterator[str]:
    rows = {row["sheet"]: row for row in table}
    for sheet, count in account.counts.items():
        expected = {
            "read": count.read,
            "used": count.used,
            "set_aside": count.set_aside,
            "blank": count.blank,
            "not_rows": count.not_rows,
        }
        yield from _fields(f"rows: {sheet}", rows.get(sheet), expected)


def _problems(account: Account, table: Table) -> Iterator[str]:
    codes = Counter(row["code"] for row in table)
    for code in FINDINGS:
        if codes[code] != account.notes.found[code]:
            yield f"problems: {code}: {account.notes.found[code]}, tool {codes[code]}"


def _stints(account: Account, table: Table) -> Iterator[str]:
    if len(table) != len(account.stints):
        yield f"stints: {len(account.stints)}, tool {len(table)}"
        return
    for stint, row in zip(account.stints, table, strict=True):
        expected: dict[str, Value] = {"landed": stint.landed, "missed": stint.missed, "rods": stint.rods}
        if stint.trip.logged and stint.rod_hours is not None:
            expected["rod_hours"] = stint.rod_hours
        yield from _fields(f"stint of row {row['row']}", row, expected)


def _fish(account: Account, table: Table) -> Iterator[str]:
    if len(table) != len(account.fish):
        yield f"fish: {len(account.fish)}, tool {len(table)}"
        return
    for fish, row in zip(account.fish, table, strict=True):
        expected: dict[str, Value] = {"fish": fish.fish}
        if fish.fish:
            expected |= {"trip": fish.trip.name, "counted": fish.counted, "fate": fish.fate}
        yield from _fields(f"fish of row {row['row']}", row, expected)


def _pairs(account: Account, table: Table) -> Iterator[str]:
    rows = {(trip_key(row["trip"]), account.techniques.of(row["technique"])): row for row in table}
    for catch in account.catches:
        for pair in catch.pairs.values():
            key = trip_key(catch.trip.name), pair.technique
            yield from _fields(f"pair {key}", rows.pop(key, None), _pair(pair))
        loose = rows.pop((trip_key(catch.trip.name), ""), {"fish": "0"})
        yield from _fields(f"loose fish of {catch.trip.name}", loose, {"fish": catch.beyond})
    yield from _left("trip_techniques", rows)


def _pair(pair: Pair) -> dict[str, Value]:
    expected: dict[str, Value] = {
        "stints": len(pair.stints),
        "tally": pair.tally,
        "on_rows": pair.on_rows,
        "fish": pair.fish,
        "kept": pair.fates["kept"],
        "released": pair.fates["released"],
        "fate_unknown": pair.fates["unknown"],
        "missed": pair.missed,
        "in_rates": pair.in_rates,
    }
    return expected | ({"rod_hours": pair.rod_hours} if pair.in_rates else {})


def _trips(account: Account, table: Table) -> Iterator[str]:
    rows = {trip_key(row["trip"]): row for row in table}
    for catch in account.catches:
        row = rows.pop(trip_key(catch.trip.name), None)
        yield from _fields(f"trip {catch.trip.name}", row, _trip(catch))
    yield from _left("trips", rows)


def _trip(catch: TripCatch) -> dict[str, Value]:
    effort = sum(pair.rod_hours for pair in catch.in_rates)
    inside = sum(pair.fish for pair in catch.in_rates)
    expected: dict[str, Value] = {} if catch.trip.status == "void" else {"rods": catch.trip.rods}
    return expected | {
        "boat_hours": catch.trip.boat_hours if catch.trip.fished else None,
        "rod_hours": effort,
        "fish": catch.fish,
        "kept": catch.fates["kept"],
        "released": catch.fates["released"],
        "fate_unknown": catch.fates["unknown"],
        "fish_in_rates": inside,
        "fish_per_rod_hour": inside / effort if catch.in_rates else None,
        "in_rates": bool(catch.in_rates),
    }


def _rates(account: Account, tables: Mapping[str, Table]) -> Iterator[str]:
    technique, water = account.techniques.of, account.waters.of
    yield from _groups(
        "technique", tables["techniques"], account.groups(lambda pair: pair.technique), technique
    )
    yield from _groups("style", tables["styles"], account.groups(lambda pair: account.style(pair.technique)))
    yield from _groups("water", tables["waters"], account.groups(lambda pair: pair.trip.water), water)
    yield from _groups("month", tables["months"], account.groups(lambda pair: pair.trip.month))
    yield from _groups("season", tables["season"], account.groups(lambda _: "season"))


def _groups(
    key: str, table: Table, groups: dict[Hashable, Group], known_as: Callable[[object], str] = str
) -> Iterator[str]:
    rows = {known_as(row[key]): row for row in table}
    if len(rows) < len(table):
        yield f"{key}: the tool has one twice"
    for name, group in groups.items():
        yield from _fields(f"{key} {name}", rows.pop(str(name), None), _group(group))
    for name, row in rows.items():
        empty = {"trips": 0, "rod_hours": 0, "fish": 0, "fish_per_rod_hour": None, "low": None, "high": None}
        yield from _fields(f"{key} {name}, not fished", row, empty)


def _group(group: Group) -> dict[str, Value]:
    expected: dict[str, Value] = {
        "trips": len(group.trips),
        "rod_hours": group.rod_hours,
        "boat_hours": group.boat_hours,
        "fish": group.fish("fish"),
        "kept": group.fish("kept"),
        "released": group.fish("released"),
        "fate_unknown": group.fish("unknown"),
        "interval_rule": group.range("fish").rule,
    }
    for measure, *fields in RANGES:
        found = group.range(measure)
        expected |= zip(fields, (found.rate, found.low, found.high), strict=True)
    return expected | _bites(group.bitten)


def _bites(group: Group) -> dict[str, Value]:
    expected: dict[str, Value] = {"bite_trips": len(group.trips)}
    if not group.pairs:
        return expected | dict.fromkeys((*BITE_RANGE, "share_landed"))
    found, bites = group.range("bites"), group.fish("bites")
    expected |= zip(BITE_RANGE, (found.rate, found.low, found.high), strict=True)
    return expected | {"bites": bites, "share_landed": group.fish("fish") / bites if bites else None}
