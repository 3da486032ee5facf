"""Mistakes on the sheet Catch."""

import datetime as dt

from tests.demo.pen import Pen, Row


def slips_on_catch(pen: Pen) -> None:
    """Cells mistyped, then rows below the last fish."""
    _cells(pen)
    _added(pen)


def _cells(pen: Pen) -> None:
    row = pen.catch_rows("T-035")[3]
    pen.put("catch", row, {"technique": None})
    pen.expect("catch", row, "fish_without_technique", "note")

    # 16.50 without its point.
    row = _first_with(pen, "T-004", "length_mm")
    pen.put("catch", row, {"length_mm": "1650"})
    pen.expect("catch", row, "cell_impossible", "set aside")

    # The trip was over before eleven in the morning.
    row = _first_with(pen, "T-031", "time")
    pen.put("catch", row, {"time": dt.time(23, 45)})
    pen.expect("catch", row, "outside_trip", "note")


def _added(pen: Pen) -> None:
    """A blank Trip is the trip above, here too."""
    bass = {"technique": "Stick worm", "species": "largemouth bass"}
    row = pen.append("catch", {"trip": "T-053", "technique": "Topwater", "species": "trout"})
    pen.expect("catch", row, "species_two_meanings", "set aside")
    row = pen.append("catch", {"technique": "Topwater", "species": "wallaye"})
    pen.expect("catch", row, "species_unknown", "set aside")
    row = pen.append("catch", {**bass, "count": 2.5})
    pen.expect("catch", row, "cell_unread", "set aside")

    twin: Row = {**bass, "length_mm": "15.25", "time": dt.time(7, 10)}
    pen.append("catch", twin)
    pen.expect("catch", pen.append("catch", twin), "rows_alike", "note")

    row = pen.append("catch", {**bass, "length_mm": "12", "weight_g": "4 lb 8 oz"})
    pen.expect("catch", row, "weight_impossible", "set aside")
    row = pen.append("catch", {**bass, "length_mm": "12", "weight_g": "1 lb 10 oz"})
    pen.expect("catch", row, "weight_unusual", "note")

    row = pen.append("catch", {"technique": "Feather jig", "species": "largemouth bass"})
    pen.expect("catch", row, "name_unknown", "note")
    pen.expect("catch", row, "fish_without_effort", "note")

    row = pen.append(
        "catch", {"trip": "T-145", "technique": "Drop shot", "species": "spotted bass", "count": 3}
    )
    pen.expect("catch", row, "trip_unknown", "set aside")
    row = pen.append("catch", {"trip": "TOTAL", "count": 208}, after_blank=1)
    pen.expect("catch", row, "totals_row", "note")


def _first_with(pen: Pen, trip: str, column: str) -> int:
    rows = pen.log.rows["catch"]
    return next(row for row in pen.catch_rows(trip) if rows[row - 2].get(column) is not None)
