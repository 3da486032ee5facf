"""The tables that `--tables` writes: names, columns, types, units. Names are stable: others build on them."""

from reporter.schema.condition_tables import CONDITIONS
from reporter.schema.csv_table import RATE, RATE_FIELDS, CsvField, CsvTable
from reporter.schema.fair_tables import SIDE_BY_SIDE, STANDARDISED
from reporter.schema.fish_tables import FISH_TABLES
from reporter.schema.front_tables import BY_DAY_TYPE, FRONT_DAYS, TRIP_FRONT_FIELDS
from reporter.schema.hunch_table import HUNCHES
from reporter.schema.log_tables import LOG_TABLES
from reporter.schema.tackle_tables import RESTOCK, TACKLE, TACKLE_USED

_TECHNIQUE = CsvField("technique", "string", "Technique, under its one spelling.")
_STYLE = CsvField("style", "string", "moving, slow or not given.")
_TRIP = CsvField("trip", "string", "The trip's number as typed.")
_ROW = CsvField("row", "integer", "Row of the sheet in the log.")
_IN_RATES = CsvField("in_rates", "boolean", "Whether it counts in the rates.")
_REASON = CsvField("reason", "string", "Why it does not, as a code; empty where it does.")
_FISH_FIELDS: tuple[CsvField, ...] = (
    CsvField("fish", "number", "Fish landed, of the species counted."),
    CsvField("kept", "number", "Of them kept."),
    CsvField("released", "number", "Of them released."),
    CsvField("fate_unknown", "number", "Of them neither, as far as the log says."),
)

