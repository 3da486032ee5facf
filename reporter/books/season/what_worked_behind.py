"""What stands behind What worked: how much fits, the moments of steadied rates, what did best on what."""

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Figure, Figures, Line, Live, Sheet, Table, Text, Value
from reporter.books.season.pick_lists import KEY, pick_lists
from reporter.books.words import counted
from reporter.compute.picker.pick import HOURS_DECIMALS, RATE_DECIMALS, Picked
from reporter.compute.picker.record import ATTRIBUTES, PickRecord
from reporter.compute.picker.words import SENTENCES, sentence
from reporter.compute.shrink import ROUNDING
from reporter.schema.choices import CHOICES, STEPS, TEMPERATURE
from reporter.schema.thresholds import MIN_BEST_HOURS, MIN_PICK_HOURS, MIN_SHRUNKEN_TECHNIQUES

NAME = "Behind What worked"

_LEAD = "How the answer on What worked comes about; it follows the choices made there."
_FITTING = '{cond_stint.fits},">="&{picked.kept}'
_RATE = 'IF({row.rod_hours}>0,{row.fish}/{row.rod_hours},"")'


def found(picked: Picked) -> Figures:
    """Return how much of the record fits, and what the order rests on."""
    whole = f"ROUND(INDEX({{level.rod_hours}},1),{HOURS_DECIMALS})"
    said = (
        f'IF(AND({{picked.kept}}=0,{whole}<{MIN_PICK_HOURS:g}),"{SENTENCES["whole"]}",'
        f'IF({{moments.techniques}}<{MIN_SHRUNKEN_TECHNIQUES},"{SENTENCES["few"]}",'
        f'IF({{moments.variance}}>0,"{SENTENCES["steadied"]}","{SENTENCES["alike"]}")))'
    )
    hours = float(picked.hours[picked.kept])
    fit = Live("INDEX({level.rod_hours},{picked.kept}+1)", hours)
    return Figures(
        "picked",
        (
            Figure("hours", "Rod-hours that fit", fit, "one"),
            Figure(
                "kept",
                f"Steps of fit kept, of {len(STEPS)}",
                Live("MAX({level.enough})", picked.kept),
                "plain",
            ),
            Figure("said", "The order", Live(said, sentence(picked))),
        ),
    )


def fits_formula(bands: int) -> str:
    """Return the formula of the steps that a stint fits, in order; bands: those of water temperature."""
    formula = "0"
    for key, exact in reversed(STEPS):
        number, own = f"{{chosen.{key}}}", f"{{row.{key}_no}}"
        fit = f"({own}={number})" if exact else f"(ABS({own}-{number})<=1)*({own}<={bands})"
        formula = f"IF(({number}=0)+{fit}>0,1+{formula},0)"
    return formula


def behind(record: PickRecord, picked: Picked, chosen: Mapping[str, int], kappa: float) -> Sheet:
    """Return the sheet with all on which the answer stands."""
    best = tuple(_did(key, picked) for key in ATTRIBUTES if not picked.best[key].empty)
    blocks: tuple[Block, ...] = (
        Text((Line(NAME, "title"), Line(_LEAD, "lead"), *_left_out(record))),
        _chosen(chosen),
        _levels(picked),
        _moments(picked, kappa),
        _techniques(picked),
        *best,
        pick_lists(record.labels),
    )
    return Sheet(NAME, blocks, group="behind", landscape=True, private=True)


def _left_out(record: PickRecord) -> tuple[Line, ...]:
    if not record.left_out:
        return ()
    pairs = counted(record.left_out, "technique on a trip", "techniques on trips")
    return (Line(f"Left out: {pairs} fished under several kinds of day whose fish cannot be told apart."),)


def _chosen(chosen: Mapping[str, int]) -> Figures:
    items = tuple(
        Figure(choice.key, choice.words, _number(row, choice.key, chosen), "plain")
        for row, choice in enumerate(CHOICES, start=1)
    )
    return Figures("chosen", items, title="Your choices by number (0: any)")


def _number(row: int, key: str, chosen: Mapping[str, int]) -> Live:
    """Return the number of a choice; text is compared in a way that knows no wildcards."""
    cell = f"INDEX({{choice.pick}},{row})"
    formula = f'IF({cell}="",0,SUMPRODUCT(--({{{KEY}.{key}}}={cell}),{{{KEY}.no}}))'
    return Live(formula, chosen.get(key, 0))


