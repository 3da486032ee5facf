"""The tables of a season report, each computed once for the workbook and the CSV files alike."""

from typing import TYPE_CHECKING, NamedTuple

import pandas as pd

from reporter.compute.condition_classes import (
    ConditionClasses,
    classes_in_seasons,
    condition_classes,
    several_classes,
)
from reporter.compute.conditions.rates import by_condition
from reporter.compute.conditions.record import StintRecord, stint_record
from reporter.compute.fish.page import FishPage, fish_page
from reporter.compute.fronts.hard_days import hard_day_ratios
from reporter.compute.fronts.rates import by_day_type
from reporter.compute.hunches.verdict import Result, tried
from reporter.compute.keep_rules.check import KeepChecks, check_keep_rules
from reporter.compute.paperwork.paperwork import Paperwork, paperwork
from reporter.compute.picker.record import PickRecord, pick_record
from reporter.compute.ranking import Ranking, rank
from reporter.compute.rates import rate_table
from reporter.compute.ratio import index_of_dispersion
from reporter.compute.season import Season
from reporter.compute.side_by_side import SideBySide, side_by_side
from reporter.compute.tackle.tackle import Tackle, season_tackle
from reporter.compute.water_card import water_card
from reporter.compute.weeks import week_table
from reporter.schema.sheets import names

if TYPE_CHECKING:
    from reporter.compute.seasons import Seasons

STYLES = (*names.STYLES, "")
"""Styles in the order of the page; "" is not given."""


class Report(NamedTuple):
    """A season with its rate tables (see `reporter.compute.rates.rate_table`).

    techniques also has technique_no, style, shrunken_rate and probability_best (see Ranking) and is in the
    order of rates, those without effort last;
    phi is the season's index of dispersion over trips (1 where fish come one by one), NaN below two trips.
    by_day_type and hard_days (verdict and call: one row a style): see `reporter.compute.fronts`.
    fair: comparisons that allow for the day. record: the stints with what they were fished under;
    by_condition: their rates; picks: what What worked chooses from. hunches: each with what the
    record says of it. fish: sizes, for the sheet Fish. tackle: what hung up, was lost and used.
    water_card: what paid on each water, month by month; weeks: the season along time.
    paperwork and keep_checks: for the sheet Paperwork; of several logs those of the last season.
    seasons: of several logs, season against season.
    water_months is keyed on water_month: water and month with a line break between.
    """

    season: Season
    techniques: pd.DataFrame
    styles: pd.DataFrame
    waters: pd.DataFrame
    months: pd.DataFrame
    water_months: pd.DataFrame
    whole: pd.DataFrame
    phi: float
    by_day_type: pd.DataFrame
    hard_days: dict[str, pd.DataFrame]
    ranking: Ranking
    fair: SideBySide
    record: StintRecord
    by_condition: pd.DataFrame
    picks: PickRecord
    hunches: tuple[Result, ...]
    tackle: Tackle
    water_card: pd.DataFrame
    weeks: pd.DataFrame
    fish: FishPage
    paperwork: Paperwork
    keep_checks: KeepChecks
    seasons: "Seasons | None" = None


def make_report(season: Season) -> Report:
    """Compute the rate tables of a season."""
    pairs, spread = season.pairs, season.spread
    named = pairs[pairs["technique"] != ""]
    pairs = pairs.assign(water_month=pairs["water"] + "\n" + pairs["month"])
    techniques = _techniques(season, named)
    record = stint_record(season)
    # The tool's own day type, never the call.
    classes = _classes(season)
    kinds = _in_seasons(season, classes)
    last = season.each[-1]
    water_months = rate_table(pairs, "water_month", _water_months(season, pairs), spread)
    ranking = rank(techniques, named, spread)
    steadied = ranking.table[["technique", "shrunken_rate", "probability_best"]]
    return Report(
        season=season,
        techniques=techniques.merge(steadied, on="technique", how="left"),
        styles=rate_table(named, "style", _present(named, "style", STYLES), spread),
        waters=rate_table(pairs, "water", _present(pairs, "water", season.waters), spread),
        months=rate_table(pairs, "month", sorted(set(pairs["month"]) - {""}), spread),
        water_months=water_months,
        fish=fish_page(season),
        water_card=water_card(record, water_months, season.techniques),
        weeks=week_table(pairs, season.trips),
        whole=rate_table(pairs, "season", ["season"], spread),
        phi=_phi(season),
        by_day_type=by_day_type(named, spread),
        hard_days={
            by: hard_day_ratios(named, key, spread)
            for by, key in (("verdict", "day_type"), ("call", "call_day_type"))
        },
        ranking=ranking,
        fair=side_by_side(named, season.stints, season.trips["trip_no"].tolist(), kinds, season.spread),
        record=record,
        picks=pick_record(season, record),
        hunches=tuple(tried(hunch, season, record, kinds) for hunch in season.hunches),
        tackle=season_tackle(season, record),
        paperwork=paperwork(last, last.log),
        keep_checks=check_keep_rules(last, last.log),
        by_condition=by_condition(
            record, spread, _present(named, "style", STYLES), season.techniques["technique"].tolist()
        ),
        seasons=_seasons(season, classes) if season.several else None,
    )


def _seasons(season: Season, classes: ConditionClasses) -> "Seasons":
    from reporter.compute.seasons import seasons_of

    return seasons_of(season, classes)


def _classes(season: Season) -> ConditionClasses:
    """Return the kind of day of each trip, by what its own log says."""
    return several_classes([condition_classes(one.trips, one.readings, season.system) for one in season.each])


def _in_seasons(season: Season, classes: ConditionClasses) -> ConditionClasses:
    """Return kinds of day as strata: of several seasons each its own, as the day is not all that differs."""
    if not season.several:
        return classes
    return classes_in_seasons(classes, season.trips["log"], [one.label for one in season.several])


def _phi(season: Season) -> float:
    trips = season.trips
    return float(index_of_dispersion(trips["fish_in_rates"], trips["rod_hours"]).phi[0])


def _techniques(season: Season, pairs: pd.DataFrame) -> pd.DataFrame:
    fished = season.techniques[season.techniques["technique"].isin(pairs["technique"])]
    rates = rate_table(pairs, "technique", fished["technique"].tolist(), season.spread)
    table = fished.merge(rates, on="technique")
    return table.sort_values(
        ["fish_per_rod_hour", "technique_no"], ascending=[False, True], na_position="last", ignore_index=True
    )


def _present(pairs: pd.DataFrame, column: str, order: tuple[str, ...] | list[str]) -> list[str]:
    there = set(pairs[column].dropna())
    return [label for label in order if label in there]


def _water_months(season: Season, pairs: pd.DataFrame) -> list[str]:
    there = pairs.loc[pairs["in_rates"], ["water", "month", "water_month"]].drop_duplicates()
    place = {water: index for index, water in enumerate(season.waters)}
    ordered = there.assign(place=there["water"].map(place)).sort_values(["place", "month"])
    return ordered["water_month"].tolist()
