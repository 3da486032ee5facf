"""Weights that their fish's length makes unlikely, or impossible."""

from reporter.schema.standard_weights import POSSIBLE_SHARE, USUAL_SHARE, WEIGHT_LINES
from reporter.schema.units import find_unit
from reporter.tidy.sheet import TidySheet

_INCH, _POUND = find_unit("fish length", "in"), find_unit("weight", "lb")


def share_of_standard(code: str, length_mm: float | None, weight_g: float | None) -> float | None:
    """Return a weight as a share of its species' standard weight; None where that cannot be told."""
    line = WEIGHT_LINES.get(code)
    if line is None or length_mm is None or weight_g is None or _INCH is None or _POUND is None:
        return None
    inches = _INCH.shown(length_mm)
    return _POUND.shown(weight_g) / line.pounds(inches) if inches >= line.shortest_in else None


def check_weights(tidy: TidySheet) -> None:
    """Leave out weights that cannot be at their length, and note those that are unusual.

    Species are house codes already. A row that stands for several fish has no weight of one fish to check.
    """
    species, counts = tidy.columns["species"], tidy.columns["count"]
    lengths, weights = tidy.columns["length_mm"], tidy.columns["weight_g"]
    for index, code in enumerate(species):
        if not tidy.used[index] or weights[index] is None or counts[index] not in (None, 1):
            continue
        share = share_of_standard(code, lengths[index], weights[index])
        if share is None or USUAL_SHARE[0] <= share <= USUAL_SHARE[1]:
            continue
        said = {"length": tidy.typed(index, "length_mm"), "share": f"{100 * share:.0f}"}
        if POSSIBLE_SHARE[0] <= share <= POSSIBLE_SHARE[1]:
            tidy.say("weight_unusual", index, "weight_g", **said)
        else:
            tidy.say("weight_impossible", index, "weight_g", **said)
            weights[index] = None
