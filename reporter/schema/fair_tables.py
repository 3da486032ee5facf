"""The tables of fair comparisons that `--tables` writes."""

from reporter.schema.csv_table import RATE, CsvField, CsvTable

SIDE_BY_SIDE = CsvTable(
    "side_by_side",
    "a comparison and method",
    (
        CsvField("of", "string", "style or technique."),
        CsvField("method", "string", "same_trip, same_condition or same_window."),
        CsvField("this", "string", "The style or technique."),
        CsvField("against", "string", "What it is held against."),
        CsvField("ratio", "number", "This over against, fish per rod-hour; empty: cannot be told."),
        CsvField("low", "number", "Lower end of the range at 95 %."),
        CsvField("high", "number", "Upper end."),
        CsvField("trips", "integer", "Trips that it rests on."),
        CsvField("fish_this", "number", "Fish of this on them."),
        CsvField("fish_against", "number", "Fish of the other on them."),
        CsvField("hours_this", "number", "Rod-hours of this on them.", "hour"),
        CsvField("hours_against", "number", "Rod-hours of the other on them.", "hour"),
        CsvField("overlap_share", "number", "Share of the rod-hours of both that they are."),
        CsvField(
            "claim",
            "string",
            "this or against (that one out-fished), disagree, cannot_tell, not_enough, no_ratio, no_overlap.",
        ),
    ),
)

STANDARDISED = CsvTable(
    "standardised",
    "a technique",
    (
        CsvField("technique", "string", "Technique, under its one spelling."),
        CsvField("trips", "integer", "Trips on the kinds of day that all are compared on."),
        CsvField("rod_hours", "number", "Rod-hours on them.", "hour"),
        CsvField(
            "rate", "number", "Rate as if all were fished on the same mix; empty: cannot be told.", RATE
        ),
        CsvField("low", "number", "Lower end of the range at 95 %.", RATE),
        CsvField("high", "number", "Upper end.", RATE),
    ),
)
