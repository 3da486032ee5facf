"""Row numbers, where the rows of one sheet of the log come from several worksheets of another layout.

A row's code is its number in its worksheet plus a step for each worksheet before it. In a log of our own
layout, and in the first worksheet of any other, code and number are the same.
"""

STEP = 1 << 21
"""More rows than any spreadsheet has (1,048,576)."""


def row_code(row: int, worksheet: int) -> int:
    """Return the code of a row of the worksheet that comes at that place, from 0."""
    return row + worksheet * STEP


def row_in_sheet(code: int) -> int:
    """Return the number of a row as the spreadsheet program shows it."""
    return code % STEP


def worksheet_of(code: int) -> int:
    """Return at which place the row's worksheet comes, from 0."""
    return code // STEP
