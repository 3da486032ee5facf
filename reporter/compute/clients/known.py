"""What the sheets Clients of some logs say of each client, by the code as codes are compared."""

from collections.abc import Container, Iterable, Sequence
from dataclasses import dataclass, field, replace

from reporter.compute.records import records
from reporter.schema.log import folded, folded_code
from reporter.tidy.names import GUIDE
from reporter.tidy.season import TidyLog

_NOBODY = frozenset({"", GUIDE, "guest", "guests", "walkin", "tbd", "tba", "none", "na", "unknown", "nobody"})
"""What stands for a client whom nobody has given a code, folded; each such word may mean many."""

_COLUMNS = ["client", "name_on_summary", "consent_to_name", "youth"]


@dataclass(frozen=True, slots=True)
class Known:
    """A client: the code as first written, the name on the summary ("" where none is written).

    consent: whether the name may be printed. youth: whether any log says so: it stays so. names: every
    different name that the code has, folded -> as written. named_in: places of the logs that give a name.
    """

    code: str
    name: str = ""
    consent: bool = False
    youth: bool = False
    names: dict[str, str] = field(default_factory=dict)
    named_in: frozenset[int] = frozenset()

    @property
    def printed(self) -> str:
        """The name as a copy may print it: only with consent."""
        return self.name if self.consent else ""


def known_clients(logs: Sequence[TidyLog]) -> dict[str, Known]:
    """Return folded code -> the client, in the order of the logs; the last log that lists him counts."""
    known: dict[str, Known] = {}
    for place, log in enumerate(logs):
        for row in _listed(log):
            key = folded_code(row["client"])
            before = known.get(key, Known(row["client"]))
            name = row["name_on_summary"]
            known[key] = replace(
                before,
                name=name or before.name,
                consent=row["consent_to_name"] == "yes",
                youth=before.youth or row["youth"] == "yes",
                names=before.names | ({folded(name): name} if name else {}),
                named_in=before.named_in | ({place} if name else frozenset()),
            )
        for code in _on_trips(log):
            if is_code(code, ()):
                known.setdefault(folded_code(code), Known(code))
    return known


def is_code(client: str, coded: Container[str]) -> bool:
    """Whether what Trips calls a client is somebody's code, and no word for anybody.

    coded: codes of the sheet Clients, which may be any word.
    """
    return client in coded or folded(client) not in _NOBODY


def listed_codes(log: TidyLog) -> set[str]:
    """Return the codes of the sheet Clients of a log."""
    return {row["client"] for row in _listed(log)}


def _listed(log: TidyLog) -> list[dict[str, str]]:
    listed = log.tables.get("clients")
    return [] if listed is None else records(listed.loc[listed["used"], _COLUMNS])


def _on_trips(log: TidyLog) -> Iterable[str]:
    """Return every code that Trips names, on rows that are set aside too."""
    return (code for codes in log.tables["trips"]["client"] for code in codes if code)
