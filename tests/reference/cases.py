"""Logs of two or three trips, one for each place where a rule of the rows begins, ends or meets another."""

import datetime as dt
from collections.abc import Sequence

from tests.reference.log import Cell, Log, Row, Unread

DAY = dt.date(2026, 4, 5)
CLOCK = {"start": dt.time(6), "end": dt.time(8)}
BAD_CLOCK = {"start": dt.time(9), "end": dt.time(8)}
_TECHNIQUES: list[Row] = [
    {"technique": "Drop shot", "style": "slow", "also_called": "DS"},
    {"technique": "Jerkbait", "style": "moving", "also_called": None},
    {"technique": "Topwater", "style": "moving", "also_called": "drop shot"},
]


def trip(name: str = "A", **cells: Cell) -> Row:
    """A trip of four hours with two rods."""
    usual: Row = {"date": DAY, "water": "Lake Arden", "start": dt.time(6), "end": dt.time(10), "anglers": 2}
    return {"trip": name} | usual | cells


def stint(technique: Cell = "Drop shot", on: Cell = "A", **cells: Cell) -> Row:
    return {"trip": on, "technique": technique} | cells


def fish(technique: Cell = "Drop shot", on: Cell = "A", **cells: Cell) -> Row:
    return {"trip": on, "technique": technique, "species": "largemouth bass"} | cells


def season(
    trips: Sequence[Row] = (),
    stints: Sequence[Row] = (),
    catch: Sequence[Row] = (),
    *,
    later: bool = True,
    **settings: Cell,
) -> Log:
    """A log of trip A, unless others are given, and of trip B a day later with a fish in four rod-hours."""
    usual: Row = {"units": "us", "usual_end": dt.time(11)}
    next_day = trip("B", date=dt.date(2026, 4, 6))
    return Log(
        usual | settings,
        _TECHNIQUES,
        [{"water": "Lake Arden", "also_called": None}],
        [*(trips or (trip(),)), *([next_day] if later else [])],
        [*stints, *([stint(on="B", minutes=240, landed=1)] if later else [])],
        [*catch],
    )


