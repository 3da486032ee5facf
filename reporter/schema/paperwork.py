"""The arithmetic of use, fees and returned days, each with its source.

Agencies count in their own ways and change them: what is here is only how a rule that a guide names is worked
out. The form or the permit that he holds comes first.
"""

from decimal import Decimal
from typing import NamedTuple

CLIENT_DAYS, OUTINGS, TRIPS, ANGLER_DAYS = "client-days", "outings", "trips", "angler-days"
ANGLER_HOURS, LINE_HOURS, LOG_TRIPS, GUIDE_DAYS = "angler-hours", "line-hours", "log trips", "guide-days"
AVERAGE_HOURS = "average customer hours"

RULE_WORDS: dict[str, str] = {
    CLIENT_DAYS: "Each client counts once for every calendar day with any service, however short or often "
    "that day; guides and crew are not counted.",
    OUTINGS: "Each client counts once for every trip row and day: out in the morning and again in the "
    "evening is two.",
    TRIPS: "Rows with the same Outing are one trip, however many days, boats or sites; a row without an "
    "Outing is a trip of its own.",
    ANGLER_DAYS: "Each client who fishes counts once for every calendar day with any fishing; the guide is "
    "not counted.",
    ANGLER_HOURS: "Anglers times hours from lines in to lines out, less hours off, added over the trips; the "
    "guide's own rod is not counted.",
    LINE_HOURS: "Lines times hours from lines in to lines out, less hours off, added over the trips.",
    LOG_TRIPS: "Each calendar day is a trip, and each site fished on it a trip of its own, guide by guide; a "
    "blank Site is one site of its water.",
    GUIDE_DAYS: "Each guide counts once for every calendar day with a trip.",
    AVERAGE_HOURS: "Hours of all customers added, over the customers: rows with the same Outing are one trip "
    "of each customer, its hours added. A trip's hours run from dock to dock where both times are written, "
    "else from lines in to lines out.",
}
"""Counting rule -> what it counts, in one or two sentences."""

RECORDS_YEARS, AFTER_PAPER_YEARS = 7, 3
"""How long to keep what stands behind a filing: years after the season (common practice, no source), and
after the paper's end, as a land manager may ask for it (43 CFR 2932.55)."""

RETURNED_SHARE = 0.5
NEXT_SHARE = 1.25
"""In a use review a returned day counts a half (a whole one where it was beyond the holder's control), and
the next allocation is 125 % of use, at most the old one. 16 USC 8546-8547 (second-hand)."""


class LandShare(NamedTuple):
    """A line of the table of fee cuts: up to which share of the time, which part of the receipts is charged.

    up_to: in per cent of all time, on that land. below: that share itself is not in the line any more.
    """

    up_to: Decimal
    part: Decimal
    below: bool = False


LAND_SHARES: tuple[LandShare, ...] = (
    LandShare(Decimal(6), Decimal("0.20"), below=True),
    LandShare(Decimal(60), Decimal("0.60")),
)
LAND_SHARE_WHOLE = Decimal(61)
"""Under 6 % of the time on that land the fee is taken of 0.20, from 6 to 60 % of 0.60, from 61 % of all
receipts: a land manager's page on post-use reports. It says nothing between 60 and 61 %."""
