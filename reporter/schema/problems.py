"""What can be found wrong with a log: each finding once, with a permanent code.

A finding's effect is one of three: `stop` (no report until it is mended), `set aside` (the row, or the one
cell, is not used and is listed) and `note` (used, and said). A message says where, what was found, what was
done with it and how to mend it, in two lines at most.
"""

from dataclasses import dataclass
from typing import Literal

Effect = Literal["stop", "set aside", "note"]

EFFECTS: tuple[Effect, ...] = ("stop", "set aside", "note")


@dataclass(frozen=True, slots=True)
class Finding:
    """A kind of problem: code (permanent), effect, title, text with places to fill in, remedy."""

    code: str
    effect: Effect
    title: str
    text: str
    remedy: str


@dataclass(frozen=True, slots=True)
class Problem:
    """A finding in a log: sheet, row (0: the whole sheet), cell address, heading, value as found, text."""

    code: str
    sheet: str
    row: int
    cell: str
    heading: str
    value: str
    text: str

    @property
    def effect(self) -> Effect:
        """What it does to the report."""
        return CATALOGUE[self.code].effect

    @property
    def where(self) -> str:
        """The place in words."""
        place = f"{self.sheet} row {self.row}" if self.row else self.sheet
        return f"{place}, {self.heading}" if self.heading and self.row else place

    @property
    def message(self) -> str:
        """The place and the text."""
        return f"{self.where}: {self.text}"


_STOP: tuple[Finding, ...] = (
    Finding(
        "sheet_missing",
        "stop",
        "A needed sheet is missing",
        "There is no sheet '{sheet}'.{hint}",
        "Name the sheet as the blank log does, or copy it from a blank log.",
    ),
    Finding(
        "no_headings",
        "stop",
        "A needed sheet is empty",
        "The sheet is empty: it has no headings.",
        "Copy the headings from a blank log.",
    ),
    Finding(
        "sheet_twice",
        "stop",
        "Two sheets with one meaning",
        "'{first}' and '{second}' both read as {sheet}.",
        "Rename or delete one of them.",
    ),
    Finding(
        "column_missing",
        "stop",
        "A needed column is missing",
        "There is no column '{heading}'.{hint}",
        "Name the heading as the blank log does.",
    ),
    Finding(
        "column_twice",
        "stop",
        "Two columns with one meaning",
        "'{first}' in {first_cell} and '{second}' in {second_cell} mean the same, and both hold values.",
        "One table a sheet, one column a thing: rename or delete one.",
    ),
    Finding(
        "no_trips",
        "stop",
        "No trips",
        "The sheet holds no trip that can be used, so there is nothing to report.",
        "Write a row a trip below the headings.",
    ),
    Finding(
        "trip_number_twice",
        "stop",
        "One trip number, two trips",
        "Trip {value} is also row {other}, and the rows differ. I cannot tell whose fish are whose.",
        "Give one of them a new number.",
    ),
    Finding(
        "not_calculated",
        "stop",
        "Formulas without results",
        "Formulas in this column have no saved result ({count} of them).",
        "Open the file in your spreadsheet program, save it, try again.",
    ),
    Finding(
        "error_cells",
        "stop",
        "Many error cells in a key column",
        "{count} of {rows} cells show an error like {value}: a formula has lost its cells.",
        "Type the values in.",
    ),
    Finding(
        "unit_unknown",
        "stop",
        "Numbers without a unit",
        "'{heading}' holds numbers, but neither the heading nor Season says in which unit.",
        "Write the unit in the heading, as '{example}', or set Units on Season.",
    ),
)

