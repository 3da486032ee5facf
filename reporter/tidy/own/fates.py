"""Fates of fish that another layout answers with yes or no under a heading as "Kept?"."""

from reporter.schema.own_layout import WAS_KEPT
from reporter.tidy.sheet import TidySheet

_FATE = {"yes": "kept", "no": "released"}


def fill_fates(tidy: TidySheet) -> None:
    """Put the fate of fish of which it is only said whether they were kept."""
    answers = tidy.columns.get(WAS_KEPT.key)
    if answers is None:
        return
    fates = tidy.columns["fate"]
    for index, answer in enumerate(answers):
        if fates[index] is None and answer is not None:
            fates[index] = _FATE[answer]
