"""Big fish on Fish: per 10 rod-hours by technique, each with its range."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Live, Table, Text
from reporter.books.season.fish_species import counted_note
from reporter.books.season.fish_words import GREY_NOTE, grey_rows
from reporter.books.season.numbers import live, numbers
from reporter.books.words import RESTS_ON, RESTS_ON_HELP, number
from reporter.compute.fish.big import BigFish
from reporter.compute.report import Report
from reporter.schema.thresholds import BIG_FISH_HOURS
from reporter.schema.units import usual_unit

_SET_IT = "Set Big fish from on the sheet Season, and the techniques that took the big ones stand here."
_NO_LENGTHS = "No fish in the rates has a length, so nothing can be said of big fish."
_SUMS = {"rod_hours": "rod_hours", "fish": "landed", "sized": "sized", "big": "big"}
_RATE = f'IF({{row.rod_hours}}>0,{BIG_FISH_HOURS:g}*{{row.big}}/{{row.rod_hours}},"")'


def big_fish_blocks(report: Report) -> tuple[Block, ...]:
    """Return big fish by technique, or a line that says what is missing for it."""
    big = report.fish.big
    if big is None:
        return (Text((Line("Big fish", "heading"), Line(_SET_IT))),)
    if not big.whole["sized"].iloc[0] > 0:
        return (Text((Line("Big fish", "heading"), Line(_NO_LENGTHS))),)
    return (_table(report, big),)


def _table(report: Report, big: BigFish) -> Table:
    table, whole = big.techniques, big.whole
    columns: dict[str, Sequence[Cell]] = {
        "no": table["technique_no"].tolist(),
        "technique": table["technique"].tolist(),
        "trips": live("COUNTIFS({pair.technique_no},{row.no},{pair.in_rates},1)", table["trips"]),
        "rate": live(_RATE, table["big_per_10_rod_hours"]),
        "low": numbers(table["low"]),
        "high": numbers(table["high"]),
        "rests_on": [RESTS_ON[rule] for rule in table["interval_rule"]],
    }
    season: dict[str, Cell] = {
        "technique": "Season",
        "trips": Live("SUMIFS({pair.new_trip},{pair.in_rates},1)", float(whole["trips"].iloc[0])),
        "rate": live(_RATE, whole["big_per_10_rod_hours"])[0],
        "low": numbers(whole["low"])[0],
        "high": numbers(whole["high"])[0],
        "rests_on": RESTS_ON[whole["interval_rule"].iloc[0]],
    }
    for key, source in _SUMS.items():
        own = f"SUMIFS({{pair.{source}}},{{pair.technique_no}},{{row.no}},{{pair.in_rates}},1)"
        columns[key] = live(own, table[key])
        season[key] = Live(f"SUMIFS({{pair.{source}}},{{pair.in_rates}},1)", float(whole[key].iloc[0]))
    unit = usual_unit("fish length", report.season.system)
    big_from = f"{unit.shown(report.season.settings['big_fish_mm']):.4g} {unit.label}"
    title = f"Big fish (from {big_from}) per {BIG_FISH_HOURS:g} rod-hours, by technique"
    return Table("big", _FIELDS, columns, title, _note(report), season, grey_rows(table))


def _note(report: Report) -> str:
    pairs = report.season.pairs
    outside = float(pairs.loc[~pairs["in_rates"], "big"].sum())
    more = f" Big fish outside the rates: {number(outside)}." if outside else ""
    return (
        "A fish without a length counts as not big: write down the length of every big one, if only "
        f"estimated.{more} {counted_note(report)} {GREY_NOTE}"
    )


_FIELDS = (
    Field("no", "No.", "plain"),
    Field("technique", "Technique"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("fish", "Landed", "whole", help="In the rates, of the species counted."),
    Field("sized", "With a length", "whole", help="Measured or estimated."),
    Field("big", "Big fish", "whole"),
    Field("rate", f"Per {BIG_FISH_HOURS:g} rod-hours", "two"),
    Field("low", "From", "two", help="Lower end of the range your record supports."),
    Field("high", "To", "two", help="Upper end of the range your record supports."),
    Field("rests_on", "The range rests on", help=RESTS_ON_HELP),
)