_ROWS: tuple[Finding, ...] = (
    Finding(
        "required_blank",
        "set aside",
        "A needed cell is blank",
        "The row has {filled} but no {missing}. Row not used.",
        "Fill in the cell.",
    ),
    Finding(
        "required_unread",
        "set aside",
        "A needed cell cannot be read",
        "'{value}' {why}. Row not used.",
        "{remedy}",
    ),
    Finding(
        "merged",
        "set aside",
        "Merged cells over several rows",
        "Rows {first}-{last} share a merged cell; only row {first} has its value. Row not used.",
        "Unmerge the cell and fill it down.",
    ),
    Finding(
        "trip_unknown",
        "set aside",
        "No such trip",
        "Points at trip {value}. There is no {value} on Trips.{hint} {lost}",
        "Mend the number, or write the trip.",
    ),
    Finding(
        "trip_not_given",
        "set aside",
        "No trip above",
        "Trip is blank, and no row above names one. {lost}",
        "Write the trip's number.",
    ),
    Finding(
        "trip_date_shared",
        "set aside",
        "A date with several trips",
        "{value} has {count} trips, so the date does not say which. {lost}",
        "Write the trip's number.",
    ),
    Finding(
        "trip_set_aside",
        "set aside",
        "Its trip is set aside",
        "Trip {value} is itself set aside (Trips row {trip_row}). {lost}",
        "Mend the trip's own row.",
    ),
    Finding(
        "trip_row_twice",
        "set aside",
        "A trip written twice",
        "The same in every cell as row {other}. Counted once.",
        "Delete one of the rows.",
    ),
    Finding(
        "name_twice",
        "set aside",
        "A name written twice",
        "'{value}' is also row {other}. The first row serves.",
        "Delete one of the rows, or give it another name.",
    ),
    Finding(
        "end_before_start",
        "set aside",
        "Ends before it starts",
        "Starts {start}, ends {end}. Row not used.{hint}",
        "Mend the times; for a night trip of over 12 hours give an End date.",
    ),
    Finding(
        "no_length",
        "set aside",
        "No length",
        "Start and end are both {start}. Row not used.",
        "Mend one of the times.",
    ),
    Finding(
        "too_long",
        "set aside",
        "Longer than 16 hours",
        "{start} to {end} is {length}, longer than 16 hours. Row not used.{hint}",
        "Mend the times, or give an End date if it is right.",
    ),
    Finding(
        "future_date",
        "set aside",
        "A date in the future",
        "{value} is after the {limit_name}, {limit}. Row not used.",
        "Mend the date, or the {limit_name} on Season.",
    ),
    Finding(
        "outside_season",
        "set aside",
        "Outside the season",
        "{value} is {side} the season's {limit_name}, {limit}. Row not used.",
        "Mend the date, or the {limit_name} on Season.",
    ),
    Finding(
        "species_two_meanings",
        "set aside",
        "A fish with several meanings",
        "'{value}' could be several fish. Its {fish} not counted.",
        "Write {choices}.{bass}",
    ),
    Finding(
        "species_unknown",
        "set aside",
        "An unknown fish",
        "'{value}' isn't a fish I know.{hint} Its {fish} not counted.",
        "Write the fish's usual name.",
    ),
    Finding(
        "no_effort",
        "set aside",
        "A stint without its time",
        "{technique} on trip {trip} has {why}. It leaves the rates with all its fish of that trip.",
        "Give Parts, Minutes, or Start and End.",
    ),
    Finding(
        "parts_mixed",
        "set aside",
        "Parts beside times",
        "Trip {trip} is timed partly by Parts and partly by the clock, so the parts share out nothing known.",
        "Time every stint of a trip in one way.",
    ),
    Finding(
        "effort_over",
        "set aside",
        "Far more effort than the trip had",
        "Trip {trip}: its stints add to {logged} rod-hours; {rods} rods in {hours} h give {possible}."
        " All its stints leave the rates.",
        "Write only the rods that really fished each technique.",
    ),
    Finding(
        "setting_unknown",
        "set aside",
        "An unknown setting",
        "'{value}' is not a setting I know.{hint} Row not used.",
        "Name it as the blank log does.",
    ),
    Finding(
        "setting_twice",
        "set aside",
        "A setting written twice",
        "'{value}' is also row {other}. The first row serves.",
        "Delete one of the rows.",
    ),
)

_CELLS: tuple[Finding, ...] = (
    Finding(
        "cell_unread",
        "set aside",
        "A cell that cannot be read",
        "'{value}' {why}. Cell not used{instead}; the row is.",
        "{remedy}",
    ),
    Finding(
        "cell_impossible",
        "set aside",
        "An impossible value",
        "{value} {why}. Cell not used{instead}; the row is.",
        "{remedy}",
    ),
    Finding(
        "hours_off_too_long",
        "set aside",
        "Hours off longer than the trip",
        "{value} hours off a trip of {length}. Cell not used: no hours were taken off.",
        "Mend the hours off or the times.",
    ),
)

