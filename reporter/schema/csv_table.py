"""What a table of `--tables` is, and the columns of every table of rates."""

from typing import Literal, NamedTuple

FieldType = Literal["string", "integer", "number", "boolean", "date", "time", "datetime"]


class CsvField(NamedTuple):
    """A column of a table: name, type (Frictionless Table Schema), what it holds, its unit."""

    name: str
    type: FieldType
    description: str
    unit: str = ""


class CsvTable(NamedTuple):
    """A table: file name without ending, what one row is, its columns in order."""

    name: str
    one_row_is: str
    fields: tuple[CsvField, ...]


RATE = "fish per rod-hour"

RATE_FIELDS: tuple[CsvField, ...] = (
    CsvField("trips", "integer", "Trips on which it was fished, in the rates."),
    CsvField("rod_hours", "number", "Rods x hours fished.", "rod-hour"),
    CsvField("boat_hours", "number", "Lines in to lines out, less hours off, of those trips.", "hour"),
    CsvField("fish", "number", "Fish landed, of the species counted."),
    CsvField("kept", "number", "Of them kept."),
    CsvField("released", "number", "Of them released."),
    CsvField("fate_unknown", "number", "Of them neither, as far as the log says."),
    CsvField("fish_per_rod_hour", "number", "Landed over effort (ratio of means).", RATE),
    CsvField("low", "number", "Lower end of the range the record supports (95 %).", RATE),
    CsvField("high", "number", "Upper end of that range.", RATE),
    CsvField(
        "interval_rule",
        "string",
        "What the range rests on: own_trips, borrowed (spread of the other techniques), assumed (spread), "
        "none_caught (effort alone); empty without effort.",
    ),
    CsvField("kept_per_rod_hour", "number", "Kept over effort.", RATE),
    CsvField("kept_low", "number", "Lower end of its range.", RATE),
    CsvField("kept_high", "number", "Upper end of its range.", RATE),
    CsvField("released_per_rod_hour", "number", "Released over effort.", RATE),
    CsvField("released_low", "number", "Lower end of its range.", RATE),
    CsvField("released_high", "number", "Upper end of its range.", RATE),
    CsvField("bite_trips", "integer", "Trips on which missed bites were written."),
    CsvField("bites", "number", "Landed and missed on those trips."),
    CsvField("bites_per_rod_hour", "number", "Bites over effort of those trips.", "bites per rod-hour"),
    CsvField("bites_low", "number", "Lower end of its range.", "bites per rod-hour"),
    CsvField("bites_high", "number", "Upper end of its range.", "bites per rod-hour"),
    CsvField("share_landed", "number", "Landed over bites, 0 to 1."),
)
