"""The demo season with mistakes: what people really type, and what a careful reader says of it.

The expected findings were written down beside each mistake, not taken from the checker. Trips are named by
hand; they belong to the seed of `tests.demo.log`.
"""

import datetime as dt

from tests.demo.log import demo_log
from tests.demo.mistakes_catch import slips_on_catch
from tests.demo.mistakes_effort import slips_on_effort
from tests.demo.mistakes_trips import slips_on_trips
from tests.demo.pen import Pen, Planted


def messy_pen() -> Pen:
    """Every mistake that leaves the report possible."""
    pen = Pen(demo_log())
    slips_on_trips(pen)
    slips_on_effort(pen)
    slips_on_catch(pen)
    _slips_elsewhere(pen)
    return pen


def stopping_pen() -> Pen:
    """Mistakes after which nobody can say whose fish are whose, and so no report is made."""
    pen = Pen(demo_log())
    row = pen.trip_row("T-010")
    pen.put("trips", row, {"trip": "T-009"})
    pen.expect("trips", row, "trip_number_twice", "stop")

    # A formula that no spreadsheet program has worked out.
    rows = pen.effort_rows("T-015")
    for row in rows:
        pen.put("effort", row, {"minutes": "=60*3"})
    pen.expect("effort", rows[0], "not_calculated", "stop")

    pen.head("catch", 3, "What we got")
    pen.expect("catch", 0, "column_missing", "stop")
    return pen


def _slips_elsewhere(pen: Pen) -> None:
    heading = {"trip": "Trip", "date": "Date", "time": "Time", "clarity": "Clarity", "sky": "Sky"}
    pen.expect("conditions", pen.append("conditions", heading, after_blank=1), "second_heading", "note")
    pen.append("conditions", {"trip": "T-061", "time": dt.time(9), "water_temp_c": 57})

    dates = [day["date"] for day in pen.log.rows["weather"]]
    row = 2 + dates.index(dt.date(2026, 7, 1))
    pen.put("weather", row, {"date": "6/31/2026"})
    pen.expect("weather", row, "required_unread", "set aside")
    row = 2 + dates.index(dt.date(2026, 3, 10))
    pen.put("weather", row + 1, {"date": None})
    pen.merge("weather", 1, row, row + 1)
    pen.expect("weather", row + 1, "merged", "set aside")

    # The last trips of November.
    pen.put("documents", 4, {"valid_to": dt.date(2026, 11, 7)})
    pen.expect("documents", 4, "paper_ran_out", "note")

    row = pen.append("clients", {"client": "C03", "name_on_summary": "Cleo the second"})
    pen.expect("clients", row, "name_twice", "set aside")
    row = pen.append("season", {"setting": "Favourite lake", "value": "Lake Arden"})
    pen.expect("season", row, "setting_unknown", "set aside")
    pen.expect_new_sheet("My notes", "Call the ramp about the lights", "sheet_not_read", "note")


PLANTED: tuple[Planted, ...] = tuple(sorted(messy_pen().planted))
"""The findings of the log with mistakes."""

PLANTED_STOPS: tuple[Planted, ...] = tuple(sorted(stopping_pen().planted))
"""The stops of the log that stops. What else follows from them is not listed."""
