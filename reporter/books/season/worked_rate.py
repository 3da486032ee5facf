"""The season's own worked example: the rate of one technique and its range, step by step and live."""

import numpy as np

from reporter.books.blocks import Block, Cell, Figure, Figures, Live
from reporter.compute.records import records
from reporter.compute.report import Report
from reporter.schema.thresholds import LEVEL, MIN_OWN_TRIPS

_KEY = "example"
_TAIL = (1 - LEVEL) / 2
_Z = 1.959963984540054  # two-sided normal quantile of LEVEL
_OWN = "{pair.technique_no},{example.no},{pair.in_rates},1"
_MINE = "({pair.technique_no}={example.no})*({pair.in_rates}=1)"


def rate_example(report: Report) -> tuple[Block, ...]:
    """Return the example of the technique with most rod-hours that has trips and fish enough for a range."""
    table = report.techniques
    own = table[(table["trips"] >= MIN_OWN_TRIPS) & (table["fish"] > 0)]
    if own.empty:
        return ()
    row = records(own.sort_values("rod_hours", ascending=False).head(1))[0]
    trips, fish, hours, rate = (row[key] for key in ("trips", "fish", "rod_hours", "fish_per_rod_hour"))
    pairs = report.season.pairs
    of_trips = pairs[pairs["in_rates"] & (pairs["technique"] == row["technique"])]
    apart = ((of_trips["landed"] - rate * of_trips["rod_hours"]) ** 2).sum()
    variance = trips / (trips - 1) * apart / hours**2
    widening = _widening(trips)
    one_by_one = rate / hours
    used = max(variance * widening, one_by_one)
    effective = rate**2 / used
    squares = f"SUMPRODUCT({_MINE}*({{pair.landed}}-{{example.rate}}*{{pair.rod_hours}})^2)"
    steps: tuple[tuple[str, str, Cell, str], ...] = (
        ("no", "Technique no.", row["technique_no"], row["technique"]),
        ("trips", "Trips", Live(f"COUNTIFS({_OWN})", trips), "n"),
        ("fish", "Landed on them", Live(f"SUMIFS({{pair.landed}},{_OWN})", fish), ""),
        ("hours", "Rod-hours on them", Live(f"SUMIFS({{pair.rod_hours}},{_OWN})", hours), ""),
        ("rate", "Fish per rod-hour", Live("{example.fish}/{example.hours}", rate), "landed / rod-hours"),
        (
            "variance",
            "Variance between trips",
            Live(f"{{example.trips}}/({{example.trips}}-1)*{squares}/{{example.hours}}^2", variance),
            "n / (n - 1) x sum of (landed - rate x rod-hours)^2 over trips / (all rod-hours)^2",
        ),
        (
            "widening",
            "Widened for few trips by",
            Live(f"(T.INV.2T({1 - LEVEL:.2f},{{example.trips}}-1)/{_Z!r})^2", widening),
            "(t / 1.96)^2, t on n - 1",
        ),
        (
            "one_by_one",
            "Variance if fish came one by one",
            Live("{example.rate}/{example.hours}", one_by_one),
            "rate / rod-hours",
        ),
        (
            "used",
            "Variance that is used",
            Live("MAX({example.variance}*{example.widening},{example.one_by_one})", used),
            "the larger of the two",
        ),
        (
            "effective",
            "Fish that would vary as much",
            Live("{example.rate}^2/{example.used}", effective),
            "y* = rate^2 / variance",
        ),
        (
            "low",
            "From",
            _limit(_TAIL, "{example.effective}", row["low"]),
            f"gamma quantile {_TAIL:.3f} of y*",
        ),
        (
            "high",
            "To",
            _limit(1 - _TAIL, "{example.effective}+1", row["high"]),
            f"rate / y* x gamma quantile {1 - _TAIL:.3f} of y* + 1",
        ),
    )
    whole = frozenset({"no", "trips", "fish"})
    items = tuple(
        Figure(key, label, value, "plain" if key in whole else "three", remark)
        for key, label, value, remark in steps
    )
    title = f"Worked through: the rate of {row['technique']} and its range"
    return (Figures(_KEY, items, title=title),)


def _limit(share: float, shape: str, value: float) -> Live:
    return Live(f"{{example.rate}}/{{example.effective}}*GAMMA.INV({share:.3f},{shape},1)", value)


def _widening(trips: float) -> float:
    from scipy.special import stdtrit

    return float((stdtrit(trips - 1, (1 + LEVEL) / 2) / _Z) ** 2) if np.isfinite(trips) else np.nan