TABLES: tuple[CsvTable, ...] = (
    CsvTable(
        "techniques",
        "a technique",
        (
            _TECHNIQUE,
            _STYLE,
            *RATE_FIELDS,
            CsvField("shrunken_rate", "number", "Rate steadied for small samples; empty below three.", RATE),
            CsvField("probability_best", "number", "Chance that its true rate is the highest, as fished."),
        ),
    ),
    CsvTable("styles", "a style of fishing", (_STYLE, *RATE_FIELDS)),
    CsvTable("waters", "a water", (CsvField("water", "string", "Water."), *RATE_FIELDS)),
    CsvTable("months", "a month", (CsvField("month", "string", "Year and month."), *RATE_FIELDS)),
    CsvTable("season", "the season", (CsvField("season", "string", "The word season."), *RATE_FIELDS)),
    CsvTable(
        "weeks",
        "a calendar week from the first to the last trip in the rates",
        (
            CsvField("week", "date", "Its Monday."),
            CsvField("trips", "integer", "Trips in the rates that began in it."),
            CsvField("hard_trips", "integer", "Of them on day 1 or 2 behind a front, by the tool's verdict."),
            CsvField("rod_hours", "number", "Usable effort.", "rod-hour"),
            CsvField("fish", "number", "Fish landed, of the species counted."),
            CsvField("fish_per_rod_hour", "number", "fish over rod_hours; empty without.", RATE),
        ),
    ),
    CsvTable(
        "trips",
        "a trip that is used",
        (
            _ROW,
            _TRIP,
            CsvField("date", "date", "The day it started."),
            CsvField("water", "string", "Water."),
            CsvField("kind", "string", "guided, scouting or own."),
            CsvField("status", "string", "done, cut short, log not finished, cancelled or void."),
            CsvField("clients", "string", "Client codes, with ; between."),
            CsvField("anglers", "integer", "Clients fishing."),
            CsvField("start", "time", "Lines in."),
            CsvField("end", "time", "Lines out; earlier than the start where it is the next day."),
            CsvField("boat_hours", "number", "Lines in to lines out, less hours off.", "hour"),
            CsvField("rods", "integer", "Rods in the water."),
            CsvField("techniques", "integer", "Techniques written."),
            CsvField("rod_hours", "number", "Usable effort.", "rod-hour"),
            *_FISH_FIELDS,
            CsvField("fish_in_rates", "number", "Of the fish landed, those with usable effort."),
            CsvField("fish_per_rod_hour", "number", "fish_in_rates over rod_hours.", RATE),
            _IN_RATES,
            *TRIP_FRONT_FIELDS,
        ),
    ),
    SIDE_BY_SIDE,
    STANDARDISED,
    CONDITIONS,
    HUNCHES,
    *FISH_TABLES,
    TACKLE,
    TACKLE_USED,
    RESTOCK,
    FRONT_DAYS,
    BY_DAY_TYPE,
    CsvTable(
        "trip_techniques",
        "a technique on a trip; fish without a technique stand under an empty one",
        (
            _TRIP,
            _TECHNIQUE,
            _STYLE,
            CsvField("stints", "integer", "Stints."),
            CsvField("hours", "number", "Hours it was fished.", "hour"),
            CsvField("rod_hours", "number", "Rods x hours.", "rod-hour"),
            CsvField("tally", "number", "Fish by Landed; empty where nothing was typed."),
            CsvField("on_rows", "number", "Fish by rows of Catch."),
            *_FISH_FIELDS,
            CsvField("missed", "number", "Missed bites; empty unless every stint says."),
            _IN_RATES,
            _REASON,
        ),
    ),
    CsvTable(
        "stints",
        "a stint: a row of Effort whose trip and technique are known",
        (
            _ROW,
            _TRIP,
            _TECHNIQUE,
            CsvField("timing", "string", "minutes, clock or parts; empty where there is none."),
            CsvField("start", "time", "Start on the clock."),
            CsvField("end", "time", "End on the clock."),
            CsvField("hours", "number", "Hours of the stint.", "hour"),
            CsvField("rods", "integer", "Anglers on it."),
            CsvField("rod_hours", "number", "Rods x hours; by parts a share of all rods.", "rod-hour"),
            CsvField("landed", "number", "Landed as typed."),
            CsvField("missed", "number", "Missed bites as typed."),
            CsvField("fish", "number", "Fish of the stint; empty where the record cannot place them."),
            CsvField("variant", "string", "Variant."),
            CsvField("retrieve", "string", "Retrieve."),
            CsvField("size", "string", "Size."),
            CsvField("colour", "string", "Colour."),
            CsvField("cover", "string", "Cover."),
            CsvField("depth_m", "number", "Depth.", "m"),
            CsvField("hang_ups", "number", "Hang-ups."),
            CsvField("lures_lost", "number", "Lures lost."),
            CsvField("stint", "string", "The stint's own name."),
            CsvField("angler", "string", "Client code."),
            _REASON,
        ),
    ),
    CsvTable(
        "fish",
        "a row of Catch that is used",
        (
            _ROW,
            _TRIP,
            _TECHNIQUE,
            CsvField("species", "string", "Common name; empty on a row that says there was none."),
            CsvField("species_code", "string", "House code of the species."),
            CsvField("fish", "number", "How many the row stands for."),
            CsvField("counted", "boolean", "Whether the rates count the species."),
            CsvField("length_mm", "number", "Total length.", "mm"),
            CsvField("weight_g", "number", "Weight.", "g"),
            CsvField("measured", "string", "measured, estimated, or empty."),
            CsvField("length_system", "string", "us or metric: in which units the length was measured."),
            CsvField("fate", "string", "kept, released or unknown."),
            CsvField("time", "time", "When it was landed."),
            CsvField("stint", "string", "The stint that the row names."),
            CsvField("angler", "string", "Client code, or guide."),
        ),
    ),
    CsvTable(
        "problems",
        "a finding about the log",
        (
            CsvField("sheet", "string", "Sheet of the log."),
            CsvField("row", "integer", "Row; empty where the finding is about the whole sheet."),
            CsvField("cell", "string", "Address of the cell, where it is one."),
            CsvField("heading", "string", "Heading of the column as typed."),
            CsvField("code", "string", "Permanent code of the finding."),
            CsvField("effect", "string", "stop, set aside or note."),
            CsvField("value", "string", "What was found there."),
            CsvField("message", "string", "Where, what was found and done, how to mend it."),
            CsvField(
                "more_rows", "string", "Further rows that the one finding is about, with spaces between."
            ),
        ),
    ),
    CsvTable(
        "rows",
        "a sheet of the log",
        (
            CsvField("sheet", "string", "Sheet of the log."),
            CsvField("read", "integer", "Rows from below the heading to the last with a value."),
            CsvField("used", "integer", "Rows used."),
            CsvField("set_aside", "integer", "Rows set aside."),
            CsvField("blank", "integer", "Blank rows between."),
            CsvField("not_rows", "integer", "Totals lines and further headings."),
        ),
    ),
    *LOG_TABLES,
)
