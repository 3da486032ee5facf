"""The 44 entry mistakes, in their order: what is typed where, and what must come of it, written by hand.

Mistake 7 is made on trip T-007, row 8 of Trips, Effort and Catch, and so on; rows from 50 on are added below.
A mistake that stops the report is made in a second workbook. Where a rule of the rows says otherwise than
"stop", "row left out" or "note" of the original list, the rule is named beside the mistake.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from reporter.schema.problems import Effect
from tests.mistakes.season import CARD, day_of


@dataclass(frozen=True)
class Found:
    """What must be found: code, effect, sheet, cell ("" where it is the row), rows, words of the message."""

    code: str
    effect: Effect
    sheet: str
    cell: str
    rows: tuple[int, ...]
    says: tuple[str, ...] = ()


@dataclass(frozen=True)
class Mistake:
    """A mistake: its number, what it is, cells typed ("Trips E2" -> value), marks on cells, what is found."""

    number: int
    name: str
    typed: Mapping[str, object]
    found: tuple[Found, ...]
    merged: tuple[str, ...] = ()
    hidden: tuple[str, ...] = ()
    struck: tuple[str, ...] = ()
    commented: tuple[str, ...] = ()


def stop(code: str, place: str, *says: str, rows: tuple[int, ...] | None = None) -> Found:
    return _found(code, "stop", place, says, rows)


def aside(code: str, place: str, *says: str, rows: tuple[int, ...] | None = None) -> Found:
    return _found(code, "set aside", place, says, rows)


def note(code: str, place: str, *says: str, rows: tuple[int, ...] | None = None) -> Found:
    return _found(code, "note", place, says, rows)


def _found(
    code: str, effect: Effect, place: str, says: tuple[str, ...], rows: tuple[int, ...] | None
) -> Found:
    """place: "Trips E2", "Trips 2" for a row, "Trips" for a sheet."""
    sheet, _, cell = place.partition(" ")
    digits = "".join(letter for letter in cell if letter.isdigit())
    own = (int(digits),) if digits else ()
    return Found(code, effect, sheet, "" if cell.isdigit() else cell, rows or own, says)


def its_rows(row: int, trip: str) -> tuple[Found, ...]:
    """What follows for the stint and the fish of a trip that is set aside."""
    says = (f"Trip {trip} is itself set aside (Trips row {row})",)
    return (
        aside("trip_set_aside", f"Effort A{row}", *says),
        aside("trip_set_aside", f"Catch A{row}", *says, "1 fish is not in any total"),
    )


def catch(row: int, *cells: object) -> dict[str, object]:
    """Cells of a row of Catch, from column A on."""
    return {f"Catch {chr(65 + index)}{row}": cell for index, cell in enumerate(cells)}


BASS = "largemouth bass"

MISTAKES: tuple[Mistake, ...] = (
    Mistake(
        1,
        "end before start, past midnight",
        {"Trips D2": dt.time(20, 30), "Trips E2": dt.time(1, 15), "Trips K2": None, "Catch G2": None},
        (note("past_midnight", "Trips E2", "Starts 20:30, ends 01:15", "4 h 45 min", "Add an End date"),),
    ),
    Mistake(
        2,
        "end before start, not a night trip",
        {"Trips D3": dt.time(13), "Trips E3": dt.time(7)},
        (
            aside("end_before_start", "Trips E3", "13:00", "07:00", "Did you mean 19:00?"),
            *its_rows(3, "T-002"),
        ),
    ),
    Mistake(  # rule 12: set aside
        3,
        "longer than 16 h, no end date",
        {"Trips D4": dt.time(5), "Trips E4": dt.time(22)},
        (aside("too_long", "Trips E4", "17 h"), *its_rows(4, "T-003")),
    ),
    Mistake(
        4,
        "start = end",
        {"Trips E5": dt.time(6)},
        (aside("no_length", "Trips E5", "both 06:00"), *its_rows(5, "T-004")),
    ),
    Mistake(
        5,
        "fish with no matching trip",
        catch(50, "T-145", "Drop shot", BASS, None, None, 3),
        (aside("trip_unknown", "Catch A50", "T-145", "no T-145 on Trips", "3 fish are not in any total"),),
    ),
    Mistake(
        6,
        "no fish and no zero",
        {"Effort E7": None, **catch(7, *[None] * 7)},
        (note("no_fish_written", "Trips 7", "T-006 has no fish", "0 or 'none'"),),
    ),
    Mistake(  # of the five spellings three are one by rule 10
        7,
        "one technique spelled five ways",
        {
            "Effort B8": "dropshot",
            "Effort B46": "drop-shot",
            "Effort B47": "Drop Shot",
            **dict.fromkeys(("Effort B48", "Catch B48"), "DS"),
            **dict.fromkeys(("Effort B49", "Catch B49"), "dropshoot"),
        },
        (
            note(
                "name_unknown",
                "Effort B48",
                "'DS'",
                "closest there is 'Drop shot'",
                "own name",
                "Also called",
            ),
            note("name_unknown", "Effort B49", "'dropshoot'", "closest there is 'Drop shot'"),
        ),
    ),
    Mistake(
        8,
        "water spelled two ways",
        {"Trips C9": "Lk Arden"},
        (note("name_unknown", "Trips C9", "'Lk Arden' is not on Waters", "'Lake Arden'", "own name"),),
    ),
    Mistake(
        9,
        "species of two meanings",
        {"Catch C10": "trout"},
        (aside("species_two_meanings", "Catch C10", "'trout' could be several fish", "brown trout"),),
    ),
    Mistake(
        10,
        "species unknown",
        {"Catch C11": "Wallaye"},
        (aside("species_unknown", "Catch C11", "'Wallaye'", "Did you mean walleye?"),),
    ),
    Mistake(  # rule 3: a note over 105 %, set aside over 150 %
        11,
        "technique minutes add to more than the trip",
        {"Effort C12": 300},
        (note("effort_above", "Effort 12", "T-011", "10.0 rod-hours", "8.0"),),
    ),
    Mistake(  # rule 3 holds the sum; one rod that fishes longer than its trip is noted beside it
        12,
        "fishing time over trip time",
        {"Effort C13": 300, "Effort D13": 1, "Trips K13": dt.time(9)},
        (
            note("stint_longer", "Effort 13", "T-012", "5 h fished on a trip of 4 h"),
            note("dock_inside", "Trips K13", "09:00", "lines in at 06:00 and lines out at 10:00"),
        ),
    ),
    Mistake(  # its own finding is for own layouts (tests/run/test_own_layouts.py); ours has a tally, rule 4
        13,
        "a total that its fish do not add up to",
        {"Catch F14": 8, "Effort E14": 7},
        (note("tally_less", "Effort 14", "T-013", "Landed says 7, Catch has 8"),),
    ),
    Mistake(  # rule 9: the cell alone, for Count is optional
        14,
        "fractional count, negative count",
        {"Catch F15": 2.5, "Effort E15": -1},
        (
            aside("cell_unread", "Catch F15", "'2.5' isn't a whole number", "counted as 1"),
            aside("cell_impossible", "Effort E15", "-1 is less than nothing"),
        ),
    ),
    Mistake(  # rule 9: the weight alone
        15,
        "weight impossible for the length",
        {"Catch D16": 12, "Catch E16": "4 lb 8 oz"},
        (aside("weight_impossible", "Catch E16", "4 lb 8 oz", "12", "511 %", "Weight not used"),),
    ),
    Mistake(  # rule 9: the length alone
        16,
        "length over any record",
        {"Catch C17": "black crappie", "Catch D17": 46},
        (aside("length_impossible", "Catch D17", "46", "black crappie", "Did you mean cm?"),),
    ),
    Mistake(  # rule 14
        17,
        "exact duplicate row",
        {"Effort E18": 2, **catch(51, "T-017", "Drop shot", BASS, 15.5, None, 1, dt.time(7))},
        (note("rows_alike", "Catch 51", "Same as row 18 in every cell", "All counted"),),
    ),
    Mistake(
        18,
        "same trip number twice, different content",
        {"Trips A19": "T-017"},
        (
            stop("trip_number_twice", "Trips A19", "T-017 is also row 18", "new number"),
            note("trips_skipped", "Trips A20", "T-018 is missing"),
            aside("trip_unknown", "Effort A19", "no T-018 on Trips"),
            aside("trip_unknown", "Catch A19", "no T-018 on Trips"),
        ),
    ),
    Mistake(
        19,
        "a trip number missing",
        dict.fromkeys(("Trips A20", "Effort A20", "Catch A20"), "T-049"),
        (note("trips_skipped", "Trips A21", "T-019 is missing", "Status void"),),
    ),
    Mistake(
        20,
        "future date",
        {"Trips B21": dt.date(2027, 11, 3)},
        (
            aside("future_date", "Trips B21", "2027-11-03 is after the As-of date, 2026-04-30"),
            *its_rows(21, "T-020"),
        ),
    ),
    Mistake(
        21,
        "last year typed in January",
        {"Trips B22": dt.date(2025, 1, 2)},
        (
            aside("wrong_year", "Trips B22", "2025-01-02", "those below 2026-01-0", "Last year by habit?"),
            *its_rows(22, "T-021"),
        ),
    ),
    Mistake(  # one problem, however many the rows are
        22,
        "outside the season",
        {
            "Trips B23": dt.date(2025, 10, 4),
            "Trips B46": dt.date(2025, 10, 5),
            "Trips B47": dt.date(2025, 10, 6),
        },
        (
            aside(
                "outside_season",
                "Trips B23",
                "3 trips (rows 23 and 46-47) are before the season's First day, 2025-11-01",
                rows=(23, 46, 47),
            ),
            aside("trip_outside_season", "Effort A23", "T-022 and 2 more", "3 rows", rows=(23, 46, 47)),
            aside("trip_outside_season", "Catch A23", "3 fish on 3 rows are not in", rows=(23, 46, 47)),
        ),
    ),
    Mistake(
        23,
        "dates in two orders",
        {"Trips B24": "13/01/2026", "Trips B25": "01/14/2026"},
        (stop("date_orders_mixed", "Trips B24", "'13/01/2026'", "'01/14/2026' in Trips B25", "Date order"),),
    ),
    Mistake(
        24,
        "a day that does not exist",
        {"Trips B25": "30 Feb 2026"},
        (
            aside("required_unread", "Trips B25", "'30 Feb 2026' is a day that doesn't exist"),
            *its_rows(25, "T-024"),
        ),
    ),
    Mistake(
        25,
        "decimal comma mixed with point",
        {"Catch D26": "15,5", "Catch D27": "14.5"},
        (
            stop(
                "decimal_marks_mixed", "Catch D26", "'15,5'", "'14.5' in Catch D27", "Decimal mark on Season"
            ),
        ),
    ),
    Mistake(  # rule 9: the length alone
        26,
        "feet typed in an inches column",
        {"Catch C27": "northern pike", "Catch D27": 1.5},
        (aside("length_impossible", "Catch D27", "1.5", "northern pike", "If that is feet, type 18"),),
    ),
    Mistake(  # rule 9: the length alone
        27,
        "centimetres in an inches column",
        {"Catch D28": 40.5},
        (aside("length_impossible", "Catch D28", "40.5", "Did you mean cm?"),),
    ),
    Mistake(  # rule 9: the cell alone
        28,
        "°F in a °C column",
        {"Trips J29": 68},
        (aside("cell_impossible", "Trips J29", "68", "Did you mean °F?"),),
    ),
    Mistake(
        29,
        "pounds and ounces typed as decimals",
        {
            "Catch D30": None,
            "Catch E30": 4.12,
            "Catch D31": None,
            "Catch E31": 4.15,
            "Catch D32": None,
            "Catch E32": 3.11,
        },
        (stop("weight_points", "Catch E30", "4.12", "pounds and ounces", "Weight point on Season"),),
    ),
    Mistake(  # rule 9: the weight alone
        30,
        "4-8 turned into a date",
        {"Catch E31": dt.date(2026, 4, 8)},
        (aside("cell_unread", "Catch E31", "2026-04-08", "the spreadsheet changed", "Type it as 4 lb 8 oz"),),
    ),
    Mistake(  # row 50 of Trips is blank, and passed over without a word
        31,
        "a half-filled row, and a blank one above it",
        {"Trips A51": "the guest day", "Trips G51": "C01"},
        (aside("required_blank", "Trips B51", "has Trip but no Date", "Row not used"),),
    ),
    Mistake(
        32,
        "#REF!",
        {"Effort C33": "#REF!"},
        (
            aside(
                "required_unread", "Effort C33", "#REF!", "a formula has lost its cell", "Type the value in"
            ),
        ),
    ),
    Mistake(
        32,
        "#N/A in over a twentieth of the trip numbers",
        dict.fromkeys(("Catch A33", "Catch A34", "Catch A35"), "#N/A"),
        (
            stop("error_cells", "Catch A33", "3 of 48 cells", "#N/A"),
            *(aside("required_unread", f"Catch A{row}", "#N/A") for row in (33, 34, 35)),
        ),
    ),
    Mistake(
        33,
        "a formula never calculated",
        {"Effort C34": "=4*60"},
        (stop("not_calculated", "Effort C34", "no saved result", "Open the file", "save it, try again"),),
    ),
    Mistake(
        34,
        "merged cells over several rows",
        {"Trips B36": None},
        (
            aside("merged", "Trips B36", "Rows 35-36 share a merged cell; only row 35", "fill it down"),
            *its_rows(36, "T-035"),
        ),
        merged=("Trips B35:B36",),
    ),
    Mistake(
        35,
        "a TOTAL row",
        {"Catch A53": "TOTAL", "Catch F53": 211},
        (
            note(
                "totals_row", "Catch A53", "'TOTAL'", "Not counted", "My total of Count is 58, yours says 211"
            ),
        ),
    ),
    Mistake(
        36,
        "a units row",
        {"Weather A2": None, "Weather B2": "°F", "Weather C2": "°F"},
        (note("second_heading", "Weather 2", "units line", "Skipped"),),
    ),
    Mistake(  # rule 8: a second heading is no row, and the rows below it are read on
        37,
        "the heading again mid-sheet",
        {"Conditions A4": "Trip", "Conditions B4": "Time", "Conditions C4": "Sky"},
        (note("second_heading", "Conditions 4", "another heading", "Skipped"),),
    ),
    Mistake(
        37,
        "two tables side by side",
        {
            "Effort H1": "Trip",
            "Effort I1": "Technique",
            "Effort J1": "Landed",
            "Effort H2": "T-001",
            "Effort I2": "Jerkbait",
            "Effort J2": 4,
        },
        (stop("second_table", "Effort H1", "second table starts at column H", "One table a sheet"),),
    ),
    Mistake(
        38,
        "a needed column renamed",
        {"Weather A1": "When"},
        (
            stop("column_missing", "Weather", "no column 'Date'", "I found 'When'"),
            note("column_not_read", "Weather A1", "'When'"),
        ),
    ),
    Mistake(  # rule 9: the cell alone
        39,
        "a note in a number cell",
        {"Effort E40": "3 + 1 lost"},
        (aside("cell_unread", "Effort E40", "'3 + 1 lost' isn't a number", "use Notes for the rest"),),
    ),
    Mistake(
        40,
        "a row hidden by a filter",
        {},
        (note("rows_hidden", "Trips 41", "from here on: 1", "read like the others"),),
        hidden=("Trips A41",),
    ),
    Mistake(  # renewed from the next trip on, so that T-041 alone has none
        41,
        "a card that ran out before the trip",
        {
            "Documents D3": day_of(41) - dt.timedelta(days=1),
            "Documents A5": f"{CARD} 2026",
            "Documents B5": "card",
            "Documents C5": day_of(42),
            "Documents D5": dt.date(2027, 12, 31),
        },
        (note("paper_ran_out", "Documents D3", f"{CARD} is valid", "to 2026-03-02", "T-041 on 2026-03-03"),),
    ),
    Mistake(
        42,
        "more passengers than the boat may carry",
        {"Trips H43": 7},
        (
            note(
                "passengers_over", "Trips H43", "T-042 lists 7", "Skiff", "6", "Children and free rides count"
            ),
        ),
    ),
    Mistake(
        43,
        "a row struck through, a comment",
        {},
        (
            note("rows_struck", "Effort 44", "from here on: 1", "they count", "Status void"),
            note("cells_commented", "Catch 44", "from here on: 1", "I don't read comments", "Notes"),
        ),
        struck=("Effort A44",),
        commented=("Catch D44",),
    ),
    Mistake(
        44,
        "one client typed two ways, two clients with one name",
        {"Trips G45": "C1", "Clients B4": "Ada Bergh"},
        (
            note("name_unknown", "Trips G45", "'C1' is not on Clients", "'C01'", "pages of its own"),
            note(
                "clients_alike", "Clients A4", "C03 and C01 (row 2)", "'Ada Bergh', 'Ada Berg'", "Kept apart"
            ),
        ),
    ),
)

STOPPING = tuple(each for each in MISTAKES if any(found.effect == "stop" for found in each.found))
"""Made in the second workbook."""

OTHERS = tuple(each for each in MISTAKES if each not in STOPPING)
"""Made in the first, which gives a report."""
