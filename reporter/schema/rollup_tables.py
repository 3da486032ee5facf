"""The tables that `rollup --tables` writes. Names are permanent."""

from reporter.schema.csv_table import CsvField, CsvTable

_EFFORT: tuple[CsvField, ...] = (
    CsvField("trips", "integer", "Guided trips that were fished; a trip belongs to its first day."),
    CsvField("trips_unfinished", "integer", "Of them those whose log is not finished: fish may lack."),
    CsvField("anglers", "number", "Anglers of those trips added; the guide is none."),
    CsvField("angler_hours", "number", "Anglers x hours from lines in to lines out.", "hour"),
    CsvField("rod_hours", "number", "Usable effort as in the guides' own reports.", "rod-hour"),
)
_FISH: tuple[CsvField, ...] = (
    CsvField(
        "species", "string", "Common name; other species; or tallied, kind not written: beyond rows of Catch."
    ),
    CsvField("species_code", "string", "House code of the species; empty where there is none."),
    CsvField("kept", "number", "Fish kept; empty: in the line others, or withheld."),
    CsvField("released", "number", "Fish released; empty likewise."),
    CsvField("fate_unknown", "number", "Fish of which neither is written; empty likewise."),
)
_BY = CsvField("by", "string", "all, water, month or permit.")
_NAME = CsvField("name", "string", "Which water, month or permit; others; empty for all.")
_OTHERS = CsvField("others", "boolean", "Whether the line holds what is merged.")
_GUIDE = CsvField(
    "guide", "string", "Guide code; else guide, or log where its guide is not known, and the log's number."
)
_LOG = CsvField("log", "integer", "Number of the log in the order of file names.")
_LOG_GUIDE = CsvField("guide", "string", "Its guide; empty where the log is not counted.")

ROLLUP_TABLES: tuple[CsvTable, ...] = (
    CsvTable(
        "rollup_effort",
        "all trips, or those of a water, month or permit",
        (
            _BY,
            _NAME,
            _OTHERS,
            CsvField("guides", "integer", "Known guides with trips in the line; empty for others."),
            *_EFFORT,
        ),
    ),
    CsvTable(
        "rollup_fish",
        "a species of all trips, or of those of a water, month or permit",
        (_BY, _NAME, _OTHERS, *_FISH),
    ),
)
"""What may be handed on."""

GUIDE_TABLES: tuple[CsvTable, ...] = (
    CsvTable(
        "guide_effort",
        "a guide",
        (
            _GUIDE,
            CsvField("guide_name", "string", "Guide or outfit as on Season; only with --names."),
            CsvField("logs", "integer", "Logs of the guide that are counted."),
            *_EFFORT,
        ),
    ),
    CsvTable("guide_fish", "a guide and species", (_GUIDE, *_FISH)),
    CsvTable(
        "missing_months",
        "a guide and a month in which other guides have a trip and this one none",
        (
            _GUIDE,
            CsvField("month", "string", "Month as 2026-07."),
            CsvField(
                "said", "string", "no trip in the log; or no trip read, but rows not used may lie in it."
            ),
        ),
    ),
    CsvTable(
        "logs",
        "a log of the folder",
        (
            _LOG,
            _LOG_GUIDE,
            CsvField("file", "string", "Its file name; only with --names."),
            CsvField(
                "state",
                "string",
                "counted, stops, cannot be read, too slow, has trips of another or there twice.",
            ),
            CsvField("rows_read", "integer", "Rows read, of every sheet."),
            CsvField("rows_used", "integer", "Of them used."),
            CsvField("rows_set_aside", "integer", "Of them set aside."),
            CsvField("trips_set_aside", "integer", "Rows of Trips set aside: in no total."),
        ),
    ),
    CsvTable(
        "problems_by_log",
        "a kind of problem in a log",
        (
            _LOG,
            _LOG_GUIDE,
            CsvField("code", "string", "Permanent code of the finding."),
            CsvField("effect", "string", "stop, set aside or note."),
            CsvField("title", "string", "What it is."),
            CsvField("found", "integer", "How many of them."),
        ),
    ),
)
"""With a line a guide or a log, in a folder of their own: for whoever keeps the logs."""
