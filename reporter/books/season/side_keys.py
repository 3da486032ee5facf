"""The numbers under which the data sheets have the sides of a comparison."""

from collections.abc import Mapping

from reporter.compute.report import STYLES, Report

KEYS: Mapping[str, str] = {"style": "style_no", "technique": "technique_no"}
"""What is compared -> its column of Trip techniques."""


def side_numbers(report: Report, of: str) -> Mapping[str, int]:
    """Return name -> number; of: style or technique."""
    if of == "style":
        return {style: place for place, style in enumerate(STYLES, start=1)}
    known = report.season.techniques
    return dict(zip(known["technique"], known["technique_no"].tolist(), strict=True))
