"""Mistakes on the sheet Trips."""

import datetime as dt

from tests.demo.pen import Pen


def slips_on_trips(pen: Pen) -> None:
    """Cells of trips mistyped, then rows that cannot be right below the last trip."""
    _mistyped(pen)
    _added(pen)


def _mistyped(pen: Pen) -> None:
    row = pen.trip_row("T-026")
    pen.put("trips", row, {"end_date": None})
    pen.expect("trips", row, "past_midnight", "note")

    for effort in pen.effort_rows("T-036"):
        pen.put("effort", effort, {"landed": None})
    pen.expect("trips", pen.trip_row("T-036"), "no_fish_written", "note")

    row = pen.trip_row("T-028")
    pen.put("trips", row, {"water": "Lk Arden"})
    pen.expect("trips", row, "name_unknown", "note")

    row = pen.trip_row("T-034")
    pen.put("trips", row, {"client": "C99"})
    pen.expect("trips", row, "name_unknown", "note")
    named = [fish for fish in pen.catch_rows("T-034") if pen.log.rows["catch"][fish - 2].get("angler")]
    pen.expect("catch", named[0], "angler_not_listed", "note")

    # Degrees Celsius typed under °F.
    row = pen.trip_row("T-045")
    pen.put("trips", row, {"water_temp_c": 17})
    pen.expect("trips", row, "cell_unusual", "note")

    row = pen.trip_row("T-050")
    pen.put("trips", row, {"wind_speed_ms": "#REF!"})
    pen.expect("trips", row, "cell_unread", "set aside")

    pen.head("trips", 32, "Tip")
    pen.beyond("trips", 5, 40)
    pen.expect("trips", 1, "column_not_read", "note")


def _added(pen: Pen) -> None:
    row = _trip(pen, "T-063", dt.date(2026, 11, 21), dt.time(13), dt.time(7))
    pen.expect("trips", row, "end_before_start", "set aside")
    row = pen.append("effort", {"trip": "T-063", "technique": "Drop shot", "parts": 6, "landed": 2})
    pen.expect("effort", row, "trip_set_aside", "set aside")
    row = pen.append("effort", {"technique": "Jerkbait", "parts": 4, "landed": 0})
    pen.expect("effort", row, "trip_set_aside", "set aside")

    # There is no T-064.
    row = _trip(pen, "T-065", dt.date(2026, 11, 22), dt.time(6), dt.time(6))
    pen.expect("trips", row, "no_length", "set aside")
    pen.expect("trips", row, "trips_skipped", "note")

    row = _trip(pen, "T-066", dt.date(2026, 11, 24), dt.time(5), dt.time(23, 30))
    pen.expect("trips", row, "too_long", "set aside")
    row = _trip(pen, "T-067", dt.date(2027, 11, 3), dt.time(7), dt.time(12))
    pen.expect("trips", row, "future_date", "set aside")
    row = _trip(pen, "T-068", dt.date(2026, 1, 5), dt.time(7), dt.time(12))
    pen.expect("trips", row, "outside_season", "set aside")

    row = pen.append("trips", {"client": "C05"}, after_blank=1)
    pen.expect("trips", row, "required_blank", "set aside")
    row = pen.append("trips", pen.log.rows["trips"][-1])
    pen.expect("trips", row, "trip_row_twice", "set aside")


def _trip(pen: Pen, number: str, date: dt.date, start: dt.time, end: dt.time) -> int:
    return pen.append(
        "trips",
        {
            "trip": number,
            "date": date,
            "water": "Lake Arden",
            "start": start,
            "end": end,
            "anglers": 2,
            "client": "C01; C02",
        },
    )
