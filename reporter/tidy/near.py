"""The nearest known name, to be offered and never applied."""

from collections.abc import Sequence

from reporter.schema.thresholds import NEAR_NAME_SCORE


def nearest(name: str, known: Sequence[str]) -> str | None:
    """Return the known name most like the one typed, or None where none is near."""
    from rapidfuzz import fuzz, process, utils

    found = process.extractOne(
        name, known, scorer=fuzz.ratio, processor=utils.default_process, score_cutoff=NEAR_NAME_SCORE
    )
    return found[0] if found else None
