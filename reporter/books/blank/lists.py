"""What the drop-downs offer: closed lists beside their column, longer and open ones on the sheet Lists."""

from reporter.books.blocks import Choice, Field, Line, Sheet, Table, Text
from reporter.schema.column import Column
from reporter.schema.log import SHEETS
from reporter.schema.phrases import AT_A_WATER, phrases
from reporter.schema.sheets.effort import COVERS
from reporter.schema.sheets.hunches import COMPARES
from reporter.schema.sheets.season import SETTINGS
from reporter.schema.species import SPECIES
from reporter.schema.units import System

LONGEST_LITERAL = 255
"""Characters of a literal list of a drop-down, commas included; longer ones stand on Lists."""

NO_FISH_LABEL = "none"

TIME_ZONES = (
    "America/New_York",
    "America/Chicago",
    "America/Denver",
    "America/Phoenix",
    "America/Los_Angeles",
    "America/Toronto",
    "America/Winnipeg",
    "America/Vancouver",
    "America/Mexico_City",
    "Europe/London",
    "Europe/Paris",
    "Europe/Berlin",
    "Europe/Madrid",
    "Europe/Rome",
    "Africa/Johannesburg",
    "Asia/Tokyo",
    "Australia/Sydney",
)
"""Names of the IANA time zone database, for those who do not know them by heart; any other may be typed."""

_SPECIES = "list_species"
_SPECIES_COUNTED = "list_species_counted"
_COVER = "list_cover"
_ZONE = "list_zone"
_COMPARE = "list_hunch_compare"
_PHRASE = "list_hunch_phrase"

_OPEN: dict[tuple[str, str], str] = {
    ("season", "time_zone"): f"{_ZONE}.label",
    ("season", "species_counted"): f"{_SPECIES_COUNTED}.label",
    ("effort", "cover"): f"{_COVER}.label",
    ("catch", "angler"): "clients.client",
    ("hunches", "with_technique"): "techniques.technique",
    ("hunches", "compare"): f"{_COMPARE}.label",
    ("hunches", "when"): f"{_PHRASE}.label",
    ("hunches", "and"): f"{_PHRASE}.label",
}
"""Columns and settings of free text for which a list is a help and no more."""


def choice_for(sheet: str, column: Column) -> Choice | None:
    """Return the drop-down of a column of a sheet, or of a setting of the sheet Season; None without one."""
    if column.allowed:
        if _fits(column.allowed):
            return Choice(labels=column.allowed)
        return Choice(symbol=f"{_own_list(sheet, column)}.label")
    if column.kind == "species":
        return Choice(symbol=f"{_SPECIES}.label", strict=False)
    if (sheet, column.key) in _OPEN:
        return Choice(symbol=_OPEN[sheet, column.key], strict=False)
    if column.refers:
        return Choice(symbol=f"{column.refers}.{_key_column(column.refers)}", strict=False)
    return None


def lists_sheet(system: System) -> Sheet:
    """Return the sheet Lists: one short table a list, one below the other."""
    said = (AT_A_WATER, *(phrase.text for phrase in phrases(system)))
    lists: list[tuple[str, str, tuple[str, ...]]] = [
        (_SPECIES, "Species", (*(kind.name for kind in SPECIES), NO_FISH_LABEL)),
        (_SPECIES_COUNTED, "Species counted", ("black bass", *(kind.name for kind in SPECIES))),
        (_COVER, "Cover", COVERS),
        (_ZONE, "Time zone", TIME_ZONES),
        (_COMPARE, "What a hunch compares", COMPARES),
        (_PHRASE, "When a hunch holds", said),
    ]
    lists += [
        (_own_list(sheet, column), column.heading, column.allowed)
        for sheet, column in _every_column()
        if column.allowed and not _fits(column.allowed)
    ]
    lead = Text((Line("What the drop-downs offer. This sheet is not read.", "note"),))
    return Sheet("Lists", (lead, *(_table(*one) for one in lists)), "log")


def _fits(labels: tuple[str, ...]) -> bool:
    return len(",".join(labels)) <= LONGEST_LITERAL and not any("," in label for label in labels)


def _own_list(sheet: str, column: Column) -> str:
    return f"list_{sheet}_{column.key}"


def _key_column(sheet: str) -> str:
    return next(
        column.key
        for candidate in SHEETS
        if candidate.key == sheet
        for column in candidate.columns
        if column.kind == "key"
    )


def _every_column() -> list[tuple[str, Column]]:
    columns = [(sheet.key, column) for sheet in SHEETS for column in sheet.columns]
    return columns + [("season", setting) for setting in SETTINGS]


def _table(key: str, heading: str, labels: tuple[str, ...]) -> Table:
    return Table(key, (Field("label", heading, width=28.0),), {"label": labels})
