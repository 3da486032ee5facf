"""The tables of tackle that `--tables` writes."""

from reporter.schema.csv_table import CsvField, CsvTable

_PER_HOUR = "per rod-hour"
_LINE = (
    CsvField("technique", "string", "Technique, under its one spelling."),
    CsvField("variant", "string", "Variant as first typed; empty: not recorded."),
    CsvField("size", "string", "Size, likewise."),
    CsvField("colour", "string", "Colour, likewise."),
)

TACKLE = CsvTable(
    "tackle",
    "a technique, cover or variant",
    (
        CsvField("by", "string", "technique, cover or variant."),
        CsvField("group", "string", "Its name, a variant behind its technique; or not recorded."),
        CsvField("trips", "integer", "Trips on which it was fished."),
        CsvField("rod_hours", "number", "Rods x hours fished.", "rod-hour"),
        CsvField("hang_ups", "number", "Hang-ups; empty: no stint says."),
        CsvField("hang_up_trips", "integer", "Trips with stints that say."),
        CsvField("hang_up_rod_hours", "number", "Rod-hours of the stints that say.", "rod-hour"),
        CsvField("hang_ups_per_rod_hour", "number", "Hang-ups over those rod-hours.", _PER_HOUR),
        CsvField("lures_lost", "number", "Lures lost; empty: no stint says."),
        CsvField("lost_trips", "integer", "Trips with stints that say."),
        CsvField("lost_rod_hours", "number", "Rod-hours of the stints that say.", "rod-hour"),
        CsvField("lures_lost_per_rod_hour", "number", "Lures lost over those rod-hours.", _PER_HOUR),
        CsvField("missed", "number", "Missed bites of stints that say and whose fish are known."),
        CsvField("landed", "number", "Fish landed on those stints."),
        CsvField("bite_trips", "integer", "Trips with such stints."),
        CsvField("bite_rod_hours", "number", "Rod-hours of such stints.", "rod-hour"),
        CsvField("share_landed", "number", "Landed over landed and missed, 0 to 1."),
    ),
)

TACKLE_USED = CsvTable(
    "tackle_used",
    "a technique with its variant, size and colour",
    (
        *_LINE,
        CsvField("stints", "integer", "Stints that count in the rates."),
        CsvField("trips", "integer", "Trips with such stints."),
        CsvField("rod_hours", "number", "Rods x hours fished.", "rod-hour"),
        CsvField("share", "number", "Share of the season's rod-hours, 0 to 1."),
        CsvField("landed", "number", "Fish known to be its own; empty: none of its stints' are."),
        CsvField("lures_lost", "number", "Lures lost; empty: no stint says."),
        CsvField("lost_trips", "integer", "Trips with stints that say what was lost."),
        CsvField("lost_rod_hours", "number", "Rod-hours of those stints.", "rod-hour"),
    ),
)

RESTOCK = CsvTable(
    "restock",
    "a technique with its variant, size and colour that loses lures",
    (
        *_LINE,
        CsvField("record", "string", "own or technique: whose loss rate it is."),
        CsvField("trips", "integer", "Trips of that record, of stints that say."),
        CsvField("lost_rod_hours", "number", "Rod-hours of that record.", "rod-hour"),
        CsvField("lures_lost", "number", "Lures lost on that record."),
        CsvField("lures_lost_per_rod_hour", "number", "Lures lost over those rod-hours.", _PER_HOUR),
        CsvField("rod_hours", "number", "This season's rod-hours of the line.", "rod-hour"),
        CsvField("expected_losses", "number", "The rate times these rod-hours."),
        CsvField("to_have", "integer", "The same rounded up."),
    ),
)
