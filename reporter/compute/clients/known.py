"""What the sheet Clients says of each client."""

from collections.abc import Iterable
from dataclasses import dataclass

from reporter.compute.records import records
from reporter.tidy.season import TidyLog

_COLUMNS = ["client", "name_on_summary", "consent_to_name", "youth"]


@dataclass(frozen=True, slots=True)
class Known:
    """A client: the name on the summary ("" for none), whether it may be printed, whether he is a youth."""

    name: str = ""
    consent: bool = False
    youth: bool = False

    @property
    def printed(self) -> str:
        """The name as a copy may print it: only with consent."""
        return self.name if self.consent else ""


def known_clients(log: TidyLog, others: Iterable[str]) -> dict[str, Known]:
    """Return code -> what Clients says, in its order, then clients who stand only elsewhere."""
    listed = log.tables.get("clients")
    rows = [] if listed is None else records(listed.loc[listed["used"], _COLUMNS])
    known = {
        row["client"]: Known(row["name_on_summary"], row["consent_to_name"] == "yes", row["youth"] == "yes")
        for row in rows
    }
    return known | {code: Known() for code in others if code not in known}
