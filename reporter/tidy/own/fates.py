"""Fates of fish that another layout answers with yes or no under a heading as "Kept?"."""

from reporter.schema.own_layout import WAS_KEPT, WAS_RELEASED
from reporter.tidy.sheet import TidySheet

_FATES = {
    WAS_KEPT.key: {"yes": "kept", "no": "released"},
    WAS_RELEASED.key: {"yes": "released", "no": "kept"},
}


def fill_fates(tidy: TidySheet) -> None:
    """Put the fate of fish of which it is only said whether they were kept, or released."""
    fates = tidy.columns["fate"]
    for key, means in _FATES.items():
        for index, answer in enumerate(tidy.columns.get(key, ())):
            if fates[index] is None and answer is not None:
                fates[index] = means[answer]
