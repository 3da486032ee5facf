"""For every note a log that shows it, worked out by hand; see `finding_cases`."""

import datetime as dt

from tests.tidy.finding_cases import AUGUST, DROP_SHOT, FISH, HEADINGS, Case, fish, note, row, stint, trip

NOTES = (
    note(
        "past_midnight",
        {"Trips": {"D4": dt.time(20, 30), "E4": dt.time(0, 30)}},
        ("Trips", 4, "past_midnight"),
    ),
    note(
        "no_fish_written",
        {"Trips": trip("T-004"), "Effort": stint("T-004", "Jerkbait", 240, 2)},
        ("Trips", 5, "no_fish_written"),
        rates=(6, 32.0),
    ),
    note("effort_above", {"Effort": {"C4": 300}}, ("Effort", 4, "effort_above"), rates=(6, 26.0)),
    note("effort_below", {"Effort": {"C4": 105}}, ("Effort", 4, "effort_below"), rates=(6, 19.5)),
    note("tally_less", {"Effort": {"E5": 0}}, ("Effort", 5, "tally_less"), rates=(5, 24.0)),
    note("fish_without_effort", fish("T-002", "Jerkbait", FISH), ("Catch", 5, "fish_without_effort")),
    note(
        "fish_without_technique",
        {"Effort": {"E2": None, "E3": None}, "Catch": {"B2": None}},
        ("Catch", 2, "fish_without_technique"),
        rates=(3, 24.0),
    ),
    note(
        "fish_beyond_tally",
        {"Catch": {"F1": "Count", **row(5, "T-001", None, FISH, None, None, 5)}},
        ("Catch", 5, "fish_beyond_tally"),
    ),
    note(
        "not_fished",
        {"Trips": {"G1": "Status", "G4": "cancelled"}},
        ("Trips", 4, "not_fished"),
        rates=(4, 16.0),
    ),
    note("name_unknown", {"Trips": {"C4": "Lk Arden"}}, ("Trips", 4, "name_unknown")),
    note("names_alike", {"Trips": {"C3": "Lk Arden"}, "Waters": None}, ("Trips", 3, "names_alike")),
    note(
        "clients_alike",
        {"Clients": [["Client", "Name on summary"], ["C01", "Ada Berg"], ["C02", "Ada Bergh"]]},
        ("Clients", 3, "clients_alike"),
    ),
    note(
        "clients_read_apart",
        {"Trips": {"G1": "Client", "G2": "C01, C02"}, "Clients": [["Client"], ["C01"], ["C02"]]},
        ("Trips", 2, "clients_read_apart"),
    ),
    note(
        "stint_longer",
        {"Effort": {"C4": 300, "D4": 1}},
        ("Effort", 4, "stint_longer"),
        rates=(6, 21.0),
    ),
    note("dock_inside", {"Trips": {"G1": "Left dock", "G2": dt.time(7)}}, ("Trips", 2, "dock_inside")),
    note(
        "paper_ran_out",
        {"Documents": [["Document", "Kind", "Valid to"], ["CPR card", "card", dt.date(2026, 7, 3)]]},
        ("Documents", 2, "paper_ran_out"),
    ),
    note(
        "passengers_over",
        {
            "Documents": [["Document", "Kind", "Allowed"], ["Skiff", "licence", 6]],
            "Trips": {"G1": "Boat", "G3": "Skiff", "H1": "Passengers", "H3": 7},
        },
        ("Trips", 3, "passengers_over"),
    ),
    note("name_shared", {"Techniques": {"C3": "DS"}}, ("Techniques", 3, "name_shared")),
    note(
        "trips_skipped",
        {"Trips": {"A4": "T-004"}, "Effort": {"A5": "T-004"}, "Catch": {"A4": "T-004"}},
        ("Trips", 4, "trips_skipped"),
    ),
    note(
        "trip_alike",
        {"Trips": trip(3), "Effort": stint(3, "Jerkbait", 240, 2, 0)},
        ("Trips", 5, "trip_alike"),
        rates=(6, 32.0),
    ),
    note(
        "rows_alike",
        {
            "Catch": {
                "F1": "Time",
                "F2": dt.time(7),
                **row(5, "T-001", DROP_SHOT, FISH, 15.5, "released", dt.time(7)),
            }
        },
        ("Catch", 5, "rows_alike"),
    ),
    note("totals_row", fish("TOTAL", None, None, 47.75), ("Catch", 5, "totals_row")),
    note("second_heading", fish(*HEADINGS), ("Catch", 5, "second_heading")),
    note(
        "weight_unusual",
        {"Catch": {"F1": "Weight (lb)", "D2": 12, "F2": 1.625}},
        ("Catch", 2, "weight_unusual"),
    ),
    note("cell_unusual", {"Trips": {"G1": "Water temp (°F)", "G2": 17}}, ("Trips", 2, "cell_unusual")),
    note(
        "outside_trip",
        {"Effort": {"C4": None, "F1": "Start", "F4": dt.time(5), "G1": "End", "G4": dt.time(9)}},
        ("Effort", 4, "outside_trip"),
    ),
    Case(
        "merged_below",
        "note",
        {"Trips": {"G1": "Sky", "G2": "overcast"}},
        (("Trips", 3, "merged_below"),),
        merged={"Trips": "G2:G3"},
    ),
    note("two_ways", {"Effort": {"F1": "Parts", "F4": 3}}, ("Effort", 4, "two_ways")),
    note("stint_unknown", {"Catch": {"F1": "Stint", "F2": "B"}}, ("Catch", 2, "stint_unknown")),
    note(
        "angler_not_listed",
        {
            "Trips": {"G1": "Client", "G2": "C01; C02", "G3": "C01"},
            "Catch": {"F1": "Angler", "F2": "C02", "F3": "C02"},
        },
        ("Catch", 3, "angler_not_listed"),
    ),
    note("no_as_of", {"Season": {"B4": None, "B5": None}}, ("Season", 0, "no_as_of")),
    note(
        "no_latitude",
        {"Season": {"A7": None, "B7": None}, "Weather": [["Date", "Sky"], [AUGUST, "clear"]]},
        ("Season", 0, "no_latitude"),
    ),
    note("no_time_zone", {"Season": {"B6": None}}, ("Season", 0, "no_time_zone")),
    note("column_not_read", {"Trips": {"G1": "Tip", "G2": 50}}, ("Trips", 1, "column_not_read")),
    note("sheet_not_read", {"My notes": [["a", "b"]]}, ("My notes", 0, "sheet_not_read")),
    note("beyond_headings", {"Trips": {"H3": "windy"}}, ("Trips", 0, "beyond_headings")),
    Case("rows_hidden", "note", {}, (("Trips", 3, "rows_hidden"),), hidden={"Trips": (3, 4)}),
    Case("sheet_hidden", "note", {}, (("Catch", 0, "sheet_hidden"),), out_of_sight=("Catch",)),
    Case(
        "cells_commented",
        "note",
        {},
        (("Effort", 3, "cells_commented"),),
        commented={"Effort": ("A1", "C3", "E5")},
    ),
    Case("rows_struck", "note", {}, (("Effort", 3, "rows_struck"),), struck={"Effort": ("A3", "A5")}),
    note(
        "date_order_found",
        {"Weather": [["Date", "Sky"], ["13/07/2026", "clear"], ["03/07/2026", "rain"]]},
        ("Weather", 2, "date_order_found"),
    ),
    note(
        "keep_rules_clash",
        {
            "Keep rules": [
                ["Rule", "Water", "Species", "Action", "Min (in)", "Daily limit"],
                ["R1", "*", "LMB;SMB", "LIMIT", 14, None],
                ["R2", "*", "LMB", "LIMIT", 15, 3],
                ["R3", "Lake Arden", "LMB", "LIMIT", 16, None],
            ]
        },
        ("Keep rules", 2, "keep_rules_clash"),
        ("Keep rules", 3, "keep_rules_clash"),
    ),
)
