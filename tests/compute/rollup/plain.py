"""What the store would give of logs, put together row by row from what was typed."""

from collections import defaultdict
from collections.abc import Iterator

import pandas as pd

from reporter.compute.rollup.kept import Kept
from tests.rollup_logs import WATERS, GuideLog

CODES = {"largemouth bass": "LMB", "smallmouth bass": "SMB", "walleye": "WAE", "bluegill": "BLG"}
FATES = {"kept": "kept", "released": "released", None: "unknown"}
PERMITS = {name: permit or "no permit written" for name, _, _, permit in WATERS}
CELL = ["figure", "species", "water", "month", "permit"]


def rows_of(logs: list[GuideLog]) -> Iterator[tuple[tuple[str, ...], int, float]]:
    """Every number typed, as (figure, species, water, month, permit), number of the guide, value."""
    for guide, log in enumerate(logs):
        for day in log.days:
            place = (day.water, f"{day.date:%Y-%m}", day.permit or PERMITS[day.water])
            hours = float(day.anglers * day.hours)
            effort = {"trips": 1, "anglers": day.anglers, "angler_hours": hours, "rod_hours": hours}
            if day.status == "log not finished":
                effort["trips_unfinished"] = 1
            for figure, value in effort.items():
                yield (figure, "", *place), guide, value
            for species, count, fate in day.fish:
                yield (FATES[fate], CODES[species], *place), guide, count


def kept_of(logs: list[GuideLog]) -> Kept:
    """A log without a code is one of which it is not known whose it is."""
    values: dict[tuple[str, ...], float] = defaultdict(float)
    guides: dict[tuple[str, ...], set[int]] = defaultdict(set)
    by_guide: dict[tuple[int, str, str], float] = defaultdict(float)
    lines: dict[tuple[str, str], set[int]] = defaultdict(set)
    for cell, guide, value in rows_of(logs):
        figure, species, *place = cell
        values[cell] += value
        by_guide[guide, species, figure] += value
        known = {guide} if logs[guide].code else set()
        guides[cell] |= known
        for line in zip(("all", "water", "month", "permit"), ("", *place), strict=True):
            lines[line] |= known
    cells = [
        (*cell, value, len(guides[cell]), *_ends(guides[cell])) for cell, value in sorted(values.items())
    ]
    return Kept(
        logs=_logs(logs),
        cells=pd.DataFrame(cells, columns=[*CELL, "value", "guides", "one", "other"]),
        by_guide=pd.DataFrame(
            [(*key, value) for key, value in sorted(by_guide.items())],
            columns=["guide", "species", "figure", "value"],
        ),
        lines=pd.DataFrame(
            [(*line, len(several)) for line, several in lines.items()], columns=["by", "name", "guides"]
        ),
        months=pd.DataFrame(
            sorted({(g, f"{day.date:%Y-%m}", "trip") for g, log in enumerate(logs) for day in log.days}),
            columns=["guide", "month", "state"],
        ),
        problems=pd.DataFrame(columns=["log", "code", "found"]),
    )


def _ends(guides: set[int]) -> tuple[float, float]:
    return (min(guides), max(guides)) if guides else (float("nan"), float("nan"))


def _logs(logs: list[GuideLog]) -> pd.DataFrame:
    rows = [
        {
            "log": number + 1,
            "guide": number,
            "known": bool(log.code),
            "code": log.code or "",
            "guide_name": log.name or "",
            "file": "x.xlsx",
        }
        for number, log in enumerate(logs)
    ]
    none = dict.fromkeys(("rows_read", "rows_used", "rows_set_aside", "trips_set_aside"), 0)
    return pd.DataFrame(rows).assign(system="us", first="", last="", **none)