CASES: dict[str, Log] = {
    "effort of exactly 150 % stays in": season(stints=[stint(minutes=240, rods=3, landed=1)]),
    "effort over 150 % leaves": season(stints=[stint(minutes=241, rods=3), stint("Jerkbait", minutes=5)]),
    "effort of exactly 105 % is no note": season(stints=[stint(minutes=252, rods=2)]),
    "effort of exactly 50 % is no note": season(stints=[stint(minutes=240, rods=1)]),
    "minutes on a trip without rods": season([trip(anglers=0)], [stint(minutes=60, landed=1)]),
    "parts on a trip without rods": season([trip(anglers=0)], [stint(parts=2, landed=1)]),
    "no parts at all beside others": season(stints=[stint(parts=0, landed=1), stint("Jerkbait", parts=2)]),
    "no minutes at all beside others": season(stints=[stint(minutes=0), stint("Jerkbait", minutes=60)]),
    "parts beside a stint without its technique": season(stints=[stint(None, parts=2), stint(parts=2)]),
    "parts beside parts that cannot be read": season(
        stints=[stint("Jerkbait", parts=Unread("some"), landed=2), stint(parts=2, landed=1)]
    ),
    "parts beside a clock": season(stints=[stint("Jerkbait", **CLOCK), stint(parts=2, landed=1)]),
    "parts beside half a clock": season(stints=[stint("Jerkbait", start=dt.time(9)), stint(parts=2)]),
    "parts beside a clock that cannot be": season(stints=[stint("Jerkbait", **BAD_CLOCK), stint(parts=2)]),
    "minutes win over a clock on a row": season(stints=[stint(minutes=60, landed=1, **CLOCK)]),
    "a clock wins over parts on a row": season(stints=[stint(parts=3, **CLOCK), stint("Jerkbait", parts=1)]),
    "a clock serves where minutes cannot be read": season(stints=[stint(minutes=Unread("long"), **CLOCK)]),
    "parts serve where minutes cannot be read": season(
        stints=[stint("Jerkbait", minutes=Unread("long"), parts=1), stint(parts=3)]
    ),
    "one stint without effort takes its technique, however it is spelled": season(
        stints=[stint(minutes=60, landed=1), stint("drop-shot", landed=2), stint("DS", minutes=60)]
    ),
    "another name that is a technique of its own": season(stints=[stint("drop shot", minutes=60)]),
    "a date with another trip that is set aside": season(
        [trip(), trip("C", anglers=Unread("crew"))], [stint(on=DAY, minutes=240)], [fish(on=DAY)]
    ),
    "a date whose only trip is set aside": season(
        [trip(anglers=Unread("crew"))], [stint(on=DAY, minutes=240)]
    ),
    "a date with a cancelled trip too": season(
        [trip(), trip("C", status="cancelled")], [stint(on=DAY, minutes=240)]
    ),
    "a trip number serves before a date": season([trip(), trip("C")], [stint(on="c", minutes=240)]),
    "a number that differs by a nought": season([trip("12"), trip("012")], [stint(on="12", parts=1)]),
    "a void trip before the season": season(
        [trip(), trip("V", date=dt.date(2026, 1, 1), status="void")],
        [stint(on="V", minutes=240)],
        first_day=dt.date(2026, 4, 1),
    ),
    "a void trip whose times cannot be": season([trip(), trip("V", status="void", **BAD_CLOCK)]),
    "a bare void number": season([trip(), {"trip": "V", "status": "void"}], [stint(minutes=9)]),
    "a cancelled trip without times": season(
        [trip(status="cancelled", start=None, anglers=None)], [stint(minutes=60, landed=1)]
    ),
    "a cancelled trip with fish": season(
        [trip(status="cancelled")], [stint(minutes=60, landed=2)], [fish(fate="kept")]
    ),
    "an unfinished log with parts": season(
        [trip(status="log not finished")], [stint(parts=1, landed=3), stint("Jerkbait", parts=0)]
    ),
    "nothing in the rates": season(
        [trip(status="log not finished")], [stint(minutes=60, landed=2)], later=False
    ),
    "no row of Effort": season(catch=[fish()], later=False),
    "one trip without a word on it": season(later=False),
    "hours off as long as the trip": season([trip(hours_off=4)], [stint(minutes=60)]),
    "a night with an end date": season(
        [trip(start=dt.time(18), end=dt.time(8), end_date=dt.date(2026, 4, 6))], [stint(parts=1)]
    ),
    "a wrap of exactly twelve hours": season([trip(start=dt.time(18), end=dt.time(6))], [stint(parts=1)]),
    "a day of exactly sixteen hours": season([trip(start=dt.time(4), end=dt.time(20))], [stint(parts=1)]),
    "a day of more than sixteen hours": season(
        [trip(start=dt.time(4), end=dt.time(20, 5))], [stint(parts=1)]
    ),
    "stints past midnight": season(
        [trip(start=dt.time(20), end=dt.time(4))],
        [stint(start=dt.time(23), end=dt.time(2)), stint("Jerkbait", start=dt.time(2), end=dt.time(4))],
    ),
    "a fish on another technique leaves the only stint its nameless fish": season(
        stints=[stint(minutes=240)], catch=[fish("Jerkbait"), fish(None)]
    ),
    "nameless fish on a trip without effort": season(catch=[fish("Jerkbait"), fish(None, count=2)]),
    "nameless fish beyond a tally of nought": season(
        stints=[stint(minutes=240, landed=0), stint("Jerkbait", minutes=200)], catch=[fish(None)]
    ),
    "nameless fish say what became of tallied ones": season(
        stints=[stint(minutes=100, landed=3), stint("Jerkbait", minutes=100, landed=1)],
        catch=[fish(fate="released"), fish(None, count=2, fate="kept")],
    ),
    "nameless fish beyond the tallies": season(
        stints=[stint(minutes=100, landed=3), stint("Jerkbait", minutes=100, landed=1)],
        catch=[fish(fate="released"), fish(None, count=6, fate="kept")],
    ),
    "one tally is less and another more": season(
        stints=[stint(minutes=100, landed=1), stint("Jerkbait", minutes=100, landed=4)],
        catch=[fish(count=3), fish("Jerkbait"), fish(None, count=2)],
    ),
    "nothing caught at all": season([trip(), trip("C")], [stint(minutes=60, landed=0)]),
    "bass where the counted species are black bass": season(
        stints=[stint(minutes=60)],
        catch=[fish(species="bass"), fish(species="black bass"), fish(species="spotted bass")],
        species_counted="largemouth bass; smallmouth bass",
    ),
    "bass that Season names, not counted": season(
        stints=[stint(minutes=60)],
        catch=[fish(species="bass")],
        species_counted="walleye",
        bass_means="black bass",
    ),
    "bass that nobody names": season(stints=[stint(minutes=60)], catch=[fish(species="bass")]),
}
