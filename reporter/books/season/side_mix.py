"""Behind the rates as if fished on the season's mix of days: kinds of day, and each technique on them."""

from collections.abc import Sequence

from reporter.books.blocks import Cell, Field, Live, Table
from reporter.books.season.side_keys import side_numbers
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

_IN_THE_MIX = f"1: every technique of {MIN_OWN_TRIPS} trips or more was fished on it."
_KIND_FIELDS = (
    Field("no", "Kind no.", "plain"),
    Field("kind", "Kind of day"),
    Field("rod_hours", "Rod-hours, all techniques", "one"),
    Field("shared", "In the mix", "plain", help=_IN_THE_MIX),
    Field("share", "Share of the mix", "share"),
)
_MIX_FIELDS = (
    Field("technique_no", "Technique no.", "plain"),
    Field("technique", "Technique"),
    Field("kind_no", "Kind no.", "plain"),
    Field("kind", "Kind of day"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("fish", "Fish", "one"),
    Field("rate", "Fish per rod-hour", "two"),
    Field("weighted", "Rate x share", "three"),
)
_OF_KIND = "{pair.kind_no},{row.no},{pair.in_rates},1"
_OF_BOTH = "{pair.technique_no},{row.technique_no},{pair.kind_no},{row.kind_no},{pair.in_rates},1"
_SHARE = 'IF({row.shared}=1,{row.rod_hours}/SUMIFS({day_kind.rod_hours},{day_kind.shared},1),"")'
_SHARE_OF_KIND = "SUMIFS({day_kind.share},{day_kind.no},{row.kind_no})"
_OF_TECHNIQUE = "{mix_kind.technique_no},{row.no}"


def mix_formula(key: str) -> str:
    """Return the formula of a technique's sum over the kinds of the mix: trips, rod_hours or rate."""
    source = "weighted" if key == "rate" else key
    return f"SUMIFS({{mix_kind.{source}}},{_OF_TECHNIQUE})"


def mix_tables(report: Report) -> tuple[Table, ...]:
    """Return the kinds of day of the season, then every technique on each kind of the mix."""
    kinds = report.fair.kinds[report.fair.kinds["rod_hours"] > 0]
    hours = kinds["rod_hours"].where(kinds["shared"]).sum()
    shares = (kinds["rod_hours"] / hours).tolist()
    columns: dict[str, Sequence[Cell]] = {
        "no": (kinds["kind"] + 1).tolist(),
        "kind": kinds["label"].tolist(),
        "rod_hours": [
            Live(f"SUMIFS({{pair.rod_hours}},{_OF_KIND})", value) for value in kinds["rod_hours"].tolist()
        ],
        "shared": kinds["shared"].astype(int).tolist(),
        "share": [
            Live(_SHARE, share if shared else "")
            for share, shared in zip(shares, kinds["shared"], strict=True)
        ],
    }
    of_season = Table("day_kind", _KIND_FIELDS, columns, title="Kinds of day of the season")
    if not hours > 0:
        return (of_season,)
    return of_season, _mix(report, dict(zip(kinds["kind"], shares, strict=True)))


def _mix(report: Report, share_of: dict[int, float]) -> Table:
    rows, labels = report.fair.mix, report.fair.classes.labels
    numbers = side_numbers(report, "technique")
    weighted = rows["rate"] * rows["kind"].map(share_of)
    rate = 'IF({row.rod_hours}>0,{row.fish}/{row.rod_hours},"")'
    columns: dict[str, Sequence[Cell]] = {
        "technique_no": [numbers[technique] for technique in rows["technique"]],
        "technique": rows["technique"].tolist(),
        "kind_no": (rows["kind"] + 1).tolist(),
        "kind": [labels[kind] for kind in rows["kind"]],
        "trips": [Live(f"COUNTIFS({_OF_BOTH})", value) for value in rows["trips"].tolist()],
        "rod_hours": [
            Live(f"SUMIFS({{pair.rod_hours}},{_OF_BOTH})", value) for value in rows["rod_hours"].tolist()
        ],
        "fish": [Live(f"SUMIFS({{pair.landed}},{_OF_BOTH})", value) for value in rows["fish"].tolist()],
        "rate": [Live(rate, value) for value in rows["rate"].tolist()],
        "weighted": [Live(f"{{row.rate}}*{_SHARE_OF_KIND}", value) for value in weighted.tolist()],
    }
    return Table("mix_kind", _MIX_FIELDS, columns, title="Each technique on the kinds of the mix")
