"""The long pages of a filing: trip ledger, effort and harvest, fee worksheets, what an agency asks for."""

from collections.abc import Mapping, Sequence

from reporter.books.blocks import Cell, Field, Live, Look, Sheet, Table
from reporter.books.filing.pages import Front, day_or_blank, filled_table, page
from reporter.compute.records import records
from reporter.schema.asked_columns import BY_FIELD, AskedColumns

_FIGURE = 9.5
_LEDGER = (
    Field("trip", "Trip"),
    Field("state", "State"),
    Field("date", "Date", "date"),
    Field("water", "Water"),
    Field("site", "Site"),
    Field("guide", "Guide"),
    Field("boat", "Boat"),
    Field("anglers", "Anglers", "whole", width=_FIGURE),
    Field("lines", "Lines", "whole", width=_FIGURE),
    Field("dock_hours", "Dock to dock, h", "two", width=_FIGURE),
    Field("hours", "Lines in, h", "two", width=_FIGURE),
    Field("angler_hours", "Angler-hours", "two", width=_FIGURE),
    Field("line_hours", "Line-hours", "two", width=_FIGURE),
    Field("kept", "Kept", "whole", width=_FIGURE),
    Field("released", "Released", "whole", width=_FIGURE),
    Field("unknown", "Fate not written", "whole", width=_FIGURE),
    Field("caught", "Caught", "whole", width=_FIGURE),
)
_SUMMED = (
    "anglers",
    "dock_hours",
    "hours",
    "angler_hours",
    "line_hours",
    "kept",
    "released",
    "unknown",
    "caught",
)
_STATES = {"void": "VOID", "cancelled": "CANCELLED", "log not finished": "log not finished"}


def ledger_page(front: Front) -> Sheet:
    """Return every trip row in order; only guided trips that were fished add to the last line."""
    rows = records(front.made.ledger)
    columns: dict[str, Sequence[Cell]] = {
        field.key: [row.get(field.key) for row in rows]
        for field in _LEDGER
        if field.key not in ("state", "date")
    }
    columns["state"] = [_state(row) for row in rows]
    columns["date"] = [day_or_blank(row["date"]) for row in rows]
    columns["counts"] = [int(row["counts"]) for row in rows]
    counts = Field("counts", "Counts", "plain", width=_FIGURE, help="1: a guided trip that was fished.")
    total: dict[str, Cell] = {"trip": "Guided trips"}
    for key in _SUMMED:
        value = sum(row[key] for row in rows if row["counts"] and row[key] == row[key])
        total[key] = Live(f"SUMIFS({{ledger.{key}}},{{ledger.counts}},1)", float(value))
    table = filled_table("ledger", (*_LEDGER, counts), columns, total=total, filtered=True)
    return page("Trip ledger", front, table, lead="A void or cancelled number stays, and is accounted for.")


def _state(row: Mapping[str, object]) -> str | None:
    status = _STATES.get(str(row["status"]))
    return status or (str(row["kind"]) if row["kind"] != "guided" else None)


def harvest_page(front: Front) -> Sheet:
    """Return effort and harvest by water and month; effort stands once for each of them."""
    rows = records(front.made.harvest)
    first = [index for index, row in enumerate(rows) if index == 0 or _place(row) != _place(rows[index - 1])]
    effort = ("trips", "anglers", "angler_hours")
    columns: dict[str, Sequence[Cell]] = {
        "water": [row["water"] for row in rows],
        "month": [row["month"] for row in rows],
        **{
            key: [row[key] if index in set(first) else None for index, row in enumerate(rows)]
            for key in effort
        },
        "species": [row["species"] for row in rows],
        **{key: [row[key] for row in rows] for key in ("kept", "released", "unknown", "caught")},
    }
    fields = (
        Field("water", "Water"),
        Field("month", "Month"),
        Field("trips", "Trips", "whole"),
        Field("anglers", "Anglers", "whole"),
        Field("angler_hours", "Angler-hours", "two"),
        Field("species", "Species"),
        Field("kept", "Kept", "whole"),
        Field("released", "Released", "whole"),
        Field("unknown", "Fate not written", "whole"),
        Field("caught", "Caught", "whole"),
    )
    total: dict[str, Cell] = {"water": "All"}
    for key in (*effort, "kept", "released", "unknown", "caught"):
        cells = [cell for cell in columns[key] if isinstance(cell, int | float) and cell == cell]
        total[key] = Live(f"SUM({{harvest.{key}}})", float(sum(cells)))
    table = Table("harvest", fields, columns, total=total)
    lead = "Guided trips. Caught = kept + released + fate not written. Anglers do not count the guide."
    return page("Effort and harvest", front, table, lead=lead)


def _place(row: Mapping[str, object]) -> tuple[object, object]:
    return row["water"], row["month"]


_FEES = (
    ("receipts", "Receipts"),
    ("deductions", "Less deductions"),
    ("adjusted", "Adjusted receipts"),
    ("share_on_land", "Share of the time on that land, per cent"),
    ("share_read", "Read as, per cent"),
    ("part", "Part of the receipts that bears the fee"),
    ("base", "Fee base"),
    ("rate", "Rate, per cent"),
    ("fee", "Fee"),
    ("minimum", "Minimum"),
    ("charged", "The larger of the two"),
    ("prepaid", "Less prepaid"),
    ("due", "Due"),
)


def fees_page(front: Front) -> Sheet | None:
    """Return the fee worksheets, a column each; None where Fees has no row."""
    rows = records(front.made.fees)
    if not rows:
        return None
    columns: dict[str, Sequence[Cell]] = {"line": [words for _, words in _FEES]}
    fields = [Field("line", "Line")]
    for number, row in enumerate(rows, start=1):
        fields.append(Field(f"fee_{number}", row["document"], "two"))
        columns[f"fee_{number}"] = [row[key] for key, _ in _FEES]
    notes = " ".join(f"{row['document']}: {note}" for row in rows for note in row["notes"])
    table = Table("fees", tuple(fields), columns, note=notes)
    lead = "The arithmetic of what you typed on Fees: your own rates, minimum and deductions."
    return page("Fee worksheets", front, table, lead=lead, landscape=False)


def asked_page(front: Front, asked: AskedColumns, rows: Sequence[Sequence[Cell]]) -> Sheet:
    """Return the page in the columns, order, names and codes that the guide's own agency asks for."""
    fields = tuple(
        Field(f"asked_{number}", column.heading, _look(column.key))
        for number, column in enumerate(asked.columns, start=1)
    )
    columns = {field.key: [row[place] for row in rows] for place, field in enumerate(fields)}
    table = Table("asked", fields, columns, title=asked.name)
    return page("As asked for", front, table, lead="Columns, names and codes are those of your columns file.")


def _look(key: str) -> Look:
    if not key or BY_FIELD[key].holds in ("text", "date", "time"):
        return "text"
    return "two" if key.endswith("hours") else "whole"
