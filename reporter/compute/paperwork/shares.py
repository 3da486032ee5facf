"""Shares of an activity on one land: by miles or hours, and of the receipts."""

from reporter.compute.paperwork.said import figure


def share_inside(inside: float, whole: float) -> float:
    """Return the share of an activity inside, 0 to 1: miles of miles, or hours of hours; whole over 0."""
    return inside / whole


def receipts_share_warning(receipts_inside: float, receipts: float, activity_share: float) -> str:
    """Return a sentence where the share of receipts from inside is below that of the activity, else ""."""
    share = share_inside(receipts_inside, receipts)
    if share >= activity_share:
        return ""
    return (
        f"{figure(100 * share)} % of the receipts, but {figure(100 * activity_share)} % of the activity is "
        "inside: expect to be asked why."
    )
