"""Fish by species, and the season's best fish with where they stand in the log."""

from collections.abc import Mapping, Sequence

import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Line, Live, Table, Text
from reporter.books.season.data_sheets import cells
from reporter.books.season.fish_words import headed, of_caught, of_species
from reporter.books.season.numbers import live, numbers
from reporter.books.season.row_fields import row_fields, with_season
from reporter.books.words import counted, number
from reporter.compute.catch import FATES
from reporter.compute.report import Report
from reporter.schema.species import BY_CODE
from reporter.schema.units import System, usual_unit

_SUMS: Mapping[str, str] = {
    "fish": of_species("fish"),
    **{
        name: of_species("fish", f"{{fish.fate_no}},{fate_no}")
        for fate_no, name in enumerate(("kept", "released", "fate_unknown"), start=1)
    },
    "measured": of_species("measured_fish"),
    "weighed": of_species("weighed"),
}
"""Column of the table -> its formula; fates are numbered as in FATES."""

_ALL_SURPLUS = "SUM({pair.landed})-SUMIFS({fish.fish},{fish.counted},1)"
_FATE_WORDS = dict(zip(FATES, ("kept", "released", "not known"), strict=True))


def species_block(report: Report) -> Table:
    """Return all fish by species, with those that were only tallied in a line of their own."""
    table, season = report.fish.species, report.season
    more = 1 if season.surplus else 0  # line of fish that were only tallied
    last: list[Cell] = [None] * more
    columns: dict[str, Sequence[Cell]] = {
        "no": [*range(1, len(table) + 1), *last],
        "species": [*map(headed, table["name"]), *["Tallied, kind not written"] * more],
    }
    beyond: dict[str, Cell] = {
        "fish": Live(_ALL_SURPLUS, season.surplus),
        "fate_unknown": Live("{row.fish}", season.surplus),
    }
    for key, formula in _SUMS.items():
        columns[key] = [*live(formula, table[key]), *[beyond.get(key, 0)] * more]
    columns["counted"] = [*("yes" if yes else "no" for yes in table["counted"]), *["yes"] * more]
    columns |= {key: [*made, *last] for key, made in _largest(table, season.system).items()}
    total: dict[str, Cell] = {"species": "All"}
    for key in _SUMS:
        tallied = season.surplus if key in beyond else 0.0
        total[key] = Live(f"SUM({{kind.{key}}})", float(table[key].sum()) + tallied)
    return Table("kind", _fields(season.system), columns, "By species", _note(report), total)


def _fields(system: System) -> tuple[Field, ...]:
    length, weight = usual_unit("fish length", system).label, usual_unit("weight", system).label
    return (
        Field("no", "No.", "plain"),
        Field("species", "Species"),
        Field("fish", "Caught", "whole"),
        Field("kept", "Kept", "whole"),
        Field("released", "Released", "whole"),
        Field("fate_unknown", "Fate not known", "whole"),
        Field("measured", "Measured", "whole", help="A length is written that is not estimated."),
        Field("weighed", "Weighed", "whole", help="A weight of one fish is written that is not estimated."),
        Field(
            "counted", "Species counted", help="yes: the rates count it, as Species counted on Season says."
        ),
        Field("longest", f"Longest ({length})", "two"),
        Field("longest_how", "It was"),
        Field("heaviest", f"Heaviest ({weight})", "two", help="Of fish with a row of their own."),
        Field("heaviest_how", "It was"),
    )


def _largest(table: pd.DataFrame, system: System) -> dict[str, list[Cell]]:
    length, weight = usual_unit("fish length", system), usual_unit("weight", system)
    return {
        "longest": [*numbers(table["longest_mm"] / length.scale)],
        "longest_how": [*_how(table["longest_mm"], table["longest_estimated"])],
        "heaviest": [*numbers(table["heaviest_g"] / weight.scale)],
        "heaviest_how": [*_how(table["heaviest_g"], table["heaviest_estimated"])],
    }


def _how(values: pd.Series, estimated: pd.Series) -> list[str | None]:
    told = zip(values.notna(), estimated, strict=True)
    return [("estimated" if guessed else "measured") if there else None for there, guessed in told]


def _note(report: Report) -> str:
    season = report.season
    outside = float(season.identity.loc[season.identity["reason"] != "", "fish"].sum())
    inside = float(season.identity["fish"].sum()) - outside
    counts = f"{number(inside)} landed in the rates and {number(outside)} outside them"
    parts = [f"All: {counts}; see How it is worked out."]
    idle = float(report.fish.species["fish"].sum() - report.fish.species["caught"].sum())
    if idle:
        parts.append(
            f"{counted(idle, 'fish', 'fish')} of trips cancelled or void: here, in no table of sizes."
        )
    return " ".join(parts)


def best_blocks(report: Report) -> tuple[Block, ...]:
    """Return the season's best fish, and a line on those that were weighed without a length."""
    best = report.fish.best
    lines = []
    if best.no_length:
        weight = usual_unit("weight", report.season.system)
        heaviest = f"{weight.shown(best.heaviest_g):.2f} {weight.label}, {BY_CODE[best.heaviest].name}"
        lines.append(
            Line(f"Weighed without a length: {number(best.no_length)}, the heaviest {heaviest}.", "note")
        )
    if best.table.empty:
        lines.insert(0, Line("No fish of the species counted has a length, so there is no list of the best."))
        return (Text(tuple(lines)),)
    return (_best_table(report), *((Text(tuple(lines)),) if lines else ()))


def _best_table(report: Report) -> Table:
    season = report.season
    table = with_season(season, report.fish.best.table)
    length, weight = usual_unit("fish length", season.system), usual_unit("weight", season.system)
    places = row_fields(season, "Catch")
    columns: dict[str, Sequence[Cell]] = {
        "place": list(range(1, len(table) + 1)),
        "species": [headed(BY_CODE[code].name) for code in table["species"]],
        "length": numbers(table["length_mm"] / length.scale),
        "weight": numbers(table["weight_g"] / weight.scale),
        "measured": ["estimated" if how == "estimated" else "measured" for how in table["measured"]],
        "fate": [_FATE_WORDS[fate] for fate in table["fate"]],
        "alike": table["fish"].tolist(),
        **{key: cells(table[key]) for key in ("trip", "date", "water", "technique")},
        **{field.key: cells(table[field.key]) for field in places},
    }
    fields = (
        Field("place", "No.", "plain"),
        Field("species", "Species"),
        Field("length", f"Length ({length.label})", "two"),
        Field("weight", f"Weight ({weight.label})", "two"),
        Field("measured", "It was", help="A blank Measured on Catch counts as measured."),
        Field("fate", "Fate"),
        Field("alike", "Fish", "whole", help="More than 1: a row for several alike."),
        Field("trip", "Trip"),
        Field("date", "Date", "date"),
        Field("water", "Water"),
        Field("technique", "Technique"),
        *places,
    )
    title = "The best fish of the season, by length"
    return Table("best", fields, columns, title, counted_note(report))


def counted_note(report: Report) -> str:
    """Return how many fish of the species counted were measured and weighed, of all with tallied ones."""
    table = report.fish.species[report.fish.species["counted"]]
    keys = ("measured_fished", "weighed_fished", "caught")
    measured, weighed, caught = (float(table[key].sum()) for key in keys)
    return f"Species counted: {of_caught(measured, weighed, caught + report.fish.surplus)}."
