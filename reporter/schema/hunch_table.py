"""The table of hunches that `--tables` writes."""

from reporter.schema.csv_table import CsvField, CsvTable

HUNCHES = CsvTable(
    "hunches",
    "a hunch that can be read",
    (
        CsvField("hunch", "string", "The guide's words for it."),
        CsvField("compare", "string", "What is compared, as typed."),
        CsvField("this", "string", "The side that is thought to have more."),
        CsvField("against", "string", "The other side; empty: everything else."),
        CsvField("with_technique", "string", "Only with this technique; empty: any."),
        CsvField("when", "string", "Only then."),
        CsvField("and", "string", "And only then."),
        CsvField("measure", "string", "What is counted."),
        CsvField("evidence", "string", "same_trip, or over_days, which is weaker."),
        CsvField("ratio", "number", "This over against; empty: cannot be told."),
        CsvField("low", "number", "Lower end of the range at 95 %."),
        CsvField("high", "number", "Upper end."),
        CsvField("trips", "integer", "Trips that it rests on."),
        CsvField("part_this", "number", "What was counted on this side: fish, bites, or mm of length."),
        CsvField("whole_this", "number", "What it is held against: rod-hours, bites, or fish measured."),
        CsvField("part_against", "number", "The same of the other side."),
        CsvField("whole_against", "number", "The same of the other side."),
        CsvField("verdict", "string", "holds, other_way or cannot_tell."),
        CsvField(
            "why",
            "string",
            "Why it cannot be told: never_fished, not_told, not_measured, few_trips, few_events, no_overlap, "
            "no_ratio, disagree, range.",
        ),
        CsvField(
            "rod_hours_to_settle",
            "number",
            "Rod-hours of the same kind that would settle it, about; empty: settled, or they would not.",
            "rod-hour",
        ),
        CsvField("left_out", "integer", "Techniques on trips whose fish cannot be told apart."),
    ),
)