def _levels(picked: Picked) -> Table:
    words = {choice.key: choice.words for choice in CHOICES}
    steps = list(range(len(STEPS) + 1))
    labels = ["everything", *(_step_words(words[key], key, exact) for key, exact in STEPS)]
    enough = [
        step if np.round(hours, HOURS_DECIMALS) >= MIN_PICK_HOURS else 0
        for step, hours in zip(steps, picked.hours, strict=True)
    ]
    fitting = 'SUMIFS({cond_stint.pick_hours},{cond_stint.fits},">="&{row.step})'
    at_least = f"IF(ROUND({{row.rod_hours}},{HOURS_DECIMALS})>={MIN_PICK_HOURS:g},{{row.step}},0)"
    columns: dict[str, Sequence[Cell]] = {
        "label": labels,
        "step": steps,
        "rod_hours": [Live(fitting, hours) for hours in picked.hours.tolist()],
        "enough": [Live(at_least, step) for step in enough],
    }
    fields = (
        Field("label", "Fits so far"),
        Field("step", "Step", "plain"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("enough", "Enough", "plain"),
    )
    return Table("level", fields, columns, title="How much of your record fits, step by step")


def _step_words(words: str, key: str, exact: bool) -> str:
    if key != TEMPERATURE:
        return words
    return f"{words}, its band" if exact else f"{words}, its band and those beside it"


def _moments(picked: Picked, kappa: float) -> Figures:
    """Return the moments of the steadied rates, as in `reporter.compute.shrink`."""
    table = picked.table
    total, fish = float(table["rod_hours"].sum()), float(table["fish"].sum())
    mean = picked.mean if np.isfinite(picked.mean) else 0.0
    phi = float(table["phi"].sum())
    observed = float(_away(picked).sum())
    excess = observed - mean * phi / total if total > 0 else 0.0
    variance = picked.variance if np.isfinite(picked.variance) else 0.0
    offered = f"{{moments.techniques}}>={MIN_SHRUNKEN_TECHNIQUES}"
    above = f"{{moments.excess}}>{ROUNDING:g}*{{moments.observed}}"
    items = (
        Figure("kappa", "Spread between trips (kappa)", kappa, "three"),
        Figure("hours", "Rod-hours", Live("SUM({pick.rod_hours})", total), "one"),
        Figure("fish", "Landed", Live("SUM({pick.fish})", fish), "whole"),
        Figure(
            "mean",
            "Fish per rod-hour, all of them (m)",
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
            "Spread of their true rates (A)",
            Live(f"IF(AND({offered},{above}),{{moments.excess}},0)", variance),
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


def _techniques(picked: Picked) -> Table:
    table = picked.table
    there = "{row.rod_hours}>0"
    weight = "{moments.variance}/({moments.variance}+{moments.mean}*{row.phi}/{row.rod_hours})"
    drawn = f"IF({{moments.variance}}>0,{weight}*({{row.rate}}-{{moments.mean}}),0)"
    offered = f"{{moments.techniques}}>={MIN_SHRUNKEN_TECHNIQUES}"
    steadied = f'IF(AND({there},{offered}),{{moments.mean}}+{drawn},"")'
    score = f"IF({there},ROUND(IF({offered},{{row.steadied}},{{row.rate}}),{RATE_DECIMALS}),-1)"
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
        "rate": live(_RATE, or_blank(rate)),
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
        "place": live(_place("pick", "line"), table["place"].tolist()),
    }
    fields = (
        Field("technique", "Technique"),
        Field("technique_no", "Technique no.", "plain"),
        Field("line", "Line", "plain"),
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("fish", "Landed", "whole"),
        Field("rate", "Fish per rod-hour", "two"),
        Field("squares", "Squares of rod-hours", "one"),
        Field("phi", "Times a lone fish's variance (phi)", "two"),
        Field("away", "Distance from m", "three"),
        Field("steadied", "Steadied", "two"),
        Field("score", "Ranked by", "three"),
        Field("place", "Place", "plain"),
    )
    return Table("pick", fields, columns, title="Every technique")


def or_blank(values: pd.Series) -> list[Value]:
    """Return a column as cells of formulas, which show nothing as an empty text."""
    return ["" if pd.isna(value) else value for value in values.tolist()]


def _place(table: str, order: str) -> str:
    above = f"SUMPRODUCT(--({{{table}.score}}>{{row.score}}))"
    tied = f"SUMPRODUCT(({{{table}.score}}={{row.score}})*({{{table}.{order}}}<{{row.{order}}}))"
    return f"IF({{row.score}}<0,0,1+{above}+{tied})"


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
        "rate": [Live(_RATE, rate) for rate in or_blank(rates)],
        "score": [Live(score, value) for value in scores.tolist()],
        "place": [Live(_place(f"did_{key}", "no"), value) for value in table["place"].tolist()],
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
