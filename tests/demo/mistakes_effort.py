"""Mistakes on the sheet Effort."""

from tests.demo.pen import Pen


def slips_on_effort(pen: Pen) -> None:
    """Stints that do not add up to their trip, and cells mistyped."""
    _sums(pen)
    _cells(pen)


def _sums(pen: Pen) -> None:
    rows = pen.effort_rows("T-047")
    pen.put("effort", rows[-1], {"rods": 2})
    pen.expect("effort", rows[0], "effort_above", "note")

    # Every technique written with all the rods of the boat.
    for row in pen.effort_rows("T-025"):
        pen.put("effort", row, {"rods": 2})
        pen.expect("effort", row, "effort_over", "set aside")

    rows = pen.effort_rows("T-056")
    pen.put("effort", rows[0], {"minutes": 50})
    pen.put("effort", rows[1], {"minutes": 65})
    pen.expect("effort", rows[0], "effort_below", "note")

    first, second, *others = pen.effort_rows("T-019")
    pen.put("effort", second, {"parts": None, "minutes": 110})
    for row in (first, *others):
        pen.expect("effort", row, "parts_mixed", "set aside")


def _cells(pen: Pen) -> None:
    row = pen.effort_rows("T-018")[-1]
    pen.put("effort", row, {"technique": "Hair jig"})
    pen.expect("effort", row, "name_unknown", "note")

    row = pen.effort_rows("T-050")[0]
    pen.put("effort", row, {"landed": -1})
    pen.expect("effort", row, "cell_impossible", "set aside")

    row = pen.effort_rows("T-049")[3]
    pen.put("effort", row, {"landed": "3 + 1 lost"})
    pen.expect("effort", row, "cell_unread", "set aside")

    # Six fish on the lipless stand on Catch.
    row = pen.effort_rows("T-012")[2]
    pen.put("effort", row, {"landed": 4})
    pen.expect("effort", row, "tally_less", "note")
