"""The invented guide, clients, waters and papers of the demo season."""

import datetime as dt
from collections.abc import Mapping

from reporter.books.blocks import Cell
from reporter.schema.units import System

YEAR = 2026
FIRST_DAY, LAST_DAY = dt.date(YEAR, 2, 1), dt.date(YEAR, 11, 30)

CLIENTS: tuple[tuple[str, str, str, str, str], ...] = (
    ("C01", "Ada", "yes", "no", "handy"),
    ("C02", "Bram", "yes", "no", "some"),
    ("C03", "Cleo", "no", "no", "new"),
    ("C04", "Dov", "yes", "no", "some"),
    ("C05", "Esme", "yes", "yes", "new"),
    ("C06", "Finn", "yes", "no", "new"),
    ("C07", "Greta", "no", "no", "handy"),
    ("C08", "Hugo", "yes", "no", "some"),
    ("C09", "Ines", "yes", "no", "some"),
    ("C10", "Jonas", "yes", "yes", "new"),
    ("C11", "Kaya", "no", "no", "some"),
    ("C12", "Leif", "yes", "no", "handy"),
    ("C13", "Mona", "yes", "no", "new"),
    ("C14", "Nils", "yes", "no", "some"),
)
"""Code, name on summary, consent to name, youth, skill."""

_WATERS: tuple[tuple[str, ...], ...] = (
    ("Lake Arden", "Arden; Arden Lake", "0042", "yes", ""),
    ("Brannock Reservoir", "Brannock", "0117", "masked", "a reservoir in the hills"),
    ("Otter Mere", "", "0003", "no", ""),
    ("Hollin Pool", "the Pool", "0260", "yes", ""),
)
_BY_PERMIT = "Brannock Reservoir"
_PERMIT = "Boat permit"

Row = Mapping[str, Cell]


def settings(system: System) -> dict[str, Cell]:
    return {
        "guide": "An invented guide",
        "guide_code": "G01",
        "season_name": f"Demo season {YEAR}",
        "first_day": FIRST_DAY,
        "last_day": LAST_DAY,
        "as_of": LAST_DAY,
        "time_zone": "America/Chicago" if system == "us" else "America/Toronto",
        "latitude": 36 if system == "us" else 45,
        "longitude": -90 if system == "us" else -80,
        "species_counted": "black bass",
        "fate_if_blank": "released",
        "rods_per_angler": 1,
        "big_fish_mm": 18 if system == "us" else 45,
        "usual_start": dt.time(6, 30),
        "usual_end": dt.time(11, 0),
        "all_measured": "no",
        "barometer": "sea level",
        "decimal_mark": "point",
        "thanks": "Thank you for a good day on the water.",
        "contact": "Ask at the dock for next season's days.",
    }


def waters() -> list[Row]:
    return [
        {
            "water": name,
            "also_called": also or None,
            "region": "US-XX",
            "county": "Invented County",
            "agency_code": code,
            "permit": _PERMIT if name == _BY_PERMIT else None,
            "share_name": share,
            "masked_name": masked or None,
        }
        for name, also, code, share, masked in _WATERS
    ]


def clients() -> list[Row]:
    return [
        {
            "client": code,
            "name_on_summary": name,
            "consent_to_name": consent,
            "youth": youth,
            "skill": skill,
            "licence_number": f"XX-{4100 + 37 * number:06d}" if youth == "no" else None,
            "licence_from": dt.date(YEAR, 1, 1) if youth == "no" else None,
            "licence_to": dt.date(YEAR, 12, 31) if youth == "no" else None,
        }
        for number, (code, name, consent, youth, skill) in enumerate(CLIENTS)
    ]


def papers() -> dict[str, list[Row]]:
    year = {"valid_from": dt.date(YEAR, 1, 1), "valid_to": dt.date(YEAR, 12, 31)}
    return {
        "documents": [
            {"document": "Guide licence", "kind": "licence", "number": "XX-G-0007", **year},
            {
                "document": _PERMIT,
                "kind": "permit",
                "number": "XX-P-0031",
                **year,
                "waters": _BY_PERMIT,
                "counting_rule": "client-days",
                "allowed": 60,
                "returned": 0,
            },
            {"document": "First aid card", "kind": "card", **year},
        ],
        "reports": [
            {
                "report": "Permit use",
                "to": "The invented agency",
                "document": _PERMIT,
                "counting_rule": "client-days",
                "period": "season",
                "nil_months": "never",
                "due_days": 30,
                "basis": "received",
            }
        ],
    }


def hunches(system: System) -> list[Row]:
    ten = "10 mph" if system == "us" else "16 km/h"
    return [
        {
            "hunch": "The day after a front is the hard one",
            "compare": "day type",
            "this": "ordinary day",
            "against": "day 1 or 2 after a front",
        },
        {
            "hunch": "Wind makes them bite",
            "compare": "wind",
            "this": f"over {ten}",
            "against": f"under {ten}",
        },
        {
            "hunch": "Drop shot gets more bites than the jig",
            "compare": "technique",
            "this": "Drop shot",
            "against": "Casting jig",
            "measure": "bites",
        },
    ]
