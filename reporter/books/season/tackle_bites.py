"""The tables of Tackle on bites missed against fish landed, by technique, cover and variant."""

from collections.abc import Sequence

from reporter.books.blocks import Cell, Field, Table
from reporter.books.season.tackle_groups import (
    KEYS,
    LABELS,
    NO,
    label_cells,
    live,
    sums,
    trips_of,
    trips_of_all,
)
from reporter.books.words import counted
from reporter.compute.report import Report
from reporter.compute.tackle.rates import TackleRates
from reporter.schema.thresholds import MIN_OWN_TRIPS

_FLAGS = {"technique": "told_bites", "cover": "cover_bites", "variant": "variant_bites"}
"""Grouping -> the flag of stints whose bites count in it."""


def bite_table(report: Report, by: str) -> Table:
    """Return bites missed against fish landed by a grouping, of the groups that say."""
    rates = report.tackle.rates[by]
    table = rates.table[rates.table["bite_trips"] > 0]
    key = f"{KEYS[by]},{{stint.{_FLAGS[by]}}},1"
    columns: dict[str, Sequence[Cell]] = {
        **label_cells(report, by, table),
        "trips": live(trips_of(by, "bite_trips"), table["bite_trips"]),
        **{name: live(formula, table[source]) for name, source, formula in _bites(key)},
    }
    of_all = _bites(f"{{stint.{_FLAGS[by]}}},1")
    total: dict[str, Cell] = {
        LABELS[by][0].key: "Season",
        "trips": live(trips_of_all(by, "bite_trips"), rates.whole["bite_trips"])[0],
        **{name: live(formula, rates.whole[source])[0] for name, source, formula in of_all},
    }
    fields = (
        NO,
        *LABELS[by],
        Field("trips", "Trips that say", "whole"),
        Field("rod_hours", "Rod-hours that say", "one"),
        Field("missed", "Missed", "whole"),
        Field("landed", "Landed", "whole"),
        Field("share", "Share landed", "share", help="Landed / (landed + missed)."),
    )
    return Table(
        f"bites_{by}",
        fields,
        columns,
        title=f"Bites missed against fish landed by {by}",
        note=_left_out(rates),
        total=total,
        grey=(table["bite_trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _bites(key: str) -> tuple[tuple[str, str, str], ...]:
    """Return column of the page, column of the rates, formula."""
    bites = "({row.missed}+{row.landed})"
    return (
        ("rod_hours", "bite_rod_hours", sums("rod_hours", key)),
        ("missed", "missed", sums("missed", key)),
        ("landed", "landed", sums("counted_fish", key)),
        ("share", "share_landed", f'IF({bites}>0,{{row.landed}}/{bites},"")'),
    )


def _left_out(rates: TackleRates) -> str:
    if not rates.left_out:
        return ""
    pairs = counted(rates.left_out, "technique on a trip", "techniques on trips")
    return f"Left out: {pairs} whose fish cannot be told apart."
