"""Length frequency on Fish: a chart a main species, and the figures behind the charts."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Chart, Field, Line, Live, Series, Table, Text
from reporter.books.season.fish_words import each_of_caught, headed, of_caught
from reporter.books.words import counted
from reporter.compute.fish.frequency import main_species
from reporter.compute.fish.sizes import bin_width
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_FREQUENCY_FISH
from reporter.schema.units import usual_unit

_CHART_ROWS = 13


def length_blocks(report: Report) -> tuple[Block, ...]:
    """Return the charts of lengths, or a line that says why there is none."""
    species = report.fish.species
    main = main_species(species)
    if main.empty:
        said = f"No species has {MIN_FREQUENCY_FISH} measured fish, so there is no chart of lengths"
        return (Text((Line("Lengths", "heading"), Line(f"{said}. {each_of_caught(species)}"))),)
    season = report.season
    unit, width = usual_unit("fish length", season.system).label, bin_width(season.system)
    charts = [
        Chart(
            "column",
            f"{headed(name)}: {of_caught(*figures)}",
            f"Length ({unit}); a bar holds the fish from there to {width} {unit} more",
            "Fish measured",
            (Series("Fish measured", "length.from", f"length.{code.lower()}"),),
            rows=_CHART_ROWS,
            alt=f"Columns of how many {name} were measured at each length.",
        )
        for code, name, *figures in zip(
            main["species"],
            main["name"],
            main["measured_fished"],
            main["weighed_fished"],
            main["caught"],
            strict=True,
        )
    ]
    return (Text((Line("Lengths", "heading"),)), *charts)


def length_table(report: Report) -> tuple[Table, ...]:
    """Return the figures behind the charts, nothing where there are none."""
    fish, unit = report.fish, usual_unit("fish length", report.season.system).label
    main = main_species(fish.species)
    if main.empty:
        return ()
    by_species = dict(iter(fish.frequency.groupby("species", sort=False)))
    bins = by_species[main["species"].iloc[0]]["bin"].astype(int).tolist()
    columns: dict[str, Sequence[Cell]] = {"from": bins}
    fields = [Field("from", f"Length from ({unit})", "plain")]
    for place, code, name in zip(main.index, main["species"], main["name"], strict=True):
        formula = f"SUMIFS({{fish.measured_fish}},{{fish.species_no}},{place + 1},{{fish.bin}},{{row.from}})"
        columns[code.lower()] = [Live(formula, value) for value in by_species[code]["fish"].tolist()]
        fields.append(Field(code.lower(), headed(name), "whole"))
    surplus = (
        f" {counted(fish.surplus, 'more fish', 'more fish')} tallied without a row: no kind, no length."
        if fish.surplus
        else ""
    )
    note = f"{each_of_caught(main)}{surplus} A length on an edge lies in the step above it."
    return (Table("length", tuple(fields), columns, "The figures of the charts: measured fish", note),)
