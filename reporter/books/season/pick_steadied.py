"""How What worked steadies the rates of techniques on days as chosen, and orders them, live."""

from collections.abc import Sequence

import numpy as np

from reporter.books.blocks import Cell, Field, Table
from reporter.books.season.numbers import live
from reporter.books.season.pick_places import place_formula
from reporter.books.season.steadied import STEADIED_FIELDS, Steadied, steadied_columns
from reporter.compute.picker.pick import RATE_DECIMALS, Picked


def steadied_on_days(picked: Picked, kappa: float) -> Steadied:
    """Return what is steadied of a pick; kappa: the season's between-trip spread."""
    return Steadied(
        "moments", "pick", "pick_hours", "pick_fish", picked.table, picked.mean, picked.variance, kappa
    )


def steadied_techniques(picked: Picked, of: Steadied) -> Table:
    """Return every technique of the record with its rates, what it is ranked by and its place."""
    table = picked.table
    score = (
        f"IF({{row.rod_hours}}>0,ROUND(IF({of.offered},{{row.steadied}},{{row.rate}}),{RATE_DECIMALS}),-1)"
    )
    ranked = table["shrunken_rate"].fillna(table["fish_per_rod_hour"])
    scores = np.where(table["rod_hours"] > 0, np.round(ranked, RATE_DECIMALS), -1.0)
    columns: dict[str, Sequence[Cell]] = {
        **steadied_columns(of),
        "line": list(range(1, len(table) + 1)),
        "score": live(score, scores.tolist()),
        "place": live(place_formula("pick", "line"), table["place"]),
    }
    technique, number, *others = STEADIED_FIELDS
    fields = (
        technique,
        number,
        Field("line", "Line", "plain"),
        *others,
        Field("score", "Ranked by", "three"),
        Field("place", "Place", "plain"),
    )
    return Table("pick", fields, columns, title="Every technique")
