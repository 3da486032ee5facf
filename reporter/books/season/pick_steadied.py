"""How What worked steadies the rates of techniques: the moments and the techniques, live."""

from collections.abc import Sequence

import numpy as np

from reporter.books.blocks import Cell, Field, Figure, Figures, Live, Table, Value
from reporter.books.season.pick_places import or_blank, place_formula
from reporter.books.season.rate_tables import RATE
from reporter.compute.picker.pick import RATE_DECIMALS, Picked
from reporter.compute.picker.words import STEADIED
from reporter.compute.shrink import ROUNDING
from reporter.schema.thresholds import MIN_SHRUNKEN_TECHNIQUES

_OFFERED = f"{{moments.techniques}}>={MIN_SHRUNKEN_TECHNIQUES}"
_BUNCHING = "1: fish come one by one. 2: by bunches, so that a rate is as unsure as with half the rod-hours."
_DISTANCE = "Of its rate from that of all of them, squared, by its share of the rod-hours."


def moments(picked: Picked, kappa: float) -> Figures:
    """Return the moments of the steadied rates, as in `reporter.compute.shrink`."""
    table = picked.table
    total, fish = float(table["rod_hours"].sum()), float(table["fish"].sum())
    mean = picked.mean if np.isfinite(picked.mean) else 0.0
    phi = float(table["phi"].sum())
    observed = float(_away(picked).sum())
    excess = observed - mean * phi / total if total > 0 else 0.0
    variance = picked.variance if np.isfinite(picked.variance) else 0.0
    above = f"{{moments.excess}}>{ROUNDING:g}*{{moments.observed}}"
    items = (
        Figure("kappa", "Spread between trips", kappa, "three", "0: trips differ by luck alone"),
        Figure("hours", "Rod-hours", Live("SUM({pick.rod_hours})", total), "one"),
        Figure("fish", "Landed", Live("SUM({pick.fish})", fish), "whole"),
        Figure(
            "mean",
            "Fish per rod-hour, all of them",
            Live("IF({moments.hours}>0,{moments.fish}/{moments.hours},0)", mean),
            "three",
        ),
        Figure(
            "techniques",
            "Techniques that fit",
            Live('COUNTIFS({pick.rod_hours},">0")', int((table["rod_hours"] > 0).sum())),
            "plain",
        ),
        Figure("observed", "Spread of their rates", Live("SUM({pick.away})", observed), "three"),
        Figure(
            "excess",
            "Of it beyond chance",
            Live(
                "IF({moments.hours}>0,{moments.observed}-{moments.mean}*SUM({pick.phi})/{moments.hours},0)",
                excess,
            ),
            "three",
        ),
        Figure(
            "variance",
            "Spread of their true rates",
            Live(f"IF(AND({_OFFERED},{above}),{{moments.excess}},0)", variance),
            "three",
        ),
    )
    return Figures("moments", items, title="How rates are steadied")


def _away(picked: Picked) -> np.ndarray:
    table = picked.table
    total = table["rod_hours"].sum()
    with np.errstate(all="ignore"):
        away = table["rod_hours"] / total * (table["fish_per_rod_hour"] - picked.mean) ** 2
    return away.fillna(0.0).to_numpy()


def steadied_techniques(picked: Picked) -> Table:
    """Return every technique of the record with its rates, what it is ranked by and its place."""
    table = picked.table
    there = "{row.rod_hours}>0"
    weight = "{moments.variance}/({moments.variance}+{moments.mean}*{row.phi}/{row.rod_hours})"
    drawn = f"IF({{moments.variance}}>0,{weight}*({{row.rate}}-{{moments.mean}}),0)"
    steadied = f'IF(AND({there},{_OFFERED}),{{moments.mean}}+{drawn},"")'
    score = f"IF({there},ROUND(IF({_OFFERED},{{row.steadied}},{{row.rate}}),{RATE_DECIMALS}),-1)"
    rate, shrunk = table["fish_per_rod_hour"], table["shrunken_rate"]
    scores = np.where(table["rod_hours"] > 0, np.round(shrunk.fillna(rate), RATE_DECIMALS), -1.0)

    def live(formula: str, values: Sequence[Value]) -> list[Cell]:
        return [Live(formula, value) for value in values]

    columns: dict[str, Sequence[Cell]] = {
        "technique": table["technique"].tolist(),
        "technique_no": table["technique_no"].tolist(),
        "line": list(range(1, len(table) + 1)),
        "trips": live(
            'COUNTIFS({pair.technique_no},{row.technique_no},{pair.pick_hours},">0")', table["trips"].tolist()
        ),
        "rod_hours": live(
            "SUMIFS({pair.pick_hours},{pair.technique_no},{row.technique_no})", table["rod_hours"].tolist()
        ),
        "fish": live(
            "SUMIFS({pair.pick_fish},{pair.technique_no},{row.technique_no})", table["fish"].tolist()
        ),
        "rate": live(RATE, or_blank(rate)),
        "squares": live(
            "SUMPRODUCT(({pair.technique_no}={row.technique_no})*{pair.pick_hours}*{pair.pick_hours})",
            table["squares"].tolist(),
        ),
        "phi": live(
            f'IF({there},1+{{moments.kappa}}*{{moments.mean}}*{{row.squares}}/{{row.rod_hours}},"")',
            or_blank(table["phi"]),
        ),
        "away": live(
            f"IF({there},{{row.rod_hours}}/{{moments.hours}}*({{row.rate}}-{{moments.mean}})^2,0)",
            _away(picked).tolist(),
        ),
        "steadied": live(steadied, or_blank(shrunk)),
        "score": live(score, scores.tolist()),
        "place": live(place_formula("pick", "line"), table["place"].tolist()),
    }
    fields = (
        Field("technique", "Technique"),
        Field("technique_no", "Technique no.", "plain"),
        Field("line", "Line", "plain"),
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("fish", "Landed", "whole"),
        Field("rate", "Fish per rod-hour", "two"),
        Field("squares", "Squares of rod-hours", "one", help="Each trip's rod-hours times themselves."),
        Field("phi", "Bunching", "two", help=_BUNCHING),
        Field("away", "Distance from all of them", "three", help=_DISTANCE),
        Field("steadied", "Steadied", "two", help=STEADIED),
        Field("score", "Ranked by", "three"),
        Field("place", "Place", "plain"),
    )
    return Table("pick", fields, columns, title="Every technique")
