"""The words of the workbook that holds a layout: sheets, headings and questions, as written and read."""

LAYOUT_SHEET, COLUMNS_SHEET = "Layout", "Columns"

LOOKS_LIKE = "Looks like"
"""Heads names that are near one in the log: offered beside it, never read."""

QUESTION, ANSWER, WHY = "Question", "Answer", "Why"

YES, NO = "yes", "no"
YES_NO = (YES, NO)

QUESTIONS: dict[str, str] = {
    "use": "Use this layout",
    "evenly": "Where no column times the techniques: share a trip's time evenly",
    "anglers": "Where no column says it: anglers on every trip",
    "water": "Where no column says it: water of every trip",
    "start": "Where no column says it: start of every trip",
    "client": "Where no column says it: client of every trip",
    "species": "Where no column says it: kind of every fish",
}
"""Key of a question -> as it is asked."""

EVERY_ROW: dict[str, str] = {
    "anglers": "trips",
    "water": "trips",
    "start": "trips",
    "client": "trips",
    "species": "catch",
}
"""Key of a question, a column's -> key of the sheet of which every row holds the answer."""

WORKSHEET = "worksheet"
"""As an answer: the name of the worksheet on which the row stands."""

WORKSHEETS: dict[str, str] = {
    "worksheet": "Worksheet",
    "row_is": "One row is",
    "heading_rows": "Heading rows",
    "sure": "How sure",
    "why": WHY,
}
COLUMNS: dict[str, str] = {
    "worksheet": "Worksheet",
    "column": "Column",
    "heading": "Heading",
    "example": "Example",
    "means": "Means",
    "group": "Group",
    "unit": "Unit",
    "sure": "How sure",
    "why": WHY,
}
"""Column of a table of the layout -> its heading."""
