"""Limits in fish a day: how many may be kept, and how many longer than a length."""

from collections.abc import Iterator

import numpy as np
import pandas as pd

from reporter.compute.anglers import NOBODY
from reporter.compute.keep_rules.found import Found, fish_said, kinds_said, limit_said
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
        found = _of_person(bag, rule, limit, what) if bag.person else _of_party(bag, rule, limit, what)
        if found:
            yield found


def _of_person(bag: Bag, rule: KeepRule, limit: float, what: str) -> Found | None:
    says = f"your rule {rule.name} allows {limit:g} an angler a day."
    if bag.total > limit:
        return bag_found(bag, rule, CHECK_THIS, f"{kept_said(bag, what)}; {says}")
    if not bag.total:
        return None  # said already: nothing is known of these fish
    return bag_found(bag, rule, CANNOT_CHECK, f"{kept_said(bag, what)}, and {_more(bag)}; {says}")


def _of_party(bag: Bag, rule: KeepRule, limit: float, what: str) -> Found | None:
    allowed = f"{bag.anglers} x {limit:g}"
    says = f"your rule {rule.name} allows {limit:g} an angler a day, {allowed} here"
    each = "party total; cannot check each angler"
    if not bag.total:
        return None
    if not bag.anglers:
        return bag_found(bag, rule, CANNOT_CHECK, f"{kept_said(bag, what)}, and the trip had no anglers.")
    if bag.total > limit * bag.anglers:
        each = f" ({each})" if bag.anglers > 1 else ""
        return bag_found(bag, rule, CHECK_THIS, f"{kept_said(bag, what)}; {says}{each}.")
    perhaps = float(bag.rows["perhaps"].sum())
    if perhaps and bag.total + perhaps > limit * bag.anglers:
        return bag_found(bag, rule, CANNOT_CHECK, f"{kept_said(bag, what)}, and {_more(bag)}; {says}.")
    return bag_found(
        bag, rule, CANNOT_CHECK, f"{kept_said(bag, what)}, within {allowed} of {rule.name}: {each}."
    )


def kept_said(bag: Bag, what: str = "") -> str:
    """Return how many fish were entered as kept, by whom where he is named, on which trips."""
    sure = bag.rows[bag.rows["surely"] > 0]
    by = f" by {bag.person}" if bag.person != NOBODY else ""
    trips = sure["trip_no"].nunique()
    on = f" on {trips} trips" if trips > 1 else ""
    return f"{fish_said(bag.total, sure['species'].unique(), what)} entered as kept{by}{on}"


def _more(bag: Bag) -> str:
    """Return what is not sure of a bag's other fish."""
    rows = bag.rows[bag.rows["perhaps"] > 0]
    count = float(rows["perhaps"].sum())
    return f"{count:g} more {kinds_said(rows['species'].unique())} may count"


def bag_found(bag: Bag, rule: KeepRule, result: str, said: str) -> Found:
    """Return what was found about a bag; its last trip shows it."""
    trips = tuple(sorted(set(bag.rows["trip_no"].tolist())))
    species = tuple(sorted(set(bag.rows["species"])))
    return Found(trips, bag.rows["day"].iloc[0].date(), species, result, (rule.name,), said)