_NOTES: tuple[Finding, ...] = (
    Finding(
        "past_midnight",
        "note",
        "Ends the next morning",
        "Starts {start}, ends {end}. Read as ending the next morning ({length}).",
        "Add an End date to be sure.",
    ),
    Finding(
        "no_fish_written",
        "note",
        "No fish and no zero",
        "Trip {trip} has no fish. Counted as a blank day.",
        "If you blanked, put 0 or 'none' so that I know it isn't missing.",
    ),
    Finding(
        "effort_above",
        "note",
        "More effort than the trip had",
        "Trip {trip}: its stints add to {logged} rod-hours; {rods} rods in {hours} h give {possible}. Used.",
        "Check anglers on it, minutes and hours off.",
    ),
    Finding(
        "effort_below",
        "note",
        "Less effort than the trip had",
        "Trip {trip}: its stints add to {logged} of {possible} rod-hours. Is some effort not written? Used.",
        "Add the missing stints, the duds too, or the hours off.",
    ),
    Finding(
        "tally_less",
        "note",
        "Fewer landed than on Catch",
        "{technique} on trip {trip}: Landed says {tally}, Catch has {rows}. The larger is used.",
        "Mend Landed, or leave it blank.",
    ),
    Finding(
        "fish_without_effort",
        "note",
        "Fish without effort",
        "{technique} is not on Effort for trip {trip}. Its {fish} outside the rates, inside the totals.",
        "Write the stint on Effort.",
    ),
    Finding(
        "fish_without_technique",
        "note",
        "Fish without a technique",
        "Trip {trip} had several techniques and no tally. Its {fish} outside the rates, inside the totals.",
        "Write the technique.",
    ),
    Finding(
        "fish_beyond_tally",
        "note",
        "More fish than the tallies hold",
        "Trip {trip}: {fish} more on Catch without a technique than Landed holds; outside the rates.",
        "Mend Landed, or write the technique.",
    ),
    Finding(
        "not_fished",
        "note",
        "Effort or fish on a trip that was not fished",
        "Trip {trip} is {status}, yet it has {what}. They are outside the rates.",
        "Mend the Status, or take the rows out.",
    ),
    Finding(
        "name_unknown",
        "note",
        "A name that is not on its sheet",
        "'{value}' is not on {on}.{hint} Used under its own name.",
        "Add it to {on}, or to Also called there.",
    ),
    Finding(
        "name_shared",
        "note",
        "One other name for two things",
        "'{value}' is also called for {first} and for {second}. It is not merged with either.",
        "Keep it on one row.",
    ),
    Finding(
        "trips_skipped",
        "note",
        "Trip numbers missing",
        "{value} missing between {first} and {last}.",
        "If a number was voided, add a row with Status void.",
    ),
    Finding(
        "trip_alike",
        "note",
        "Trip numbers that look alike",
        "{value} and {other} look alike and are read as two trips.",
        "If they are one, write them the same way.",
    ),
    Finding(
        "rows_alike",
        "note",
        "Fish written twice?",
        "{what}. All counted.",
        "Delete the rows if they were pasted twice.",
    ),
    Finding(
        "totals_row",
        "note",
        "A totals line",
        "Reads like a totals line ('{value}'). Not counted as a row.",
        "Keep totals off the sheet; the report adds up.",
    ),
    Finding(
        "second_heading",
        "note",
        "A second heading",
        "Looks like another heading or a units line. Skipped.",
        "Keep one heading row.",
    ),
    Finding(
        "cell_unusual",
        "note",
        "An unusual value",
        "{value} is unusual ({side} {limit}). Used.{hint}",
        "Mend it if it is a slip.",
    ),
    Finding(
        "merged_below",
        "note",
        "Merged cells over several rows",
        "Rows {first}-{last} share a merged cell; only row {first} has its value.",
        "Unmerge the cell and fill it down.",
    ),
    Finding(
        "outside_trip",
        "note",
        "Outside the trip's times",
        "{start}{end} is outside the trip ({trip_start} to {trip_end}). Used.",
        "Mend the times if they are a slip.",
    ),
    Finding(
        "two_ways",
        "note",
        "Timed in two ways",
        "The row has {ways}. {used} used.",
        "Give one of them.",
    ),
    Finding(
        "stint_unknown",
        "note",
        "No such stint",
        "Names stint {value}; trip {trip} has no such stint of that technique. The fish counts all the same.",
        "Mend the stint's name.",
    ),
    Finding(
        "no_as_of",
        "note",
        "Future dates not checked",
        "Neither As-of date nor Last day is set, so dates in the future were not looked for.",
        "Set one of them on Season.",
    ),
    Finding(
        "no_time_zone",
        "note",
        "No time zone",
        "Time zone is not set, so light and hourly weather read 'not known'.",
        "Set it on Season, as America/Chicago.",
    ),
    Finding(
        "column_not_read",
        "note",
        "A column that is not read",
        "'{value}' in {cell} is not a column of this sheet. Its cells are not read.",
        "Nothing, if it is yours alone.",
    ),
    Finding(
        "sheet_not_read",
        "note",
        "A sheet that is not read",
        "Not a sheet of the season log. Not read.",
        "Nothing, if it is yours alone.",
    ),
    Finding(
        "beyond_headings",
        "note",
        "Cells without a heading",
        "{count} cells stand in columns without a heading, the first in {cell}. Not read.",
        "Give the column a heading, or clear the cells.",
    ),
)

FINDINGS: tuple[Finding, ...] = (*_STOP, *_ROWS, *_CELLS, *_NOTES)

CELL_CODES: frozenset[str] = frozenset(finding.code for finding in _CELLS)
"""Findings that set aside one cell, not its row."""

CATALOGUE: dict[str, Finding] = {finding.code: finding for finding in FINDINGS}


def problem(
    code: str,
    sheet: str,
    *,
    row: int = 0,
    cell: str = "",
    heading: str = "",
    value: str = "",
    **places: object,
) -> Problem:
    """Return a problem with its text filled in: what was found and done, then how to mend it.

    places fill the text and the remedy of the finding; sheet, heading, value and cell are known to both.
    """
    finding = CATALOGUE[code]
    known = {"sheet": sheet, "heading": heading, "value": value, "cell": cell, **places}
    text = f"{finding.text.format(**known)} {finding.remedy.format(**known)}".strip()
    return Problem(code, sheet, row, cell, heading, value, text)
