"""Months as they stand on the page."""

import pandas as pd


def month_name(month: str) -> str:
    """Return 2026-04 as April 2026, which no spreadsheet takes for a date in another form."""
    return pd.Timestamp(f"{month}-01").strftime("%B %Y") if month else "not known"
