"""Findings about a log in a layout that is not ours, and about its layout."""

from reporter.schema.finding import Finding

_AGAIN = "Mend the layout, or delete it and adopt the log again."

OWN_LAYOUT: tuple[Finding, ...] = (
    Finding(
        "own_sheet_gone",
        "stop",
        "A worksheet of the layout is gone",
        "The layout reads a worksheet '{value}', and the log has none, or an empty one.",
        _AGAIN,
    ),
    Finding(
        "own_headings_gone",
        "stop",
        "The headings of the layout are gone",
        "None of the headings that the layout names is in the first rows.",
        _AGAIN,
    ),
    Finding(
        "own_heading_gone",
        "stop",
        "A heading of the layout is gone",
        "The layout reads a column '{value}', and there is none now.",
        _AGAIN,
    ),
    Finding(
        "own_column_missing",
        "stop",
        "A needed column is not in the layout",
        "No column of the layout means {sheet_name}: {heading}.",
        "{how}",
    ),
    Finding(
        "own_no_trips",
        "stop",
        "A layout without trips",
        "No column of the layout belongs to Trips, so there is nothing to report.",
        "Say in the layout which columns hold the trip's date and water.",
    ),
    Finding(
        "own_units_differ",
        "stop",
        "One column in two units",
        "'{first}' and '{second}' on {second_sheet} both hold {value}, in two units.",
        "Say one unit for both in the layout.",
    ),
    Finding(
        "own_total_differs",
        "set aside",
        "Kept and released do not add up",
        "Kept {kept} + released {released} = {sum}, but the total says {value}. Not used.",
        "Fix one; I won't pick.",
    ),
    Finding(
        "own_untimed",
        "set aside",
        "Techniques without any time",
        "No column times the techniques: {count} of them are in no rate; their fish count in totals.",
        "Add a column of minutes, or let the layout share the trip's time evenly.",
    ),
    Finding(
        "own_repeat_differs",
        "note",
        "Repeated cells that differ",
        "'{value}' here, '{first}' in row {first_row} of the same trip, which counts. Cells that differ so: "
        "{count}.",
        "Make them alike.",
    ),
    Finding(
        "own_not_read",
        "note",
        "Columns that the layout leaves out",
        "Not read, as the layout says: {columns}.",
        "Nothing, if they are yours alone.",
    ),
    Finding(
        "own_evenly",
        "note",
        "Time shared evenly",
        "No column times the techniques: those of a trip share its time evenly, as the layout says.",
        "For truer rates write down what each was fished.",
    ),
    Finding(
        "own_absent",
        "note",
        "No columns for a sheet",
        "No column of the layout belongs to {sheet}. {lost}.",
        "Nothing, if you do not write that down.",
    ),
)
