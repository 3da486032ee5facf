"""The tables that `--tables` writes: names, columns, types, units. Names are stable: others build on them."""

from dataclasses import dataclass
from typing import Literal

FieldType = Literal["string", "integer", "number", "boolean", "date", "time", "datetime"]


@dataclass(frozen=True, slots=True)
class CsvField:
    """A column of a table: name, type (Frictionless Table Schema), what it holds, its unit."""

    name: str
    type: FieldType
    description: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class CsvTable:
    """A table: file name without ending, what one row is, its columns in order."""

    name: str
    one_row_is: str
    fields: tuple[CsvField, ...]


RATE = "fish per rod-hour"

_RATE_FIELDS: tuple[CsvField, ...] = (
    CsvField("trips", "integer", "Trips on which it was fished, in the rates."),
    CsvField("rod_hours", "number", "Rods x hours fished.", "rod-hour"),
    CsvField("boat_hours", "number", "Lines in to lines out, less hours off, of those trips.", "hour"),
    CsvField("fish", "number", "Fish landed, of the species counted."),
    CsvField("kept", "number", "Of them kept."),
    CsvField("released", "number", "Of them released."),
    CsvField("fate_unknown", "number", "Of them neither, as far as the log says."),
    CsvField("fish_per_rod_hour", "number", "Landed over effort (ratio of means).", RATE),
    CsvField("low", "number", "Lower end of the range the record supports (95 %).", RATE),
    CsvField("high", "number", "Upper end of that range.", RATE),
    CsvField(
        "interval_rule",
        "string",
        "What the range rests on: own_trips, borrowed (spread of the other techniques), assumed (spread), "
        "none_caught (effort alone); empty without effort.",
    ),
    CsvField("kept_per_rod_hour", "number", "Kept over effort.", RATE),
    CsvField("kept_low", "number", "Lower end of its range.", RATE),
    CsvField("kept_high", "number", "Upper end of its range.", RATE),
    CsvField("released_per_rod_hour", "number", "Released over effort.", RATE),
    CsvField("released_low", "number", "Lower end of its range.", RATE),
    CsvField("released_high", "number", "Upper end of its range.", RATE),
    CsvField("bite_trips", "integer", "Trips on which missed bites were written."),
    CsvField("bites", "number", "Landed and missed on those trips."),
    CsvField("bites_per_rod_hour", "number", "Bites over effort of those trips.", "bites per rod-hour"),
    CsvField("bites_low", "number", "Lower end of its range.", "bites per rod-hour"),
    CsvField("bites_high", "number", "Upper end of its range.", "bites per rod-hour"),
    CsvField("share_landed", "number", "Landed over bites, 0 to 1."),
)

_VERDICTS = "yes_clear, yes_weak, possible, no or not_enough_data"
_DAY_TYPES = "ordinary, ahead, passing, day_1, day_2, day_3, behind_low, possible or not_known"

_EVIDENCE_FIELDS: tuple[CsvField, ...] = (
    CsvField("points", "number", "Points of all signs together; of the front that day_type is about."),
    CsvField("pressure_points", "number", "Points of the rise of pressure, 0 to 2; empty: not known."),
    CsvField("wind_points", "number", "Points of the turn of the wind, 0 to 2."),
    CsvField("air_points", "number", "Points of cooler air, 0 to 2."),
    CsvField("dew_points", "number", "Points of drier air, 0 to 2."),
    CsvField("sky_points", "number", "The bonus point of a sky that cleared."),
    CsvField("pressure_change_hpa", "number", "Rise of pressure that the verdict rests on.", "hPa"),
    CsvField("wind_before_deg", "number", "Where the wind came from before; empty: light, unknown.", "deg"),
    CsvField("wind_after_deg", "number", "Where it came from after.", "deg"),
    CsvField("air_change_c", "number", "Change of air temperature.", "°C"),
    CsvField("dew_point_change_c", "number", "Change of the dew point.", "°C"),
    CsvField("passage_time_utc", "datetime", "Hour of the passage, about; by hourly weather only."),
)

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
    CsvTable("techniques", "a technique", (_TECHNIQUE, _STYLE, *_RATE_FIELDS)),
    CsvTable("styles", "a style of fishing", (_STYLE, *_RATE_FIELDS)),
    CsvTable("waters", "a water", (CsvField("water", "string", "Water."), *_RATE_FIELDS)),
    CsvTable("months", "a month", (CsvField("month", "string", "Year and month."), *_RATE_FIELDS)),
    CsvTable("season", "the season", (CsvField("season", "string", "The word season."), *_RATE_FIELDS)),
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
            CsvField("front_call", "string", "The guide's own call, as typed."),
            CsvField("verdict", "string", f"The tool's verdict on the date: {_VERDICTS}."),
            CsvField("day_type", "string", f"The tool's day type for the trip: {_DAY_TYPES}."),
            CsvField("call_day_type", "string", "The call as a day type."),
            CsvField("hours_since_passage", "number", "Passage to trip's start; below 0: before it.", "hour"),
            CsvField("tendency", "string", "What the barometer did in the three hours before the start."),
            CsvField("tendency_hpa", "number", "By how much.", "hPa"),
        ),
    ),
    CsvTable(
        "front_days",
        "a date of the season",
        (
            CsvField("date", "date", "The local date."),
            CsvField("fished", "boolean", "Whether a trip was fished."),
            CsvField("call", "string", "The guide's own call; empty where none, or several that differ."),
            CsvField("verdict", "string", f"The tool's verdict: {_VERDICTS}."),
            CsvField("final", "string", "The call where there is one, else the verdict."),
            CsvField("day_type", "string", f"The tool's word for the date: {_DAY_TYPES}."),
            CsvField("source", "string", "What the verdict rests on: hourly, daily or trip; empty: nothing."),
            *_EVIDENCE_FIELDS,
            CsvField("hourly_verdict", "string", "What hourly weather says by itself; empty: no hours."),
            CsvField("daily_verdict", "string", "What daily weather says by itself."),
            CsvField("trip_verdict", "string", "What the trips' own readings say by themselves."),
            CsvField(
                "water_temp_change_c",
                "number",
                "Change of the water temperature since the last trip on that water within three days.",
                "°C",
            ),
            CsvField("pressure_hpa", "number", "Mean pressure of the date, of one source throughout.", "hPa"),
        ),
    ),
    CsvTable(
        "by_day_type",
        "a type of day for the season, a style or a technique",
        (
            CsvField("by", "string", "Whose word: verdict (the tool's) or call (the guide's)."),
            CsvField("of", "string", "season, style or technique."),
            CsvField("name", "string", "Which of them."),
            CsvField("day_type", "string", f"{_DAY_TYPES}."),
            CsvField("strength", "string", "clear or weak, on days 1 and 2 of the tool's verdict."),
            *_RATE_FIELDS,
        ),
    ),
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
)
