"""The table that `build --summary` writes. Names are stable: others build on them."""

from reporter.schema.csv_table import RATE, CsvField, CsvTable

SUMMARY = CsvTable(
    "summary",
    "a log",
    (
        CsvField("log", "string", "The log, as the command line or its folder named it."),
        CsvField(
            "state",
            "string",
            "done; stopped (something is to be mended first), unreadable, not written (the report could not "
            "be put in its place), too slow, process ended, no worker (of a cluster), fault (of reporter's).",
        ),
        CsvField("rows_read", "integer", "Rows read, over all sheets."),
        CsvField("rows_used", "integer", "Of them used."),
        CsvField("rows_set_aside", "integer", "Of them set aside."),
        CsvField("stops", "integer", "Problems that stop the report."),
        CsvField("set_aside", "integer", "Problems for which a row or a cell is set aside."),
        CsvField("notes", "integer", "Problems of which the report takes note."),
        CsvField("trips", "integer", "Trips in the rates."),
        CsvField("rod_hours", "number", "Rods x hours fished on them.", "rod-hour"),
        CsvField("fish", "number", "Fish landed on them, of the species counted."),
        CsvField("fish_per_rod_hour", "number", "Landed over effort (ratio of means).", RATE),
        CsvField("report", "string", "The report; empty where there is none."),
        CsvField("why", "string", "Why there is none, in a sentence or several."),
    ),
)
