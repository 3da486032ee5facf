"""What the live tables behind What worked share: places by score, blanks of formulas."""

import pandas as pd

from reporter.books.blocks import Value


def or_blank(values: pd.Series) -> list[Value]:
    """Return a column as cells of formulas, which show nothing as an empty text."""
    return ["" if pd.isna(value) else value for value in values.tolist()]


def place_formula(table: str, order: str) -> str:
    """Return the formula of a row's place by score, ties in the order of a column; 0 for a score below 0."""
    above = f"SUMPRODUCT(--({{{table}.score}}>{{row.score}}))"
    tied = f"SUMPRODUCT(({{{table}.score}}={{row.score}})*({{{table}.{order}}}<{{row.{order}}}))"
    return f"IF({{row.score}}<0,0,1+{above}+{tied})"
