"""Limits in fish a day: how many may be kept, and how many longer than a length."""

from collections.abc import Iterator

import numpy as np
import pandas as pd

from reporter.compute.anglers import NOBODY
from reporter.compute.keep_rules.found import Found, fish_said, kinds_said, limit_said, of_rows
from reporter.compute.keep_rules.kinds import NOT, SURELY
from reporter.compute.keep_rules.lengths import longer, sized
from reporter.compute.keep_rules.people import Bag, bags, counting
from reporter.compute.keep_rules.rule import CLOSED, RELEASE, KeepRule
from reporter.compute.keep_rules.standing import Standing
from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS
from reporter.schema.units import System


def may_count(fish: pd.DataFrame, stands: Standing, column: int) -> tuple[np.ndarray, np.ndarray]:
    """Return which fish a rule surely counts as kept on their day, and which it perhaps counts.

    Perhaps: of a kind that is not told apart, of a fate nobody wrote, of a day that is not sure, or of rules
    that cannot be checked.
    """
    fate, same_day = fish["fate"].to_numpy(), (fish["day"] == fish["last_day"]).to_numpy()
    surely = (fate == "kept") & (stands.holds[:, column] == SURELY) & same_day & ~stands.blocked
    spoken = (stands.holds[:, column] > NOT) | (stands.blocked & (stands.matched[:, column] > NOT))
    return surely, (fate != "released") & spoken & ~surely


def limits(fish: pd.DataFrame, stands: Standing, system: System) -> Iterator[Found]:
    """Yield what anglers and parties kept of a day beyond a rule's Daily limit or Over count."""
    for column, rule in enumerate(stands.read.rules):
        if not rule.binds_all or rule.action in (RELEASE, CLOSED):
            continue
        surely, perhaps = may_count(fish, stands, column)
        if not np.isnan(rule.daily_limit):
            yield from _over(counting(fish, rule, surely, perhaps), rule, rule.daily_limit, "")
        if not np.isnan(rule.over_count):
            length = fish["length_mm"].to_numpy(dtype=float)
            known = sized(fish, np.where(surely, SURELY, NOT), rule).known
            not_over = ~longer(length, rule.over_mm) & ~np.isnan(length) & ~fish["estimated"].to_numpy()
            over = known & longer(length, rule.over_mm)
            may_be = (surely | perhaps) & ~over & (rule.fork_length | ~not_over)
            what = f" over {limit_said(rule.over_mm, system)}"
            yield from _over(counting(fish, rule, over, may_be), rule, rule.over_count, what)


def _over(counted: pd.DataFrame, rule: KeepRule, limit: float, what: str) -> Iterator[Found]:
    for bag in bags(counted, rule, limit):
        if not _is_said(bag):
            told = _of_person if bag.person != NOBODY else _of_party
            yield told(bag, rule, limit, what)


def _of_person(bag: Bag, rule: KeepRule, limit: float, what: str) -> Found:
    says = f"your rule {rule.name} allows {limit:g} an angler a day."
    if bag.total > limit:
        return of_rows(bag.rows, CHECK_THIS, rule.name, f"{_kept(bag, what)}; {says}")
    return of_rows(bag.rows, CANNOT_CHECK, rule.name, f"{_may_be(bag, what)}; {says}")


def _of_party(bag: Bag, rule: KeepRule, limit: float, what: str) -> Found:
    allowed = f"{bag.anglers} x {limit:g}"
    here = f", {allowed} here" if bag.anglers > 1 else ""
    says = f"your rule {rule.name} allows {limit:g} an angler a day{here}"
    each = "party total; cannot check each angler"
    perhaps = float(bag.rows["perhaps"].sum())
    result = CANNOT_CHECK
    if not bag.anglers:
        said = f"{_may_be(bag, what)}, and the trip had no anglers; {says}."
    elif bag.total > limit * bag.anglers:
        result = CHECK_THIS
        said = f"{_kept(bag, what)}; {says}{f' ({each})' if bag.anglers > 1 else ''}."
    elif bag.total + perhaps > limit * bag.anglers:
        said = f"{_may_be(bag, what)}; {says}."
    else:
        said = f"{_may_be(bag, what)}, within {allowed} of {rule.name}: {each}."
    return of_rows(bag.rows, result, rule.name, said)


def _is_said(bag: Bag) -> bool:
    """Whether other results say already of every fish of a bag that it cannot be checked."""
    kept = (bag.rows["fate"] == "kept") & ~bag.rows["blocked"]
    return not bag.total and not bag.rows.loc[kept, "perhaps"].any()


def _kept(bag: Bag, what: str) -> str:
    """Return how many fish were entered as kept, by whom where he is named, on how many trips."""
    sure = bag.rows[bag.rows["surely"] > 0]
    by = f" by {bag.person}" if bag.person != NOBODY else ""
    trips = sure["trip_no"].nunique()
    on = f" on {trips} trips" if trips > 1 else ""
    return f"{fish_said(bag.total, sure['species'].unique(), what)} entered as kept{by}{on}"


def _may_be(bag: Bag, what: str) -> str:
    """Return how many fish were entered as kept, and how many more may have to be counted."""
    rows = bag.rows[bag.rows["perhaps"] > 0]
    if rows.empty:
        return _kept(bag, what)
    more = f"{rows['perhaps'].sum():g}{' more' if bag.total else ''} {kinds_said(rows['species'].unique())}"
    return f"{_kept(bag, what)}, and {more} may count" if bag.total else f"{more} may count as kept{what}"
