"""All of the paperwork of a period, computed once for every page that prints it."""

from dataclasses import dataclass
from functools import cached_property

import pandas as pd

from reporter.compute.paperwork.account import row_account
from reporter.compute.paperwork.counting import Use, counted_uses
from reporter.compute.paperwork.documents import document_table
from reporter.compute.paperwork.fees import fee_table
from reporter.compute.paperwork.harvest import harvest_table
from reporter.compute.paperwork.ledger import ledger
from reporter.compute.paperwork.licences import licence_table
from reporter.compute.paperwork.log_numbers import log_numbers
from reporter.compute.paperwork.numbering import Run, number_runs
from reporter.compute.paperwork.passengers import passengers_table
from reporter.compute.paperwork.period import OPEN, Period
from reporter.compute.paperwork.reports import Owed, owed_reports
from reporter.compute.paperwork.sea_days import sea_days
from reporter.compute.paperwork.trips import filing_trips
from reporter.compute.paperwork.use import use_table
from reporter.compute.season import Season
from reporter.tidy.season import TidyLog


@dataclass(frozen=True)
class Paperwork:
    """The paperwork of a period; each table's columns: see the function that makes it.

    trips: `filing_trips`, of the whole season. uses: counts of the period; allowance: use of the whole season
    against what is allowed. documents, passengers, sea_days, fees, numbering: of the whole season; licences,
    ledger, harvest, account: of the period; owed: for the periods that touch it. ledger, harvest, account and
    fees are worked out when a page first asks.
    """

    season: Season
    log: TidyLog
    period: Period
    trips: pd.DataFrame
    uses: tuple[Use, ...]
    allowance: pd.DataFrame
    documents: pd.DataFrame
    licences: pd.DataFrame
    passengers: pd.DataFrame
    sea_days: pd.DataFrame
    owed: Owed
    numbering: tuple[Run, ...]

    @cached_property
    def ledger(self) -> pd.DataFrame:
        """The ledger of the period: see `reporter.compute.paperwork.ledger`."""
        return ledger(self.season, self.log, self.trips, self.period)

    @cached_property
    def harvest(self) -> pd.DataFrame:
        """What was kept in the period: see `harvest_table`."""
        return harvest_table(self.season, self.trips, self.period)

    @cached_property
    def fees(self) -> pd.DataFrame:
        """Fee worksheets: see `fee_table`."""
        return fee_table(self.log)

    @cached_property
    def account(self) -> pd.DataFrame:
        """Rows of the period: see `row_account`."""
        return row_account(self.season, self.log, self.period)


def paperwork(season: Season, log: TidyLog, period: Period = OPEN) -> Paperwork:
    """Return the paperwork of a period of a log without stops."""
    trips = filing_trips(season, log)
    uses = counted_uses(log, trips, period)
    of_season = uses if period == OPEN else counted_uses(log, trips, OPEN)
    return Paperwork(
        season,
        log,
        period,
        trips,
        uses,
        use_table(log, of_season),
        document_table(log, trips),
        licence_table(log, trips, period),
        passengers_table(log, trips),
        sea_days(trips),
        owed_reports(log, trips, period),
        number_runs(log_numbers(log)),
    )
