"""What the store would give of logs, put together row by row from what was typed."""

from collections import defaultdict
from collections.abc import Iterable

import pandas as pd

from reporter.compute.rollup.kept import Kept
from tests.rollup_logs import WATERS, GuideLog

CODES = {"largemouth bass": "LMB", "smallmouth bass": "SMB", "walleye": "WAE", "bluegill": "BLG"}
FATES = {"kept": "kept", "released": "released", None: "unknown"}
PERMITS = {name: permit or "no permit written" for name, _, _, permit in WATERS}
EFFORT = ("trips", "trips_unfinished", "anglers", "angler_hours", "rod_hours")
Sums = dict[tuple[object, ...], list[float]]


def kept_of(logs: list[GuideLog]) -> Kept:
    effort: Sums = defaultdict(lambda: [0.0] * 5)
    fish: Sums = defaultdict(lambda: [0.0] * 3)
    for guide, log in enumerate(logs):
        for day in log.days:
            place, month = (day.water, day.permit or PERMITS[day.water]), f"{day.date:%Y-%m}"
            hours = float(day.anglers * day.hours)
            for key in ((guide, *place), (guide, month)):
                figures = (1, 0, day.anglers, hours, hours)
                effort[key] = [one + more for one, more in zip(effort[key], figures, strict=True)]
            for species, count, fate in day.fish:
                for key in ((guide, *place, CODES[species]), (guide, month, CODES[species])):
                    fish[key][list(FATES).index(fate)] += count
    return Kept(
        logs=_logs(logs),
        effort_places=_table(effort, ("guide", "water", "permit"), EFFORT),
        effort_months=_table(effort, ("guide", "month"), EFFORT),
        fish_places=_table(fish, ("guide", "water", "permit", "species"), FATES.values()),
        fish_months=_table(fish, ("guide", "month", "species"), FATES.values()),
        months=pd.DataFrame(
            sorted({(g, f"{day.date:%Y-%m}", "trip") for g, log in enumerate(logs) for day in log.days}),
            columns=["guide", "month", "state"],
        ),
        problems=pd.DataFrame(columns=["log", "code", "found"]),
    )


def _logs(logs: list[GuideLog]) -> pd.DataFrame:
    rows = [
        {"log": number + 1, "guide": number, "code": log.code, "guide_name": log.name or "", "file": "x.xlsx"}
        for number, log in enumerate(logs)
    ]
    none = dict.fromkeys(("rows_read", "rows_used", "rows_set_aside", "trips_set_aside"), 0)
    return pd.DataFrame(rows).assign(system="us", first="", last="", **none)


def _table(sums: Sums, keys: tuple[str, ...], figures: Iterable[str]) -> pd.DataFrame:
    rows = sorted((*key, *values) for key, values in sums.items() if len(key) == len(keys))
    return pd.DataFrame(rows, columns=[*keys, *figures])
