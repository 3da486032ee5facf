"""What a fix list is: its sheets, columns and words, for the code that writes it and that which reads it."""

from typing import Final

from reporter.schema.finding import Effect

SHEET: Final = "Fix list"
PLACES_SHEET: Final = "For reporter"
LISTS_SHEET: Final = "Lists"

NUMBER: Final = "No"
WHERE: Final = "Where"
FOUND: Final = "Found"
DONE: Final = "What was done"
TO_DO: Final = "What to do"
CORRECTED: Final = "Corrected value"

PLACE_SHEET: Final = "Sheet"
PLACE_CELL: Final = "Cell"

LOG_NAME: Final = "Log"
LOG_FINGERPRINT: Final = "SHA-256"

MENDED: Final = " mended"
"""Ends the name of a mended copy."""

BLANK: Final = "(blank)"
"""Typed as a corrected value, it makes the cell blank."""

NO_PLACE: Final = "in the log itself"
"""Stands where no corrected value can."""

EFFECT_WORDS: Final[dict[Effect, str]] = {"stop": "Stop", "set aside": "Set aside", "note": "Note"}
