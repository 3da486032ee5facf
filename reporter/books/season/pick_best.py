"""What did best among the stints that fit the choices on What worked, live."""

from collections.abc import Sequence

import numpy as np

from reporter.books.blocks import Cell, Field, Live, Table
from reporter.books.season.pick_places import or_blank, place_formula
from reporter.books.season.rate_tables import RATE
from reporter.compute.picker.pick import HOURS_DECIMALS, RATE_DECIMALS, Picked
from reporter.compute.picker.record import ATTRIBUTES
from reporter.schema.thresholds import MIN_BEST_HOURS

_FITTING = '{cond_stint.fits},">="&{picked.kept}'


def best_tables(picked: Picked) -> tuple[Table, ...]:
    """Return a table for each attribute of which anything is recorded."""
    return tuple(_did(key, picked) for key in ATTRIBUTES if not picked.best[key].empty)


def _did(key: str, picked: Picked) -> Table:
    """Return what was caught on each label of an attribute, on days that fit."""
    table = picked.best[key]
    conditions = f"{{cond_stint.{key}_no}},{{row.no}},{_FITTING}"
    enough = f"AND(ROUND({{row.rod_hours}},{HOURS_DECIMALS})>={MIN_BEST_HOURS:g},{{row.fish}}>0)"
    score = f"IF({enough},ROUND({{row.rate}},{RATE_DECIMALS}),-1)"
    rates = table["fish_per_rod_hour"]
    scores = np.where(table["place"] > 0, np.round(rates, RATE_DECIMALS), -1.0)
    columns: dict[str, Sequence[Cell]] = {
        "label": table["label"].tolist(),
        "no": table["no"].tolist(),
        "rod_hours": [
            Live(f"SUMIFS({{cond_stint.pick_hours}},{conditions})", value)
            for value in table["rod_hours"].tolist()
        ],
        "fish": [
            Live(f"SUMIFS({{cond_stint.pick_fish}},{conditions})", value) for value in table["fish"].tolist()
        ],
        "rate": [Live(RATE, rate) for rate in or_blank(rates)],
        "score": [Live(score, value) for value in scores.tolist()],
        "place": [Live(place_formula(f"did_{key}", "no"), value) for value in table["place"].tolist()],
    }
    fields = (
        Field("label", key.capitalize()),
        Field("no", "No.", "plain"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("fish", "Landed", "whole"),
        Field("rate", "Fish per rod-hour", "two"),
        Field("score", "Ranked by", "three"),
        Field("place", "Place", "plain"),
    )
    return Table(f"did_{key}", fields, columns, title=f"{key.capitalize()} on such days")
