"""The table of rates by condition that `--tables` writes."""

from reporter.schema.csv_table import RATE, CsvField, CsvTable

CONDITIONS = CsvTable(
    "conditions",
    "a band of a condition and a group of techniques, with effort",
    (
        CsvField(
            "condition",
            "string",
            "water_temperature, clarity, sky, wind_speed, wind_from, light, first_two_hours, moon, month, "
            "cover, depth, water_level, day_type, skill or guide.",
        ),
        CsvField("band", "string", "The class; not recorded where the log does not say."),
        CsvField("band_low", "number", "Where it begins, in it; empty: open, or no span of numbers."),
        CsvField("band_high", "number", "Where it ends, out of it; empty: as above."),
        CsvField("unit", "string", "Unit of both ends: the log's own."),
        CsvField("of", "string", "all, style or technique."),
        CsvField("group", "string", "all, the style or the technique."),
        CsvField("trips", "integer", "Trips on which it was fished so."),
        CsvField("rod_hours", "number", "Rods x hours fished so.", "rod-hour"),
        CsvField("fish", "number", "Fish landed, of the species counted."),
        CsvField("fish_per_rod_hour", "number", "fish over rod_hours.", RATE),
        CsvField("low", "number", "Lower end of the range the record supports.", RATE),
        CsvField("high", "number", "Upper end.", RATE),
    ),
)
