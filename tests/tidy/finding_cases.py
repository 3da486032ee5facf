"""For every finding a log that shows it: what is changed in the clean log, and what must follow.

Worked out by hand. The clean log has 6 fish in 24 rod-hours: T-001 3 + 0 fish in 4 + 4, T-002 1 in 8,
T-003 2 in 8. A fourth trip with a stint of 240 minutes and 2 rods adds 8.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field

from reporter.schema.problems import Effect
from tests.tidy.shared import Triple

AUGUST = dt.date(2026, 8, 1)
SIX, TEN = dt.time(6), dt.time(10)
HEADINGS = ["Trip", "Technique", "Species", "Length (in)", "Fate"]
DROP_SHOT = "Drop shot"
FISH = "largemouth bass"


@dataclass(frozen=True)
class Case:
    """Changes to the clean log; what is found, in order; what is done.

    rates: fish and rod-hours in the rates, None where there is no report. aside: sheet -> rows set aside.
    """

    code: str
    effect: Effect
    changes: Mapping[str, object]
    found: tuple[Triple, ...]
    rates: tuple[float, float] | None = (6, 24.0)
    aside: Mapping[str, int] = field(default_factory=dict)
    merged: Mapping[str, str] = field(default_factory=dict)
    hidden: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    struck: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    commented: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    out_of_sight: tuple[str, ...] = ()


def stop(code: str, changes: Mapping[str, object], *found: Triple) -> Case:
    return Case(code, "stop", changes, found, rates=None)


def aside(
    code: str, changes: Mapping[str, object], *found: Triple, rates: tuple[float, float] = (6, 24.0)
) -> Case:
    """A row that is set aside: every finding takes one row."""
    sheets = [sheet for sheet, _, _ in found]
    return Case(code, "set aside", changes, found, rates, {sheet: sheets.count(sheet) for sheet in sheets})


def note(
    code: str, changes: Mapping[str, object], *found: Triple, rates: tuple[float, float] = (6, 24.0)
) -> Case:
    return Case(code, "note", changes, found, rates)


def row(number: int, *cells: object) -> dict[str, object]:
    """Cells of one row from column A on."""
    return {f"{chr(65 + index)}{number}": cell for index, cell in enumerate(cells)}


def trip(
    number: object, day: object = AUGUST, water: object = "Lake Arden", start: object = SIX, end: object = TEN
) -> dict[str, object]:
    """A fourth trip, in row 5."""
    return row(5, number, day, water, start, end, 2)


def trip_in(number: int, name: str, day: dt.date) -> dict[str, object]:
    """A further trip, in some row."""
    return row(number, name, day, "Lake Arden", SIX, TEN, 2)


def fish(*cells: object) -> dict[str, dict[str, object]]:
    """A fourth row of Catch, in row 5."""
    return {"Catch": row(5, *cells)}


def stint(*cells: object) -> dict[str, object]:
    """A fifth stint, in row 6."""
    return row(6, *cells)


STOPS = (
    stop("sheet_missing", {"Catch": None}, ("Catch", 0, "sheet_missing")),
    stop("no_headings", {"Catch": []}, ("Catch", 0, "no_headings")),
    stop("sheet_twice", {"Catch.": [HEADINGS]}, ("Catch", 0, "sheet_twice")),
    stop(
        "column_missing", {"Trips": dict.fromkeys(("F1", "F2", "F3", "F4"))}, ("Trips", 0, "column_missing")
    ),
    stop("column_twice", {"Catch": {"F1": "Total length", "F2": 15}}, ("Catch", 1, "column_twice")),
    stop(
        "second_table",
        {"Catch": {"H1": "Trip", "I1": "Species", "H2": "T-001", "I2": "largemouth bass"}},
        ("Catch", 1, "second_table"),
    ),
    stop(
        "no_trips",
        {
            "Trips": [["Trip", "Date", "Water", "Start", "End", "Anglers"]],
            "Effort": [["Trip", "Technique", "Minutes"]],
            "Catch": [HEADINGS],
        },
        ("Trips", 0, "no_trips"),
    ),
    stop("trip_number_twice", {"Trips": trip("T-003")}, ("Trips", 5, "trip_number_twice")),
    stop("not_calculated", {"Effort": {"C5": "=4*60"}}, ("Effort", 5, "not_calculated")),
    stop(
        "error_cells",
        {"Weather": [["Date", "Sky"], ["#REF!", "clear"]]},
        ("Weather", 2, "error_cells"),
        ("Weather", 2, "required_unread"),
    ),
    stop(
        "unit_unknown",
        {"Season": {"B2": None}, "Catch": {"D1": "Length"}},
        ("Catch", 0, "unit_unknown"),
    ),
    stop(
        "date_orders_mixed",
        {"Trips": {"B2": "13/06/2026", "B3": "06/14/2026"}},
        ("Trips", 2, "date_orders_mixed"),
    ),
    stop(
        "date_order_unknown",
        {"Weather": [["Date"], ["03/04/2026"], ["06/04/2026"], ["05/04/2026"]]},
        ("Weather", 2, "date_order_unknown"),
        ("Weather", 3, "date_order_unknown"),
        ("Weather", 4, "date_order_unknown"),
    ),
    stop(
        "dates_turned",
        {"Weather": [["Date"], ["13/04/2026"], *([dt.date(2026, month, 4)] for month in range(1, 6))]},
        ("Weather", 2, "dates_turned"),
    ),
    stop(
        "decimal_marks_mixed",
        {"Catch": {"D2": "15,5", "D3": "14.5"}},
        ("Catch", 2, "decimal_marks_mixed"),
    ),
    stop(
        "weight_points",
        {"Catch": {"F1": "Weight (lb)", "D2": None, "D3": None, "F2": 1.12, "F3": "1-10"}},
        ("Catch", 2, "weight_points"),
    ),
)

ROWS = (
    aside("required_blank", {"Trips": trip("T-004", water=None)}, ("Trips", 5, "required_blank")),
    aside("required_unread", {"Trips": trip("T-004", day="one day")}, ("Trips", 5, "required_unread")),
    Case(
        "merged",
        "set aside",
        {"Trips": trip("T-004", day=None)},
        (("Trips", 5, "merged"),),
        aside={"Trips": 1},
        merged={"Trips": "B4:B5"},
    ),
    aside("trip_unknown", fish("T-045", DROP_SHOT, FISH), ("Catch", 5, "trip_unknown")),
    aside("trip_not_given", {"Catch": {"A2": None}}, ("Catch", 2, "trip_not_given")),
    aside(
        "trip_date_shared",
        {
            "Trips": trip("T-004", day=dt.date(2026, 9, 12)),
            "Effort": stint("T-004", "Jerkbait", 240, 2, 0),
            "Catch": {"A4": dt.date(2026, 9, 12)},
        },
        ("Catch", 4, "trip_date_shared"),
        rates=(6, 32.0),
    ),
    aside(
        "trip_set_aside",
        {"Trips": trip("T-004", water=None), "Effort": stint("T-004", "Jerkbait", 240, 2, 9)},
        ("Effort", 6, "trip_set_aside"),
        ("Trips", 5, "required_blank"),
    ),
    Case(
        "trip_outside_season",
        "set aside",
        {
            "Trips": {**trip("T-004", day=dt.date(2026, 2, 28)), **trip_in(6, "T-005", dt.date(2026, 2, 27))},
            "Effort": {**stint("T-004", "Jerkbait", 240, 2, 9), **row(7, "T-005", "Jerkbait", 240, 2, 9)},
        },
        (
            ("Effort", 6, "trip_outside_season"),
            ("Effort", 7, "trip_outside_season"),
            ("Trips", 5, "outside_season"),
            ("Trips", 6, "outside_season"),
        ),
        aside={"Trips": 2, "Effort": 2},
    ),
    aside(
        "trip_row_twice",
        {"Trips": row(5, "T-003", dt.date(2026, 9, 12), "Bell River", SIX, TEN, 2)},
        ("Trips", 5, "trip_row_twice"),
    ),
    aside(
        "date_twice",
        {"Weather": [["Date", "Sky"], [AUGUST, "clear"], [AUGUST, "rain"]]},
        ("Weather", 3, "date_twice"),
    ),
    aside("name_twice", {"Techniques": row(4, "drop-shot", "slow")}, ("Techniques", 4, "name_twice")),
    aside(
        "end_before_start",
        {"Trips": trip("T-004", start=dt.time(13), end=dt.time(7))},
        ("Trips", 5, "end_before_start"),
    ),
    aside(
        "end_date_too_early",
        {"Trips": {"G1": "End date", "G5": dt.date(2026, 7, 31), **trip("T-004")}},
        ("Trips", 5, "end_date_too_early"),
    ),
    aside("no_length", {"Trips": trip("T-004", start=SIX, end=SIX)}, ("Trips", 5, "no_length")),
    aside(
        "too_long",
        {"Trips": trip("T-004", dt.date(2026, 8, 1), "Lake Arden", dt.time(5), dt.time(22))},
        ("Trips", 5, "too_long"),
    ),
    aside("future_date", {"Trips": trip("T-004", day=dt.date(2026, 12, 1))}, ("Trips", 5, "future_date")),
    aside(
        "outside_season", {"Trips": trip("T-004", day=dt.date(2026, 2, 28))}, ("Trips", 5, "outside_season")
    ),
    aside(
        "wrong_year",
        {
            "Season": dict.fromkeys(("B4", "B5"), dt.date(2027, 3, 31)),
            "Trips": {
                **dict.fromkeys(("G5", "G7"), "cancelled"),
                "G1": "Status",
                **trip("T-004", day=dt.date(2026, 12, 20)),
                **row(6, "T-005", dt.date(2026, 1, 4), "Lake Arden", SIX, TEN, 2),
                **row(7, "T-006", dt.date(2027, 1, 9), "Lake Arden", SIX, TEN, 2),
            },
        },
        ("Trips", 6, "wrong_year"),
    ),
    aside("species_two_meanings", fish("T-003", "Jerkbait", "trout"), ("Catch", 5, "species_two_meanings")),
    aside("species_unknown", fish("T-003", "Jerkbait", "wallaye"), ("Catch", 5, "species_unknown")),
    aside(
        "no_effort",
        {"Effort": {"F1": "Parts", **stint("T-003", "Jerkbait", None, 2, 0, 0)}},
        ("Effort", 6, "no_effort"),
        rates=(4, 16.0),
    ),
    aside(
        "parts_mixed",
        {"Effort": {"F1": "Parts", **stint("T-003", DROP_SHOT, None, 2, 0, 3)}},
        ("Effort", 6, "parts_mixed"),
    ),
    aside("effort_over", {"Effort": {"D4": 4}}, ("Effort", 4, "effort_over"), rates=(5, 16.0)),
    aside("setting_unknown", {"Season": row(7, "Favourite lake", "Arden")}, ("Season", 7, "setting_unknown")),
    aside(
        "hunch_unread",
        {
            "Hunches": [
                ["Hunch", "Compare", "This", "When"],
                ["Early is better", "time of day", "first two hours of light", None],
                ["Blue skies", "sky", "blue", None],
            ]
        },
        ("Hunches", 3, "hunch_unread"),
    ),
    aside(
        "keep_rule_unread",
        {
            "Keep rules": [
                ["Rule", "Water", "Species", "From", "To", "Action", "Daily limit"],
                ["R1", "*", "black bass", None, None, "LIMIT", 5],
                ["R2", "Lake Ardne", "LMB", None, None, "LIMIT", 5],
                ["R3", "*", "bass", None, None, "LIMIT", 5],
                ["R4", "*", "LMB", "03-01", None, "LIMIT", 5],
                ["R5", "*", "LMB", None, None, "LIMIT", "five"],
            ]
        },
        *(("Keep rules", row, "keep_rule_unread") for row in (3, 4, 5, 6)),
    ),
    aside("setting_twice", {"Season": row(7, "Units", "metric")}, ("Season", 7, "setting_twice")),
)

CELLS = (
    Case("length_impossible", "set aside", {"Catch": {"D2": 46}}, (("Catch", 2, "length_impossible"),)),
    Case("cell_unread", "set aside", {"Effort": {"E4": "3 + 1 lost"}}, (("Effort", 4, "cell_unread"),)),
    Case("cell_impossible", "set aside", {"Catch": {"D2": 1650}}, (("Catch", 2, "cell_impossible"),)),
    Case(
        "weight_impossible",
        "set aside",
        {"Catch": {"F1": "Weight (lb)", "D2": 12, "F2": 4.5}},
        (("Catch", 2, "weight_impossible"),),
    ),
    Case(
        "hours_off_too_long",
        "set aside",
        {"Trips": {"G1": "Hours off", "G2": 4}},
        (("Trips", 2, "hours_off_too_long"),),
    ),
)
