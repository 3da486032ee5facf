"""Waters: what each gave, month by month; the months of the season."""

from reporter.books.blocks import Field, Line, Sheet, Text
from reporter.books.season.months import month_name
from reporter.books.season.rate_tables import BY_MONTH, BY_WATER, BY_WATER_MONTH, rate_table
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

_NO = Field("no", "No.", "plain")
_WATER = Field("water", "Water")
_MONTH = Field("month", "Month")
_GREY_NOTE = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."


def waters(report: Report) -> Sheet:
    """Return the sheet Waters."""
    numbers = [report.season.waters.index(water) + 1 for water in report.waters["water"]]
    months = report.months["month"].tolist()
    pairs = [label.split("\n") for label in report.water_months["water_month"]]
    blocks = (
        Text((Line("Waters", "title"), Line("What each water gave, and when.", "lead"))),
        rate_table(
            "water",
            "Fish per rod-hour by water",
            BY_WATER,
            (_NO, _WATER),
            {"no": numbers, "water": report.waters["water"].tolist()},
            report.waters,
            report.whole,
            _GREY_NOTE,
        ),
        rate_table(
            "month",
            "Fish per rod-hour by month",
            BY_MONTH,
            (_NO, _MONTH),
            {"no": list(range(1, len(months) + 1)), "month": [month_name(month) for month in months]},
            report.months,
            note=_GREY_NOTE,
        ),
        rate_table(
            "water_month",
            "Each water, month by month",
            BY_WATER_MONTH,
            (_NO, _WATER, _MONTH),
            {
                "no": list(range(1, len(pairs) + 1)),
                "water": [water for water, _ in pairs],
                "month": [month_name(month) for _, month in pairs],
            },
            report.water_months,
            note=_GREY_NOTE,
        ),
    )
    return Sheet("Waters", blocks, group="me", landscape=True, private=True)
