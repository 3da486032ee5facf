"""The season log as a whole: its sheets in the order of the blank log."""

import re
from functools import lru_cache

from reporter.schema.column import Sheet
from reporter.schema.sheets.catch import CATCH
from reporter.schema.sheets.conditions import CONDITIONS
from reporter.schema.sheets.effort import EFFORT
from reporter.schema.sheets.hunches import HUNCHES
from reporter.schema.sheets.names import CLIENTS, TECHNIQUES, WATERS
from reporter.schema.sheets.papers import DOCUMENTS, FEES, KEEP_RULES, REPORTS
from reporter.schema.sheets.season import SEASON
from reporter.schema.sheets.trips import TRIPS
from reporter.schema.sheets.weather import WEATHER

SCHEMA_VERSION = "1"

SHEETS: tuple[Sheet, ...] = (
    SEASON,
    TRIPS,
    EFFORT,
    CATCH,
    CONDITIONS,
    WEATHER,
    TECHNIQUES,
    WATERS,
    CLIENTS,
    DOCUMENTS,
    REPORTS,
    FEES,
    KEEP_RULES,
    HUNCHES,
)

TEXT_SHEETS = ("Start here", "Boat card", "Lists")
"""Sheets of the blank log that are never read."""

BY_KEY: dict[str, Sheet] = {sheet.key: sheet for sheet in SHEETS}


@lru_cache(maxsize=1_024)  # columns repeat their names
def folded(name: str) -> str:
    """Return a name as names are compared: without case, spaces, hyphens and punctuation."""
    return "".join(letter for letter in name.casefold() if letter.isalnum())


def folded_code(code: str) -> str:
    """Return a client's code as codes are compared: without case, nor blanks and hyphens beside a letter.

    All other signs count, and so does what stands between two digits: `1, 2` is never the client 12.
    """
    return _BETWEEN_DIGITS.sub("-", _BESIDE_A_LETTER.sub("", code.casefold().strip()))


_BESIDE_A_LETTER = re.compile(r"(?<!\d)[\s-]+|[\s-]+(?!\d)")
_BETWEEN_DIGITS = re.compile(r"[\s-]+")


def find_sheet(name: str) -> Sheet | None:
    """Return the sheet of the log that a worksheet's name means, or None."""
    wanted = folded(name)
    for sheet in SHEETS:
        if wanted in {folded(sheet.name), *(folded(other) for other in sheet.also)}:
            return sheet
    return None
