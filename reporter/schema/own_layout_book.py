"""The words of the workbook that holds a layout: sheets, headings and questions, as written and read."""

LAYOUT_SHEET, COLUMNS_SHEET = "Layout", "Columns"

LOOKS_LIKE = "Looks like"
"""Heads names that are near one in the log: offered beside it, never read."""

QUESTION, ANSWER = "Question", "Answer"

YES, NO = "yes", "no"
YES_NO = (YES, NO)

QUESTIONS: dict[str, str] = {
    "use": "Use this layout",
    "evenly": "Where no column times the techniques: share a trip's time evenly",
    "anglers": "Where no column says it: anglers on every trip",
    "water": "Where no column says it: water of every trip",
}
"""Key of a question -> as it is asked; the last two are columns of Trips."""

WORKSHEETS: dict[str, str] = {
    "worksheet": "Worksheet",
    "row_is": "One row is",
    "heading_rows": "Heading rows",
    "sure": "How sure",
    "why": "Why",
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
    "why": "Why",
}
"""Column of a table of the layout -> its heading."""
