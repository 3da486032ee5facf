"""The tables of several logs put together, and the column that tells their seasons apart in the others."""

from reporter.schema.csv_table import RATE_FIELDS, CsvField, CsvTable
from reporter.schema.tables import TABLES

SEASON = CsvField("season", "string", "Season: its years, or its log's name where two share a year.")

SEASONS = CsvTable(
    "seasons",
    "a season: one log of several that were put together",
    (
        SEASON,
        CsvField("log", "string", "File name of its log."),
        CsvField("sha256", "string", "SHA-256 of its log."),
        CsvField("first_trip", "date", "First day of a trip that is used."),
        CsvField("last_trip", "date", "Last day of one."),
        *RATE_FIELDS,
        CsvField("hard_trips", "integer", "Trips on day 1 or 2 behind a front, by the tool's verdict."),
        CsvField("hard_rod_hours", "number", "Rod-hours on them.", "rod-hour"),
        CsvField("unknown_trips", "integer", "Trips on days of which nobody can say what they were."),
        CsvField("unknown_rod_hours", "number", "Rod-hours on them.", "rod-hour"),
        CsvField("blank_trips", "integer", "Finished trips without a fish of the species counted."),
        CsvField("every_client_trips", "integer", "Guided trips on which every named client landed one."),
        CsvField("told_client_trips", "integer", "Guided trips of which the log can tell that."),
    ),
)

SEASON_TECHNIQUES = CsvTable(
    "season_techniques",
    "a technique in a season in which it was fished, or no longer",
    (
        SEASON,
        CsvField("technique", "string", "Technique, under its one spelling."),
        CsvField("style", "string", "moving, slow or not given."),
        CsvField(
            "change",
            "string",
            "gained: first fished in this season; lost: fished until the season before; else empty.",
        ),
        *RATE_FIELDS,
    ),
)

SEASON_RATIOS = CsvTable(
    "season_ratios",
    "a season against the one before it, and a way to compare them",
    (
        CsvField("method", "string", "same_condition or same_month: the same technique on such days."),
        CsvField("this", "string", "The season."),
        CsvField("against", "string", "The season before it."),
        CsvField("ratio", "number", "This over against, fish per rod-hour; empty: cannot be told."),
        CsvField("low", "number", "Lower end of the range at 95 %."),
        CsvField("high", "number", "Upper end."),
        CsvField("trips_this", "integer", "Trips of this season that it rests on."),
        CsvField("trips_against", "integer", "Trips of the other."),
        CsvField("fish_this", "number", "Fish on the former."),
        CsvField("fish_against", "number", "Fish on the latter."),
        CsvField("hours_this", "number", "Rod-hours on the former.", "hour"),
        CsvField("hours_against", "number", "Rod-hours on the latter.", "hour"),
        CsvField("overlap_share", "number", "Share of the rod-hours of both that they are."),
        CsvField(
            "claim",
            "string",
            "this or against (more fish per rod-hour then), disagree, cannot_tell, not_enough, no_ratio, "
            "no_overlap; never said of how many fish there are.",
        ),
    ),
)

_BY_TRIP_OR_ROW = frozenset({"trip", "row"})
_BY_LOG = frozenset({"rows", "problems", "log_columns"})


def by_season(table: CsvTable) -> bool:
    """Whether a table names trips or rows of a log, so that it must say of which."""
    return table.name in _BY_LOG or any(field.name in _BY_TRIP_OR_ROW for field in table.fields)


def _with_season(table: CsvTable) -> CsvTable:
    return table._replace(fields=(SEASON, *table.fields)) if by_season(table) else table


TOGETHER: tuple[CsvTable, ...] = (
    *(_with_season(table) for table in TABLES),
    SEASONS,
    SEASON_TECHNIQUES,
    SEASON_RATIOS,
)
"""What `--tables` writes of several logs put together."""
