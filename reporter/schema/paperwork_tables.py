"""The tables of use, harvest, papers, reports and numbers that a filing writes as CSV."""

from reporter.schema.csv_table import CsvField, CsvTable

_ROW = "Row of {} in the log."

USE = CsvTable(
    "use",
    "a count of use of the period, by a rule of Documents or Reports",
    (
        CsvField("permit", "string", "The paper on Documents that it counts on; empty: every guided trip."),
        CsvField("report", "string", "The report whose rule it is; empty: the paper's own."),
        CsvField("rule", "string", "Counting rule asked for."),
        CsvField("counted_as", "string", "Rule counted by: outings where nobody is named."),
        CsvField("count", "number", "The count; empty: not known. Of average customer hours the average."),
        CsvField("trips", "integer", "Rows of Trips behind it."),
        CsvField("season_count", "number", "The same of the whole season."),
        CsvField("allowed", "number", "How much of it the paper allows; empty: not written."),
        CsvField("left", "number", "Allowed less the season's count; below 0: over."),
    ),
)

HARVEST = CsvTable(
    "harvest",
    "a water, month and species of guided trips of the period",
    (
        CsvField("water", "string", "Water."),
        CsvField("month", "string", "Month as 2026-07; a trip belongs to its first day."),
        CsvField("trips", "integer", "Guided trips of the water and month, the same on each of its rows."),
        CsvField("trips_unfinished", "integer", "Of them those whose log is not finished: fish may lack."),
        CsvField("anglers", "number", "Anglers of those trips added; the guide is none."),
        CsvField("angler_hours", "number", "Anglers x hours fished of those trips.", "hour"),
        CsvField(
            "species", "string", "Common name; no fish; or tallied, kind not written: beyond rows of Catch."
        ),
        CsvField("species_code", "string", "House code of the species; empty where none is written."),
        CsvField("kept", "number", "Fish kept."),
        CsvField("released", "number", "Fish released."),
        CsvField(
            "fate_unknown", "number", "Fish of which neither is written; caught is the sum of the three."
        ),
    ),
)

DOCUMENTS = CsvTable(
    "documents",
    "a paper of Documents",
    (
        CsvField("row", "integer", _ROW.format("Documents")),
        CsvField("document", "string", "Its name."),
        CsvField("kind", "string", "licence, permit, card, policy or empty."),
        CsvField("valid_from", "date", "First day it is valid."),
        CsvField("valid_to", "date", "Last day it is valid."),
        CsvField("trips", "integer", "Guided trips that need it, or one named alike but for its numbers."),
        CsvField("trips_outside", "integer", "Of them those with a day on which none of these is valid."),
        CsvField("first_trip", "string", "The first such trip."),
        CsvField("first_day", "date", "Its first such day."),
        CsvField(
            "state",
            "string",
            "no end written, renewed, ran out, runs out before (during) next season, lasts or not checked.",
        ),
        CsvField("keep_until", "date", "How long to keep the records behind it, at the least."),
    ),
)

NIL_MONTHS = CsvTable(
    "nil_months",
    "a report and a period for which it may be owed",
    (
        CsvField("row", "integer", _ROW.format("Reports")),
        CsvField("report", "string", "The report."),
        CsvField("permit", "string", "The paper whose trips it is about; empty: every guided trip."),
        CsvField("period", "string", "As 2026-07, 2026 Q3, 2026 or season."),
        CsvField("first_day", "date", "Its first day."),
        CsvField("last_day", "date", "Its last day."),
        CsvField("trips", "integer", "Guided trips with a day in it."),
        CsvField(
            "state",
            "string",
            "trips; nil (none, and owed all the same); not owed; not over; not known (Nil months is not "
            "read); unread (rows not used may lie in it: not to be filed as nil).",
        ),
        CsvField("due", "date", "Last day of the period + Due days."),
        CsvField("basis", "string", "What must have happened by then: postmarked, received or submitted."),
    ),
)

NUMBERING = CsvTable(
    "numbering",
    "a run of trip numbers of one guide, boat and year",
    (
        CsvField("guide", "string", "Guide, folded; empty: the log's own."),
        CsvField("boat", "string", "Boat, folded."),
        CsvField("year", "string", "Year of the trips."),
        CsvField("first", "string", "Lowest number, as typed."),
        CsvField("last", "string", "Highest number, as typed."),
        CsvField("numbers", "integer", "Different numbers that rows have, void ones too."),
        CsvField("missing", "string", "Numbers between them that no row has, with ; between."),
        CsvField("twice", "string", "Numbers of several trips."),
        CsvField("void", "string", "Numbers written off."),
        CsvField("alike", "string", "Pairs that differ only in what people leave out; never merged."),
    ),
)

PAPERWORK_TABLES: tuple[CsvTable, ...] = (USE, HARVEST, DOCUMENTS, NIL_MONTHS, NUMBERING)
