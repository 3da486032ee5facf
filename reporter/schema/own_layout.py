"""What a column of a log in another layout may mean, beside the columns of the log itself."""

from dataclasses import replace
from functools import cache

from reporter.schema.column import Column, Sheet
from reporter.schema.log import BY_KEY, SHEETS
from reporter.schema.sheets.trips import SAME_AS_YES_NO, YES_NO

HOURS_FISHED = Column(
    "hours_fished",
    "Hours fished",
    "number",
    "Hours with lines in. Where End is blank it is the start and these.",
    quantity="hours",
    possible=(0.0, 24.0),
    usual=(0.25, 16.0),
)
CLOCK = Column("clock", "Start - end", "text", "Start and end in one cell, as 6:30-11:00.")
KEPT = Column("kept", "Kept", "count", "How many were kept.", possible=(0, 2000))
RELEASED = Column("released", "Released", "count", "How many were released.", possible=(0, 2000))
TOTAL = Column("total", "Kept + released", "count", "What both should add up to.", possible=(0, 2000))
WAS_KEPT = Column(
    "was_kept",
    "Kept, yes or no",
    "choice",
    "yes where the fish was kept, no where it was released.",
    allowed=YES_NO,
    same_as=SAME_AS_YES_NO,
)
WAS_RELEASED = replace(
    WAS_KEPT,
    key="was_released",
    heading="Released, yes or no",
    help="yes where the fish was released, no where it was kept.",
)

OWN_COLUMNS: dict[str, tuple[Column, ...]] = {
    "trips": (HOURS_FISHED, CLOCK),
    "catch": (KEPT, RELEASED, TOTAL, WAS_KEPT, WAS_RELEASED),
}
"""Columns that only another layout has, by sheet key."""

NOT_READ = "not read"
"""What stands for the meaning of a column, or of a worksheet, that is left alone."""

ROW_IS: dict[str, str] = {
    "season": "a setting",
    "trips": "a trip",
    "effort": "a technique on a trip",
    "catch": "a fish",
    "conditions": "a reading",
    "weather": "a day's weather",
    "techniques": "a technique's name",
    "waters": "a water's name",
    "clients": "a client's code",
    "documents": "a document",
    "reports": "a report owed",
    "fees": "a fee",
    "keep_rules": "a keep rule",
    "hunches": "a hunch",
}
"""Sheet key -> what one row of a worksheet is, as the layout asks it."""

WITHIN: dict[str, tuple[str, ...]] = {
    "trips": ("trips", "effort", "catch", "conditions"),
    "effort": ("effort", "trips", "catch", "conditions"),
    "catch": ("catch", "trips", "effort", "conditions"),
    "conditions": ("conditions", "trips"),
}
"""Sheet key of a worksheet's rows -> the sheets of the log whose columns it may hold; others hold theirs."""

ABOVE: dict[str, tuple[str, ...]] = {
    "effort": ("trips",),
    "catch": ("trips", "effort"),
    "conditions": ("trips",),
}
"""Sheet key of a worksheet's rows -> the sheets of which one row stands on several of them."""

TELL_TRIPS_APART = ("date", "water", "client", "start", "outing", "guide", "boat")
"""Columns of Trips by which trips without a number are told apart."""

NAMED_BY_GROUP = {"effort": "technique", "catch": "species"}
"""Sheet key -> the column that the name of a group of columns stands for."""


_UNDER_MEANS = "Choose it there under Means"
HOW_TO_GIVE: dict[tuple[str, str], str] = {
    ("trips", "anglers"): f"{_UNDER_MEANS}, or answer it on the layout's first sheet.",
    ("trips", "water"): f"{_UNDER_MEANS}, or answer it on the layout's first sheet.",
    ("trips", "start"): f"{_UNDER_MEANS}, or answer it on the layout's first sheet.",
    ("trips", "end"): f"{_UNDER_MEANS}, or Hours fished, or set Usual end on the layout's sheet Season.",
    ("effort", "technique"): f"{_UNDER_MEANS}, or write the technique under Group.",
    ("catch", "species"): f"{_UNDER_MEANS}, under Group, or answer it on the layout's first sheet.",
}
"""Sheet key, column key -> how a layout may say what no column of it means."""

USUAL_WAY = f"{_UNDER_MEANS}."


@cache
def own_sheet(key: str) -> Sheet:
    """Return a sheet of the log with the columns that only another layout has."""
    sheet = BY_KEY[key]
    return replace(sheet, columns=(*sheet.columns, *OWN_COLUMNS.get(key, ())))


def meaning(sheet: Sheet, column: Column) -> str:
    """Return a column of a sheet as the layout names it."""
    return f"{sheet.name}: {column.heading}"


def meanings() -> dict[str, tuple[str, str]]:
    """Return every meaning that a column may have -> sheet key, column key; in the log's order."""
    sheets = [own_sheet(sheet.key) for sheet in SHEETS]
    return {meaning(sheet, column): (sheet.key, column.key) for sheet in sheets for column in sheet.columns}
