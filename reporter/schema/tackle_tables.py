"""The tables of tackle that `--tables` writes."""

from reporter.schema.csv_table import CsvField, CsvTable

_PER_HOUR = "per rod-hour"
_TECHNIQUE = CsvField("technique", "string", "Technique, under its one spelling.")

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
    "a technique, or a size or colour of a technique of which any is recorded",
    (
        CsvField("by", "string", "technique, size or colour."),
        _TECHNIQUE,
        CsvField("value", "string", "Size or colour as first typed; empty: not recorded, or by technique."),
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
    "a technique, and what to have of it for as many rod-hours again",
    (
        _TECHNIQUE,
        CsvField("trips", "integer", "Trips with stints that say what was lost."),
        CsvField("lost_rod_hours", "number", "Rod-hours of those stints.", "rod-hour"),
        CsvField("lures_lost", "number", "Lures lost; empty, as what follows from it: no stint says."),
        CsvField("lures_lost_per_rod_hour", "number", "Lures lost over those rod-hours.", _PER_HOUR),
        CsvField("rod_hours", "number", "Rod-hours of all its stints.", "rod-hour"),
        CsvField("expected_losses", "number", "The rate times all its rod-hours."),
        CsvField("to_have", "integer", "The same rounded up."),
    ),
)
