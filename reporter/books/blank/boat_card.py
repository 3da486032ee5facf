"""The boat card: one trip on one page, to tally in pencil and type in the evening from top to bottom."""

from reporter.books.blocks import Field, Line, Sheet, Table, Text
from reporter.schema.log import BY_KEY
from reporter.schema.units import System

NAME = "Boat card"

_WIDTHS = (20.0, 26.0, 17.0, 20.0, 23.0, 16.0, 16.0, 17.0, 20.0)

_TRIP = ("trip", "date", "water", "start", "end", "anglers", "client", "hours_off", "guide_fished")
_DAY = (
    "water_temp_c",
    "clarity",
    "sky",
    "wind_from_deg",
    "wind_speed_ms",
    "water_level",
    "front_call",
    "kind",
    "status",
)
_EFFORT = ("technique", "parts", "rods", "landed", "missed", "variant", "retrieve", "colour", "cover")
_CATCH = ("technique", "species", "count", "length_mm", "weight_g", "fate", "time", "angler", "notes")

_EFFORT_TITLE = "Effort: Parts, a mark an angler a half hour; Landed and Missed, a mark a fish; a dud, a 0"
_EFFORT_ROWS = 8
_CATCH_ROWS = 7


def boat_card(system: System) -> Sheet:
    """Return the card, headed in these units; its columns carry the headings under which they are typed."""
    return Sheet(
        NAME,
        (
            Text((Line(NAME, "title"),)),
            _ruled("card_trip", "Trips", "trips", _TRIP, system, 1),
            _ruled("card_day", "Trips, the day's reading", "trips", _DAY, system, 1),
            _ruled("card_effort", _EFFORT_TITLE, "effort", _EFFORT, system, _EFFORT_ROWS),
            _ruled("card_catch", "Catch: only the fish to say more of", "catch", _CATCH, system, _CATCH_ROWS),
        ),
        "log",
        landscape=True,
        private=True,
    )


def _ruled(key: str, title: str, sheet: str, columns: tuple[str, ...], system: System, rows: int) -> Table:
    described = BY_KEY[sheet]
    fields = tuple(
        Field(column, described.column(column).headed(system), width=width)
        for column, width in zip(columns, _WIDTHS, strict=True)
    )
    return Table(key, fields, {}, title=title, blank_rows=rows, ruled=True)
