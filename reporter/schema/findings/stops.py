"""Findings that stop the report."""

from reporter.schema.finding import Finding

STOPS: tuple[Finding, ...] = (
    Finding(
        "sheet_missing",
        "stop",
        "A needed sheet is missing",
        "There is no sheet '{sheet}'.{hint}",
        "Name the sheet as the blank log does. A layout of your own: reporter adopt learns it.",
    ),
    Finding(
        "no_headings",
        "stop",
        "A needed sheet is empty",
        "The sheet is empty: it has no headings.",
        "Copy the headings from a blank log.",
    ),
    Finding(
        "sheet_twice",
        "stop",
        "Two sheets with one meaning",
        "'{first}' and '{second}' both read as {sheet}.",
        "Rename or delete one of them.",
    ),
    Finding(
        "column_missing",
        "stop",
        "A needed column is missing",
        "There is no column '{heading}'.{hint}",
        "Name the heading as the blank log does, or let reporter adopt learn yours.",
    ),
    Finding(
        "column_twice",
        "stop",
        "Two columns with one meaning",
        "'{first}' in {first_cell} and '{second}' in {second_cell} mean the same, and both hold values.",
        "One table a sheet, one column a thing: rename or delete one.",
    ),
    Finding(
        "second_table",
        "stop",
        "Two tables side by side",
        "A second table starts at column {letters}: {why}.",
        "One table a sheet, please: move it to a sheet of its own.",
    ),
    Finding(
        "no_trips",
        "stop",
        "No trips",
        "The sheet holds no trip that can be used, so there is nothing to report.",
        "Write a row a trip below the headings.",
    ),
    Finding(
        "trip_number_twice",
        "stop",
        "One trip number, two trips",
        "Trip {value} is also row {other}, and the rows differ. I cannot tell whose fish are whose.",
        "Give one of them a new number.",
    ),
    Finding(
        "not_calculated",
        "stop",
        "Formulas without results",
        "Formulas in this column have no saved result ({count} of them).",
        "Open the file in your spreadsheet program, save it, try again.",
    ),
    Finding(
        "error_cells",
        "stop",
        "Many error cells in a key column",
        "{count} of {rows} cells show an error like {value}: a formula has lost its cells.",
        "Type the values in.",
    ),
    Finding(
        "unit_unknown",
        "stop",
        "Numbers without a unit",
        "'{heading}' holds numbers, but {why}.",
        "Write the unit in the heading, as '{example}', or set Units on Season.",
    ),
    Finding(
        "date_orders_mixed",
        "stop",
        "Dates in two orders",
        "'{first}' has the day first, '{second}' in {second_cell} the month. {count} dates are typed so.",
        "Type them all alike, and set Date order on Season.",
    ),
    Finding(
        "date_order_unknown",
        "stop",
        "Dates that can be read in two ways",
        "'{value}' may have the day or the month first; no date of the log shows which. Such dates: {count}.",
        "Set Date order on Season.",
    ),
    Finding(
        "dates_turned",
        "stop",
        "Day and month may be exchanged",
        "'{value}' is kept as text, and the {count} true dates of the column all have days up to 12: "
        "day and month may be exchanged in them.",
        "Type the dates again as 2026-04-18.",
    ),
    Finding(
        "decimal_marks_mixed",
        "stop",
        "Decimal comma and decimal point",
        "'{first}' has a decimal comma, '{second}' in {second_cell} a decimal point.",
        "Choose one: set Decimal mark on Season.",
    ),
    Finding(
        "weight_points",
        "stop",
        "Weights that look like pounds and ounces",
        "Is {value} that many pounds, or pounds and ounces? Weights that end in .10 to .15: {count}.",
        "Set Weight point on Season: pounds or ounces.",
    ),
)
