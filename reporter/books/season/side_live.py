"""The formulas of Side by side over the rows behind it."""

from collections.abc import Mapping

_TABLES: Mapping[str, str] = {
    "same_trip": "side_trip",
    "same_condition": "side_kind",
    "same_window": "side_hours",
}
"""Method -> the table with the rows behind its ratio."""

TRIPS = 'COUNTIFS({side_trip.no},{row.no},{side_trip.hours_this},">0",{side_trip.hours_against},">0")'
SHARE = (
    "(SUMIFS({side_kind.hours_this},{side_kind.no},{row.no})+SUMIFS({side_kind.hours_against},{side_kind.no},"
    "{row.no}))/INDEX({side_pair.hours},MATCH({row.no},{side_pair.no},0))"
)
"""Formula of both sides' rod-hours on kinds of day with both, of all their rod-hours."""
WINDOW_TRIPS = "SUMIFS({side_hours.first},{side_hours.no},{row.no})"


def fish_of(key: str) -> str:
    """Return the formula of the fish of a side on trips with both; key: fish_this or fish_against."""
    return _sum("side_trip", key)


def ratio_of(method: str) -> str:
    """Return the formula of a comparison's ratio."""
    this, against = (_sum(_TABLES[method], f"adds_{side}") for side in ("this", "against"))
    return f'IF({against}>0,{this}/{against},"")'


def found_in_table(key: str) -> str:
    """Return the formula of a comparison's number in the first table, for a table with its no."""
    return f"INDEX({{side.{key}}},MATCH({{row.no}},{{side.no}},0))"


def _sum(table: str, key: str) -> str:
    return f"SUMIFS({{{table}.{key}}},{{{table}.no}},{{row.no}})"
